"""What the tender asks beside prices: met, missed, waived, not known or to be judged, and never more than that."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from tenderwright.calculations.steps.outcome import Absent, Each, Lacking, NotAsked
from tenderwright.calculations.verdict import Limit, Verdict
from tenderwright.model.bid import NOWHERE, Bid, Exclusion
from tenderwright.model.build import Reference
from tenderwright.model.evaluation import Evaluation, Finding, JudgedCriterion, OwnersCosts
from tenderwright.model.package import Package
from tenderwright.model.tender import Addendum, Tender
from tenderwright.pricing.bids.responsive import Fit, Point, facility_fit, points
from tests.replacing import replace

from .bidding import ABSOLUTE, LINES, corrected, money, priced
from .test_evaluate import FULL, evaluated, tender

HASH = "45e349fc8b8b1f54"
BEFORE = tender()
GOOD = replace(
    FULL,
    received=BEFORE.dates.closing,
    edition=HASH,
    valid_until=BEFORE.dates.closing + timedelta(days=120),
    site_visit=True,
    dates_accepted=True,
)


def stands(
    bid: Bid, by: Tender = BEFORE, fit: str = "pass", *findings: Finding, said: Evaluation | None = None
) -> dict[str, Point]:
    made = evaluated({"corve": bid}, by, said)["corve"]
    state: Fit = Fit(fit, "Ostrey graving dock", "beam")  # type: ignore[arg-type]
    return {one.name: one for one in points(made, by, HASH, state, findings)}


def test_a_bid_that_answers_all() -> None:
    found = stands(GOOD)
    assert {one.state for name, one in found.items() if not name.startswith("criterion")} == {"met"}
    criteria = [one for name, one in found.items() if name.startswith("criterion")]
    assert [one.words for one in criteria] == list(BEFORE.award.criteria)
    assert {one.state for one in criteria} == {"to be judged"}


@pytest.mark.parametrize(
    ("change", "point", "state"),
    [
        ({"edition": "another"}, "edition", "missed"),
        ({"edition": ""}, "edition", "not known"),
        ({"site_visit": False}, "site visit", "missed"),
        ({"site_visit": None}, "site visit", "not known"),
        ({"received": BEFORE.dates.closing + timedelta(days=1)}, "closing day", "missed"),
        ({"dates_accepted": False}, "dates", "missed"),
        ({"dates_accepted": None}, "dates", "not known"),
        ({"days": None}, "days", "not known"),
        ({"valid_until": None}, "validity", "not known"),
        ({"valid_until": BEFORE.dates.closing + timedelta(days=119)}, "validity", "missed"),
        ({"valid_until": date(2028, 1, 30)}, "validity", "missed"),
        ({"doubts": ("one",)}, "answers", "to be judged"),
        ({"exclusions": (Exclusion(text="Nights"),)}, "exclusions", "to be judged"),
        ({"lines": {**FULL.lines, "310.a": priced(20, 1)}}, "arithmetic", "to be judged"),
    ],
)
def test_each_point_by_itself(change: dict[str, object], point: str, state: str) -> None:
    found = stands(replace(GOOD, **change))  # type: ignore[arg-type]
    assert found[point].state == state
    others = {name for name, one in found.items() if one.state != "met" and not name.startswith("criterion")}
    assert others == {point}


def test_an_offer_that_ends_before_the_award_names_it() -> None:
    assert "the award is on 2028-01-31" in stands(replace(GOOD, valid_until=date(2028, 1, 30)))["validity"].words


def test_addenda_are_acknowledged_or_missed() -> None:
    issued = tuple(Addendum(number=number, date=date(2027, 11, number), summary="one") for number in (1, 2))
    by = replace(BEFORE, addenda=issued)
    assert stands(replace(GOOD, addenda=(1, 2)), by)["addenda"].state == "met"
    missed = stands(replace(GOOD, addenda=(1,)), by)["addenda"]
    assert (missed.state, missed.words) == ("missed", "not acknowledged: 2")


def test_a_visit_that_was_not_asked_for_is_no_point() -> None:
    without = replace(BEFORE, dates=replace(BEFORE.dates, site_visit=None))
    assert "site visit" not in stands(GOOD, without)
    assert BEFORE.dates.site_visit is not None
    free = replace(BEFORE, dates=replace(BEFORE.dates, site_visit=replace(BEFORE.dates.site_visit, mandatory=False)))
    assert stands(replace(GOOD, site_visit=False), free)["site visit"].state == "met"


def test_days_that_the_owner_learnt_are_known() -> None:
    said = Evaluation(here=NOWHERE, bids={"corve": OwnersCosts(here=NOWHERE, days=40, days_basis="asked")})
    assert stands(replace(GOOD, days=None), said=said)["days"] == Point("days", "met", "not in the bid; 40 d asked")


def test_the_dock_is_a_point_as_any_other() -> None:
    assert [stands(GOOD, BEFORE, fit)["facility"].state for fit in ("pass", "fail", "not known")] == [
        "met",
        "missed",
        "not known",
    ]


def test_what_the_owner_writes_stands_in_the_place_of_what_was_found() -> None:
    waived = Finding(bid="corve", missed="site visit", why="knows her from 2021", here=NOWHERE, waived=True)
    judged = Finding(bid="corve", missed="criterion", why="too short", here=NOWHERE, criterion=1)
    other = Finding(bid="corve", missed="criterion", why="seen at the visit", here=NOWHERE)
    found = stands(replace(GOOD, site_visit=False), BEFORE, "pass", waived, judged, other)
    assert (found["site visit"].state, found["site visit"].why) == ("waived", "knows her from 2021")
    assert (found["criterion 1"].state, found["criterion 1"].why) == ("missed", "too short")
    assert found["criterion 2"].state == "to be judged"
    assert found["criterion"].why == "seen at the visit"


def test_a_criterion_is_met_or_not_as_the_owner_judges_and_may_be_waived() -> None:
    judged = (
        JudgedCriterion(bid="corve", criterion=1, met=True, why="measured", here=NOWHERE),
        JudgedCriterion(bid="corve", criterion=2, met=False, why="late", here=NOWHERE),
    )
    made = evaluated({"corve": GOOD})["corve"]

    def criteria(*findings: Finding) -> list[tuple[int, str, str]]:
        found = points(made, BEFORE, HASH, Fit("pass"), findings, judged)
        return [(one.criterion, one.state, one.why) for one in found if one.criterion]

    assert criteria() == [(1, "met", "measured"), (2, "missed", "late")]
    waived = Finding(bid="corve", missed="criterion", why="the ferry was off", here=NOWHERE, waived=True, criterion=2)
    assert criteria(waived) == [(1, "met", "measured"), (2, "waived", "late; the ferry was off")]


def test_under_total_absolute_a_wrong_sum_is_missed() -> None:
    bid = replace(GOOD, lines={**FULL.lines, "310.a": priced(20, 1)})
    made = replace(evaluated({"corve": bid})["corve"], corrected=corrected(bid, *LINES, rule=ABSOLUTE))
    found = {one.name: one for one in points(made, BEFORE, HASH, Fit("pass"), ())}
    assert found["arithmetic"].state == "missed"
    assert "1 wrong sum;" in found["arithmetic"].words


def test_the_fit_is_that_of_the_facility_calculations() -> None:
    package = Package(BEFORE, None, None, None, None)
    named = replace(GOOD, facility=Reference("facility", "ostrey-dock", NOWHERE))
    nothing: dict[str, Verdict | Absent] = {}
    assert facility_fit(GOOD, NotAsked("nothing was calculated"), package) == Fit("not known")
    assert facility_fit(named, Each(nothing), package) == Fit("not known", "ostrey-dock")
    limit = Limit("beam", "length", 5.5, 8.0)
    for fits, state in ((True, "pass"), (False, "fail"), (None, "not known")):
        outcome = Each({"ostrey-dock": Verdict(fits, (limit,), limit)})
        assert facility_fit(named, outcome, package) == Fit(state, "ostrey-dock", "beam")  # type: ignore[arg-type]


def test_a_dock_that_could_not_be_judged_says_why() -> None:
    package = Package(BEFORE, None, None, None, None)
    named = replace(GOOD, facility=Reference("facility", "ostrey-dock", NOWHERE))
    why = Lacking("it needs vessel/offsets.yaml")
    said = Fit("not known", "ostrey-dock", "not calculated: it needs vessel/offsets.yaml")
    assert facility_fit(named, why, package) == said
    assert facility_fit(named, Each({"ostrey-dock": why}), package) == said


def test_money_of_a_finding_is_none() -> None:
    waived = Finding(bid="corve", missed="site visit", why="knows her", here=NOWHERE, waived=True)
    made = evaluated({"corve": GOOD}, said=Evaluation(here=NOWHERE, responsive=(waived,)))["corve"]
    assert made.total == evaluated({"corve": GOOD})["corve"].total
    assert made.added == money(0)


@pytest.mark.parametrize(
    ("signed", "state", "words"),
    [
        (None, "not known", "nobody has written whether these came back: offer, declaration"),
        ((), "missed", "not returned: offer, declaration"),
        (("offer", "security"), "missed", "not returned: declaration"),
        (("declaration", "offer"), "met", "returned: offer, declaration"),
    ],
)
def test_signed_forms_are_asked_of_a_bid_where_the_tender_asks_for_them(
    signed: tuple[str, ...] | None, state: str, words: str
) -> None:
    bid = replace(GOOD, signed=signed)
    assert "signed forms" not in stands(bid)
    made = evaluated({"corve": bid}, BEFORE, None)["corve"]
    fit = Fit("pass", "Ostrey graving dock", "beam")
    found = {one.name: one for one in points(made, BEFORE, HASH, fit, (), (), ("offer", "declaration"))}
    assert (found["signed forms"].state, found["signed forms"].words) == (state, words)
