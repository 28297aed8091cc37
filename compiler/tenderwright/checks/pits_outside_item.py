"""Pits that the surveys call to weld or fill lie where the item named for them works.

Ground: what a page calls for and no item prices comes back as a claim (derived, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.pitting import PitStretch, pit_stretches, pits_judged
from tenderwright.checks.context import Context
from tenderwright.model.item import Item
from tenderwright.notices import Notice

CODE = "pits-outside-item"
_NEAR = 0.005
"""Metres by which a stretch may reach beyond its item."""


def check(context: Context) -> Iterator[Notice]:
    """Warn of pits outside the item named for them."""
    if context.package.condition is None or not any(one.item for one in context.package.condition.pitted):
        return
    stretches, judged = context.found(pit_stretches), context.found(pits_judged)
    told = set()
    for name, stretch in (stretches or {}).items():
        pitted = stretch.pitted
        item = context.package.item_by_name.get(pitted.item.name) if pitted.item else None
        if item is None or judged is None or name not in judged or pitted.here in told:
            continue
        work = judged[name].number("weld") + judged[name].number("fill with epoxy")
        outside = "withdrawn" if item.withdrawn else _outside(item, stretch)
        if work and outside:
            told.add(pitted.here)
            message = f"pits of {stretch.where} are left to item {item.number}, which is {outside}"
            hint = f"widen `where` of item {item.number}, or name another item"
            yield Notice(CODE, pitted.here, message, hints=(hint,))


def _outside(item: Item, stretch: PitStretch) -> str:
    """Say how an item lies elsewhere; nothing where it covers the stretch, or does not say where it is."""
    where, pitted = item.where, stretch.pitted
    named = [strake.name for strake in where.strakes]
    if named and pitted.strake.name not in named:
        return f"for strake {', '.join(named)}"
    if where.side in ("port", "starboard") and stretch.side != where.side:
        return f"for the {where.side} side"
    ends = sorted((where.extent.from_.x, where.extent.to.x)) if where.extent else None
    if ends and not (ends[0] - _NEAR <= pitted.from_.x and pitted.to.x <= ends[1] + _NEAR):
        return f"for {where.extent}"
    return ""
