"""The joined PDF: its tags are those of its parts in their order, and all that leads somewhere leads to one place."""

from __future__ import annotations

import io
import re
import subprocess
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from tenderwright.documents.edition import Heading, Paragraph, Part, Span, inline
from tenderwright.writing.errors import WritingError
from tenderwright.writing.html import part_html
from tenderwright.writing.pdf import Typeset, Typesetter
from tenderwright.writing.typesetting.setter import PartSetter

from .conftest import TIMESTAMP
from .sample import draft_edition, sample_edition


@pytest.fixture(scope="module")
def joined(typeset: Typeset) -> Iterator[pikepdf.Pdf]:
    with pikepdf.open(io.BytesIO(typeset.pdf)) as opened:
        yield opened


def _kinds(pdf: pikepdf.Pdf) -> list[str]:
    """Give the kinds of all elements in reading order."""

    def below(node: Any) -> Iterator[str]:
        if isinstance(node, pikepdf.Array):
            for one in node:
                yield from below(one)
        elif isinstance(node, pikepdf.Dictionary) and "/S" in node:
            yield str(node.S)
            yield from below(node.get("/K"))

    return list(below(pdf.Root.StructTreeRoot.K))


def test_the_tags_are_those_of_the_parts_one_after_the_other(joined: pikepdf.Pdf, typeset: Typeset) -> None:
    edition, setter, expected = sample_edition(), PartSetter(), ["/Document"]
    for part in edition.parts:
        content = setter.set(part.anchor, part_html(edition, part, typeset.first_pages, with_style=False))
        with pikepdf.open(io.BytesIO(content)) as opened:
            expected += _kinds(opened)[1:]
    assert _kinds(joined) == expected
    assert {"/H1", "/H2", "/Table", "/TH", "/Figure", "/Link", "/LI"} <= set(expected)


def test_every_piece_of_text_belongs_to_an_element_or_to_the_margins(joined: pikepdf.Pdf) -> None:
    nums = joined.Root.StructTreeRoot.ParentTree.Nums
    parents = {int(key): value for key, value in zip(nums[::2], nums[1::2], strict=True)}
    assert sorted(parents) == list(range(len(parents)))
    for page in joined.pages:
        shown = (
            b"\n".join(stream.read_bytes() for stream in page.Contents.as_list())
            if isinstance(page.Contents, pikepdf.Array)
            else page.Contents.read_bytes()
        )
        numbers = {int(number) for number in re.findall(rb"/MCID (\d+)", shown)}
        assert numbers == set(range(len(parents[int(page.StructParents)])))
        for element in parents[int(page.StructParents)]:
            assert element.Pg.objgen == page.obj.objgen
        for note in page.get("/Annots", ()):
            kids = parents[int(note.StructParent)].K
            assert note.objgen in [
                kid.Obj.objgen for kid in kids if isinstance(kid, pikepdf.Dictionary) and "/Obj" in kid
            ]
        outside = re.sub(rb"BDC.*?EMC", b"", shown, flags=re.DOTALL)
        assert b" TJ" not in outside
        assert b" Tj" not in outside


def test_headers_of_tables_have_names_of_their_own(joined: pikepdf.Pdf) -> None:
    elements = [one for one in joined.objects if isinstance(one, pikepdf.Dictionary) and "/S" in one]
    names = Counter(str(one.ID) for one in elements if one.S == "/TH")
    assert len(names) > 100
    assert set(names.values()) == {1}
    asked = {str(name) for one in elements if one.S == "/TD" for name in one.A.get("/Headers", ())}
    assert asked <= set(names)


def test_a_link_says_in_words_where_it_leads(joined: pikepdf.Pdf, typeset: Typeset) -> None:
    page = joined.pages[typeset.first_pages["item-420"] - 1]
    told = {str(note.Dest): str(note.Contents) for note in page.Annots if "/Dest" in note}
    assert told["frames"] == "B2 Offsets and frames"
    assert told["drawing-d-12"] == "D-12 Tank plan"
    assert all(
        "/A" not in note or str(note.A.URI).startswith("https://")
        for one in joined.pages
        for note in one.get("/Annots", ())
    )


def test_each_face_is_held_once(joined: pikepdf.Pdf) -> None:
    fonts = {font.objgen: str(font.BaseFont) for page in joined.pages for font in page.Resources.Font.values()}
    assert len(set(fonts.values())) == len(fonts) > 4
    files = [one for one in joined.objects if isinstance(one, pikepdf.Stream) and one.get("/Subtype") == "/OpenType"]
    assert len(files) == len(fonts)


@pytest.mark.needs("pdftotext")
def test_the_words_of_the_pages_can_be_taken_out(typeset: Typeset, tmp_path: Path) -> None:
    file = tmp_path / "s.pdf"
    file.write_bytes(typeset.pdf)
    done = subprocess.run(["pdftotext", str(file), "-"], capture_output=True, text=True, check=True)
    assert done.stderr == ""
    words = " ".join(done.stdout.split())
    for said in (
        "posted at the manhole",
        "Half-breadths, m",
        "420 · 1 of 2",
        "page 16",
        "law of the yard's place governs",
    ):
        assert said in words
    assert "\ufffd" not in words


def test_a_page_of_a_draft_bears_its_marks_outside_the_text() -> None:
    pdf = Typesetter().typeset(draft_edition(), TIMESTAMP).pdf
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        for page in list(opened.pages)[1:]:
            margins = page.Contents[0].read_bytes()
            assert margins.startswith(b"/Artifact <</Type /Pagination /Subtype /Header>> BDC")
            assert margins.count(b"BDC") == margins.count(b"EMC") == 2


def test_an_anchor_that_two_parts_have_stops_the_typesetter() -> None:
    twice = [Part(name, "", "Title", "front", "", (Heading("Here", anchor="same"),)) for name in ("a", "b")]
    with pytest.raises(WritingError, match="given twice: same"):
        Typesetter().typeset(replace(sample_edition(0), parts=tuple(twice)), TIMESTAMP)


def test_a_part_is_the_same_page_for_whoever_reads_it() -> None:
    edition = sample_edition()
    part = next(part for part in edition.parts if part.anchor == "item-420")
    other = replace(edition, stamp=replace(edition.stamp, label="Commit 9z9z9z9"), confidential=True)
    assert part_html(edition, part) == part_html(other, part)


def test_an_address_in_another_part_is_kept_until_the_parts_are_joined() -> None:
    words = Paragraph(inline(Span("here", target="a"), Span("there", target="b")))
    edition = replace(sample_edition(0), parts=(Part("a", "", "T", "front", "", (words,)),))
    page = part_html(edition, edition.parts[0])
    assert '<a href="#a">here</a>' in page
    assert '<a href="tender:b">there</a>' in page
