"""The typeset PDF: structure, links, page numbers, faces, and the same bytes from the same edition."""

from __future__ import annotations

import io
import os
import re
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any, Literal

import pypdf
import pytest

from tenderwright.documents.edition import Edition, Figure, Heading, Paragraph, Part, Picture, Pictures, Span, inline
from tenderwright.writing.errors import WritingError
from tenderwright.writing.pdf import Typeset, Typesetter
from tests.pipeline.packages import MARRAM

from .conftest import TIMESTAMP
from .sample import draft_edition, item, sample_edition

_COMPILER = Path(__file__).parents[2] / "compiler"
_TESTS = Path(__file__).parents[1]


def _reader(typeset: Typeset) -> Any:
    return pypdf.PdfReader(io.BytesIO(typeset.pdf))


def _titles(outline: Any, depth: int = 0) -> Iterator[tuple[int, str]]:
    for entry in outline:
        if isinstance(entry, list):
            yield from _titles(entry, depth + 1)
        else:
            yield depth, entry.title


def _small(*parts: Part) -> Edition:
    return replace(sample_edition(0), parts=parts)


def test_pdf_is_tagged_and_says_it_is_pdf_ua(typeset: Typeset) -> None:
    root = _reader(typeset).trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en-GB"
    assert root["/StructTreeRoot"]["/K"]
    assert b"pdfuaid:part" in root["/Metadata"].get_object().get_data()


def test_tags_hold_tables_headings_figures_with_alternatives_and_lists(typeset: Typeset) -> None:
    kinds: dict[str, int] = {}
    alternatives: list[Any] = []
    stack = [_reader(typeset).trailer["/Root"]["/StructTreeRoot"]["/K"]]
    while stack:
        node = stack.pop()
        node = node.get_object() if hasattr(node, "get_object") else node
        if isinstance(node, list):
            stack.extend(node)
        elif isinstance(node, dict):
            kinds[node.get("/S", "")] = kinds.get(node.get("/S", ""), 0) + 1
            if node.get("/S") == "/Figure":
                alternatives.append(node.get("/Alt"))
            if "/K" in node:
                stack.append(node["/K"])
    assert {"/H1", "/H2", "/Table", "/TH", "/TD", "/LI", "/Link", "/Figure"} <= set(kinds)
    assert sorted(alternatives) == ["Plan of the double bottom tanks.", "Profile of the ship with tanks."]


def _headings(node: Any, within: str = "") -> Iterator[tuple[str, str]]:
    """Give the headings in the order of reading, each with the heading that it stands in."""
    node = node.get_object() if hasattr(node, "get_object") else node
    if isinstance(node, list):
        for one in node:
            yield from _headings(one, within)
    elif isinstance(node, dict):
        kind = str(node.get("/S", ""))
        heading = kind if re.fullmatch(r"/H\d", kind) else ""
        if heading:
            yield heading, within
        if "/K" in node:
            yield from _headings(node["/K"], heading or within)


def test_headings_leave_no_level_out_and_do_not_stand_in_each_other() -> None:
    def part(kind: Literal["item", "data"]) -> Part:
        levels = (Heading("Scope", 3), Heading("Lines to price"), Heading("Requirements", 3))
        return Part(kind, "410", "Shell", kind, "Work", levels, revision="Revision 1")

    made = Typesetter().typeset(_small(part("item"), part("data")), TIMESTAMP)
    found = list(_headings(_reader(made).trailer["/Root"]["/StructTreeRoot"]["/K"]))
    assert [heading for heading, _ in found] == ["/H1", "/H2", "/H2", "/H2", "/H1", "/H2", "/H2", "/H3"]
    assert {within for _, within in found} == {""}


def test_outline_lists_groups_then_parts_then_headings(typeset: Typeset) -> None:
    titles = list(_titles(_reader(typeset).outline))
    assert (0, "Work items") in titles
    assert (1, "420 Clean and inspect double bottom tanks") in titles
    assert titles.index((1, "420 Clean and inspect double bottom tanks")) > titles.index((0, "Work items"))
    assert titles.count((0, "Work items")) == 1
    assert (2, "Hot work") in titles


