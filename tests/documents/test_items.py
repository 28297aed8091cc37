"""The page of an item: what an estimator prices first, one row for each point, and nothing said twice."""

from __future__ import annotations

import re
from html import unescape

import pytest

from tenderwright.documents.edition import Heading, Inline, Paragraph, Part, Table, plain
from tenderwright.documents.parts.usual_precautions import usual_precautions
from tenderwright.documents.precautions import PRECAUTIONS, anchor_of, named
from tenderwright.model.item import Item
from tenderwright.writing.html import part_html, screen_page
from tests.documents.composed import Name, composed, part, rows, tables, targets, words

_PACKAGES: tuple[Name, ...] = ("marram", "starter")
_ORDER = ("Scope", "Where", "Lines to price", "Requirements", "Precautions", "References")


def _items(name: Name) -> list[tuple[Item, Part]]:
    edition = composed(name).edition("yard")
    live = [item for item in composed(name).compiled.package.items if not item.withdrawn]
    return [(item, part(edition, f"item-{item.number}")) for item in live]


def _headings(page: Part) -> list[str]:
    return [block.text for block in page.blocks if isinstance(block, Heading)]


@pytest.mark.parametrize("name", _PACKAGES)
def test_what_is_priced_stands_before_what_is_required(name: Name) -> None:
    for _, page in _items(name):
        found = [heading for heading in _headings(page) if heading in _ORDER]
        assert found == sorted(found, key=_ORDER.index)
        assert found[0] == "Scope"


@pytest.mark.parametrize("name", _PACKAGES)
def test_lines_have_a_table_of_their_own_at_an_anchor_that_stays(name: Name) -> None:
    for item, page in _items(name):
        tables = [block for block in page.blocks if isinstance(block, Table) and block.anchor == f"lines-{item.number}"]
        lines = [plain(row.cells[0]) for table in tables for row in table.rows]
        assert lines == [f"{item.number}.{line.line}" for line in item.lines]


@pytest.mark.parametrize("name", _PACKAGES)
def test_points_tests_and_reports_are_one_row_each(name: Name) -> None:
    for item, page in _items(name):
        rows = [
            plain(row.cells[0])
            for block in page.blocks
            if isinstance(block, Table) and block.columns[0].title == "Point"
            for row in block.rows
        ]
        holds = [f"{hold.hold} {hold.kind}" for hold in item.holds]
        assert rows == [*holds, *(["Test"] * len(item.tests)), *(["Report"] * len(item.reports))]


@pytest.mark.parametrize("name", _PACKAGES)
def test_a_hazard_is_named_in_the_item_and_its_precaution_stands_once(name: Name) -> None:
    edition = composed(name).edition("yard")
    general = words(part(edition, "general-requirements"))
    for item, page in _items(name):
        for hazard in item.hazards:
            assert anchor_of(hazard) in targets(page)
            assert named(hazard) in words(page)
            assert general.count(PRECAUTIONS[hazard][0]) == 1
            assert PRECAUTIONS[hazard][0] not in words(page)


def test_precautions_name_the_clause_that_holds_the_figures() -> None:
    page = part(composed("marram").edition("yard"), "item-310")
    lines = [plain(block.text) for block in page.blocks if isinstance(block, Paragraph)]
    assert any(line.startswith("Hot work (2.7) · Confined space (2.8) · ") for line in lines)
    assert "clause-hot-work" in targets(page)


def test_only_hazards_of_the_tender_are_told() -> None:
    table = next(block for block in usual_precautions(composed("starter").desk()) if isinstance(block, Table))
    used = {hazard for item in composed("starter").compiled.package.items for hazard in item.hazards}
    assert [row.anchor for row in table.rows] == [anchor_of(hazard) for hazard in PRECAUTIONS if hazard in used]


def test_what_refers_to_an_item_stands_on_the_screen_and_not_on_paper() -> None:
    edition = composed("starter").edition("yard")
    page = part(edition, "item-140")
    assert any(isinstance(block, Paragraph) for block in page.on_screen)
    assert "Referred to by" not in part_html(edition, page, with_style=False)
    assert "Referred to by" in screen_page(edition)


def test_the_contents_of_the_screen_give_the_whole_of_a_line_without_its_remarks() -> None:
    page = screen_page(composed("marram").edition("yard"))
    contents = page[page.index("<nav") : page.index("</nav>")]
    told = re.search(r'href="#line-410-a">.*?<span class="title">([^<]*)</span>', contents)
    assert told is not None
    assert unescape(told[1]).endswith("prime by scheme “Underwater shell, spot blast and prime”")


def test_names_with_commas_are_told_apart_and_twins_named_once() -> None:
    said = plain(block_text(part(composed("marram").edition("yard"), "item-310"), "ties-310"))
    assert said.startswith("on the boundary of Oil fuel, port and starboard; Cofferdam, forward; ")
    said = plain(block_text(part(composed("marram").edition("yard"), "item-210"), "head-210"))
    assert said.endswith("Underwater shell, keel to 2.9 m; Boot-top, 2.9 m to 3.6 m; Rudder and stern frame")


def block_text(made: Part, anchor: str) -> Inline:
    (text,) = (one.text for one in made.blocks if isinstance(one, Paragraph) and one.anchor == anchor)
    return text


def test_fabric_that_matters_is_listed_over_all_items() -> None:
    one = composed("marram")
    lists = part(one.edition("yard"), "lists")
    listed = next(rows(table) for table in tables(lists) if table.columns[1].title == "Fabric that matters")
    expected = [item.number for item in one.compiled.package.items if item.heritage and not item.withdrawn]
    assert [row[0] for row in listed] == expected
    assert len(expected) > 3
