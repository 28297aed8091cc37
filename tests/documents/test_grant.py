"""The application is composed under the headings of the form, from words of the package and of the owner."""

from __future__ import annotations

import dataclasses
from functools import cache

import msgspec
import pytest

from tenderwright.documents.edition import Edition, Heading, Part, Prose, Row, Stamp, Table, plain
from tenderwright.documents.grant import grant_edition
from tenderwright.documents.grant_desk import ApplicationDesk
from tenderwright.documents.grant_headings import lengths, under_headings
from tenderwright.model.profile import LengthLimit, shipped_profiles
from tests.planning.applications import HERE, grant, marram
from tests.replacing import replace

STAMP = Stamp("issued", "Commit 0123456789ab", "0123456789ab")


def desk(name: str) -> ApplicationDesk:
    costed = marram()
    papers = costed.owner.papers
    made = papers.grants[f"owner/grants/{name}.yaml"]
    applied = costed.work_out(made, papers.profiles[made.profile.name])
    compiled = costed.compiled
    return ApplicationDesk(
        compiled.package,
        compiled.links,
        compiled.calculated,
        estimate=costed.estimate,
        applied=applied,
        outlook=costed.outlook,
        papers=papers,
        schedule=costed.owner.schedule,
    )


@cache
def composed(name: str) -> Edition:
    at_desk = desk(name)
    return grant_edition(at_desk, STAMP, "ab" * 32, under_headings(at_desk), ())


def part(edition: Edition, number: str) -> Part:
    return next(one for one in edition.parts if one.number == number)


def tables(one: Part) -> list[Table]:
    return [block for block in one.blocks if isinstance(block, Table)]


def words(edition: Edition) -> str:
    found: list[str] = []
    for one in edition.parts:
        for block in one.blocks:
            if isinstance(block, Prose):
                found += [token.content for token in block.tokens if token.type == "inline"]
            if isinstance(block, Table):
                found += [plain(cell) for row in block.rows for cell in row.cells]
    return "\n".join(found)


each = pytest.mark.parametrize("name", ["lights-and-harbours", "clean-harbour"])


@each
def test_every_heading_of_the_form_stands_in_its_order(name: str) -> None:
    edition, profile = composed(name), desk(name).applied.profile
    written = [
        block.text for one in edition.parts for block in one.blocks if isinstance(block, Heading) and block.level == 2
    ]
    alone = [one.title for one in edition.parts]
    for number, heading in enumerate(profile.headings, start=1):
        assert f"{number}  {heading.title}" in written or heading.title in alone


@each
def test_every_page_carries_the_caution_and_the_paper_is_the_owners(name: str) -> None:
    edition = composed(name)
    assert edition.confidential
    assert "current notice" in edition.caution
    assert all(one.caution for one in edition.parts if one.kind not in ("cover", "contents"))
    assert dict(edition.facts)["Owner's papers"] == f"sha256 {'ab' * 6}"


@each
def test_the_printed_columns_add_up(name: str) -> None:
    for one in composed(name).parts:
        for table in tables(one):
            titles = [column.title for column in table.columns]
            if titles[-4:] != ["Total", "Grant", "Match", "Not eligible"]:
                continue
            for row in table.rows:
                if row.weight != "group":
                    total, grant_, match, barred = (_cents(cell) for cell in row.cells[-4:])
                    assert total == grant_ + match + barred
            sums = [row for row in table.rows if row.weight == "total"]
            normal = [row for row in table.rows if row.weight == "normal"]
            assert len(sums) == 1
            assert _column(normal) == _cents(sums[0].cells[-4])


def _cents(cell: object) -> int:
    text = plain(cell)  # type: ignore[arg-type]
    return 0 if text == "–" else int("".join(c for c in text.replace("−", "-") if c.isdigit() or c == "-"))


def _column(rows: list[Row]) -> int:
    return sum(_cents(row.cells[-4]) for row in rows)


@each
def test_links_lead_to_items_of_the_paper_alone(name: str) -> None:
    edition = composed(name)
    anchors = {block.anchor for one in edition.parts for block in one.blocks if isinstance(block, Heading)}
    targets = {
        span.target
        for one in edition.parts
        for table in tables(one)
        for row in table.rows
        for cell in row.cells
        for span in cell
        if span.target
    }
    targets |= {
        str(child.attrs["href"])[1:]
        for one in edition.parts
        for block in one.blocks
        if isinstance(block, Prose)
        for token in block.tokens
        for child in token.children or ()
        if child.type == "link_open" and str(child.attrs["href"]).startswith("#")
    }
    assert targets
    assert targets <= anchors


@each
def test_other_sources_are_named_only_where_they_may_be(name: str) -> None:
    text = words(composed(name))
    funding = marram().owner.papers.funding
    assert funding is not None
    for source in funding.sources:
        if not source.public:
            assert source.name not in text


