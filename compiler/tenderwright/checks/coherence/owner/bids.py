"""A bid is that of its yard for this tender, and its figures are of the size of the other bids and of the estimate.

Ground: bidders price one work, so that a rate many times that of all others is a slip of the point, in the bid or in
reading it; a rate that the bidder has confirmed stands in place of the one written (FAR 14.407-2). How many times:
common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal
from statistics import median

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.linking.evaluation import bid_name
from tenderwright.model.bid import Bid
from tenderwright.model.facility import Facility
from tenderwright.notices import Note, Notice
from tenderwright.pricing.money import written
from tenderwright.pricing.sections import SECTIONS

CODE = "bid-contradicts"
_APART = 4
"""How many times the rate of the other bids and of the estimate one may be."""


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report bids of another yard, dock, currency or addendum, and figures far from those they follow from."""
    docks: dict[str, str] = {}
    tendered = _tendered(context)
    for path, bid in context.papers.bids.items():
        yield from _whose(context, path, bid)
        offered = docks.get(bid.facility.name) if bid.facility is not None else None
        if bid.facility is not None and offered is not None and context.papers.bids[offered].yard != bid.yard:
            message = f"the dock `{bid.facility}` is offered by two yards"
            note = Note("the other is here", context.at(offered, "facility"))
            yield Notice(CODE, bid.facility.at, message, (note,))
        elif bid.facility is not None:
            docks[bid.facility.name] = path
        yield from _days(context, path, bid)
        yield from _sums(context, path, bid, tendered)
    yield from _rates(context)
    yield from _quantities(context, tendered)
    yield from _tows(context)
    yield from _askers(context)


def _whose(context: OwnerContext, path: str, bid: Bid) -> Iterator[Notice]:
    package = context.package
    dock = _dock_of(context, bid)
    if dock is not None and bid.facility is not None and not _alike(dock.name, bid.yard):
        own = any(_alike(one.name, bid.yard) for one in package.facilities)
        rest = [
            (found, one) for one in context.papers.bids.values() if one is not bid and (found := _dock_of(context, one))
        ]
        if own or (len(rest) > 1 and all(_alike(found.name, one.yard) for found, one in rest)):
            yield Notice(CODE, bid.facility.at, f"{bid.yard} offers the dock of {dock.name}")
    tender = package.tender
    if tender is None:
        return
    if bid.currency and bid.currency != tender.currency:
        message = f"the bid is in {bid.currency}, and the tender in {tender.currency}"
        yield Notice(CODE, context.at(path, "currency"), message)
    issued = {addendum.number for addendum in tender.addenda}
    for index, number in enumerate(bid.addenda):
        if number not in issued:
            message = f"the bid acknowledges addendum {number}, which the tender does not list"
            yield Notice(CODE, context.at(path, "addenda", index), message)


def _dock_of(context: OwnerContext, bid: Bid) -> Facility | None:
    """Give the dock that a bid offers, where it is one of the list."""
    name = bid.facility.name if bid.facility is not None else ""
    return next((one for one in context.package.facilities if one.facility == name), None)


def _alike(one: str, other: str) -> bool:
    """Tell whether two names share a word that tells them from others."""
    words = [{word.lower().strip(",.") for word in name.split() if len(word) > 3} for name in (one, other)]
    return bool((words[0] & words[1]) - {"company", "dock", "yard", "docking", "trust", "works", "ship", "repair"})


def _days(context: OwnerContext, path: str, bid: Bid) -> Iterator[Notice]:
    tender = context.package.tender
    plan = tender.programme if tender is not None else None
    if plan is None:
        return
    stay, on_blocks = (plan.redelivery - plan.arrival).days, plan.dock_days or (plan.undocking - plan.docking).days
    for key, days, planned in (("days", bid.days, stay), ("dock_days", bid.dock_days, on_blocks)):
        if days is not None and planned > 0 and not planned / 2 <= days <= 2 * planned:
            message = f"the bid counts {days} days where the tender plans {planned}"
            yield Notice("days-differ", context.at(path, key), message)
    if bid.days is not None and bid.dock_days is not None and bid.dock_days > bid.days:
        message = f"the bid counts {bid.dock_days} days in dock, and {bid.days} from arrival to redelivery"
        yield Notice("days-differ", context.at(path, "dock_days"), message)


