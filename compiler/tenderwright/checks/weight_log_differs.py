"""The weights that the docking plan counts for an item are those that the item itself tenders.

Ground: she floats off with what was fitted, and the undocking condition is only as good as its list of weights (common
practice, no source). A tenth, or 50 kg where that is more, is common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.model.docking_plan import MovedWeight
from tenderwright.model.item import Item, Line
from tenderwright.notices import Note, Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

CODE = "weight-log-differs"
_PROPELLER = re.compile(r"propeller\b(?!.*\b(?:nut|cap|gear)\b)", re.IGNORECASE)
_MASS = re.compile(r"\b(\d+(?:\.\d+)?) (t|kg)\b")
SHARE = 0.10
LEAST = 50.0
"""Kilograms."""


def check(context: Context) -> Iterator[Notice]:
    """Warn of entries of `moved_while_dry` that differ from the masses of their item's lines."""
    plan = context.package.docking_plan
    if plan is None:
        return
    for item in context.live_items:
        rows = [row for row in plan.moved_while_dry if row.item is not None and row.item.name == item.number]
        masses = [mass for line in item.lines if (mass := _mass(context, line)) is not None]
        if any(line.takes is not None and context.value(line.takes.name) is None for line in item.lines):
            continue  # what the lines tender is not whole
        if rows and masses and "changes weight" in item.does:
            yield from _compare(item, rows, sum(masses))
        elif rows and not item.lines:
            yield from _by_the_owner(item, rows)
    particulars = context.package.particulars
    shafts = particulars.shafts if particulars is not None else ()
    stated = [one.propeller.mass for one in shafts if one.propeller is not None and one.propeller.mass is not None]
    for row in plan.moved_while_dry:
        if stated and _PROPELLER.match(row.what):
            moved = abs(row.mass.si)
            yield from _propeller(row, min(stated, key=lambda mass: abs(moved - mass.si)))


def _by_the_owner(item: Item, rows: list[MovedWeight]) -> Iterator[Notice]:
    """Compare what an item without lines moves with the masses that its words state; none stated, none compared."""
    stated = [float(m[1]) * (1e3 if m[2] == "t" else 1.0) for one in _words(item) for m in _MASS.finditer(one)]
    for row in rows:
        if stated and all(abs(abs(row.mass.si) - mass) > SHARE * mass for mass in stated):
            message = f"the docking plan moves {row.mass} for item {item.number}, and the item speaks of no such mass"
            hint = "put the mass right in the docking plan or in the item"
            yield Notice(CODE, row.mass.at, message, (Note("the item is here", item.here),), (hint,))


def _words(item: Item) -> list[str]:
    return [item.scope.text, *(one.text for one in item.requirements)]


def _propeller(row: MovedWeight, stated: Quantity) -> Iterator[Notice]:
    """Compare a propeller that comes off or aboard with the nearest of the particulars."""
    if abs(abs(row.mass.si) - stated.si) > max(SHARE * stated.si, LEAST):
        message = f"the docking plan moves the propeller as {row.mass}, and the particulars give it {stated}"
        hint = "weigh it, and write that mass in both places"
        yield Notice(CODE, row.mass.at, message, (Note("its mass is here", stated.at),), (hint,))


def _compare(item: Item, rows: list[MovedWeight], tendered: float) -> Iterator[Notice]:
    """Compare what goes with the lines of a credit, and what is fitted with those of all else.

    A lump sum may hold weight that no line states, so that more than the lines is then no mistake.
    """
    sign = -1.0 if item.kind == "credit" else 1.0
    counted = [row for row in rows if row.mass.si * sign > 0]
    logged = sum(row.mass.si for row in counted) * sign
    in_lump_sums = any(line.price == "lump" for line in item.lines)
    over = 0.0 if in_lump_sums else logged - tendered
    if counted and max(over, tendered - logged) > max(SHARE * max(logged, tendered), LEAST):
        message = (
            f"the docking plan counts {show(logged, 'small part', more=-1)} for item {item.number}, and "
            f"the lines of the item tender {show(tendered, 'small part', more=-1)}"
        )
        hint = "correct the mass, or split the entry so that each part names the item that moves it"
        place = max(counted, key=lambda row: abs(row.mass.si)).mass.at
        yield Notice(CODE, place, message, (Note("the item is here", item.here),), (hint,))


def _mass(context: Context, line: Line) -> float | None:
    """Give the mass that a line tenders, kg; None for a line of anything else."""
    if line.takes is not None:
        value = context.value(line.takes.name)
        share = line.share.si if line.share is not None else 1.0
        return float(value.si) * share if value is not None and value.dimension == "mass" else None
    return line.quantity.si if line.quantity is not None and line.quantity.dimension == "mass" else None
