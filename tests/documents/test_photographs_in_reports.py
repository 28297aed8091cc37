"""Photographs in reports, in the statement, and in what anybody may read: each reader sees what is meant for him."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from PIL import Image

from tenderwright.closing import compile_findings
from tenderwright.documents.edition import Block, Heading, Pictures
from tenderwright.documents.grant_length import length
from tenderwright.documents.owner.photographs import owner_photographs, published
from tenderwright.documents.parts.report_photographs import in_dock, of_the_docking
from tenderwright.model.findings import Findings
from tenderwright.model.profile import LengthLimit
from tenderwright.notices import Place
from tests.pipeline.packages import starter

from .composed import Composed, compiled, composed, walk

FINDINGS = Path(__file__).parents[1] / "fixtures" / "findings" / "marram-2027.yaml"


@pytest.fixture(scope="module")
def marram() -> Composed:
    return composed("marram")


@pytest.fixture(scope="module")
def findings(marram: Composed) -> Findings:
    found = compile_findings(FINDINGS, marram.compiled, marram.owner).findings
    assert found is not None
    return found


def labels(blocks: object) -> list[str]:
    return [one.label for block in walk(blocks) if isinstance(block, Pictures) for one in block.pictures]


def test_the_open_report_shows_those_of_the_items_and_none_of_the_owners(marram: Composed, findings: Findings) -> None:
    part = of_the_docking(marram.desk(), findings, None)
    assert part is not None
    assert part.audience == "yard"
    assert labels(part.blocks) == ["P1", "P2", "P3", "P4", "P5", "P7", "P6", "P8", "P9", "P10"]
    assert next(block.text for block in part.blocks if isinstance(block, Heading)) == "325 Seams and butts, caulk"


def test_the_confidential_report_has_the_owners_beside_them(marram: Composed, findings: Findings) -> None:
    part = of_the_docking(marram.desk(), findings, marram.owner.papers)
    assert part is not None
    assert part.audience == "owner"
    assert sorted(set(labels(part.blocks)) - {f"P{number}" for number in range(1, 12)}) == ["O1", "O2"]


def test_without_photographs_a_report_has_no_page_for_them(findings: Findings) -> None:
    assert of_the_docking(composed("starter").desk(), findings, None) is None


def test_the_statement_shows_the_latest_from_the_work_up_to_its_day(marram: Composed) -> None:
    def shown(day: int) -> list[str]:
        return labels(in_dock(marram.desk(), marram.owner.papers, date(2027, 5, day)))

    assert shown(9) == []
    assert shown(10) == ["O1"]
    assert shown(12) == ["O2", "O1"]


def test_only_what_may_be_published_is_shown_to_anybody(marram: Composed) -> None:
    def paths(most: int, items: list[str] | None = None) -> list[str]:
        shown = published(marram.desk(), marram.owner.papers, most, items)
        return [one.path for one in shown.pictures] if shown is not None else []

    every = [
        "2026-06-16-profile-starboard.jpg",
        "2026-06-16-a-port-fr-34-seam.jpg",
        "2026-06-16-b-port-fr-38-pits.jpg",
        "2026-06-16-c-port-fr-40-doubler.jpg",
        "2027-05-10-f-port-fr-23.jpg",
    ]
    assert paths(99) == every
    assert paths(2) == every[:2]
    assert paths(99, ["310"]) == [every[0], every[4]]
    assert paths(99, []) == every[:1]


def test_the_words_for_anybody_tell_neither_item_nor_finding(marram: Composed) -> None:
    shown = published(marram.desk(), marram.owner.papers, 99)
    assert shown is not None
    captions = [one.caption for one in shown.pictures]
    assert captions[0] == "Marram alongside Tender Quay at low water, 2026. Ship manager, the trust's own."
    assert not any("item" in caption or "R-01" in caption or "I-06" in caption for caption in captions)


def test_the_owners_own_have_contact_sheets_beside_the_book(marram: Composed) -> None:
    book = marram.edition("owner")
    assert labels(book.sheets["photographs"].parts) == ["O1", "O2"]
    assert book.sheets["photographs"].confidential
    assert [stem for stem in ("photographs", "index") if book.sheets[stem].for_screen] == ["photographs", "index"]
    assert owner_photographs(composed("starter").owner_desk(), book) is None


def test_nothing_is_shown_where_nobody_said_that_it_may_be(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    (root / "photographs").mkdir()
    Image.new("L", (40, 30), 90).save(root / "photographs" / "a.png")
    (root / "photographs.csv").write_text("file,date,caption\na.png,2026-05-20,Bow\n", "utf-8")
    ship = compiled(root)
    assert published(ship.desk(), ship.owner.papers, 4) is None


def test_captions_count_towards_what_a_funder_takes(marram: Composed) -> None:
    shown = published(marram.desk(), marram.owner.papers, 1)
    blocks: list[Block] = [shown] if shown is not None else []
    limit = LengthLimit(most=100, of="words", here=Place("x"))
    assert length("Photographs", blocks, limit) == 13
