"""Weights lie in or on the ship, are of a size that a list of weights holds, and go the way their words say.

Ground: geometry and the sense of words. What stands on deck is no higher than twice her depth and half again unless it
is a mast, and what lies in a hold is below the deck (derived).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.coherence.ship.held import FRAME, held, like
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.docking_plan import MovedWeight
from tenderwright.model.lightship import LightshipWeight, Weight
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "weight-out-of-place"
_BELOW = re.compile(
    r"\b(ballast|holds?|bilges?|engine room|boiler room|forepeak|afterpeak|double bottom|chain locker|bunkers?|keel|"
    r"shell plate|sea valves?|ceiling)\b"
)
_ABOVE = re.compile(r"\b(on deck|buoy deck|boat deck|davits|lifeboat|mast|funnel|wheelhouse|bridge)\b")
_FORE = re.compile(r"\b(forward|forepeak|forecastle|chain locker|bow|fore end)\b")
_AFT = re.compile(r"\b(aft|afterpeak|after|rudder|propeller, off|stern)\b")
_GOES = re.compile(r"\b(landed|removed|taken off|shovelled out|unshipped|off the shaft|scrapped|out of the)\b")
_COMES = re.compile(r"\b(fitted|stowed|shipped|new|more than came off|aboard)\b")
_SIDE = re.compile(r"\b(port|starboard)\b")


def check(ship: Ship) -> Iterator[Notice]:
    """Report weights that lie off the ship, weigh more than she can bear, or have the sign of the other way."""
    lightship, plan = ship.package.lightship, ship.package.docking_plan
    if lightship is not None:
        yield from _lightship(ship, lightship.lightship)
        for weight in lightship.weights:
            yield from _place(ship, weight)
            yield from _size(ship, weight, lightship.lightship.mass.si)
    if plan is not None:
        aboard = lightship.lightship.mass.si if lightship is not None else None
        for moved in plan.moved_while_dry:
            yield from _place(ship, moved)
            yield from _way(moved)
            if aboard is not None:
                yield from _size(ship, moved, aboard)
            yield from _zinc(ship, moved)


def _lightship(ship: Ship, light: LightshipWeight) -> Iterator[Notice]:
    particulars = ship.package.particulars
    if particulars is None:
        return
    dimensions = particulars.dimensions
    length, beam, depth = dimensions.length_between_perpendiculars, dimensions.beam, dimensions.depth
    box = length.si * beam.si * dimensions.draft.si * 1025
    against = (
        f"a ship {length} by {beam} that draws {dimensions.draft} weighs no more than {like(0.85 * box, light.mass)}"
    )
    yield from held(CODE, "mass of the lightship", light.mass, 0.1 * box, 0.85 * box, against)
    if particulars.displacement is not None:
        against = f"she displaces {particulars.displacement} at her usual draft"
        most = 1.02 * particulars.displacement.si
        yield from held(CODE, "mass of the lightship", light.mass, 0.3 * most, most, against, exact=True)
    against = f"she is {length} long, and a ship floats level with her weight near amidships"
    yield from held(CODE, "centre of the lightship", light.at, 0.35 * length.si, 0.6 * length.si, against, exact=True)
    against = f"she is {depth} deep"
    yield from held(CODE, "height of the lightship's centre", light.height, 0.45 * depth.si, 1.3 * depth.si, against)
    against = "a ship that floats upright has her weight on the centreline"
    most = 0.02 * beam.si
    yield from held(
        CODE, "distance of the lightship's centre from the centreline", light.off_centre, -most, most, against
    )


def _place(ship: Ship, weight: Weight | MovedWeight) -> Iterator[Notice]:
    shell, length = ship.shell, ship.length
    what, words, x = f"`{weight.what}`", weight.what.lower(), weight.at.x
    if shell is not None and not shell.within(x, 0.05 * shell.length):
        message = (
            f"{what} lies at {weight.at}, and the hull runs from {show(shell.aft, 'centre')} to "
            f"{show(shell.forward, 'centre')}"
        )
        yield Notice(CODE, weight.at.at, message, hints=(FRAME,))
    elif length is not None:
        fore, aft = _FORE.search(words), _AFT.search(words)
        if (fore and not aft and x < 0.5 * length) or (aft and not fore and x > 0.5 * length):
            message = f"{what} lies at {weight.at}, which is in the {'after' if fore else 'fore'} half of the ship"
            yield Notice(CODE, weight.at.at, message, hints=(FRAME,))
    particulars = ship.package.particulars
    if particulars is None:
        return
    depth, beam = particulars.dimensions.depth.si, particulars.dimensions.beam.si
    deck = shell.deck(min(max(x, shell.aft), shell.forward)) if shell is not None else depth
    low, high, against = -0.05 * depth, 2.5 * depth, f"her deck there is {show(deck, 'centre')} up"
    if particulars.dimensions.air_draft is not None:
        high = max(min(high, particulars.dimensions.air_draft.si + particulars.dimensions.draft.si), deck)
    if _BELOW.search(words) and not _ABOVE.search(words):
        high, against = deck, f"it lies below her deck, which there is {show(deck, 'centre')} up"
    elif _ABOVE.search(words):
        low, against = 0.7 * depth, f"it stands on deck, which there is {show(deck, 'centre')} up"
    if isinstance(weight, MovedWeight) and "propeller" in words:
        high = deck
    yield from held(CODE, f"height of {what}", weight.height, low, high, against, exact=True)
    if weight.off_centre is not None:
        most = 0.5 * beam + 0.1 * beam
        against = f"her half-beam is {show(beam / 2, 'centre')}"
        wrong = list(held(CODE, f"distance of {what} from the centreline", weight.off_centre, -most, most, against))
        sides = set(_SIDE.findall(words))
        if not wrong and len(sides) == 1 and weight.off_centre.si != 0:
            side = sides.pop()
            if (weight.off_centre.si > 0) != (side == "port"):
                message = f"{what} lies {weight.off_centre} from the centreline, and port is counted positive"
                wrong = [Notice(CODE, weight.off_centre.at, message, hints=("look at the sign, or at the words",))]
        yield from wrong


def _size(ship: Ship, weight: Weight | MovedWeight, ship_mass: float) -> Iterator[Notice]:
    mass, most = weight.mass, 0.6 * ship_mass  # the ballast of a sailing ship: common practice, no source
    if "ballast" not in weight.what.lower():
        most = 0.05 * ship_mass if isinstance(weight, MovedWeight) else 0.15 * ship_mass
    against = f"the ship herself weighs {show(ship_mass, 'weight', more=-1)}"
    yield from held(CODE, f"mass of `{weight.what}`", mass, -most, most, against)
    least = 2e-5 * ship_mass
    if 0 < abs(mass.si) < least and isinstance(weight, Weight):
        message = f"mass of `{weight.what}` is {mass}, and {against}: nobody lists so little"
        hints = (f"`{mass.magnitude:g} t` would fit: look at its unit",) if mass.unit == "kg" else ()
        yield Notice(CODE, mass.at, message, hints=hints)
    if isinstance(weight, Weight) and mass.si > 0 and re.search(r"\b(landed|removed|taken off)\b", weight.what.lower()):
        message = f"`{weight.what}` is gone, and its mass, {mass}, is added"
        yield Notice(CODE, mass.at, message, hints=("write what was taken off with a minus",))


def _way(moved: MovedWeight) -> Iterator[Notice]:
    words = moved.what.lower()
    goes, comes = _GOES.search(words), _COMES.search(words)
    if goes and not comes and moved.mass.si > 0:
        message = f"`{moved.what}` goes, and its mass, {moved.mass}, is added"
        yield Notice(CODE, moved.mass.at, message, hints=("write what goes with a minus",))
    elif comes and not goes and moved.mass.si < 0:
        message = f"`{moved.what}` comes aboard, and its mass, {moved.mass}, is subtracted"
        yield Notice(CODE, moved.mass.at, message, hints=("write what comes without a minus",))


def _zinc(ship: Ship, moved: MovedWeight) -> Iterator[Notice]:
    """Hold zinc that is moved against the anodes of the ship."""
    words, zinc = moved.what.lower(), sum(anode.mass.si for anode in ship.package.anodes)
    if zinc and re.search(r"\b(zincs?|anodes?)\b", words) and "bronze" not in words:
        against = f"all her anodes weigh {show(zinc, 'small part', more=-1)} when new"
        yield from held(CODE, f"mass of `{moved.what}`", moved.mass, -2 * zinc, 2 * zinc, against)
