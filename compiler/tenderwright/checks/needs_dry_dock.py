"""Work that needs the dock dry is done in the dry.

Ground: work placed in the wrong phase is among the errors that bidders ask about (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.model.coating import Zone
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.notices import Notice
from tenderwright.quantities.quantity import Quantity

CODE = "needs-dry-dock"


def check(context: Context) -> Iterator[Notice]:
    """Report work under water that is not done dry."""
    for item in context.live_items:
        why = _needs_dry(context.package, item) if item.phase != "dry" else ""
        if why:
            message = f"item {item.number} {why}, and its phase is `{item.phase}`"
            yield Notice(CODE, place_in(item, "phase"), message, hints=("write `phase: dry`",))


def _needs_dry(package: Package, item: Item) -> str:
    """Say what of the item needs the dock dry; empty where nothing does."""
    if "opens hull" in item.does and not _all_above_water(package, item):
        return "opens the hull"
    zones = {zone.zone: zone for zone in package.zones}
    coated = [s.zone.name for s in package.schemes if any(ref.name == s.scheme for ref in item.schemes)]
    if "coats" in item.does:
        coated += [reference.name for reference in item.where.zones]
    under = next((name for name in coated if name in zones and _under_water(package, zones[name])), None)
    return f"coats zone `{under}`, which is under water" if under else ""


def _draft(package: Package) -> float:
    return package.particulars.dimensions.draft.si if package.particulars is not None else 0.0


def _under_water(package: Package, zone: Zone) -> bool:
    if zone.surface != "shell band":
        return False
    return not isinstance(zone.lower, Quantity) or zone.lower.si < _draft(package)


def _all_above_water(package: Package, item: Item) -> bool:
    """Tell whether the item names openings and all of them lie above the stated draft."""
    names = {reference.name for reference in item.where.openings}
    heights = [opening.height.si for opening in package.openings if opening.opening in names]
    return bool(heights) and package.particulars is not None and min(heights) > _draft(package)