def _sums(context: OwnerContext, path: str, bid: Bid, tendered: Mapping[str, Decimal]) -> Iterator[Notice]:
    """Report a sum written on the form that is far from what it sums up."""
    for number, line in bid.lines.items():
        if line.rate and line.extension is not None:
            quantity = tendered.get(number)
            made = abs(line.rate * quantity) if quantity is not None else None
            if made and line.extension and _far(abs(line.extension), made) and not _slipped(context, path, number):
                message = (
                    f"line {number}: rate and quantity make {written(made)}, and {written(line.extension)} is written"
                )
                yield Notice(CODE, context.at(path, "lines", number, "extension"), message)
    # Where a file is broken or gone, lines or their quantities are wanting, and no sum over them says anything.
    priced = {line.number for line in context.estimate.lines} if context.estimate is not None else set()
    wanting = context.package.broken.files or bid.lines.keys() - priced
    by_section = {} if wanting else _by_section(context, bid, tendered)
    for letter, made in by_section.items():
        stated = bid.section_totals.get(letter)
        if stated is not None and made > 0 and _far(abs(stated), made, Decimal("1.25")):
            message = f"section {letter} is {written(stated)}, and its lines make {written(made)}"
            yield Notice(CODE, context.at(path, "section_totals", letter), message)
    letters = [section.code for section in SECTIONS if section.in_base and section.code in bid.section_totals]
    if bid.base_total and letters:
        summed = sum((bid.section_totals[letter] for letter in letters), Decimal(0))
        if summed > 0 and _far(abs(bid.base_total), summed, Decimal("1.5")):
            message = f"the base price is {written(bid.base_total)}, and its sections make {written(summed)}"
            yield Notice(CODE, context.at(path, "base_total"), message)
    if bid.base_total and bid.total is not None and not bid.base_total / 2 <= bid.total <= bid.base_total * 5:
        message = f"the total is {written(bid.total)}, and the base price in it {written(bid.base_total)}"
        yield Notice(CODE, context.at(path, "total"), message)


def _by_section(context: OwnerContext, bid: Bid, tendered: Mapping[str, Decimal]) -> dict[str, Decimal]:
    """Give what the lines of each section make, by rate and quantity."""
    made: dict[str, Decimal] = {}
    for line in context.estimate.lines if context.estimate is not None else ():
        read = bid.lines.get(line.number)
        if line.section.code in "ABCDF" and read is not None and read.rate:
            amount = read.rate * tendered.get(line.number, Decimal(1))
            made[line.section.code] = made.get(line.section.code, Decimal(0)) + amount
    return made


def _far(one: Decimal, other: Decimal, times: Decimal = Decimal(_APART)) -> bool:
    return one > times * other or other > times * one


def _tendered(context: OwnerContext) -> Mapping[str, Decimal]:
    estimate = context.estimate
    if estimate is None:
        return {}
    return {line.number: line.quantity.number for line in estimate.lines if line.line.price in ("rate", "day", "hours")}


def _slipped(context: OwnerContext, path: str, number: str) -> bool:
    """Tell whether the bidder has confirmed another rate for a line."""
    evaluation = context.papers.evaluation
    corrections = evaluation.corrections if evaluation is not None else ()
    return any(one.bid == bid_name(path) and one.line == number for one in corrections)