def test_links_between_parts_reach_the_part(typeset: Typeset) -> None:
    reader = _reader(typeset)
    destinations = reader.named_destinations
    page = reader.pages[typeset.first_pages["item-420"] - 1]
    targets = {str(note.get_object()["/Dest"]) for note in page["/Annots"] if "/Dest" in note.get_object()}
    assert {"general-requirements", "frames", "drawing-d-12"} <= targets
    for target in targets:
        landed = reader.get_page_number(destinations[target].page.get_object()) + 1
        assert landed == typeset.first_pages[target]


def test_contents_give_the_page_on_which_each_part_starts(typeset: Typeset) -> None:
    reader = _reader(typeset)
    contents = " ".join(reader.pages[typeset.first_pages["contents"] - 1].extract_text().split())
    listed = [part for part in sample_edition().parts if part.kind not in ("cover", "contents")]
    for part in listed:
        start = typeset.first_pages[part.anchor]
        opening = reader.pages[start - 1].extract_text()
        assert f"1 of {_pages_of(typeset, part.anchor)}" in " ".join(opening.split())
        assert part.title[:30] in opening
        assert re.search(rf"{re.escape(part.title[-12:])}\s+{start}\b", contents), part.title


def _pages_of(typeset: Typeset, anchor: str) -> int:
    starts = [*typeset.first_pages.values(), typeset.page_count + 1]
    index = list(typeset.first_pages).index(anchor)
    return starts[index + 1] - starts[index]


def test_contents_longer_than_guessed_still_give_the_right_pages() -> None:
    parts = (
        Part("contents", "", "Contents", "contents", "", ()),
        *(
            Part(f"part-{number}", str(number), f"Title {number}", "front", f"Group {number}", ())
            for number in range(75)
        ),
    )
    result = Typesetter().typeset(_small(*parts), TIMESTAMP)
    assert _pages_of(result, "contents") == 2
    assert result.first_pages["part-0"] == 3
    last = _reader(result).pages[1].extract_text()
    assert re.search(r"Title 74\s+77\b", last)


def test_every_page_carries_the_stamp_and_safety_pages_the_caution(typeset: Typeset) -> None:
    reader = _reader(typeset)
    for page in reader.pages:
        assert "Commit 1a2b3c4" in page.extract_text()
    for number in range(typeset.first_pages["item-420"], typeset.first_pages["item-505"]):
        assert "planning and tender document" in reader.pages[number - 1].extract_text()


def test_every_page_of_a_confidential_draft_says_so() -> None:
    reader = _reader(Typesetter().typeset(draft_edition(), TIMESTAMP))
    for page in reader.pages:
        words = page.extract_text()
        assert "CONFIDENTIAL · DRAFT" in words
        assert "DRAFT, uncommitted changes" in words
        assert sorted(float(side) for side in page.mediabox[2:]) == [612.0, 792.0]


def test_only_faces_of_the_build_are_embedded(typeset: Typeset) -> None:
    names = {
        font.get_object()["/BaseFont"].partition("+")[2]
        for page in _reader(typeset).pages
        for font in page["/Resources"]["/Font"].values()
    }
    assert names
    assert all(name.startswith(("Tender-Serif", "Tender-Sans")) for name in names)
    assert typeset.uncovered == ""


def test_characters_that_no_face_holds_are_reported() -> None:
    part = Part("a", "", "Title", "front", "", (Paragraph(inline("Nabla \u2207 here")),))
    assert Typesetter().typeset(_small(part), TIMESTAMP).uncovered == "\u2207"


def test_a_long_lived_typesetter_lays_out_only_what_changed_and_writes_the_same_bytes(typeset: Typeset) -> None:
    edition = sample_edition()
    setter = Typesetter()
    first = setter.typeset(edition, TIMESTAMP)
    changed_part = item("420", "Clean and inspect double bottom tanks", rows=47)
    changed = replace(
        edition, parts=tuple(changed_part if part.anchor == "item-420" else part for part in edition.parts)
    )
    second = setter.typeset(changed, TIMESTAMP)
    back = setter.typeset(edition, TIMESTAMP)
    assert set(first.laid_out) == {part.anchor for part in edition.parts}
    assert second.laid_out == ("item-420",)
    assert second.pdf == Typesetter().typeset(changed, TIMESTAMP).pdf
    assert back.pdf == first.pdf == typeset.pdf
    assert second.pdf != first.pdf


