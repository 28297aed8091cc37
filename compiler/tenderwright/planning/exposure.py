"""What the owner stands to lose where the yard fails, day by day: from contract, programme and estimate."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from decimal import Decimal

from msgspec import Struct

from tenderwright.calculations.cost.exposure import Moment, moments, worst
from tenderwright.model.contract import PERFORMANCE, REFUND, Contract
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.model.tender import Programme
from tenderwright.planning.schedule import Schedule
from tenderwright.pricing.money import ZERO
from tenderwright.pricing.price import Estimate

_DAY = 86400.0
_ENDS = {"before docking": "docking", "dry": "undocking", "after undocking": "redelivery", "any": "redelivery"}
"""By its phase, when an item is done that the owner's programme does not hold."""
Amounts = list[dict[str, float]]


class Leaving(Struct, frozen=True):
    """What it costs to take her away."""

    refloat: Decimal
    tow: Decimal
    rent: Decimal
    """Of the dock, until she is fit to float."""

    @property
    def total(self) -> Decimal:
        """Give all of it."""
        return self.refloat + self.tow + self.rent


class Exposure(Struct, frozen=True):
    """What would be lost, day by day."""

    price: Decimal
    leaving: Leaving
    moments: tuple[Moment, ...]
    """By day, as numbers of the calendar (`date.fromordinal`)."""
    worst: Moment
    ahead: Moment
    """The moment at which most is paid beyond all work done, services too, and beyond the refund guarantees."""
    reached: tuple[tuple[str, date], ...]
    """The payments, with the day on which each falls due by the programme."""

    def at(self, on: date) -> Moment:
        """Give the moment of a day."""
        return next(one for one in reversed(self.moments) if one.day <= on.toordinal())


def exposure(package: Package, papers: OwnerPapers, estimate: Estimate, schedule: Schedule | None) -> Exposure | str:
    """Work it out; or say what it needs."""
    contract, taken, tender = package.contract, papers.taken_away, package.tender
    if contract is None or not contract.payments:
        return "it needs `payments` in contract.yaml"
    if taken is None:
        return "it needs owner/contract.yaml, with what it costs to refloat her and tow her away"
    if tender is None or tender.programme is None:
        return "it needs the days of `programme` in package.yaml"
    if contract.floatable is None:
        return "it needs `floatable` in contract.yaml"
    rent = _rent(papers, estimate, contract.floatable.si / _DAY)
    if rent is None:
        return "it needs `dock_day` in owner/contract.yaml, the line that prices a further day on the blocks"
    events, plan = tender.events, tender.programme
    finished = _finished(schedule) if schedule is not None else {}
    reached = []
    for one in contract.payments:
        if one.item is not None and one.item.name not in finished:
            return f"it needs item {one.item.name}, for which `{one.stage}` waits, in owner/programme.yaml"
        due: list[date | None] = [finished[one.item.name]] if one.item is not None else []
        due += [events.get(one.event)] if one.event else []
        due += [one.on.on(events)] if one.on is not None else []
        known = [day for day in due if day is not None]
        if len(known) < len(due) or not due:
            return f"it is not known on which day the payment `{one.stage}` falls due"
        reached.append((one.stage, max(known)))
    done = {item.number: getattr(plan, _ENDS[item.phase]) for item in package.items} | finished
    leaving = Leaving(taken.refloat, taken.tow, rent)
    price = estimate.base
    paid = _paid(contract, [day for _, day in reached], float(price), events, finished)
    days = {"arrival": float(plan.arrival.toordinal()), "redelivery": float(plan.redelivery.toordinal())}
    aboard = _aboard(estimate, done)
    secured = _secured(contract, float(price), events, (PERFORMANCE, REFUND))
    found = moments(paid, aboard, secured, float(leaving.total), **days)
    work = _work(estimate, done, plan)
    ahead = worst(moments(paid, work, _secured(contract, float(price), events, (REFUND,)), 0.0, **days))
    return Exposure(price, leaving, found, worst(found), ahead, tuple(reached))


