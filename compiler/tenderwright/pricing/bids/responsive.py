"""Whether a bid answers what the tender asks beside its prices: each point met, missed, waived, or to be judged.

Nothing here sets a bid aside: acknowledgement of addenda and the rest are for the owner to weigh (FAR 14.208 and
14.405 on minor informalities; the tender's own rules go before).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.steps.outcome import Absent, Each
from tenderwright.calculations.verdict import Verdict
from tenderwright.model.bid import Bid
from tenderwright.model.evaluation import Finding, JudgedCriterion
from tenderwright.model.package import Package
from tenderwright.model.tender import Tender
from tenderwright.pricing.bids.evaluate import EvaluatedBid
from tenderwright.quantities.quantity import Quantity

State = Literal["met", "missed", "waived", "not known", "to be judged"]
_DAY = 86400.0


class Point(Struct, frozen=True):
    """One point of the tender beside price, and how a bid stands to it."""

    name: str
    state: State
    words: str
    why: str = ""
    """What the owner wrote of it."""
    criterion: int = 0
    """Which of the criteria of the tender it is, counted from 1; 0 where it is none of them."""


class Fit(Struct, frozen=True):
    """Whether the dock offered takes her."""

    state: Literal["pass", "fail", "not known"]
    facility: str = ""
    deciding: str = ""
    why: str = ""
    """Every limit that is passed, or why it is not known."""
    differs: tuple[str, ...] = ()
    """Where the yard's figures are not those of the list."""


def facility_fit(bid: Bid, fits: Each[Verdict] | Absent, package: Package) -> Fit:
    """Give the verdict of the facility calculations on the dock that a bid offers."""
    if bid.facility is None:
        return Fit("not known")
    named = next((one.name for one in package.facilities if one.facility == bid.facility.name), bid.facility.name)
    if isinstance(fits, Absent):
        return fit_of(named, fits)
    found = fits.outcomes.get(bid.facility.name)
    return Fit("not known", named) if found is None else fit_of(named, found)


def fit_of(dock: str, found: Verdict | Absent) -> Fit:
    """Say what came out for a dock."""
    if isinstance(found, Absent):
        return Fit("not known", dock, f"not calculated: {found.why}")
    states: dict[bool | None, Literal["pass", "fail", "not known"]] = {True: "pass", False: "fail", None: "not known"}
    why = f"passed: {', '.join(one.name for one in found.passed)}" if found.passed else found.why_unknown
    return Fit(states[found.met], dock, found.governs.name, why)


def points(
    evaluated: EvaluatedBid,
    tender: Tender,
    edition_hash: str,
    fit: Fit,
    findings: Sequence[Finding],
    judged: Sequence[JudgedCriterion] = (),
    to_sign: Sequence[str] = (),
) -> tuple[Point, ...]:
    """Give every point of one bid; what the owner wrote in owner/evaluation.yaml goes before what is found here.

    A finding goes before a judgement, so that a criterion which is not met can be waived.
    """
    found = [
        *_addenda(evaluated.bid, tender),
        *_form(evaluated.bid, edition_hash),
        *_visit(evaluated.bid, tender),
        *_terms(evaluated.bid),
        *_dates(evaluated.bid, tender),
        *_days(evaluated),
        *_validity(evaluated.bid, tender),
        *_arithmetic(evaluated),
        *_answers(evaluated.bid),
        *_signed(evaluated.bid, to_sign),
        Point(
            "facility",
            _FITS[fit.state],
            fit.facility or "the bid names no dock of facilities/, and gives no figures of one",
        ),
        *_criteria(tender, judged),
    ]
    for one in findings:
        found = _found(one, found)
    return tuple(found)


_FITS: dict[str, State] = {"pass": "met", "fail": "missed", "not known": "not known"}


def _found(finding: Finding, found: list[Point]) -> list[Point]:
    """Put what the owner wrote in the place of what was found."""
    name = f"criterion {finding.criterion}" if finding.criterion is not None else finding.missed
    state: State = "waived" if finding.waived else "missed"
    if not any(one.name == name for one in found):
        return [*found, Point(name, state, "", finding.why)]
    return [replace(one, state=state, why=_both(one.why, finding.why)) if one.name == name else one for one in found]


def _both(judged: str, found: str) -> str:
    return "; ".join(words for words in (judged, found) if words)


def _signed(bid: Bid, to_sign: Sequence[str]) -> Iterator[Point]:
    """Say whether the forms came back that the tender asks bidders to sign; nothing where it asks for none."""
    if not to_sign:
        return
    if bid.signed is None:
        yield Point("signed forms", "not known", f"nobody has written whether these came back: {', '.join(to_sign)}")
        return
    missing = [one for one in to_sign if one not in bid.signed]
    words = f"not returned: {', '.join(missing)}" if missing else f"returned: {', '.join(to_sign)}"
    yield Point("signed forms", "missed" if missing else "met", words)


def _criteria(tender: Tender, judged: Sequence[JudgedCriterion]) -> Iterator[Point]:
    said = {one.criterion: one for one in judged}
    for number, words in enumerate(tender.award.criteria, start=1):
        one = said.get(number)
        state: State = "to be judged" if one is None else "met" if one.met else "missed"
        yield Point(f"criterion {number}", state, words, one.why if one is not None else "", number)