def _rates(context: OwnerContext) -> Iterator[Notice]:
    evaluation = context.papers.evaluation
    confirmed = {
        (one.bid, one.line): (one.rate, index)
        for index, one in enumerate(evaluation.corrections if evaluation is not None else ())
    }
    estimate = context.estimate
    expected = {line.number: line.rate for line in estimate.lines} if estimate is not None else {}
    rates: dict[str, dict[str, Decimal]] = {}
    for path, bid in context.papers.bids.items():
        for number, line in bid.lines.items():
            rate = confirmed.get((bid_name(path), number), (line.rate, 0))[0]
            if rate:
                rates.setdefault(number, {})[path] = rate
    for number, by_bid in rates.items():
        for path, rate in by_bid.items():
            others = [other for elsewhere, other in by_bid.items() if elsewhere != path]
            usual = [*others, *([expected[number]] if expected.get(number) else [])]
            if len(usual) < 2 or not all(_far(rate, one) for one in usual):
                continue
            message = f"line {number} is bid at {rate:g}, and the other bids and the estimate have {_listed(usual)}"
            mended = confirmed.get((bid_name(path), number))
            place = (
                context.at("owner/evaluation.yaml", "corrections", mended[1], "rate")
                if mended is not None
                else context.at(path, "lines", number, "rate")
            )
            yield Notice(
                CODE,
                place,
                message,
                hints=("is the decimal point in the right place? ask the bidder to confirm the figure",),
            )
        if expected.get(number) and len(by_bid) > 1 and all(_far(rate, expected[number]) for rate in by_bid.values()):
            message = f"line {number} is estimated at {expected[number]:g}, and bid at {_listed(list(by_bid.values()))}"
            yield Notice("price-unlikely", context.at("owner/rates.yaml", "lines", number), message)


def _listed(rates: list[Decimal]) -> str:
    return ", ".join(f"{float(rate):.6g}" for rate in sorted(rates))


def _quantities(context: OwnerContext, tendered: Mapping[str, Decimal]) -> Iterator[Notice]:
    """Report a quantity of the tender that no bid was made for."""
    estimate = context.estimate
    for line in estimate.lines if estimate is not None else ():
        if line.number not in tendered:
            continue
        bid = [one.lines[line.number] for one in context.papers.bids.values() if line.number in one.lines]
        meant = [abs(one.extension) / one.rate for one in bid if one.rate and one.extension]
        quantity = tendered[line.number]
        if len(meant) > 1 and quantity > 0 and all(_far(one, quantity, Decimal(2)) for one in meant):
            message = f"line {line.number} asks for {line.quantity}, and the bids were made for {median(meant):.0f}"
            at = line.line.quantity.at if line.line.quantity is not None else line.line.here
            yield Notice("quantity-unlikely", at, message, hints=("was it changed after the bids came in?",))


def _tows(context: OwnerContext) -> Iterator[Notice]:
    """Report a tow whose price for a mile is far from those of the other bids."""
    evaluation = context.papers.evaluation
    distances = {one.facility: one.tow.si / 1852 for one in context.package.facilities if one.tow is not None}
    miles: dict[str, Decimal] = {}
    for name, costs in evaluation.bids.items() if evaluation is not None else ():
        bid = next((one for path, one in context.papers.bids.items() if bid_name(path) == name), None)
        distance = distances.get(bid.facility.name) if bid is not None and bid.facility is not None else None
        if costs.towing is not None and costs.towing.amount > 0 and distance:
            miles[name] = costs.towing.amount / Decimal(repr(distance))
    for name, mile in miles.items():
        others = [other for elsewhere, other in miles.items() if elsewhere != name]
        if len(others) > 1 and all(_far(mile, one) for one in others):
            message = (
                f"the tow to the dock of `{name}` costs {mile:.0f} a nautical mile, and the others {_listed(others)}"
            )
            place = context.at("owner/evaluation.yaml", "bids", name, "towing", "amount")
            yield Notice("price-unlikely", place, message)


def _askers(context: OwnerContext) -> Iterator[Notice]:
    """Report who asked and neither bids nor has a dock in the list, where all others do."""
    papers = context.papers
    known = {one.yard for one in papers.bids.values()} | {one.name for one in context.package.facilities}
    asked = papers.questions.asked_by if papers.questions is not None else {}
    strangers = {number: one.yard for number, one in asked.items() if one.yard not in known}
    if len(known) < 2 or len(strangers) * 3 > len(asked):
        return
    for number, yard in strangers.items():
        message = f"question {number} was asked by {yard}, which neither bids nor has a dock in facilities/"
        yield Notice(CODE, context.at("owner/questions.yaml", "asked_by", number, "yard"), message)
