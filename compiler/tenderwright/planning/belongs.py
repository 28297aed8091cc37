"""What belongs together: work that would leave her worse than she came if only a part of it were bought."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.model.appliers import appliers
from tenderwright.model.build import Reference
from tenderwright.model.coating import Zone
from tenderwright.model.funding import Scope, Worth
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.planning.scope import must_do

_OPENS = ("opens hull", "removes plug")


class Belongs(Struct, frozen=True):
    """An item that is not bought without another, and why."""

    item: str
    other: str
    why: str


def together(package: Package) -> tuple[Belongs, ...]:
    """Give what is bought together since it touches one surface or one opening.

    Schemes of one zone, one over the other, are one choice; a coat goes with the washing or stripping before it on its
    zone; what opens the hull without closing it goes with what closes it.
    """
    live = {item.number: item for item in package.items if not item.withdrawn}
    found: dict[tuple[str, str], Belongs] = {}
    for one in (*_surfaces(package, live), *_openings(live)):
        if one.item != one.other:
            found.setdefault((one.item, one.other), one)
    return tuple(found.values())


def bottom_first(package: Package, scope: Scope) -> tuple[Belongs, ...]:
    """Give what is bought before the topsides, unless the owner says why: coating under water, and anodes."""
    live = {item.number: item for item in package.items if not item.withdrawn}
    draft = package.particulars.dimensions.draft.si if package.particulars is not None else None
    if draft is None:
        return ()
    zones = {zone.zone: zone for zone in package.zones}
    above, below = [], [item.number for item in live.values() if item.where.anodes and item.kind != "option"]
    for scheme in package.schemes:
        zone = zones.get(scheme.zone.name)
        applied_by = [item.number for item in appliers(package, scheme)]
        if zone is not None and applied_by:
            if zone.surface == "shell band" and zone.lower == "keel":
                below += applied_by
            elif _above(zone, draft):
                above += [*applied_by, *_options_on(zone, live)]
    return tuple(
        Belongs(top, bottom, "bottom work and anodes come before the topsides")
        for top in dict.fromkeys(above)
        for bottom in dict.fromkeys(below)
        if top != bottom and not _first_on_purpose(scope.items.get(top))
    )


def _first_on_purpose(worth: Worth | None) -> bool:
    return worth is not None and (worth.must or bool(worth.before_bottom))


def held_together(package: Package, scope: Scope) -> Scope:
    """Give the owner's judgement with all that belongs together, or comes first, among what each item needs."""
    items = dict(scope.items)
    for one in (*together(package), *bottom_first(package, scope)):
        worth = items.get(one.item) or Worth(here=scope.here)
        if all(reference.name != one.other for reference in worth.needs):
            items[one.item] = replace(worth, needs=(*worth.needs, Reference("item", one.other, worth.here)))
    return replace(scope, items=items)


def missing(package: Package, scope: Scope) -> tuple[Belongs, ...]:
    """Give what belongs together and is not yet held so by `needs` or by what must be done."""
    must = must_do(scope)
    return tuple(
        one
        for one in together(package)
        if one.other not in must and one.item in scope.items and one.other not in _needed(scope, one.item)
    )


def _needed(scope: Scope, number: str) -> set[str]:
    found: set[str] = set()
    waiting = [number]
    while waiting:
        worth = scope.items.get(waiting.pop())
        for reference in worth.needs if worth is not None else ():
            if reference.name not in found:
                found.add(reference.name)
                waiting.append(reference.name)
    return found


def _surfaces(package: Package, live: dict[str, Item]) -> Iterator[Belongs]:
    applied = [(scheme, item.number) for scheme in package.schemes for item in appliers(package, scheme)]
    for (one, first), (other, second) in combinations(applied, 2):
        if one.zone.name == other.zone.name and first != second:
            earlier, later = (first, second) if first in _before(live, second) else (second, first)
            yield Belongs(earlier, later, f"it bares and primes zone `{one.zone}`, which that item finishes")
            yield Belongs(later, earlier, f"it goes over what that item prepares on zone `{one.zone}`")
    for scheme, number in applied:
        for before in _before(live, number):
            item = live[before]
            on_it = any(reference.name == scheme.zone.name for reference in item.where.zones)
            if on_it and "disturbs coating" in item.does and "coats" not in item.does:
                yield Belongs(number, before, f"that item prepares zone `{scheme.zone}` for it")


def _openings(live: dict[str, Item]) -> Iterator[Belongs]:
    for item in live.values():
        if not any(word in item.does for word in _OPENS) or "closes hull" in item.does:
            continue
        mine = {reference.name for reference in item.where.openings}
        for other in live.values():
            theirs = {reference.name for reference in other.where.openings}
            if "closes hull" in other.does and mine & theirs:
                named = ", ".join(f"`{name}`" for name in sorted(mine & theirs))
                yield Belongs(item.number, other.number, f"it opens {named}, which that item closes")


def _options_on(zone: Zone, live: dict[str, Item]) -> list[str]:
    """Give the items that coat a zone by words alone, such as an option in place of another item."""
    return [
        number
        for number, item in live.items()
        if "coats" in item.does and any(reference.name == zone.zone for reference in item.where.zones)
    ]


def _before(live: dict[str, Item], number: str) -> list[str]:
    """Give the items that come before one, by depends_on, near and far."""
    found: dict[str, None] = {}
    waiting = [reference.name for reference in live[number].depends_on]
    while waiting:
        name = waiting.pop(0)
        if name in live and name not in found:
            found[name] = None
            waiting += [reference.name for reference in live[name].depends_on]
    return list(found)


def _above(zone: Zone, draft: float) -> bool:
    """Tell whether a band of shell begins above her draft."""
    lower = zone.lower
    return (
        zone.surface == "shell band" and lower is not None and not isinstance(lower, str) and lower.si >= draft - 1e-9
    )