_ONCE = """
import hashlib, sys
sys.path[:0] = {paths!r}
from writing.sample import sample_edition, sample_form
from tenderwright.writing.pdf import Typesetter
from tenderwright.writing.html import screen_page
from tenderwright.writing.price_form_xlsx import price_form_workbook
import os
edition = sample_edition(8)
pdf = Typesetter().typeset(edition, 1770000000).pdf
assert "SOURCE_DATE_EPOCH" not in os.environ
for content in (pdf, screen_page(edition).encode(), price_form_workbook(sample_form())):
    print(hashlib.sha256(content).hexdigest())
"""


def test_two_processes_in_two_directories_write_the_same_bytes(tmp_path: Path) -> None:
    program = _ONCE.format(paths=[str(_COMPILER), str(_TESTS)])
    outputs = []
    for index, (seed, zone) in enumerate((("1", "UTC"), ("77", "Pacific/Auckland"))):
        folder = tmp_path / f"here-{index}"
        folder.mkdir()
        environment = {**os.environ, "PYTHONHASHSEED": seed, "TZ": zone, "TMPDIR": str(folder)}
        environment.pop("SOURCE_DATE_EPOCH", None)
        done = subprocess.run(
            [sys.executable, "-c", program],
            cwd=folder,
            env=environment,
            capture_output=True,
            text=True,
            check=True,
        )
        outputs.append(done.stdout)
    assert outputs[0] == outputs[1]
    assert len(outputs[0].split()) == 3


def test_source_date_is_restored(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "12")
    part = Part("a", "", "Title", "front", "", ())
    pdf = Typesetter().typeset(_small(part), TIMESTAMP)
    assert os.environ["SOURCE_DATE_EPOCH"] == "12"
    information = _reader(pdf).metadata
    assert information is not None
    assert information["/CreationDate"] == information["/ModDate"] == "D:20260202024000Z"


def test_a_dead_link_stops_the_typesetter() -> None:
    part = Part("a", "", "Title", "front", "", (Paragraph(inline(Span("there", target="nowhere"))),))
    with pytest.raises(WritingError, match="nowhere"):
        Typesetter().typeset(_small(part), TIMESTAMP)


def test_a_drawing_that_loads_a_picture_stops_the_typesetter() -> None:
    svg = '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm"><image href="file:///etc/passwd"/></svg>'
    part = Part("a", "", "Title", "drawing", "", (Figure("f", svg, "Caption", "Words"),))
    with pytest.raises(WritingError, match="image"):
        Typesetter().typeset(_small(part), TIMESTAMP)


@pytest.mark.parametrize("address", ["file:///etc/passwd", "https://example.org/x.otf", "data:,x", "face:Other.otf"])
def test_the_fetcher_refuses_what_the_build_does_not_hold(address: str) -> None:
    from weasyprint import HTML

    from tenderwright.writing.fetching import build_fetcher, no_complaints

    page = f'<html lang="en"><body><img src="{address}" alt="x"></body></html>'
    with pytest.raises(WritingError, match="does not hold"), no_complaints("page"):
        HTML(string=page, url_fetcher=build_fetcher()).render()


def test_the_fetcher_serves_a_picture_that_the_page_itself_holds() -> None:
    picture = Picture(
        "references/a.png", (MARRAM / "references" / "345-bilge-keel.png").read_bytes(), "Fr 40.", "A keel"
    )
    made = Typesetter().typeset(_small(Part("a", "", "Title", "item", "", (Pictures((picture,)),))), TIMESTAMP)
    assert b"/Subtype /Image" in made.pdf or b"/Subtype/Image" in made.pdf


def test_a_warning_of_the_typesetter_is_an_error() -> None:
    from weasyprint import CSS

    from tenderwright.writing.fetching import no_complaints

    with pytest.raises(WritingError, match=r"sheet: .*nonsense"), no_complaints("sheet"):
        CSS(string="p { nonsense: 3 }")


def test_an_edition_without_parts_is_refused() -> None:
    with pytest.raises(WritingError, match="without parts"):
        Typesetter().typeset(_small(), TIMESTAMP)
