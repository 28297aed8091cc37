"""Which tanks that held oil an item of hot work touches, by what the package says of both."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.model.tank import Bounds, Tank
from tenderwright.notices import Place
from tenderwright.quantities.quantity import Quantity

Touch = tuple[str, Place | None, str]
"""The tank, where the item names it (or None where only its position tells), and how the work lies to it."""

_NEAR = 1e-6
"""Work that ends on a tank's bulkhead [m] touches it."""


def tanks_touched(package: Package, item: Item) -> Iterator[Touch]:
    """Yield each tank that held oil on whose boundary, or in which, the item works, each once."""
    named = _named(package, item)
    for tank in package.tanks:
        if not tank.held_oil:
            continue
        if tank.tank in named:
            yield tank.tank, *named[tank.tank]
        elif tank.bounds is not None:
            how = _in_way(package, item, tank, tank.bounds)
            if how:
                yield tank.tank, None, how


def _named(package: Package, item: Item) -> dict[str, tuple[Place, str]]:
    """Gather the tanks that the item names itself, or through a coating zone inside one."""
    where = item.where
    inside = {zone.zone: zone.tank.name for zone in package.zones if zone.tank is not None}
    named = {inside[ref.name]: (ref.at, "in") for ref in where.zones if ref.name in inside}
    named |= {ref.name: (ref.at, "in") for ref in where.tanks}
    return named | {ref.name: (ref.at, "on the boundary of") for ref in where.boundary_of}


def _in_way(package: Package, item: Item, tank: Tank, bounds: Bounds) -> str:
    """Say how work on the shell lies in way of a tank that the shell bounds; empty where it does not."""
    if "shell" not in (bounds.outboard, bounds.bottom):
        return ""
    openings = {ref.name for ref in item.where.openings}
    for opening in package.openings:
        if opening.opening in openings and _at_point(tank, bounds, opening.at.x, opening.side, opening.height):
            return f"at opening `{opening.opening}` in way of"
    anodes = {ref.name for ref in item.where.anodes}
    for anode in package.anodes:
        if (
            anode.anode in anodes
            and anode.fixing != "bolted"
            and _at_point(tank, bounds, anode.at.x, anode.side, anode.height)
        ):
            return f"at anode `{anode.anode}` in way of"
    if _other_side(item.where.side, tank.side):
        return ""
    return "on the shell in way of" if any(_overlap(a, b, bounds) for a, b in _stretches(package, item)) else ""


def _stretches(package: Package, item: Item) -> Iterator[tuple[float, float]]:
    """Yield the stretches of shell on which an item works: its extent, or the whole of the strakes that it names."""
    where = item.where
    if item.system != "hull" and not where.strakes:
        return
    if where.extent is not None:
        yield where.extent.from_.x, where.extent.to.x
        return
    strakes = {reference.name for reference in where.strakes}
    for strake in package.strakes:
        if strake.strake in strakes:
            yield from ((run.from_.x, run.to.x) for run in strake.plates)


def _overlap(a: float, b: float, bounds: Bounds) -> bool:
    return min(a, b) <= bounds.to.x + _NEAR and max(a, b) >= bounds.from_.x - _NEAR


def _at_point(tank: Tank, bounds: Bounds, x: float, side: str, height: Quantity) -> bool:
    low = bounds.bottom.si if isinstance(bounds.bottom, Quantity) else float("-inf")
    return (
        _overlap(x, x, bounds)
        and low - _NEAR <= height.si <= bounds.top.si + _NEAR
        and not _other_side(side, tank.side)
    )


def _other_side(one: str, other: str) -> bool:
    return {one, other} == {"port", "starboard"}
