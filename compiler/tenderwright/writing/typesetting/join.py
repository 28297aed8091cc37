"""Joins the PDFs of parts into one: pages, links across parts, tags in their order, outline, faces and margins."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from importlib.metadata import version
from io import BytesIO
from itertools import pairwise
from typing import Any

from tenderwright.documents.edition import Edition, Part
from tenderwright.writing.clock import iso_time
from tenderwright.writing.errors import WritingError
from tenderwright.writing.faces import Face
from tenderwright.writing.rendering import edition_mark, environment
from tenderwright.writing.typesetting.furniture import FURNITURE_FACES, Furniture, PageWords, resource
from tenderwright.writing.typesetting.joined_faces import JoinedFace, face_called
from tenderwright.writing.typesetting.kept import KeptParts
from tenderwright.writing.typesetting.links import ACROSS
from tenderwright.writing.typesetting.sheets import SHEETS, form_of


def join(edition: Edition, parts: Mapping[str, Any], timestamp: int, kept: KeptParts | None = None) -> bytes:
    """Join the opened PDFs of an edition's parts, given by anchor, into one with fixed metadata; they are used up.

    Raises `WritingError` where an anchor stands twice or a link leads to none.
    """
    if not edition.parts:
        raise WritingError("an edition without parts cannot be typeset")
    joined = _Joined(edition)
    for part in edition.parts:
        joined.add(part, parts[part.anchor])
    return joined.finish(timestamp, kept)


def opened(pdf: bytes) -> Any:
    """Open the PDF of a part."""
    import pikepdf

    return pikepdf.open(BytesIO(pdf))


@dataclass(frozen=True)
class _Heading:
    """A line of the outline, and where it leads."""

    title: str
    destination: Any
    below: list[_Heading]
    open: bool = False


class _Joined:
    """A PDF to which parts are added."""

    def __init__(self, edition: Edition) -> None:
        import pikepdf
        from pikepdf import Array, Dictionary, Name

        self._edition = edition
        self._pdf = pikepdf.new()
        self._faces: dict[Face, JoinedFace] = {}
        self._document = self._pdf.make_indirect(Dictionary(Type=Name.StructElem, S=Name.Document))
        self._elements: list[Any] = []
        self._parents: list[Any] = []
        self._places: dict[str, Any] = {}
        self._titles: dict[str, str] = {}
        self._links: list[tuple[str, Any]] = []
        self._outline: list[_Heading] = []
        self._spans: list[tuple[Part, int]] = []
        self._array = Array

    def add(self, part: Part, source: Any) -> None:
        """Add the pages of a part, with its tags, anchors, links and headings."""
        first = len(self._pdf.pages)
        named = self._take_faces(source)
        for page in source.pages:
            self._pdf.pages.append(page)
        pages = [page.obj for page in self._pdf.pages[first:]]
        for name, face in named.items():
            pages[0].Resources.Font[name] = face.font
        numbers = {page.obj.objgen: number for number, page in enumerate(source.pages)}
        self._add_tags(source, pages)
        self._add_anchors(source, part)
        self._add_links(pages)
        self._add_headings(source, part, pages, numbers)
        self._spans.append((part, len(pages)))

    def _take_faces(self, source: Any) -> dict[str, JoinedFace]:
        """Take the faces of ours out of a part, all whose pages share one dictionary of fonts."""
        fonts = source.pages[0].obj.Resources.Font
        named = {name: face for name, font in fonts.items() if (face := face_called(font)) is not None}
        for name, face in named.items():
            self._face(face).take(fonts[name])
            del fonts[name]
        return {name: self._face(face) for name, face in named.items()}

    def _face(self, face: Face) -> JoinedFace:
        if face not in self._faces:
            self._faces[face] = JoinedFace(face, self._pdf)
        return self._faces[face]

    def _add_tags(self, source: Any, pages: list[Any]) -> None:
        """Put a part's elements after those before it, and number its pages and links among those of the file."""
        tree = self._pdf.copy_foreign(source.Root.StructTreeRoot)
        shift = len(self._parents)
        for element in tree.K[0].K:
            element.P = self._document
            self._elements.append(element)
        numbered = tree.ParentTree.Nums
        self._parents += [numbered[index] for index in range(1, len(numbered), 2)]
        for page in pages:
            page.StructParents = int(page.StructParents) + shift
            for note in page.get("/Annots", ()):
                note.StructParent = int(note.StructParent) + shift

    def _add_anchors(self, source: Any, part: Part) -> None:
        names = source.Root.Names.Dests.Names
        places = self._pdf.copy_foreign(source.make_indirect(names))
        for name, place in zip(places[::2], places[1::2], strict=True):
            anchor = str(name)
            if anchor in self._places:
                raise WritingError(f"anchors given twice: {anchor}")
            self._places[anchor] = place
            self._titles[anchor] = _title(part)

    def _add_links(self, pages: list[Any]) -> None:
        for page in pages:
            for note in page.get("/Annots", ()):
                if "/Dest" in note:
                    self._links.append((str(note.Dest), note))
                elif (address := str(note.A.URI)).startswith(ACROSS):
                    self._links.append((address.removeprefix(ACROSS), note))

    def _add_headings(self, source: Any, part: Part, pages: list[Any], numbers: dict[Any, int]) -> None:
        headings = []
        entry = source.Root.get("/Outlines", {}).get("/First")
        while entry is not None:
            page, *place = entry.Dest
            destination = self._array([pages[numbers[page.objgen]], *place])
            headings.append(_Heading(str(entry.Title), destination, []))
            entry = entry.get("/Next")
        label = self._edition.title if part.kind == "cover" else _title(part)
        here = _Heading(label, self._places[part.anchor], headings)
        group = part.group if part.kind != "cover" else ""
        before = self._spans[-1][0].group if self._spans else ""
        if not group:
            self._outline.append(here)
        elif group == before:
            self._outline[-1].below.append(here)
        else:
            self._outline.append(_Heading(group, here.destination, [here], open=True))

    def finish(self, timestamp: int, kept: KeptParts | None) -> bytes:
        """Paint the margins, close what holds the parts together, and write the file."""
        from pikepdf import Array, Dictionary, Name, ObjectStreamMode, String

        pdf, root = self._pdf, self._pdf.Root
        self._paint_margins()
        self._resolve()
        for face in self._faces.values():
            face.embed(kept)
        self._document.K = Array(self._elements)
        nums = [entry for number, element in enumerate(self._parents) for entry in (number, element)]
        tree = Dictionary(
            Type=Name.StructTreeRoot,
            K=Array([self._document]),
            ParentTree=pdf.make_indirect(Dictionary(Nums=Array(nums))),
            ParentTreeNextKey=len(self._parents),
        )
        root.StructTreeRoot = pdf.make_indirect(tree)
        self._document.P = root.StructTreeRoot
        root.MarkInfo = Dictionary(Marked=True)
        root.ViewerPreferences = Dictionary(DisplayDocTitle=True)
        root.Lang = String(self._edition.language)
        names = [entry for anchor in sorted(self._places) for entry in (String(anchor), self._places[anchor])]
        root.Names = Dictionary(Dests=pdf.make_indirect(Dictionary(Names=Array(names))))
        outlines = pdf.make_indirect(Dictionary(Type=Name.Outlines))
        self._hang(outlines, self._outline, open=True)
        root.Outlines = outlines
        self._describe(timestamp)
        written = BytesIO()
        pdf.save(
            written,
            min_version="1.7",
            object_stream_mode=ObjectStreamMode.generate,
            compress_streams=True,
            deterministic_id=True,
            fix_metadata_version=False,
        )
        return written.getvalue()

    def _paint_margins(self) -> None:
        """Put what stands in the margins before the content of each page."""
        from pikepdf import Array

        faces = {face: self._face(face) for face in FURNITURE_FACES}
        furniture, number = Furniture(faces), 0
        for part, count in self._spans:
            for within in range(1, count + 1):
                page = self._pdf.pages[number].obj
                number += 1
                words = page_words(self._edition, part, within, count, number)
                if words is None:
                    continue
                sheet = SHEETS[self._edition.page_size, form_of(part.kind, part.landscape)]
                for face, joined in faces.items():
                    page.Resources.Font[f"/{resource(face)}"] = joined.font
                margins = self._pdf.make_stream(furniture.paint(sheet, words))
                page.Contents = Array([margins, page.Contents])

    def _resolve(self) -> None:
        """Make each link lead to its anchor, and say in words where it leads."""
        from pikepdf import String

        if dead := sorted({anchor for anchor, _ in self._links} - set(self._places)):
            raise WritingError(f"links without an anchor: {', '.join(dead)}")
        for anchor, note in self._links:
            if "/A" in note:
                del note.A
            note.Dest = String(anchor)
            note.Contents = String(self._titles[anchor])

    def _hang(self, parent: Any, headings: Sequence[_Heading], *, open: bool) -> int:
        """Hang lines of the outline under another, and give how many are seen under it when it is open."""
        from pikepdf import Dictionary, String

        entries = [
            self._pdf.make_indirect(Dictionary(Title=String(one.title), Dest=one.destination, Parent=parent))
            for one in headings
        ]
        seen = len(entries)
        for one, entry in zip(headings, entries, strict=True):
            below = self._hang(entry, one.below, open=one.open)
            seen += below if one.open else 0
        for before, after in pairwise(entries):
            before.Next, after.Prev = after, before
        if entries:
            parent.First, parent.Last = entries[0], entries[-1]
            parent.Count = seen if open else -seen
        return seen

    def _describe(self, timestamp: int) -> None:
        """Say what the file is, in its information dictionary and as XMP (ISO 14289-1, 7.1)."""
        from pikepdf import Dictionary, Name, String

        title = f"{self._edition.title} ({self._edition.tender})"
        time = iso_time(timestamp)
        stamped = f"D:{re.sub('[-:TZ]', '', time)}Z"
        producer = f"WeasyPrint {version('weasyprint')}, pikepdf {version('pikepdf')}"
        self._pdf.trailer.Info = self._pdf.make_indirect(
            Dictionary(
                Title=String(title),
                Author=String(self._edition.owner),
                Creator=String("Tenderwright"),
                Producer=String(producer),
                CreationDate=String(stamped),
                ModDate=String(stamped),
            )
        )
        described = environment().get_template("metadata.xmp.j2")
        xmp = described.render(title=title, owner=self._edition.owner, producer=producer, time=time)
        metadata = self._pdf.make_stream(xmp.encode())
        metadata.Type, metadata.Subtype = Name.Metadata, Name.XML
        self._pdf.Root.Metadata = metadata


def page_words(edition: Edition, part: Part, within: int, count: int, number: int) -> PageWords | None:
    """Give what stands around a page; nothing for a cover."""
    if part.kind == "cover":
        return None
    return PageWords(
        running=f"{edition.tender} · {edition.title}",
        mark=edition_mark(edition),
        part=f"{part.number}  {part.title}".strip(),
        folio=f"{part.number or part.title} · {within} of {count}",
        page=f"page {number}",
        caution=part.cautioned(edition.caution),
        stamp=edition.stamp.label,
    )


def _title(part: Part) -> str:
    return f"{part.number} {part.title}".strip()
