"""Approvals are set beside the days of the docking: what is wanted by when, late, missed or holding up."""

from __future__ import annotations

from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from tenderwright.model.approvals import Approval
from tenderwright.notices import Place
from tenderwright.pipeline import compile_owner, compile_package
from tenderwright.planning.approval_events import Event
from tenderwright.planning.approvals import Register, Standing, register
from tenderwright.quantities.quantity import parse_quantity
from tenderwright.reading.package import Files, read_package
from tests.model.packages import put
from tests.pipeline.packages import MARRAM

REGISTER = """
until: 2028-02-15
approvals:
  - approval: consent
    title: Consent to the rivets
    kind: heritage
    gates: [issue, start]
    items: ["320"]
    given_by: Monuments office
    lead: 8 weeks
  - approval: grant
    title: Leave to begin
    kind: funder
    source: fund
    gates: [start]
    given_by: Heritage fund
  - approval: waste
    title: Leave to send waste
    kind: hazardous waste
    gates: [close]
    given_by: Environment office
    needed: redelivery + 10 d
"""
GATE = """approvals:
  - approval: gate
    title: Leave
    kind: other
    gates: [departure]
    given_by: Somebody
"""
FUND = """
sources:
  - { source: fund, name: Fund, amount: 1000, status: applied for, only: ["420"], decided: 2028-03-20 }
"""


def kept(files: Files) -> Register:
    package = compile_package(files)
    owner = compile_owner(files, package)
    found = register(owner.papers, package.package, owner.schedule)
    assert found is not None
    return found


def of(files: Files, name: str) -> Standing:
    return next(one for one in kept(files).standings if one.approval.approval == name)


def with_register(starter: Files, text: str = REGISTER) -> Files:
    return put(put(starter, "owner/funding.yaml", FUND), "owner/approvals.yaml", text)


def test_the_day_to_ask_is_that_of_the_first_gate_less_the_lead(starter: Files) -> None:
    one = of(with_register(starter), "consent")
    assert [(event.gate, event.day) for event in one.events] == [
        ("issue", date(2027, 10, 4)),
        ("start", date(2028, 4, 5)),
    ]
    assert one.ask_by == date(2027, 8, 9)
    assert one.late == "wanted on 4 October 2027 and not given"


def test_items_and_day_of_an_answer_are_those_of_the_source(starter: Files) -> None:
    one = of(with_register(starter), "grant")
    assert [event.items for event in one.events] == [("420",)]
    assert one.expected == date(2028, 3, 20)
    assert one.late == ""


def test_a_day_that_the_package_lacks_is_taken_from_the_register(starter: Files) -> None:
    assert [event.day for event in of(with_register(starter), "waste").events] == [date(2028, 5, 4)]


def test_what_is_not_given_on_the_day_holds_the_issue_up(starter: Files) -> None:
    files = with_register(starter)
    found = [(one.approval, why) for one, why in kept(files).holding("issue", date(2027, 10, 4))]
    assert found == [("consent", "not asked for yet")]
    for line, why in {
        "asked: 2027-08-02": "asked for on 2 August 2027, and not given yet",
        "granted: 2027-10-05": "given on 5 October 2027, after 4 October 2027",
        "refused: 2027-09-20": "refused on 20 September 2027",
        "granted: 2027-08-20\n    expires: 2027-09-30": "its last day was 30 September 2027",
        "granted: 2027-08-20\n    conditions: [{ what: Photographs., before: issue }]": (
            "its condition is not met: Photographs"
        ),
    }.items():
        files = with_register(starter, REGISTER.replace("lead: 8 weeks", line))
        assert [why for _, why in kept(files).holding("issue", date(2027, 10, 4))] == [why]
    files = with_register(starter, REGISTER.replace("lead: 8 weeks", "granted: 2027-10-04\n    expires: 2027-10-04"))
    assert list(kept(files).holding("issue", date(2027, 10, 4))) == []


def test_marrams_is_judged_on_the_last_day_that_her_papers_record() -> None:
    found = kept(read_package(MARRAM))
    assert found.judged == date(2027, 5, 16)
    assert [one.approval.approval for one in found.standings if one.open] == [
        "leave-sallow-haven",
        "tow-survey-home",
        "tin-waste",
    ]
    assert not any(one.late or one.missed or one.outlived for one in found.standings)


DAYS = st.dates(date(2026, 1, 1), date(2030, 1, 1))


@given(DAYS, st.integers(0, 400), st.none() | DAYS, st.none() | DAYS)
def test_asked_in_time_it_is_late_only_once_its_day_has_come(
    wanted: date, lead: int, asked: date | None, judged: date | None
) -> None:
    approval = Approval(
        approval="one",
        title="One",
        kind="other",
        gates=("departure",),
        given_by="Somebody",
        lead=parse_quantity(f"{lead} d", "time"),
        asked=asked,
        here=Place(""),
    )
    one = Standing(approval, (Event("departure", wanted),), judged, None, ())
    assert one.ask_by == wanted - timedelta(days=lead)
    in_time = (asked or judged or date.min) <= one.ask_by
    come = judged is not None and judged >= wanted
    assert bool(one.late) == (come or not in_time)


TOW = """tower: to be engaged
out:
  - { leg: Along the coast, distance: 120 nmi, speed: 4 kn, water: open }
  - { leg: Up the river, distance: 10 nmi, speed: 4 kn, water: sheltered }
"""
CONTRACT = """payments:
  - { stage: Award, share: 20 %, event: award }
  - { stage: Afloat, share: 80 %, event: undocking }
"""


def test_she_leaves_by_the_days_of_the_passage_before_she_arrives(starter: Files) -> None:
    assert [one.day for one in of(with_register(starter, GATE), "gate").events] == [date(2028, 4, 3)]
    assert [one.day for one in of(put(with_register(starter, GATE), "tow.yaml", TOW), "gate").events] == [
        date(2028, 4, 1)
    ]


def test_payment_and_claim_have_the_days_of_contract_and_money_or_their_own(starter: Files) -> None:
    payment = GATE.replace("departure", "payment, claim")
    files = put(with_register(starter, payment), "contract.yaml", CONTRACT)
    assert [one.day for one in of(files, "gate").events] == [date(2028, 1, 31), None]
    paid = FUND.replace("decided:", "spend_by: 2028-12-31, decided:")
    funded = put(with_register(starter, f"{payment}    source: fund\n"), "owner/funding.yaml", paid)
    assert [(one.gate, one.day) for one in of(funded, "gate").events] == [
        ("claim", date(2028, 12, 31)),
        ("payment", None),
    ]
    own = with_register(starter, f"{payment}    needed: 2028-06-01\n")
    assert {one.day for one in of(own, "gate").events} == {date(2028, 6, 1)}
