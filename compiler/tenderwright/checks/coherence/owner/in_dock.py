"""What is told of the dock goes forward, and its quantities, days and sums are of this contract.

Ground: progress and measured quantities are told as all that was done up to a day, so that they never fall (derived);
how many times the tendered quantity is a slip: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.in_dock import InDock
from tenderwright.notices import Note, Notice, Place
from tenderwright.pricing.money import written
from tenderwright.quantities.quantity import Quantity
from tenderwright.quantities.units import unit

CODE = "progress-falls"
_TIMES = 8
"""How many times what is tendered, or may be needed, is told of a line at the most."""


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report work that grows less, and quantities, days and sums that this contract cannot hold."""
    told = sorted(context.papers.in_dock.items(), key=lambda one: one[1].until)
    yield from _falling(context, told)
    for path, made in told:
        yield from _amounts(context, path, made)
        yield from _days(context, path, made)


def _falling(context: OwnerContext, told: list[tuple[str, InDock]]) -> Iterator[Notice]:
    before: dict[str, tuple[float, str, Place]] = {}
    for path, made in told:
        for index, progress in enumerate(made.progress):
            name, place = f"item {progress.item}", context.at(path, "progress", index, "done")
            yield from _held(before, name, progress.done, place)
        for index, measured in enumerate(made.measured):
            name, place = f"line {measured.line}", context.at(path, "measured", index, "quantity")
            yield from _held(before, name, measured.quantity, place)


def _held(before: dict[str, tuple[float, str, Place]], name: str, now: Quantity, place: Place) -> Iterator[Notice]:
    if name in before and now.si < before[name][0] - 1e-9:
        message = f"{now} of {name} is done, and {before[name][1]} was done before"
        yield Notice(
            CODE, place, message, (Note("the earlier figure is here", before[name][2]),), cause=f"{place.path} falls"
        )
        return
    before[name] = (now.si, str(now), place)


def _amounts(context: OwnerContext, path: str, made: InDock) -> Iterator[Notice]:
    for key in ("measured", "conditions", "changes"):
        for one in getattr(made, key):
            if one.line is not None and one.quantity is not None:
                yield from _against_tender(context, str(one.line), one.quantity)
    award = context.papers.award
    for index, report in enumerate(made.conditions):
        if award is not None and report.amount is not None and report.amount > award.amount / 4:
            message = f"report {report.report} asks {written(report.amount)} of a contract of {written(award.amount)}"
            yield Notice("price-unlikely", context.at(path, "conditions", index, "amount"), message)


def _against_tender(context: OwnerContext, number: str, told: Quantity) -> Iterator[Notice]:
    lines = context.estimate.lines if context.estimate is not None else ()
    line = next((one for one in lines if one.number == number), None)
    name = line.quantity.unit if line is not None else ""
    if line is None or not name or name == "lump sum" or unit(name).signature != unit(told.unit).signature:
        return
    most = max(line.most, line.quantity.number)
    count = Decimal(repr(told.si / unit(name).factor))
    if most > 0 and abs(count) > _TIMES * most:
        message = f"{told} of line {number}, of which {line.quantity} is tendered"
        yield Notice("quantity-unlikely", told.at, message, hints=("is the unit the right one?",))


def _days(context: OwnerContext, path: str, made: InDock) -> Iterator[Notice]:
    tender = context.package.tender
    on_blocks = tender.dock_days if tender is not None else None
    for key in ("conditions", "changes"):
        for index, one in enumerate(getattr(made, key)):
            if on_blocks is not None and one.days > on_blocks:
                message = f"{one.days} days are added to a contract of {on_blocks} days on blocks"
                yield Notice("days-differ", context.at(path, key, index, "days"), message)
