"""Strakes follow each other up the side and their plates along it, and what is told of a strake lies on it.

Ground: geometry, and that plates of one shell are of like thickness: one twice as thick as the rest is a slip
(derived).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from statistics import median

from tenderwright.checks.coherence.ship.held import FRAME, held, like
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.shell_condition import Apart, Doubler, Pitted, WastageZone
from tenderwright.model.vessel import Strake
from tenderwright.notices import Notice, Place
from tenderwright.quantities.display import show
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity

CODE = "plating-contradicts"


def check(ship: Ship) -> Iterator[Notice]:
    """Report strakes with gaps, plates out of order, thicknesses out of the way, and stretches off their strake."""
    strakes = ship.package.strakes
    yield from _girths(ship, strakes)
    yield from _thickness(strakes)
    yield from _inner(strakes)
    for strake in strakes:
        yield from _runs(ship, strake)
        yield from _joints(strake)
    yield from _stretches(ship, {strake.strake: strake for strake in strakes})


def _girths(ship: Ship, strakes: tuple[Strake, ...]) -> Iterator[Notice]:
    whole = 0.0
    if ship.shell is not None:
        whole = ship.shell.girth(ship.shell.length / 2)
    for strake in strakes:
        low, high = strake.from_girth.si, whole * 1.05 if whole else 50.0
        against = f"it begins at {strake.from_girth}"
        if whole:
            against += f", and the girth amidships is {like(whole, strake.to_girth)} from keel to deck edge"
        yield from held(CODE, f"upper edge of strake {strake.strake}", strake.to_girth, low, high, against, exact=True)
    widths = [strake.to_girth.si - strake.from_girth.si for strake in strakes]
    for strake, wide in zip(strakes, widths, strict=True):
        usual = median(widths)
        if len(strakes) > 3 and 0 <= wide < 0.3 * usual:
            message = f"strake {strake.strake} is {show(wide, 'centre')} broad, and others {show(usual, 'centre')}"
            yield Notice(CODE, strake.from_girth.at, message, hints=("look at both of its edges",))
    for below, above in pairwise(strakes):
        wide = below.to_girth.si - below.from_girth.si
        low, high = below.to_girth.si - 0.35 * abs(wide), below.to_girth.si + 0.25 * abs(wide)
        against = f"strake {below.strake} ends at {below.to_girth}"
        what = f"lower edge of strake {above.strake}"
        yield from held(CODE, what, above.from_girth, low, high, against, exact=True)


def _thickness(strakes: tuple[Strake, ...]) -> Iterator[Notice]:
    plates = [(strake, plate) for strake in strakes for plate in strake.plates]
    if not plates:
        return
    usual = median(plate.thickness.si for _, plate in plates)
    for strake, plate in plates:
        low, high = max(0.5 * usual, 0.002), min(2.0 * usual, 0.06)
        if len(plates) < 4:
            low, high = 0.002, 0.06
        against = f"plates of her shell are about {like(usual, plate.thickness)} thick"
        what = f"thickness of strake {strake.strake}, {plate.from_} to {plate.to},"
        yield from held(CODE, what, plate.thickness, low, high, against, exact=True)


def _inner(strakes: tuple[Strake, ...]) -> Iterator[Notice]:
    """Tell of plates that lie inside where their strake lies outside, where strakes go in and out by turns."""
    told = [strake for strake in strakes if strake.plates]
    most = [sum(bool(plate.inner) for plate in strake.plates) * 2 >= len(strake.plates) for strake in told]
    turns = sum(one != other for one, other in pairwise(most))
    if len(told) < 4 or turns < len(told) - 3:
        return
    even = sum(inner == bool(i % 2) for i, inner in enumerate(most)) * 2 >= len(most)
    for i, strake in enumerate(told):
        want = bool(i % 2) == even
        for plate in strake.plates:
            if plate.inner != want:
                how = "inner" if plate.inner else "outer"
                plates = f"plates {plate.from_} to {plate.to} of strake {strake.strake}"
                message = f"{plates} are {how}, and her strakes go in and out by turns"
                hints = ("look at `inner` here and in the strakes beside it",)
                yield Notice(CODE, plate.thickness.at, message, hints=hints)


def _runs(ship: Ship, strake: Strake) -> Iterator[Notice]:
    for plate in strake.plates:
        if plate.from_.x >= plate.to.x:
            message = (
                f"plates of strake {strake.strake} run from {plate.from_} to {plate.to}, which does not run forward"
            )
            yield Notice(CODE, plate.from_.at, message, hints=(FRAME,))
            return
    for one, other in pairwise(strake.plates):
        if abs(one.to.x - other.from_.x) > 0.05:
            message = f"plates of strake {strake.strake} end at {one.to}, and the next begin at {other.from_}"
            yield Notice(CODE, other.from_.at, message, hints=("runs of plate follow each other without a gap",))
    if ship.shell is not None and strake.plates:
        ends = strake.plates[0].from_, strake.plates[-1].to
        for end in ends:
            if not ship.shell.within(end.x, 0.03 * ship.shell.length):
                yield Notice(CODE, end.at, f"strake {strake.strake} reaches to {end}, beyond the hull", hints=(FRAME,))
        if ends[1].x - ends[0].x < 0.6 * ship.shell.length and len(ship.package.strakes) > 3:
            message = f"strake {strake.strake} runs only over {ends[0]} to {ends[1]}"
            yield Notice(CODE, strake.here, message, hints=("look at the frames of its first and last plates",))
    low, high = (strake.plates[0].from_.x, strake.plates[-1].to.x) if strake.plates else (-1e9, 1e9)
    for butt in strake.butts:
        if not low - 0.05 <= butt.x <= high + 0.05:
            yield Notice(
                CODE, butt.at, f"a butt of strake {strake.strake} stands at {butt}, beyond its plates", hints=(FRAME,)
            )
    gaps = [b.x - a.x for a, b in pairwise(strake.butts)]
    usual = median(gaps) if gaps else 0.0
    for (a, b), gap in zip(pairwise(strake.butts), gaps, strict=True):
        if gap <= 0 or gap < 0.35 * usual:
            message = f"butts of strake {strake.strake} stand at {a} and then at {b}, {show(gap, 'centre', more=-1)} on"
            yield Notice(CODE, b.at, message, hints=("butts go from aft forward, a plate apart: look at both frames",))
            return
        if gap > 1.75 * usual and len(gaps) > 3:
            message = (
                f"butts of strake {strake.strake} stand at {a} and at {b}, {show(gap, 'centre', more=-1)} "
                f"apart, and others {show(usual, 'centre', more=-1)}"
            )
            yield Notice(CODE, b.at, message, hints=("look at both frames",))
            return


def _joints(strake: Strake) -> Iterator[Notice]:
    """Hold rivets and pitches against each other, and stretches of joints against the strake."""
    for joint in strake.joints:
        what, rivet = f"the {joint.joint} of strake {strake.strake}", joint.rivet
        against = "rivets of a shell are from 8 mm to 40 mm"
        wrong = list(held(CODE, f"rivets of {what}", rivet, 0.008, 0.04, against, exact=True))
        yield from wrong
        if not wrong:
            against = f"rivets of {rivet} are set from 2.4 to 14 diameters apart"
            yield from held(CODE, f"pitch of {what}", joint.pitch, 2.4 * rivet.si, 14 * rivet.si, against, exact=True)
        if joint.from_ is not None and joint.to is not None:
            yield from _stretch(what, [strake.strake], joint.from_, joint.to, {strake.strake: strake})


def _stretches(ship: Ship, strakes: dict[str, Strake]) -> Iterator[Notice]:
    """Hold each stretch that the condition tells of against the strakes on which it lies."""
    condition = ship.package.condition
    if condition is None:
        return
    for zone in condition.zones:
        if zone.from_ is not None and zone.to is not None:
            yield from _stretch(f"zone `{zone.zone}`", [s.name for s in zone.strakes], zone.from_, zone.to, strakes)
        yield from _bottom(zone, strakes)
        yield from _about_its_tanks(ship, zone)
    yield from _over_each_other(condition.pitted)
    yield from _sides(ship, (*condition.doublers, *condition.apart))
    for pitted in condition.pitted:
        yield from _stretch("pitting", [pitted.strake.name], pitted.from_, pitted.to, strakes)
    for renewed in condition.renewed:
        yield from _stretch(
            f"`{renewed.what}`", [renewed.strake.name], renewed.from_, renewed.to, strakes, longest=0.25
        )
        yield from _thickness_of(f"`{renewed.what}`", renewed.thickness, strakes.get(renewed.strake.name))
    for doubler in condition.doublers:
        what = f"`{doubler.what}`"
        yield from _stretch(what, [doubler.strake.name], doubler.from_, doubler.to, strakes, longest=0.25)
        yield from _thickness_of(what, doubler.thickness, strakes.get(doubler.strake.name))
    for rivets in condition.rivets:
        names = [strake.name for strake in rivets.strakes]
        yield from _stretch(f"{rivets.number} rivets, {rivets.how},", names, rivets.from_, rivets.to, strakes)
    for apart in condition.apart:
        name = f"plate of item {apart.item.name}"
        yield from _stretch(name, [apart.strake.name], apart.from_, apart.to, strakes, longest=0.25)


def _over_each_other(stretches: Sequence[Pitted]) -> Iterator[Notice]:
    """Tell of pitted stretches of one strake and side that lie over each other."""
    for i, one in enumerate(stretches):
        for other in stretches[i + 1 :]:
            alike = one.strake.name == other.strake.name and (
                one.side == other.side or "both" in (one.side, other.side)
            )
            if alike and min(one.to.x, other.to.x) - max(one.from_.x, other.from_.x) > 0.05:
                message = f"pitting of strake {one.strake.name}, {one.from_} to {one.to}, is listed again"
                yield Notice(CODE, other.here, f"{message} as {other.from_} to {other.to}", hints=(FRAME,))


def _sides(ship: Ship, told: Sequence[Doubler | Apart]) -> Iterator[Notice]:
    """Hold the side of a doubler, or of plate of an item of its own, against that of the item."""
    items = ship.package.item_by_name
    for one in told:
        item = items.get(one.item.name) if one.item is not None else None
        side = item.where.side if item is not None else ""
        if side in ("port", "starboard") and one.side in ("port", "starboard") and side != one.side:
            message = f"plate of strake {one.strake.name} lies to {one.side}, and its item {one.item} is to {side}"
            yield Notice(CODE, one.here, message, hints=("look at both sides",))


def _thickness_of(what: str, stated: Quantity | None, strake: Strake | None) -> Iterator[Notice]:
    if strake is not None and strake.plates:
        usual = median(plate.thickness.si for plate in strake.plates)
        against = f"strake {strake.strake} was built {show(usual, 'thickness')} thick"
        yield from held(CODE, f"thickness of {what}", stated, 0.5 * usual, 2.0 * usual, against, exact=True)


def _about_its_tanks(ship: Ship, zone: WastageZone) -> Iterator[Notice]:
    """Tell of a zone that is named for tanks and reaches far beyond them."""
    tanks = [tank for tank in ship.package.tanks if tank.bounds is not None and tank.name.lower() in zone.name.lower()]
    if not tanks or zone.from_ is None or zone.to is None or ship.length is None:
        return
    room = 0.05 * ship.length
    low = min(tank.bounds.from_.x for tank in tanks if tank.bounds is not None) - room
    high = max(tank.bounds.to.x for tank in tanks if tank.bounds is not None) + room
    for end in (zone.from_, zone.to):
        if not low <= end.x <= high:
            names = " and ".join(f"`{tank.tank}`" for tank in tanks)
            message = f"zone `{zone.zone}` is named for {names}, and reaches to {end}"
            yield Notice(CODE, end.at, message, hints=(FRAME,))


def _bottom(zone: WastageZone, strakes: dict[str, Strake]) -> Iterator[Notice]:
    """Tell of a zone that is named for the bottom and takes in a strake high up the side."""
    whole = max((strake.to_girth.si for strake in strakes.values()), default=0.0)
    words = f"{zone.zone} {zone.name}".lower()
    for reference in zone.strakes:
        strake = strakes.get(reference.name)
        if strake is not None and "bottom" in words and strake.from_girth.si > 0.65 * whole and len(strakes) > 3:
            message = f"zone `{zone.zone}` is named for the bottom, and takes in strake {strake.strake}, {strake.name}"
            yield Notice(CODE, reference.at, message, hints=("look at the letter of the strake",))


def _stretch(
    what: str,
    names: list[str],
    from_: Position,
    to: Position,
    strakes: dict[str, Strake],
    *,
    longest: float = 1.1,
) -> Iterator[Notice]:
    if from_.x >= to.x:
        message = f"{what} lies from {from_} to {to}, which does not run forward"
        yield Notice(CODE, from_.at, message, hints=(FRAME,))
        return
    runs = [strakes[name].plates for name in names if name in strakes and strakes[name].plates]
    if not runs:
        return
    low, high = min(run[0].from_.x for run in runs), max(run[-1].to.x for run in runs)
    if from_.x < low - 0.6 or to.x > high + 0.6:
        end: tuple[Position, Place] = (from_, from_.at) if from_.x < low - 0.6 else (to, to.at)
        yield Notice(CODE, end[1], f"{what} reaches to {end[0]}, beyond strake {' and '.join(names)}", hints=(FRAME,))
    elif to.x - from_.x > longest * (high - low):
        message = f"{what} is {show(to.x - from_.x, 'centre', more=-1)} long, over {from_} to {to}"
        yield Notice(CODE, from_.at, message, hints=(FRAME,))
