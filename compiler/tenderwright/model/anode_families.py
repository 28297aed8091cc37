"""Families of anodes, known by their number: one anode for each, and what names the family names all of them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from msgspec.structs import replace

from tenderwright.model.build import Reference
from tenderwright.model.package import Package
from tenderwright.model.vessel import Anode, AnodeFamily
from tenderwright.quantities.position import Position


def with_families(package: Package) -> Package:
    """Put the anodes of families among the others, and all of them in the place of the name of their family."""
    if not package.anode_families:
        return package
    members = {family.family: anodes_of(family) for family in package.anode_families}
    anodes = (*package.anodes, *(anode for found in members.values() for anode in found))
    named = {name: tuple(anode.anode for anode in found) for name, found in members.items()}
    items = (replace(item, where=_naming(item.where, named)) for item in package.items)
    return replace(package, anodes=anodes, items=tuple(items), condition=_condition(package, named))


def anodes_of(family: AnodeFamily) -> tuple[Anode, ...]:
    """Give the anodes of a family, evenly spread over its stretch; of both sides, to port and starboard by turns."""
    pairs = family.side == "both"
    places = (family.count + 1) // 2 if pairs else family.count
    aft, length = family.extent.from_.x, family.extent.to.x - family.extent.from_.x
    words = str(family.extent)
    found = []
    for number in range(family.count):
        place = number // 2 if pairs else number
        side = ("port", "starboard")[number % 2] if pairs else family.side
        found.append(
            Anode(
                anode=f"{family.family}-{number + 1}",
                at=Position(words, aft + length * (place + 0.5) / places, family.extent.here),
                side=side,
                height=family.height,
                alloy=family.alloy,
                mass=family.mass,
                fixing=family.fixing,
                length=family.length,
                width=family.width,
                thickness=family.thickness,
                left=family.left,
                seen=family.seen,
                here=family.here,
            )
        )
    return tuple(found)


def family_of(package: Package, anode: Anode) -> AnodeFamily | None:
    """Give the family of an anode that is known by number alone."""
    name = anode.anode.rpartition("-")[0]
    return next((one for one in package.anode_families if one.family == name and one.here == anode.here), None)


def _condition(package: Package, named: Mapping[str, tuple[str, ...]]) -> Any:
    condition = package.condition
    if condition is None:
        return None
    duty = condition.anodes
    if duty is not None:
        duty = replace(duty, fitted=tuple(_naming(lot, named) for lot in duty.fitted))
    return replace(condition, anodes=duty, metals=tuple(_naming(pair, named) for pair in condition.metals))


def _naming(holder: Any, named: Mapping[str, tuple[str, ...]]) -> Any:
    """Give what names anodes with the names of families replaced by those of their anodes."""
    return replace(holder, anodes=tuple(_members(holder.anodes, named)))


def _members(references: Iterable[Reference], named: Mapping[str, tuple[str, ...]]) -> Iterable[Reference]:
    for one in references:
        for name in named.get(one.name, (one.name,)):
            yield Reference(one.kind, name, one.at)
