"""What goes with the figures of an application: needs, outputs, days, and who pays the match."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from tenderwright.model.funding import FundingSource
from tenderwright.model.grant import GrantOutput
from tenderwright.planning.grant_dates import item_dates, milestones
from tenderwright.planning.grant_entries import Entry
from tenderwright.planning.grant_match import Matching, match
from tenderwright.planning.grant_needs import needed
from tenderwright.planning.grant_outputs import outputs
from tenderwright.planning.grant_twice import twice
from tenderwright.quantities.quantity import parse_quantity
from tests.replacing import replace

from .applications import HERE, grant, items, marram, name, profiles

PROFILE = "capital-activity"


def entry(number: str, amount: str, kind: str = "definite") -> Entry:
    item = marram().compiled.package.item_by_name[number]
    return Entry("work", f"{number}.a", item, "work", kind, "repair", Decimal(amount))


def source(label: str, amount: int, status: str, only: tuple[str, ...] = ()) -> FundingSource:
    return FundingSource(source=label, name=label, amount=Decimal(amount), here=HERE, status=status, only=items(*only))


def matched(entries: list[Entry], sources: list[FundingSource], asked_of: FundingSource | None = None) -> Matching:
    return match(entries, sources, asked_of, may_be_asked=True)


def test_money_in_hand_and_money_for_few_things_is_drawn_first() -> None:
    sources = [
        source("hoped", 500, "hoped for"),
        source("free", 90, "in hand"),
        source("rivets", 70, "in hand", ("315",)),
    ]
    drawn = matched([entry("310", "100"), entry("315", "50")], sources).drawn
    assert [(one.source.source, int(one.amount)) for one in drawn] == [("rivets", 50), ("free", 90), ("hoped", 10)]
    assert [one.secured for one in drawn] == [True, True, False]


def test_a_source_draws_only_on_the_kinds_of_work_that_it_takes() -> None:
    picky = replace(source("picky", 500, "promised"), eligible=("measured",), kept_back=Decimal(480))
    drawn = matched([entry("310", "100"), entry("315", "50", "measured")], [picky]).drawn
    assert [one.amount for one in drawn] == [20]


def test_what_the_chosen_items_need_is_found_near_and_far() -> None:
    made = marram().work_out(grant(PROFILE, "420"), profiles()[PROFILE])
    found = {one.item.item.number: one for one in needed(made.chosen, marram().estimate, marram().owner.papers.scope)}
    assert "420" not in found
    assert found["410"].by == ("420", "640")
    assert found["410"].inside is None
    assert "220" in found, "which 410 needs"
    assert found["110"].inside == made.chosen.part_of(found["110"].item) > 0


def test_without_the_owners_scope_the_services_still_stand() -> None:
    made = marram().work_out(grant(PROFILE, "310"), profiles()[PROFILE])
    found = needed(made.chosen, marram().estimate, None)
    assert {one.item.item.number for one in found} == {row.number for row in made.of_sort("service")}
    assert next(one for one in found if one.item.item.number == "150").by == ("310",)


def test_outputs_are_the_quantities_of_lines_and_sums_of_them() -> None:
    wanted = (
        GrantOutput(output="rivets", here=HERE, lines=(name("315.a"), name("315.b"), name("315.c"))),
        GrantOutput(output="visitors", here=HERE, quantity=parse_quantity("1800 each", "any")),
    )
    made = marram().work_out(replace(grant(PROFILE, "315"), outputs=wanted), profiles()[PROFILE])
    rivets, visitors, *lines = outputs(made.grant, made.chosen)
    assert (int(rivets.ordered), int(rivets.contingent), rivets.unit) == (64, 320, "each")
    assert (int(visitors.ordered), visitors.stated) == (1800, True)
    assert [one.line for one in lines] == ["315.a", "315.b", "315.c"], "the lump of bringing the gang measures nothing"
    assert all(bool(one.ordered) != bool(one.contingent) for one in lines)


def test_a_sum_is_in_the_unit_of_its_first_line_and_mixes_no_dimensions() -> None:
    mixed = GrantOutput(output="steel", here=HERE, lines=(name("310.a"), name("315.a")))
    made = marram().work_out(replace(grant(PROFILE, "310", "315"), outputs=(mixed,)), profiles()[PROFILE])
    with pytest.raises(ValueError, match="measures something else"):
        outputs(made.grant, made.chosen)


def test_milestones_follow_each_other_and_hold_the_funders_days() -> None:
    made = marram().work_out(grant(PROFILE, "310", source="lights-and-harbours"), profiles()[PROFILE])
    tender = marram().compiled.package.tender
    assert tender is not None
    found = milestones(tender, made.source)
    assert [one.date for one in found] == sorted(one.date for one in found)
    assert {"Decision of the funder", "Money to be spent by", "Docked"} <= {one.what for one in found}
    assert "Decision of the funder" not in {one.what for one in milestones(tender, None)}


def test_items_begin_and_end_by_the_schedule() -> None:
    made = marram().work_out(grant(PROFILE, "420", "310"), profiles()[PROFILE])
    plates, coats = item_dates(made.chosen, marram().owner.schedule)
    assert plates.item.number == "310"
    assert plates.begins is not None
    assert plates.ends is not None
    assert coats.ends is not None
    assert date(2027, 5, 5) <= plates.begins <= plates.ends <= coats.ends
    assert all(one.begins is None for one in item_dates(made.chosen, None))


def test_what_two_applications_count_on_together_is_found() -> None:
    wanted = grant(PROFILE, "310", source="lights-and-harbours")
    made = marram().work_out(wanted, profiles()[PROFILE])
    assert twice(made, {"other": marram().work_out(grant(PROFILE, "420"), profiles()[PROFILE])}) == ()
    again = marram().work_out(replace(wanted, source=name("provincial-monuments")), profiles()[PROFILE])
    found = {one.what: one for one in twice(made, {"province": again})}
    line = next(one for one in made.entries if one.number == "310.a")
    both = found["310.a"]
    assert (both.asked, both.here, both.others, both.most) == (True, line.grant, ("province",), line.amount)
    assert both.here + both.elsewhere > both.most
    shared = found["friends-appeal"]
    assert (shared.asked, shared.most) == (False, 86000)
