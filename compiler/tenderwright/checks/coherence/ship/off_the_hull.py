"""What is fitted to the shell stands on the shell, at the height, side and frame that are written.

Ground: geometry. A place taken from a drawing or by tape may be off by 3 % of her beam; more is a slip (derived).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.coherence.ship.held import FRAME, LOOK, held
from tenderwright.checks.coherence.ship.shell import Shell
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.vessel import Anode, Appendage, Opening
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity

CODE = "off-the-hull"
_UNDER_WATER = ("sea chest", "suction", "docking plug", "stern tube", "echo sounder", "sonar or log trunk")
_BORES = {
    "sea chest": (0.06, 2.5),
    "suction": (0.012, 1.0),
    "discharge": (0.012, 1.2),
    "scupper": (0.02, 0.4),
    "docking plug": (0.012, 0.12),
    "stern tube": (0.04, 1.5),
    "echo sounder": (0.04, 0.8),
    "hawse pipe": (0.08, 1.5),
}
"""Clear width by kind of opening [m]; common practice, no source."""


def check(ship: Ship) -> Iterator[Notice]:
    """Report openings, leaks, anodes and appendages that hang in the air or lie inside the ship."""
    for opening in ship.package.openings:
        yield from _named(ship, opening)
        yield from _bore(ship, opening)
    if ship.shell is None:
        return
    draft = ship.draft or ship.shell.depth
    for opening in ship.package.openings:
        yield from _opening(ship.shell, opening, draft)
    for anode in ship.package.anodes:
        yield from _anode(ship, ship.shell, anode, draft)
    for appendage in ship.package.appendages:
        yield from _appendage(ship, ship.shell, appendage)
    if ship.package.condition is not None:
        for leak in ship.package.condition.leaks:
            yield from _up_and_along(ship.shell, f"leak `{leak.leak}`", leak.at, leak.height)
            if "garboard" in leak.where.lower():
                most = 0.3 * ship.shell.depth
                against = f"a garboard seam lies below {show(most, 'centre')}"
                yield from held(CODE, f"height of leak `{leak.leak}`", leak.height, -most, most, against)
        duty = ship.package.condition.anodes
        if duty is not None and duty.strip is not None:
            against = f"she draws {show(draft, 'draft')}, and anodes work under water only"
            yield from held(CODE, "height of the strip for anodes", duty.strip.height, 0.0, draft, against)


def _named(ship: Ship, opening: Opening) -> Iterator[Notice]:
    """Hold an opening against its name: what kind it is, and of a docking plug which tank it drains."""
    words = f"{opening.name} {opening.opening.replace('-', ' ')}".lower()
    kinds = [kind for kind in _BORES if kind in words]
    if len(kinds) == 1 and opening.kind not in (kinds[0], "other"):
        message = f"opening `{opening.opening}` is named for a {kinds[0]}, and its kind is {opening.kind}"
        yield Notice(CODE, opening.here, message, hints=("mend the kind or the name",))
    if opening.kind != "docking plug":
        return
    for tank in ship.package.tanks:
        bounds = tank.bounds
        if bounds is None or not opening.opening.endswith(f"-{tank.tank}"):
            continue
        if not bounds.from_.x - 0.05 <= opening.at.x <= bounds.to.x + 0.05:
            message = f"docking plug `{opening.opening}` stands at {opening.at}, and tank `{tank.tank}` lies over"
            yield Notice(CODE, opening.at.at, f"{message} {bounds.from_} to {bounds.to}", hints=(FRAME,))


def _bore(ship: Ship, opening: Opening) -> Iterator[Notice]:
    low, high = _BORES.get(opening.kind, (0.005, 3.0))
    if ship.shell is not None:
        high = min(high, 0.1 * ship.shell.beam)
    what = f"bore of {opening.kind} `{opening.opening}`"
    against = (
        f"one is from {show(low, 'thickness', more=-1)} to {show(high, 'thickness', more=-1)} wide on such a "
        "ship (common practice, no source)"
    )
    yield from held(CODE, what, opening.bore, low, high, against)
    if opening.length is not None and opening.bore is not None and ship.length is not None:
        low, high = 0.4 * opening.bore.si, 0.1 * ship.length
        against = f"it is {opening.bore} wide, in a ship {show(ship.length, 'centre', more=-1)} long"
        yield from held(CODE, f"length of {opening.kind} `{opening.opening}`", opening.length, low, high, against)


def _opening(shell: Shell, opening: Opening, draft: float) -> Iterator[Notice]:
    what = f"{opening.kind} `{opening.opening}`"
    wrong = list(_up_and_along(shell, what, opening.at, opening.height, _reach(opening)))
    yield from wrong
    if wrong:
        return
    x, z, out = opening.at.x, opening.height, opening.off_centre
    if opening.kind in _UNDER_WATER and z.si > 1.1 * draft:
        yield from held(
            CODE, f"height of {what}", z, 0.0, draft, f"she draws {show(draft, 'draft')}, and it works under water"
        )
        return
    if opening.side == "centreline":
        if out is not None and out.si > 0.04 * shell.beam:
            message = f"{what} lies on the centreline and {out} from it"
            yield Notice(CODE, out.at, message, hints=("is the side the right one?",))
        elif opening.kind == "sea chest":
            message = (
                f"{what} lies on the centreline at {z}, where the shell is "
                f"{show(shell.half_breadth(x, z.si), 'centre')} out"
            )
            if shell.half_breadth(x, z.si) > 0.1 * shell.beam:
                yield Notice(CODE, opening.here, message, hints=("is the side the right one?",))
        return
    room = max(0.03 * shell.beam, 0.1)
    if out is not None and shell.distance(x, out.si, z.si) > room:
        there = shell.half_breadth(x, z.si)
        fits = f"at {opening.at} and {z} up the shell of her lines is {show(there, 'centre')} out"
        low, high = max(there - room, 0.0), there + room
        found = list(held(CODE, f"{what}: distance from the centreline", out, low, high, fits, exact=True))
        yield from found or [Notice(CODE, z.at, f"height of {what} is {z}, and {fits}, not {out}", hints=(LOOK,))]


def _reach(opening: Opening) -> float:
    return opening.bore.si if opening.bore is not None else 0.0


def _up_and_along(
    shell: Shell, what: str, at: Position, height: Quantity | None, over: float = 0.0
) -> Iterator[Notice]:
    """Tell of a place beyond the ends of the hull, below its keel or above its deck."""
    if not shell.within(at.x, 0.02 * shell.length):
        message = (
            f"{what} stands at {at}, and the hull runs from {show(shell.aft, 'centre')} to "
            f"{show(shell.forward, 'centre')}"
        )
        yield Notice(CODE, at.at, message, hints=(FRAME,))
        return
    if height is not None:
        low, high = shell.keel(at.x), shell.deck(at.x)
        room = max(0.05 * shell.depth, over)
        against = f"the hull there reaches from {show(low, 'centre')} to {show(high, 'centre')}"
        if abs(at.x) <= 0.03 * shell.length:
            low = min(low, 0.0)  # sternpost, tube and rudder hang below the counter
        yield from held(CODE, f"height of {what}", height, low - room, high + room, against, exact=True)


def _anode(ship: Ship, shell: Shell, anode: Anode, draft: float) -> Iterator[Notice]:
    what, x, z = f"anode `{anode.anode}`", anode.at.x, anode.height
    on = [
        one
        for one in ship.package.appendages
        if one.extent.from_.x - 0.3 <= x <= one.extent.to.x + 0.3 and _side_of(one.side, anode.side)
    ]
    against = f"she draws {show(draft, 'draft')}, and an anode in the air protects nothing"
    wrong = list(held(CODE, f"height of {what}", z, 0.0, draft, against))
    if not wrong and not on:
        wrong = list(_up_and_along(shell, what, anode.at, z))
    elif not wrong and z.si < shell.keel(x) - 0.1 * shell.depth and all(_above(one, shell, z.si) for one in on):
        message = f"{what} stands at {anode.at}, {z} up, and the hull there begins at {show(shell.keel(x), 'centre')}"
        wrong = [Notice(CODE, anode.at.at, message, hints=(FRAME,))]
    yield from wrong


def _above(one: Appendage, shell: Shell, z: float) -> bool:
    return one.lowest is not None and z < one.lowest.si - 0.05 * shell.depth


def _side_of(one: str, other: str) -> bool:
    return one == other or "centreline" in (one, other) or "both" in (one, other)


def _appendage(ship: Ship, shell: Shell, one: Appendage) -> Iterator[Notice]:
    what, kind = one.name.lower(), one.kind
    ends = (one.extent.from_.x, one.extent.to.x)
    over = 0.05 * shell.length
    if not (shell.within(ends[0], over) and shell.within(ends[1], over)):
        message = (
            f"{what} runs over {one.extent}, and the hull from {show(shell.aft, 'centre')} to "
            f"{show(shell.forward, 'centre')}"
        )
        yield Notice(CODE, one.extent.here, message, hints=(FRAME,))
    elif kind in ("rudder", "stern frame") and max(ends) > 0.15 * shell.length:
        message = (
            f"{what} runs over {one.extent}, as far forward as {show(max(ends), 'centre', more=-1)} from the "
            "after perpendicular"
        )
        yield Notice(CODE, one.extent.here, message, hints=(FRAME,))
    elif kind == "rudder" and abs(ends[1] - ends[0]) > 0.1 * shell.length:
        message = (
            f"{what} runs over {one.extent}, {show(abs(ends[1] - ends[0]), 'centre', more=-1)}, in a ship "
            f"{show(shell.length, 'centre', more=-1)} long"
        )
        yield Notice(CODE, one.extent.here, message, hints=(FRAME,))
    elif kind == "bilge keel" and not (min(ends) > 0.12 * shell.length and max(ends) < 0.88 * shell.length):
        message = f"{what} runs over {one.extent}, into the ends, where she has no bilge"
        yield Notice(CODE, one.extent.here, message, hints=(FRAME,))
    keel = ship.package.particulars.keel if ship.package.particulars is not None else None
    below = keel.depth.si if keel is not None and keel.depth is not None else 0.0
    low = float(shell.form.keel_heights.min()) - below - 0.05 * shell.depth
    high = 0.6 * shell.depth if kind == "bilge keel" else shell.depth
    against = (
        f"the underside of her keel is at {show(low + 0.05 * shell.depth, 'centre')} and her deck at "
        f"{show(shell.depth, 'centre')}"
    )
    yield from held(CODE, f"lowest point of {what}", one.lowest, low, high, against)
    middle = sum(ends) / 2
    if one.outreach is not None:
        most = shell.beam / 2 + 0.08 * shell.beam
        if one.side == "centreline":
            most = min(most, 0.12 * shell.beam)
        least = 0.0
        if kind == "bilge keel" and one.lowest is not None and shell.within(middle):
            least = 0.8 * shell.half_breadth(middle, one.lowest.si)
        against = (
            f"her half-beam is {show(shell.beam / 2, 'centre')}, and the shell there {show(least / 0.8, 'centre')} out"
        )
        yield from held(CODE, f"outreach of {what}", one.outreach, least, most, against, exact=True)
    yield from _area(shell, one, abs(ends[1] - ends[0]))
    single = sum(other.kind == kind for other in ship.package.appendages) < 2
    if single and kind in ("rudder", "stern frame") and one.side != "centreline":
        yield Notice(CODE, one.here, f"{what} is to {one.side}, and she has only the one", hints=("centreline?",))


def _area(shell: Shell, one: Appendage, length: float) -> Iterator[Notice]:
    """Hold the area of a rudder or bilge keel, both faces, against the ship."""
    if one.area is None:
        return
    lateral = shell.length * 0.7 * shell.depth
    low, high = 0.0, 0.5 * lateral
    against = f"her hull is {show(shell.length, 'centre', more=-1)} long and {show(shell.depth, 'centre')} deep"
    if one.kind == "rudder":
        low, high = 0.015 * lateral, 0.2 * lateral
        against = f"both faces of a rudder are from {show(low, 'area')} to {show(high, 'area')} on a hull of that side"
    elif one.kind == "bilge keel" and length > 0:
        low, high = 2 * 0.06 * length, 2 * 0.12 * shell.beam * length
        against = (
            f"it is {show(length, 'centre', more=-1)} long, and both faces of one are from {show(low, 'area')} "
            f"to {show(high, 'area')}"
        )
    yield from held(CODE, f"area of {one.name.lower()}", one.area, low, high, against)