def test_risks_are_told_in_words_without_likelihoods() -> None:
    edition, papers = composed("lights-and-harbours"), marram().owner.papers
    risks = next(table for one in edition.parts for table in tables(one) if table.columns[1].title == "What may happen")
    assert len(risks.rows) == len(papers.grants["owner/grants/lights-and-harbours.yaml"].risks or ())
    assert all("Counted here" not in plain(cell) for row in risks.rows for cell in row.cells)


def test_what_the_form_asks_is_said_where_nobody_wrote_anything() -> None:
    profile = shipped_profiles()["object-classes"]
    bare = marram().work_out(grant("object-classes", "310"), profile)
    empty = replace(desk("clean-harbour"), applied=bare)
    headings = under_headings(empty)
    assert [one.heading.title for one in headings if one.empty] == ["Summary of the project"]
    draft = grant_edition(empty, STAMP, "ab" * 32, headings, ())
    final = grant_edition(empty, STAMP, "ab" * 32, headings, None)
    assert any("Still to be written." in str(block) for block in part(draft, "1–3").blocks)
    assert any("nothing of your own" in str(block) for block in part(draft, "4–5").blocks)
    assert not any("Still to be written." in str(block) or "Draft" in str(block) for block in part(final, "1–3").blocks)
    assert "current notice" not in final.caution


def test_a_heading_whose_pages_are_counted_stands_alone_and_tells_them() -> None:
    at_desk = desk("clean-harbour")
    limit = LengthLimit(most=2, of="pages", here=HERE)
    applied = replace(at_desk.applied, grant=replace(at_desk.applied.grant, limits={"need": limit}, limit=limit))
    limited = replace(at_desk, applied=applied)
    headings = under_headings(limited)
    edition = grant_edition(limited, STAMP, "ab" * 32, headings, None)
    assert [one.number for one in edition.parts if one.anchor.startswith("heading-")][:3] == ["1–2", "3", "4–5"]
    assert lengths(limited, headings, {}) == ()
    need, whole = lengths(limited, headings, {"heading-need": 3, "heading-summary": 1, "line-basis": 5})
    assert (need.count, need.too_long, need.told) == (3, True, "3 of at most 2 pages, 1 too many")
    assert whole.count == 4, "the annexes are no headings of the form"


def test_the_reconciliation_stands_last_and_says_the_same_sum_four_times() -> None:
    last = composed("lights-and-harbours").parts[-1]
    assert last.anchor == "reconciliation"
    rows = {plain(row.cells[0]): plain(row.cells[1]) for row in tables(last)[0].rows if len(row.cells) == 2}
    names = ["Whole cost", "All categories", "All items, services, other costs and gifts"]
    assert len({rows[one] for one in [*names, "Grant, match and what is not eligible"]}) == 1


def test_a_table_in_a_text_stays_a_table_below_the_cell_that_holds_its_first_paragraph() -> None:
    at_desk = desk("lights-and-harbours")
    item = next(one for one in at_desk.items if one.number == "310")
    told = "It wastes on, as told:\n\n| Year | Loss |\n|---|---|\n| 2030 | 30 % |"
    text = msgspec.structs.replace(item.scope, text=told)
    assert plain(at_desk.first_paragraph(text)) == "It wastes on, as told:"
    after = at_desk.after_first_paragraph(text)
    assert next(token.type for block in after if isinstance(block, Prose) for token in block.tokens) == "table_open"
    begins = msgspec.structs.replace(text, text=told.partition("\n\n")[2])
    assert at_desk.first_paragraph(begins) == ()
    assert len(at_desk.after_first_paragraph(begins)) == 1


def test_tables_and_schemes_that_the_scope_speaks_of_are_printed_with_their_item() -> None:
    work = next(one for one in composed("lights-and-harbours").parts if one.title == "Capital work and how it is done")
    assert [table.caption for table in tables(work) if table.caption] == ["Sea valves, as found and as left"]
    valves = next(table for table in tables(work) if table.caption)
    assert [column.title for column in valves.columns] == ["Opening", "Valve", "Place", "Side"]
    assert any(table.columns[0].title == "Coat" for table in tables(work))


def test_consents_that_bear_on_the_work_stand_under_the_timetable_and_no_other_funders_word() -> None:
    found = words(composed("lights-and-harbours"))
    for title in ("Consent to the work on hull and fittings", "Leave to begin before the main grant is decided"):
        assert title in found
    assert "Promise of the grant, and its terms" not in found, "it is the word of another funder"
    assert "Leave to land and store what is lent to the ship" not in found, "its item is not in the application"
    at_desk = desk("lights-and-harbours")
    without = dataclasses.replace(at_desk, papers=msgspec.structs.replace(at_desk.papers, approvals=None))
    told = [words for one in under_headings(without) for words in one.not_worked_out]
    assert [one for one in told if "owner/approvals.yaml" in one]
