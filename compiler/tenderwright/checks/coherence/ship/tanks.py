"""A tank is what its name says, its pipe stands in it, and what it holds goes with its use.

Ground: geometry and the sense of words. That a tank which holds or held oil says so decides hot work and entry.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from tenderwright.calculations.ship.tanks import table_readings
from tenderwright.checks.coherence.ship.held import FRAME, held
from tenderwright.checks.coherence.ship.shell import Shell
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.particulars import Particulars
from tenderwright.model.tank import Bounds, CapacityPlan, SoundingPipe, Tank
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

CODE = "tank-contradicts"
_USES = (
    ("fresh water", "fresh water"),
    ("feed water", "fresh water"),
    ("drinking water", "fresh water"),
    ("oil fuel", "fuel oil"),
    ("fuel oil", "fuel oil"),
    ("lubricating", "lubricating oil"),
    ("bilge", "bilge or slops"),
    ("slop", "bilge or slops"),
    ("ballast", "ballast"),
    ("cofferdam", "cofferdam"),
)
_HEAVIEST = 1030.0
"""Density of the heaviest liquid that a tank is filled with, kg/m3."""
_MORE = {"sounding": "deeper", "ullage": "lesser"}
_EITHER = "mend the use or the name"
_OIL = ("diesel oil", "heavy oil", "lubricating oil")
_HOLDS = {
    "ballast": ("sea water", "fresh water", "none"),
    "fresh water": ("fresh water", "none"),
    "fuel oil": ("diesel oil", "heavy oil", "oily water", "none"),
    "lubricating oil": ("lubricating oil", "oily water", "none"),
    "bilge or slops": ("oily water", "sea water", "fresh water", "none"),
    "cofferdam": ("sea water", "fresh water", "oily water", "none"),
    "void": ("sea water", "fresh water", "oily water", "none"),
}
"""What may be in a tank of each use."""


def check(ship: Ship) -> Iterator[Notice]:
    """Report tanks whose name, use, contents, place and pipe contradict each other."""
    for tank in ship.package.tanks:
        yield from _use(tank)
        if tank.bounds is not None:
            yield from _place(ship, tank, tank.bounds)
            if tank.pipe is not None:
                yield from _pipe(ship.shell, tank, tank.bounds, tank.pipe)
        if tank.plan is not None and ship.package.particulars is not None:
            yield from _planned(ship.package.particulars, tank, tank.plan)
        yield from _table(tank)
    yield from _overlaps(ship)
    yield from _afterwards(ship)


def _use(tank: Tank) -> Iterator[Notice]:
    name = f"{tank.name} {tank.tank.replace('-', ' ')}".lower()
    uses = [use for words, use in _USES if words in name]
    if uses and tank.use not in uses and not (tank.use == "void" and "cofferdam" in uses):
        yield Notice(
            CODE, tank.here, f"tank `{tank.tank}` is named for {uses[0]}, and its use is {tank.use}", hints=(_EITHER,)
        )
    elif not uses and "peak" in name and tank.use not in ("ballast", "void", "fresh water", "cofferdam"):
        message = f"tank `{tank.tank}` is a peak, and its use is {tank.use}: no oil is carried against the shell there"
        yield Notice(CODE, tank.here, message, hints=(_EITHER,))
    contents = tank.contents
    liquid = contents.liquid
    told = {"sounding": contents.sounding, "volume": contents.volume, "filling": contents.full, "mass": contents.mass}
    for what, stated in told.items():
        if liquid == "none" and stated is not None and stated.si > 0:
            message = f"nothing is said to be in tank `{tank.tank}`, and its {what} is {stated}"
            yield Notice(CODE, stated.at, message, hints=("name the liquid, or write nothing of it",))
    if liquid not in _HOLDS.get(tank.use, (liquid,)):
        message = f"tank `{tank.tank}` is for {tank.use}, and {liquid} is in it"
        yield Notice(CODE, tank.contents.here, message, hints=("mend the use or the liquid",))
    oil = tank.use in ("fuel oil", "lubricating oil", "bilge or slops") or liquid in (*_OIL, "oily water")
    oil = oil or any(use in ("fuel oil", "lubricating oil") for use in uses)
    if oil and not tank.held_oil:
        message = f"tank `{tank.tank}` is said never to have held oil, and its use is {tank.use}, with {liquid} in it"
        yield Notice(CODE, tank.here, message, hints=("write `held_oil: true`: hot work and entry go by it",))
    if not tank.confined and tank.use in ("cofferdam", "void", "ballast", "fuel oil") and tank.bounds is not None:
        message = f"tank `{tank.tank}`, {tank.use}, is said to be no confined space"
        yield Notice(CODE, tank.here, message, hints=("write `confined: true`: entry goes by it",))
    share = tank.permeability
    against = "what is left beside frames and floors is from 50 % to 100 % of a space (common practice, no source)"
    yield from held(CODE, f"permeability of tank `{tank.tank}`", share, 0.5, 1.0, against)


def _place(ship: Ship, tank: Tank, bounds: Bounds) -> Iterator[Notice]:
    what, length = f"tank `{tank.tank}`", ship.length
    name = f"{tank.name} {tank.tank.replace('-', ' ')}".lower()
    middle = (bounds.from_.x + bounds.to.x) / 2
    if length is not None:
        parts = (
            ("forepeak", 0.75, 1.2),
            ("fore peak", 0.75, 1.2),
            ("afterpeak", -0.2, 0.25),
            ("after peak", -0.2, 0.25),
        )
        for words, low, high in (*parts, ("chain locker", 0.6, 1.1), ("shaft", -0.1, 0.5)):
            if words in name and not low * length <= middle <= high * length:
                message = f"{what} lies over {bounds.from_} to {bounds.to}, which is not the place for the {words}"
                yield Notice(CODE, bounds.here, message, hints=(FRAME,))
    shell = ship.shell
    if shell is None:
        return
    deck = shell.deck(min(max(middle, shell.aft), shell.forward))
    by_shell = "shell" in (bounds.bottom, bounds.outboard)
    most = 0.4 * shell.depth if "double bottom" in name else (1.03 * deck if by_shell else deck + 0.6 * shell.depth)
    against = (
        f"the deck there is {show(deck, 'centre')} up"
        if most > deck
        else f"a double bottom is no deeper than {show(most, 'centre')}"
    )
    yield from held(CODE, f"top of {what}", bounds.top, 0.0, most, against, exact=True)
    if isinstance(bounds.outboard, Quantity):
        against = f"her half-beam is {show(shell.beam / 2, 'centre')}"
        yield from held(CODE, f"outboard side of {what}", bounds.outboard, 0.0, 0.52 * shell.beam, against, exact=True)
    for end in (bounds.from_, bounds.to):
        if not shell.within(end.x, 0.02 * shell.length):
            yield Notice(
                CODE,
                end.at,
                f"{what} ends at {end}, and the hull runs from {show(shell.aft, 'centre')} to "
                f"{show(shell.forward, 'centre')}",
                hints=(FRAME,),
            )


def _planned(particulars: Particulars, tank: Tank, plan: CapacityPlan) -> Iterator[Notice]:
    """Hold what the capacity plan gives of a tank against her dimensions."""
    what, size = f"tank `{tank.tank}`", particulars.dimensions
    over, length = size.length_overall.si, size.length_between_perpendiculars.si
    for end in (plan.at, *((plan.from_,) if plan.from_ else ()), *((plan.to,) if plan.to else ())):
        if not length - over <= end.x <= over:
            yield Notice(
                CODE, end.at, f"{what} is at {end}, and she is {size.length_overall} long over all", hints=(FRAME,)
            )
            return
    ends = sorted((plan.from_.x, plan.to.x)) if plan.from_ and plan.to else None
    if ends is not None and not ends[0] < plan.at.x < ends[1]:
        message = f"the centre of {what}, {plan.at}, is not between {plan.from_} and {plan.to}"
        yield Notice(CODE, plan.at.at, message, hints=(FRAME,))
        return
    long = ends[1] - ends[0] if ends is not None else over
    half = size.beam.si / 2
    broad = half if tank.side in ("port", "starboard") else size.beam.si
    against = f"her beam is {size.beam}"
    yield from held(CODE, f"centre of {what} from the centreline", plan.off_centre, -half, half, against, exact=True)
    yield from held(CODE, f"breadth of {what}", plan.breadth, 0.0, 1.02 * size.beam.si, against, exact=True)
    against = f"her depth is {size.depth}"
    yield from held(CODE, f"height of the centre of {what}", plan.height, 0.0, 1.6 * size.depth.si, against, exact=True)
    most, against = long * broad**3 / 12, f"{show(long, 'distance')} by {show(broad, 'distance')} has no greater"
    yield from held(CODE, f"free surface of {what}", plan.inertia, 0.0, 1.05 * most, against)
    yield from held(CODE, f"free-surface moment of {what}", plan.moment, 0.0, 1.1 * most * _HEAVIEST, against)
    against = f"{show(long, 'distance')} of her, {size.beam} by {size.depth}, hold less"
    yield from held(CODE, f"capacity of {what}", tank.capacity, 0.0, 1.3 * long * size.beam.si * size.depth.si, against)


def _pipe(shell: Shell | None, tank: Tank, bounds: Bounds, pipe: SoundingPipe) -> Iterator[Notice]:
    what = f"sounding pipe of tank `{tank.tank}`"
    if not bounds.from_.x - 0.02 <= pipe.at.x <= bounds.to.x + 0.02:
        yield Notice(
            CODE,
            pipe.at.at,
            f"{what} stands at {pipe.at}, and the tank lies over {bounds.from_} to {bounds.to}",
            hints=(FRAME,),
        )
        return
    out = pipe.off_centre
    if out is not None:
        low, high = _breadths(shell, tank, bounds)
        against = f"the tank lies from {show(low, 'centre')} to {show(high, 'centre')}, port counted positive"
        yield from held(CODE, f"distance of the {what} from the centreline", out, low - 0.05, high + 0.05, against)
    bottom = bounds.bottom.si if isinstance(bounds.bottom, Quantity) else 0.0
    floor = bottom
    if shell is not None and bounds.bottom == "shell" and shell.within(pipe.at.x):
        floor = bottom = shell.bottom(pipe.at.x, abs(out.si) if out is not None else 0.0) or 0.0
    room = max(0.35 * (bounds.top.si - bottom), 0.15)
    against = f"the bottom of the tank there is {show(floor, 'centre')} up, and its top {bounds.top}"
    slack = 0.15 if bounds.bottom == "shell" else 0.05
    yield from held(CODE, f"foot of the {what}", pipe.foot, floor - slack, floor + room, against, exact=True)
    if pipe.head is not None:
        deck = shell.deck(pipe.at.x) if shell is not None and shell.within(pipe.at.x) else bounds.top.si + 10.0
        highest = deck + 3.0
        against = f"the top of the tank is {bounds.top} up, and a pipe ends at the deck above it"
        yield from held(CODE, f"head of the {what}", pipe.head, bounds.top.si - 0.01, highest, against)
    if pipe.slant is not None:
        yield from held(
            CODE, f"slant of the {what}", pipe.slant, -0.8, 0.8, "no rod goes down a pipe that lies so flat"
        )


def _breadths(shell: Shell | None, tank: Tank, bounds: Bounds) -> tuple[float, float]:
    """Give how far the tank reaches to starboard and to port [m]."""
    outer = (
        bounds.outboard.si if isinstance(bounds.outboard, Quantity) else (shell.beam / 2 if shell is not None else 50.0)
    )
    inner = bounds.inboard.si
    return {"port": (inner, outer), "starboard": (-outer, -inner)}.get(tank.side, (-outer, outer))


def _table(tank: Tank) -> Iterator[Notice]:
    word, readings = table_readings(tank)
    rows = sorted(zip(readings, tank.table, strict=False), key=lambda one: one[0], reverse=word == "ullage")
    for (at, before), (deeper, row) in pairwise(rows):
        if at == deeper or row.volume.si < before.volume.si:
            fall = f"from {before.volume} at {getattr(before, word)} to {row.volume} at {getattr(row, word)}"
            message = f"the {word} table of tank `{tank.tank}` falls {fall}"
            yield Notice(CODE, row.volume.at, message, hints=(f"a {_MORE[word]} {word} is more liquid",))
            return
    if rows and tank.capacity is not None:
        last = rows[-1][1].volume
        against = f"the last row of its table holds {last}"
        low, high = 0.93 * last.si, 1.4 * last.si
        yield from held(CODE, f"capacity of tank `{tank.tank}`", tank.capacity, low, high, against, exact=True)


def _overlaps(ship: Ship) -> Iterator[Notice]:
    """Tell of two tanks for liquids that would lie in one place."""
    boxes = []
    for tank in ship.package.tanks:
        if tank.bounds is None or tank.use in ("void", "cofferdam") or tank.bounds.from_.x >= tank.bounds.to.x:
            continue
        low, high = _breadths(ship.shell, tank, tank.bounds)
        bottom = tank.bounds.bottom.si if isinstance(tank.bounds.bottom, Quantity) else 0.0
        spans = ((tank.bounds.from_.x, tank.bounds.to.x), (low, high), (bottom, tank.bounds.top.si))
        boxes.append((tank, spans))
    for i, (one, a) in enumerate(boxes):
        for other, b in boxes[i + 1 :]:
            share = 1.0
            for (low, high), (from_, to) in zip(a, b, strict=True):
                least = min(high - low, to - from_)
                share *= max(min(high, to) - max(low, from_), 0.0) / least if least > 0 else 0.0
            if share > 0.1:
                message = f"tank `{other.tank}` would lie in the place of tank `{one.tank}`"
                place = other.bounds.here if other.bounds is not None else other.here
                yield Notice(CODE, place, message, hints=("look at the frames, heights, breadths and sides of both",))


def _afterwards(ship: Ship) -> Iterator[Notice]:
    """Hold what is in the tanks at undocking against the tanks."""
    plan, tanks = ship.package.docking_plan, {tank.tank: tank for tank in ship.package.tanks}
    for changed in plan.tanks_at_undocking if plan is not None else ():
        tank = tanks.get(changed.tank.name)
        if tank is None:
            continue
        if changed.liquid not in _HOLDS.get(tank.use, (changed.liquid,)):
            message = f"tank `{tank.tank}` is for {tank.use}, and is to be floated with {changed.liquid}"
            yield Notice(CODE, changed.here, message, hints=("mend the use or the liquid",))
        if tank.capacity is not None:
            against = f"tank `{tank.tank}` holds {tank.capacity}"
            yield from held(CODE, "volume at undocking", changed.volume, 0.0, 1.01 * tank.capacity.si, against)
