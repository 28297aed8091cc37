"""The ledger of a docking: the contract, and everything told of the dock, priced and in order of its days."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from decimal import Decimal

from msgspec import Struct
from msgspec.structs import asdict

from tenderwright.calculations.steps.runner import Calculated
from tenderwright.model.in_dock import ActualDays, ChangeOrder, ConditionReport, InDock, LeftOut, Measured, Restored
from tenderwright.model.item import Item
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.notices import Notice
from tenderwright.pricing.in_dock.contract import Contract, ContractLine, contract
from tenderwright.pricing.in_dock.ordered import Price, by_lump, by_pool, by_quantity
from tenderwright.pricing.in_dock.reports import PricedReport, priced_report
from tenderwright.pricing.money import cents, written
from tenderwright.pricing.price import Estimate
from tenderwright.reading.source import Source


class PricedChange(Struct, frozen=True):
    """A change with its price."""

    order: ChangeOrder
    line: ContractLine
    item: Item
    price: Price

    @property
    def name(self) -> str:
        """Give its number."""
        return self.order.change.name

    @property
    def amount(self) -> Decimal:
        """Give its amount; negative where it takes off."""
        return self.price.amount

    def signed_by(self, on: date) -> bool:
        """Tell whether it was signed on a day or before."""
        return self.order.signed is not None and self.order.signed <= on


class Remeasure(Struct, frozen=True):
    """What a line measured up to a day."""

    line: ContractLine
    quantity: Decimal
    """In the unit of the line."""
    day: date
    told: Measured


class Ledger(Struct, frozen=True):
    """The contract and what the papers from the dock tell, whatever their order; `account` gives how it stands."""

    contract: Contract
    changes: tuple[PricedChange, ...] = ()
    reports: tuple[PricedReport, ...] = ()
    measured: tuple[Remeasure, ...] = ()
    left_out: tuple[LeftOut, ...] = ()
    """Work deleted or deferred."""
    deferred: frozenset[tuple[str, date]] = frozenset()
    """Which of it is put off to another time."""
    restored: tuple[Restored, ...] = ()
    progress: tuple[tuple[date, str, float], ...] = ()
    """Day, item and share done."""
    days: tuple[tuple[date, ActualDays], ...] = ()
    """By the last day of the file that tells them."""
    last: date | None = None
    """The last day of which anything is told."""

    def actual(self, on: date) -> ActualDays:
        """Give the days of the docking that had come by a day; what a later file says of them goes before."""
        known: dict[str, date] = {}
        for _, days in self.days:
            known |= {key: day for key, day in asdict(days).items() if day is not None and day <= on}
        return ActualDays(**known)

    def done(self, on: date) -> dict[str, float]:
        """Give the share done of each item that is told of, on a day."""
        return {item: share for day, item, share in self.progress if day <= on}

    def answers(self, report: PricedReport, on: date) -> list[PricedChange]:
        """Give the changes that answer a report on a day."""
        return [
            one
            for one in self.changes
            if one.order.day <= on and one.order.condition is not None and one.order.condition.name == report.name
        ]

    def out(self, on: date) -> dict[str, LeftOut]:
        """Give the lines that are left out on a day; of one day, what is restored goes after what is left out."""
        return {line: one for line, one in self._last(on).items() if isinstance(one, LeftOut)}

    def back(self, on: date) -> dict[str, Restored]:
        """Give the lines that were left out and are in the contract again on a day."""
        return {line: one for line, one in self._last(on).items() if isinstance(one, Restored)}

    def _last(self, on: date) -> dict[str, LeftOut | Restored]:
        events: list[tuple[date, int, LeftOut | Restored]] = [(one.day, 0, one) for one in self.left_out]
        events += [(one.day, 1, one) for one in self.restored]
        found: dict[str, LeftOut | Restored] = {}
        for day, _, event in sorted(events, key=lambda one: (one[0], one[1], one[2].work.name)):
            for line in self.contract.lines_of(event.work.name) if day <= on else ():
                found[line.number] = event
        return found


def ledger(
    papers: OwnerPapers,
    package: Package,
    calculated: Calculated,
    estimate: Estimate | None,
    sources: Mapping[str, Source],
) -> tuple[Ledger | None, list[Notice]]:
    """Price everything told of the dock; None without an award. What cannot be priced is told and left out.

    Nor is there one once the docking is closed: its history entry has taken over, and quantities that follow from
    surveys are those of the next docking.
    """
    award = papers.award
    if award is None or any(docking.docked > award.awarded for docking in package.history):
        return None, []
    made = contract(papers, package, calculated, estimate)
    if made is None:
        return None, []
    notices = _amount_differs(made, sources.get("owner/award.yaml"))
    told = sorted(papers.in_dock.values(), key=lambda one: (one.until, one.here))
    reports = _reports(told, made, package, notices)
    changes = _changes(told, made, package, notices)
    return Ledger(
        contract=made,
        changes=tuple(sorted(changes, key=lambda one: (one.order.day, one.name))),
        reports=tuple(sorted(reports, key=lambda one: (one.report.day, one.name))),
        measured=tuple(sorted(_measured(told, made, notices), key=lambda one: (one.day, one.line.number))),
        left_out=tuple(out for one in told for out in (*one.deleted, *one.deferred)),
        deferred=frozenset((out.work.name, out.day) for one in told for out in one.deferred),
        restored=tuple(back for one in told for back in one.restored),
        progress=tuple((one.until, each.item.name, float(each.done.si)) for one in told for each in one.progress),
        days=tuple((one.until, one.days) for one in told),
        last=max((one.until for one in told), default=None),
    ), notices


def _amount_differs(made: Contract, source: Source | None) -> list[Notice]:
    stated = cents(made.award.amount)
    if stated == made.amount or source is None:
        return []
    message = f"the bid `{made.award.bid}` makes a contract of {written(made.amount)}, not {written(stated)}"
    unanswered = [line.number for line in made.lines.values() if line.inside and not line.corrected.answered]
    hints = ["the base price as the tender's rule of arithmetic makes it, options taken up, less what is dropped"]
    if unanswered:
        hints.append(f"the bid has no price for {', '.join(unanswered)}")
    return [Notice("sum-differs", source.place(("amount",)), message, hints=tuple(hints))]


def _reports(told: Sequence[InDock], made: Contract, package: Package, notices: list[Notice]) -> list[PricedReport]:
    found = []
    for report in (report for one in told for report in one.conditions):
        name = report.item.name if report.item is not None else report.line.name.split(".")[0] if report.line else ""
        priced = priced_report(report, made, package.item_by_name.get(name))
        if isinstance(priced, Notice):
            notices.append(priced)
        else:
            found.append(priced)
    return found


def _changes(told: Sequence[InDock], made: Contract, package: Package, notices: list[Notice]) -> list[PricedChange]:
    reports = {report.report.name: report for one in told for report in one.conditions}
    orders = [order for one in told for order in one.changes]
    named = (made.lines.get(order.line.name) for order in orders)
    later = {line.item.number for line in named if line is not None and line.kind == "option"}
    found = []
    for order in orders:
        line = made.lines.get(order.line.name)
        if line is None:
            continue  # told where names are resolved
        if line.kind == "contingent" and not line.taken and line.item.number not in later:
            message = f"change {order.change}: line {line.number} goes with option {line.item.number}, not taken up"
            hint = f"name {line.item.number} under `options` in owner/award.yaml, or order a line of the option itself"
            notices.append(Notice("in-dock-price", order.here, message, hints=(hint,)))
            continue
        price = _price(order, line, made)
        if isinstance(price, Notice):
            notices.append(price)
        else:
            report = reports.get(order.condition.name) if order.condition is not None else None
            found.append(PricedChange(order, line, _item(order, line, report, made, package), price))
    return found


def _item(
    order: ChangeOrder, line: ContractLine, report: ConditionReport | None, made: Contract, package: Package
) -> Item:
    """Find the item that a change belongs to: its own, that of its report for hours of the pool, or its line's."""
    name = order.item.name if order.item is not None else ""
    if not name and line.number in (*made.pool, made.markup) and report is not None and report.item is not None:
        name = report.item.name
    return package.item_by_name.get(name, line.item)


