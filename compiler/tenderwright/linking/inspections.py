"""Resolve the points, blocks and shell work that the papers from the dock tell of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tenderwright.model.in_dock import InDock
from tenderwright.model.inspected import InspectionResult, RegisterEntry
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.notices import Notice
from tenderwright.notices.suggest import did_you_mean

_NAMES = ("opening", "tank", "block", "shell", "anodes")


def link_inspections(told: Iterable[InDock], package: Package) -> Iterator[Notice]:
    """Report points that an item does not have, and rows that the register of openings cannot have."""
    for one in told:
        for result in one.inspections:
            yield from _point(result, package)
        for entry in one.openings:
            yield from _row(entry, package)


def _point(result: InspectionResult, package: Package) -> Iterator[Notice]:
    item = package.item_by_name.get(result.item.name)
    if item is None or result.point.name in (points := _points(item)):
        return
    message = f"item {item.number} has no point {result.point}"
    hints = (f"it has {', '.join(points)}",) if points else ("it asks for no inspection, test or report",)
    yield Notice("dead-reference", result.point.at, message, hints=hints)


def _points(item: Item) -> list[str]:
    numbers = [hold.hold for hold in item.holds]
    numbers += [f"T{n}" for n, _ in enumerate(item.tests, start=1)]
    return numbers + [f"R{n}" for n, _ in enumerate(item.reports, start=1)]


def _row(entry: RegisterEntry, package: Package) -> Iterator[Notice]:
    named = [key for key, _ in entry.named]
    if len(named) != 1:
        message = f"an entry of the register names one thing, and this names {' and '.join(named) or 'none'}"
        hint = f"write one of {', '.join(f'`{name}:`' for name in _NAMES)}"
        yield Notice("missing-key", entry.here, message, hints=(hint,))
    if entry.hole and entry.shell is None:
        message = "a hole has a number, and no item is named that cut it"
        yield Notice("missing-key", entry.here, message, hints=("add `shell:` with the item",))
    plan = package.docking_plan
    frames = [position.text for position in plan.taken_out] if plan is not None else []
    if entry.block is not None and entry.block.name not in frames:
        message = f"the docking plan takes out no keel block at {entry.block}"
        hints = did_you_mean(entry.block.name, frames) or ("name it as `taken_out` of the docking plan does",)
        yield Notice("dead-reference", entry.block.at, message, hints=hints)
    for name, reference in (("shell", entry.shell), ("anodes", entry.anodes)):
        item = package.item_by_name.get(reference.name) if reference is not None else None
        if reference is not None and item is not None and not _opens(name, item):
            message = f"item {item.number} has no row for its {name} in the register of openings"
            hint = "its shell" if name == "shell" else "its anodes"
            yield Notice("dead-reference", reference.at, message, hints=(f"name the item that opens {hint}",))


def _opens(name: str, item: Item) -> bool:
    if name == "anodes":
        return item.system == "cathodic protection"
    return "opens hull" in item.does and not item.where.openings