def _addenda(bid: Bid, tender: Tender) -> Iterator[Point]:
    issued = [one.number for one in tender.addenda]
    missing = [str(number) for number in issued if number not in bid.addenda]
    if missing:
        yield Point("addenda", "missed", f"not acknowledged: {', '.join(missing)}")
    elif issued:
        yield Point("addenda", "met", f"acknowledged: {', '.join(map(str, issued))}")
    else:
        yield Point("addenda", "met", "none was issued")


def _form(bid: Bid, edition_hash: str) -> Iterator[Point]:
    if not bid.edition:
        yield Point("edition", "not known", "the bid does not say on which edition of the form it was made")
    elif bid.edition != edition_hash:
        yield Point("edition", "missed", f"made on edition {bid.edition}, not on {edition_hash}")
    else:
        yield Point("edition", "met", f"edition {edition_hash}")


def _visit(bid: Bid, tender: Tender) -> Iterator[Point]:
    visit = tender.dates.site_visit
    if visit is None:
        return
    words = f"visit of {visit.date}" + (", mandatory" if visit.mandatory else "")
    if bid.site_visit is None:
        yield Point("site visit", "not known", f"{words}: the bid does not say")
    elif bid.site_visit:
        yield Point("site visit", "met", words)
    else:
        yield Point("site visit", "missed" if visit.mandatory else "met", f"{words}: the bidder did not come")


def _terms(bid: Bid) -> Iterator[Point]:
    """Tell it where the yard said so; forms of older tenders did not ask."""
    if bid.terms_accepted is not None:
        accepted = bid.terms_accepted
        yield Point("terms", "met" if accepted else "missed", "accepted" if accepted else "not accepted")


def _dates(bid: Bid, tender: Tender) -> Iterator[Point]:
    closing = tender.dates.closing
    if closing is None:
        yield Point("closing day", "not known", f"received {bid.received}; the tender names no closing day yet")
    else:
        words = f"received {bid.received}, closing {closing}"
        yield Point("closing day", "missed" if bid.received > closing else "met", words)
    dock = f"; earliest docking {bid.earliest_docking}" if bid.earliest_docking else ""
    if bid.dates_accepted is None:
        yield Point("dates", "not known", f"the bid does not say{dock}")
    else:
        accepted = "accepted" if bid.dates_accepted else "not accepted"
        yield Point("dates", "met" if bid.dates_accepted else "missed", f"{accepted}{dock}")


def _days(evaluated: EvaluatedBid) -> Iterator[Point]:
    bid, days = evaluated.bid, evaluated.days
    if bid.days is None and days is not None:
        yield Point("days", "met", f"not in the bid; {days.note or 'the owner states their cost'}")
    elif bid.days is None:
        yield Point("days", "not known", "the days from arrival to redelivery are not given")
    else:
        dry = f", {bid.dock_days} of them in dock" if bid.dock_days is not None else ""
        yield Point("days", "met", f"{bid.days} from arrival to redelivery{dry}")


def _validity(bid: Bid, tender: Tender) -> Iterator[Point]:
    award, closing = tender.dates.award, tender.dates.closing
    if bid.valid_until is None:
        yield Point("validity", "not known", "the bid does not say how long it stands")
        return
    stands = (bid.valid_until - closing).days if closing is not None else None
    asked = _whole_days(tender.dates.valid)
    words = f"stands until {bid.valid_until}"
    if award is not None and bid.valid_until < award:
        yield Point("validity", "missed", f"{words}, and the award is on {award}")
    elif asked is not None and stands is not None and stands < asked:
        yield Point("validity", "missed", f"{words}, {stands} d after closing; {asked} d were asked")
    else:
        yield Point("validity", "met", words)


def _whole_days(time: Quantity | None) -> int | None:
    return round(time.si / _DAY) if time is not None else None


def _arithmetic(evaluated: EvaluatedBid) -> Iterator[Point]:
    corrected = evaluated.corrected
    if corrected.disqualifying:
        count = len(corrected.disqualifying)
        words = f"{count} wrong {'sum' if count == 1 else 'sums'}; under this tender the total is absolute"
        yield Point("arithmetic", "missed", words)
        return
    ask = sum(1 for one in corrected.corrections if one.asks)
    if ask:
        yield Point("arithmetic", "to be judged", f"{ask} {'figure' if ask == 1 else 'figures'} to be confirmed")
    else:
        yield Point("arithmetic", "met", "nothing to be confirmed")


def _answers(bid: Bid) -> Iterator[Point]:
    if bid.doubts:
        count = len(bid.doubts)
        words = f"{count} {'doubt' if count == 1 else 'doubts'} of the reading not settled"
        yield Point("answers", "to be judged", words)
    excluded = [one for one in bid.exclusions if one.kind == "exclusion"]
    others = len(bid.exclusions) - len(excluded)
    words = f"{len(excluded)} excluded, {others} assumed or offered instead"
    yield Point("exclusions", "to be judged" if bid.exclusions else "met", words if bid.exclusions else "none stated")
