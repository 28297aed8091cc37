"""The application is composed under the headings of the form, from words of the package and of the owner."""

from __future__ import annotations

from functools import cache

import pytest

from tenderwright.documents.edition import Edition, Heading, Part, Prose, Row, Stamp, Table, plain
from tenderwright.documents.grant import grant_edition, unwritten
from tenderwright.documents.grant_desk import ApplicationDesk
from tenderwright.model.profile import shipped_profiles
from tests.planning.applications import grant, marram
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
    return grant_edition(desk(name), STAMP, "ab" * 32)


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
    assert unwritten(empty) == ["Summary of the project"]
    summary = part(grant_edition(empty, STAMP, "ab" * 32), "1–3")
    assert any("Still to be written." in str(block) for block in summary.blocks)


def test_the_reconciliation_stands_last_and_says_the_same_sum_four_times() -> None:
    last = composed("lights-and-harbours").parts[-1]
    assert last.anchor == "reconciliation"
    rows = {plain(row.cells[0]): plain(row.cells[1]) for row in tables(last)[0].rows if len(row.cells) == 2}
    names = ["Whole cost", "All categories", "All items, services, other costs and gifts"]
    assert len({rows[one] for one in [*names, "Grant, match and what is not eligible"]}) == 1
