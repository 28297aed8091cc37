"""What is the same to port and to starboard is described the same, and a name says which side it is.

Ground: a ship is built alike on both sides; where two of a name differ by more than 25 %, or by more than a few
frames, one of the two is a slip (derived).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from tenderwright.checks.coherence.ship.held import like
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.tank import Tank
from tenderwright.model.vessel import Anode, Appendage, Opening
from tenderwright.notices import Notice, Place
from tenderwright.quantities.quantity import Quantity

CODE = "sides-differ"
_SIDE = re.compile(r"\b(port|starboard)\b")
_ANODE = re.compile(r"([ps])(-?[0-9]+)")


def check(ship: Ship) -> Iterator[Notice]:
    """Report a side that is not that of the name, and twins that differ."""
    package = ship.package
    for kind, things in (
        ("tank", {one.tank: one for one in package.tanks}),
        ("opening", {one.opening: one for one in package.openings}),
        ("appendage", {one.appendage: one for one in package.appendages}),
    ):
        for name, thing in things.items():
            side = _named(f"{name.replace('-', ' ')} {thing.name.lower()}")
            if side and thing.side != side:
                message = f"{kind} `{name}` is named for {side}, and its side is {thing.side}"
                yield Notice(CODE, thing.here, message, hints=("mend the side or the name",))
        yield from _twins(ship, kind, things)
    yield from _anodes(ship, {one.anode: one for one in package.anodes})
    yield from _alone(package.openings)
    yield from _leaks(ship)


def _alone(openings: Sequence[Opening]) -> Iterator[Notice]:
    """Tell of the one stern tube of a ship that does not lie on the centreline."""
    tubes = [one for one in openings if one.kind == "stern tube"]
    if len(tubes) == 1 and tubes[0].side in ("port", "starboard"):
        message = f"stern tube `{tubes[0].opening}` is to {tubes[0].side}, and she has only the one"
        yield Notice(CODE, tubes[0].here, message, hints=("centreline?",))


def _leaks(ship: Ship) -> Iterator[Notice]:
    """Hold each leak against its own words, and against the opening at which it is."""
    openings = {one.opening: one for one in ship.package.openings}
    for leak in ship.package.condition.leaks if ship.package.condition is not None else ():
        what, side = f"leak `{leak.leak}`", _named(f"{leak.where} {leak.leak.replace('-', ' ')}".lower())
        if side and leak.side != side:
            message = f"{what} is described to {side}, and its side is {leak.side}"
            yield Notice(CODE, leak.here, message, hints=("mend the side or the words",))
        opening = openings.get(leak.opening.name) if leak.opening is not None else None
        if opening is None:
            continue
        pair = f"{what} and the opening at which it is"
        yield from _words(pair, (("side", leak.side, opening.side, leak.here),))
        yield from _figures(ship, pair, (("height", opening.height, leak.height),))
        if ship.length is not None and abs(leak.at.x - opening.at.x) > 0.04 * ship.length:
            yield Notice(CODE, leak.at.at, f"{pair} stand at {leak.at} and at {opening.at}", hints=("look at both",))


def _named(words: str) -> str:
    """Give the side that a name says, where it says one."""
    found = set(_SIDE.findall(words))
    return found.pop() if len(found) == 1 else ""


def _twins(ship: Ship, kind: str, things: Mapping[str, Tank | Opening | Appendage]) -> Iterator[Notice]:
    for name, port in things.items():
        other = things.get(re.sub(r"(^|-)port(-|$)", r"\1starboard\2", name))
        if other is None or other is port:
            continue
        pair = f"{kind} `{name}` and its twin"
        if isinstance(port, Tank) and isinstance(other, Tank):
            yield from _words(pair, (("use", port.use, other.use, other.here),))
            held_oil = (f"held oil: {port.held_oil}", f"held oil: {other.held_oil}")
            yield from _words(
                pair, (("history", *held_oil, other.here), ("space", _space(port), _space(other), other.here))
            )
            yield from _figures(ship, pair, (("capacity", port.capacity, other.capacity),), share=0.25)
        elif isinstance(port, Opening) and isinstance(other, Opening):
            sizes = ((port.height, other.height), (port.off_centre, other.off_centre), (port.bore, other.bore))
            yield from _figures(
                ship, pair, [(w, *s) for w, s in zip(("height", "breadth", "bore"), sizes, strict=True)]
            )
            yield from _along(ship, pair, port, other)
        elif isinstance(port, Appendage) and isinstance(other, Appendage):
            yield from _figures(ship, pair, (("area", port.area, other.area),), share=0.2)
            yield from _figures(
                ship, pair, (("lowest point", port.lowest, other.lowest), ("outreach", port.outreach, other.outreach))
            )
            for a, b in ((port.extent.from_, other.extent.from_), (port.extent.to, other.extent.to)):
                if ship.length is not None and abs(a.x - b.x) > 0.05 * ship.length:
                    yield Notice(CODE, b.at, f"{pair} end at {a} and at {b}", hints=("look at both",))


def _space(tank: Tank) -> str:
    return "a confined space" if tank.confined else "no confined space"


def _words(pair: str, told: Sequence[tuple[str, str, str, Place]]) -> Iterator[Notice]:
    for what, one, other, place in told:
        if one != other:
            yield Notice(CODE, place, f"{pair} differ in {what}: {one}, and {other}", hints=("look at both",))


def _figures(
    ship: Ship, pair: str, told: Sequence[tuple[str, Quantity | None, Quantity | None]], *, share: float = 0.0
) -> Iterator[Notice]:
    """Hold figures against each other, by a share of the greater or by 5 % of her depth."""
    depth = ship.shell.depth if ship.shell is not None else 4.0
    for what, one, other in told:
        if one is None or other is None:
            continue
        room = share * max(abs(one.si), abs(other.si)) if share else max(0.05 * depth, 0.1 * abs(one.si))
        if abs(one.si - other.si) > room:
            message = f"{pair} differ in {what}: {one}, and {like(other.si, one) if one.unit != other.unit else other}"
            yield Notice(CODE, other.at, message, hints=("look at both: one may be a slip",))


def _along(ship: Ship, pair: str, one: Opening | Anode, other: Opening | Anode) -> Iterator[Notice]:
    if ship.length is not None and abs(one.at.x - other.at.x) > 0.03 * ship.length:
        yield Notice(CODE, other.at.at, f"{pair} stand at {one.at} and at {other.at}", hints=("look at both",))


def _anodes(ship: Ship, anodes: Mapping[str, Anode]) -> Iterator[Notice]:
    stands: dict[tuple[float, str, float], str] = {}
    for name, anode in anodes.items():
        first = stands.setdefault((anode.at.x, anode.side, anode.height.si), name)
        if first != name:
            message = f"anodes `{first}` and `{name}` stand in one place, {anode.at}, {anode.side}, {anode.height} up"
            yield Notice(CODE, anode.here, message, hints=("look at the side of both",))
    for name, port in anodes.items():
        match = _ANODE.fullmatch(name)
        if match is None:
            continue
        side = {"p": "port", "s": "starboard"}[match[1]]
        other = anodes.get(f"s{match[2]}") if match[1] == "p" else None
        paired = f"{'s' if match[1] == 'p' else 'p'}{match[2]}" in anodes
        if paired and port.side not in (side, "both", "centreline"):
            message = f"anode `{name}` is named for {side}, and its side is {port.side}"
            yield Notice(CODE, port.here, message, hints=("mend the side or the name",))
        if other is not None:
            pair = f"anode `{name}` and its twin"
            yield from _along(ship, pair, port, other)
            yield from _words(pair, (("alloy", port.alloy, other.alloy, other.here),))
            yield from _figures(ship, pair, (("mass", port.mass, other.mass),), share=0.5)
            yield from _figures(ship, pair, (("height", port.height, other.height),))