def _price(order: ChangeOrder, line: ContractLine, made: Contract) -> Price | Notice:
    what = f"change {order.change}"
    pool = order.hours is not None or order.materials is not None
    ways = [key for key, given in (("quantity", order.quantity is not None), ("hours", pool)) if given]
    ways += ["negotiated"] if order.negotiated is not None else []
    if len(ways) > 1:
        message = f"{what} is priced in more than one way: {', '.join(f'`{way}`' for way in ways)}"
        hint = "write a change for each, with a number of its own"
        return Notice("in-dock-price", order.here, message, hints=(hint,))
    if order.negotiated is not None:
        return Price("negotiated", cents(order.negotiated))
    if order.quantity is not None:
        return by_quantity(order.quantity, line, made, what, order.here)
    if pool:
        return by_pool(order, order.line, made, what)
    if line.form == "lump":
        return by_lump(line, what, order.here)
    hint = "write `quantity:`, `hours:`, `materials:` or `negotiated:`"
    return Notice("in-dock-price", order.here, f"{what} has no price", hints=(hint,))


def _measured(told: Iterable[InDock], made: Contract, notices: list[Notice]) -> list[Remeasure]:
    found = []
    for one in told:
        for each in one.measured:
            line = made.lines.get(each.line.name)
            if line is None:
                continue
            price = by_quantity(each.quantity, line, made, f"the measure of line {line.number}", each.here)
            if isinstance(price, Notice):
                notices.append(price)
            else:
                number = price.hours if price.way == "hours pool" else price.quantity
                found.append(Remeasure(line, number, each.day or one.until, each))
    return found
