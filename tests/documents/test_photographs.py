"""Photographs: in the order of their places on contact sheets, named by the items, the owner's kept apart."""

from __future__ import annotations

import io
from pathlib import Path

import pypdf
import pytest
from PIL import Image

from tenderwright.comparing.changes import differences
from tenderwright.comparing.data import package_data
from tenderwright.comparing.subject import subject_of
from tenderwright.comparing.wording import label
from tenderwright.documents.drawings.photograph_strip import photograph_strip
from tenderwright.documents.edition import Edition, Figure, Pictures
from tenderwright.documents.photograph_list import numbered
from tenderwright.pipeline import compile_package, read
from tenderwright.reading import package as reading
from tenderwright.reading.git_state import uncommitted
from tenderwright.writing.html import screen_page
from tenderwright.writing.pdf import Typesetter
from tests.pipeline.packages import commit, starter

from .composed import compiled, composed, part, rows, tables, walk, words

WITHY = Path(__file__).parents[1] / "packages" / "withy"
ROWS = "file,date,caption,strake,frame,item\na.png,2026-05-20,Sea chest,,Fr 20,110\nb.png,unknown,Seam,A,Fr 30,\n"


def _two(root: Path) -> None:
    (root / "photographs").mkdir()
    for name, tone in (("a.png", 90), ("b.png", 160)):
        Image.new("L", (40, 30), tone).save(root / "photographs" / name)
    (root / "photographs.csv").write_text(ROWS, "utf-8")


@pytest.fixture(scope="module")
def sheet() -> Edition:
    return composed("marram").edition("yard").sheets["photographs"]


def _numbers(edition: Edition) -> list[str]:
    return [one.label for block in walk(edition.parts) if isinstance(block, Pictures) for one in block.pictures]


def test_they_stand_by_strake_and_frame_and_then_by_tank_opening_and_anode(sheet: Edition) -> None:
    assert _numbers(sheet) == [f"P{number}" for number in range(1, 12)]
    captions = [one.caption for block in walk(sheet.parts) if isinstance(block, Pictures) for one in block.pictures]
    places = [caption.split(", looking")[0].split(". ")[0] for caption in captions]
    assert places == [
        "Strake A, Fr 34, port",
        "Strake B, Fr 38, port",
        "Strake B, Fr 40, starboard",
        "Strake C, Fr 38 + 200 mm, port",
        "Strake C, Fr 44, port",
        "Fr 52, port",
        "Forepeak",
        "Main sea chest",
        "Anode P2",
        "Anode P12",
        "Tender Quay, afloat, starboard",
    ]
    assert "16 June 2026, before; item 335; R-01. Diver, the trust's own." in captions[3]


def test_the_key_has_each_at_its_frame(sheet: Edition) -> None:
    (strip,) = [block for block in walk(sheet.parts) if isinstance(block, Figure)]
    assert all(f">P{number}</text>" in strip.svg for number in range(1, 11))
    assert ">P11</text>" not in strip.svg
    assert strip.caption.endswith("1 more has no place along her.")


def test_the_sheets_are_few_pages_that_stand_by_themselves(sheet: Edition) -> None:
    typeset = Typesetter().typeset(sheet, 0, "photographs")
    text = [" ".join(page.extract_text().split()) for page in pypdf.PdfReader(io.BytesIO(typeset.pdf)).pages]
    assert len(text) == 3
    assert all("certifies nothing" in page for page in text)
    assert rows(tables(sheet.parts)[0])[2] == ["335", "Doubler of 1988, crop and insert", "P4, P5"]


def test_an_item_names_those_that_bear_on_it_in_one_line() -> None:
    edition = composed("marram").edition("yard")
    said = words(part(edition, "item-335"))
    assert "photographs P4, P5 in " in said
    assert '<a class="file" href="photographs.pdf">photographs.pdf</a>' in screen_page(edition)
    assert "photographs.pdf" not in words(part(edition, "item-610"))


def test_a_package_without_them_says_so_where_they_would_be_named() -> None:
    edition = composed("starter").edition("yard")
    assert "photographs" not in edition.sheets
    assert "No photographs go along with this tender." in words(part(edition, "lists"))
    assert "11 photographs, with place" in words(part(composed("marram").edition("yard"), "lists"))


def test_the_owners_are_no_business_of_the_yards() -> None:
    package = composed("marram").compiled.package
    assert all(not path.startswith("owner/") for path in package.photograph_files)
    assert "2027-05-10-f-port" not in words(composed("marram").edition("yard").sheets["photographs"].parts)
    assert len(composed("marram").owner.papers.photographs) == 2


def test_a_wooden_ship_without_strakes_has_hers_by_the_distance(tmp_path: Path) -> None:
    package = compile_package(read(WITHY)).package
    shown = numbered(package, package.photographs)
    assert [one.place for one in shown] == ["0.6 m, port", "1.1 m, port", "6.1 m, port"]
    strip = photograph_strip(package, None, shown)
    assert strip is not None
    assert "0.6 m, port" in strip.alternative


def test_more_than_the_key_can_hold_are_listed_without_it() -> None:
    package = compile_package(read(WITHY)).package
    assert photograph_strip(package, None, numbered(package, package.photographs * 12)) is None


def test_one_that_cannot_be_opened_is_told_where_it_would_stand(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    _two(root)
    (root / "photographs" / "a.png").write_bytes(b"\x89PNG\r\n\x1a\nnothing")
    sheet = compiled(root).edition("yard").sheets["photographs"]
    assert _numbers(sheet) == ["P1"]
    assert "Not shown: the file cannot be opened as a picture" in words(sheet.parts)
    assert "Day unknown" in words(sheet.parts)


def test_a_row_makes_a_photograph_part_of_what_is_committed(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    _two(root)
    commit(root)
    (root / "photographs" / "unlisted.png").write_bytes(b"\x89PNG\r\n\x1a\n")
    assert uncommitted(root, read(root).without_owner().paths) == []
    (root / "photographs" / "a.png").write_bytes((root / "photographs" / "b.png").read_bytes())
    assert uncommitted(root, read(root).without_owner().paths) == ["photographs/a.png"]


def test_an_addendum_tells_of_a_row_and_of_a_picture_that_are_others(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    _two(root)
    before = package_data(read(root))
    (root / "photographs" / "a.png").write_bytes((root / "photographs" / "b.png").read_bytes())
    (root / "photographs.csv").write_text(ROWS.replace("Sea chest", "Main sea chest"), "utf-8")
    after = package_data(read(root))
    operations = differences(before, after)
    assert [(one.file, one.does) for one in operations] == [("photographs.csv", "set"), ("photographs/a.png", "text")]
    assert label(operations[0].at) == "Photograph a.png, caption"
    assert subject_of("photographs.csv", before, after).title == "Photographs"
    assert subject_of("photographs/a.png", before, after).title == "Photograph a.png"


def test_one_beyond_the_limit_is_told_and_left(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = starter(tmp_path / "sandling")
    _two(root)
    monkeypatch.setattr(reading, "MOST_IN_PHOTOGRAPH", 10)
    files = read(root)
    assert files.photographs == {}
    assert [(one.code, one.place.path) for one in files.notices] == [
        ("too-large", "photographs/a.png"),
        ("too-large", "photographs/b.png"),
    ]


def test_a_word_in_a_caption_may_name_a_thing(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    _two(root)
    (root / "photographs.csv").write_text(ROWS.replace("Sea chest", "As in <item:110>"), "utf-8")
    sheet = compiled(root).edition("yard").sheets["photographs"]
    assert "As in item 110." in words(sheet.parts)