def _rent(papers: OwnerPapers, estimate: Estimate, days: float) -> Decimal | None:
    """Give what the dock costs for some days, by the owner's own rate of a further day on the blocks."""
    lines = papers.programme.day_lines if papers.programme is not None else ()
    named = papers.taken_away.dock_day if papers.taken_away is not None else ""
    numbers = [named] if named else [one.line for one in lines if one.days == "further dock days"]
    rates = [line.rate for line in estimate.lines if line.number in numbers]
    return sum(rates, ZERO) * Decimal(repr(days)) if rates else None


def _finished(schedule: Schedule) -> dict[str, date]:
    """Give the day on which the last activity of each item ends."""
    ends: dict[str, date] = {}
    for one in schedule.activities:
        if one.node.item is not None and one.ends is not None:
            ends[one.node.item.number] = max(one.ends, ends.get(one.node.item.number, one.ends))
    return ends


def _paid(
    contract: Contract, days: list[date], price: float, events: Mapping[str, date | None], done: Mapping[str, date]
) -> Amounts:
    """Give what is paid, and when: each stage less what is held back, and what is held back as it is released."""
    held = contract.retention.share.si if contract.retention is not None else 0.0
    paid = [
        {"day": float(day.toordinal()), "amount": one.share.si * (1.0 - held) * price}
        for one, day in zip(contract.payments, days, strict=True)
    ]
    for one in contract.retention.releases if contract.retention is not None else ():
        on = done.get(one.item.name) if one.item is not None else one.at.on(events) if one.at is not None else None
        if on is not None:
            paid.append({"day": float(on.toordinal()), "amount": one.share.si * held * price})
    return paid


def _secured(contract: Contract, price: float, events: Mapping[str, date | None], kinds: tuple[str, ...]) -> Amounts:
    """Give the securities that pay on demand, from the award until each is given back."""
    award, secured = events.get("award"), []
    for one in contract.securities:
        back, last = one.released.on(events), one.valid_to.on(events)
        if one.kind in kinds and one.form == "on demand" and award and back and last:
            until = min(back - timedelta(days=1), last)
            days = {"from": float(award.toordinal()), "until": float(until.toordinal())}
            secured.append(days | {"amount": one.share.si * price})
    return secured


def _aboard(estimate: Estimate, done: Mapping[str, date]) -> Amounts:
    """Give what each item is worth once all of it is done, with its part of the services of dock and yard.

    Another yard would ask for as much again.
    """
    base = _base(estimate)
    services = sum((base.get(one.item.number, ZERO) for one in estimate.items if one.is_shared), ZERO)
    carried = sum((one.shared for one in estimate.items if not one.is_shared), ZERO)
    aboard = []
    for one in estimate.items:
        part = services * one.shared / carried if carried else ZERO
        amount = base.get(one.item.number, ZERO) + part
        if not one.is_shared and amount > 0:
            aboard.append({"day": float(done[one.item.number].toordinal()), "amount": float(amount)})
    return aboard


def _work(estimate: Estimate, done: Mapping[str, date], plan: Programme) -> Amounts:
    """Give what has been worked for: each item when it is done, services day by day as she lies in the yard."""
    base, work = _base(estimate), []
    stay = range(plan.arrival.toordinal() + 1, plan.redelivery.toordinal() + 1)
    for one in estimate.items:
        amount = float(base.get(one.item.number, ZERO))
        days = stay if one.is_shared and stay else (done[one.item.number].toordinal(),)
        work += [{"day": float(day), "amount": amount / len(days)} for day in days if amount > 0.0]
    return work


def _base(estimate: Estimate) -> dict[str, Decimal]:
    """Give what each item comes to in the base price."""
    base: dict[str, Decimal] = {}
    for line in estimate.lines:
        if line.section.in_base:
            base[line.item.number] = base.get(line.item.number, ZERO) + line.amount
    return base
