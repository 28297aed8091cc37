"""Her particulars agree with each other.

Ground: geometry; what is left between two ways of measuring one length is derived, and wide. Proportions beyond which
no ship goes: common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import numpy as np

from tenderwright.calculations.median import median
from tenderwright.calculations.ship.shafts import height_of, tube_of
from tenderwright.checks.coherence.ship.held import FRAME, held, held_number, like
from tenderwright.checks.coherence.ship.shell import Shell
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.particulars import Dimensions, Particulars, Propeller, Shaft
from tenderwright.model.vessel import Opening
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "dimensions-disagree"
_PLATED = ("riveted", "welded", "riveted and welded")
_RIVETED = re.compile(r"\b(single|double|treble|rivet)")


def check(ship: Ship) -> Iterator[Notice]:
    """Report dimensions that contradict each other or the table of offsets."""
    particulars = ship.package.particulars
    if particulars is None:
        return
    dimensions = particulars.dimensions
    if ship.shell is not None:
        yield from _keel(particulars, ship.shell)
    elif ship.package.offsets is None:
        yield from _proportions(dimensions)
    yield from _heights(dimensions, ship.shell)
    yield from _built(ship, particulars)
    yield from _shafts(ship, particulars)


def _built(ship: Ship, particulars: Particulars) -> Iterator[Notice]:
    """Hold what she is built of and how against when she was built, and against what is told of her strakes."""
    hull, year = particulars.hull, particulars.built
    if hull is None or year is None:
        return
    from_, to = {"wrought iron": (1820, 1910), "mild steel": (1860, 2200)}.get(hull.material, (0, 9999))
    if not from_ <= year <= to:
        message = f"she was built in {year} of {hull.material}, of which ships were built from {from_} to {to}"
        yield Notice(CODE, particulars.here, message, hints=("look at the year and at the material",))
    if (hull.fastening in _PLATED) != hull.of_metal and hull.material != "composite":
        message = f"her hull is of {hull.material}, and is said to be fastened by `{hull.fastening}`"
        yield Notice(CODE, particulars.here, message, hints=("mend `material` or `fastening`",))
    if hull.of_metal and (hull.wood is not None or ship.package.timber is not None):
        message = f"her hull is of {hull.material}, and she has the planking of a hull of wood"
        hint = "write `material: wood`, or delete `wood` here and vessel/timber.yaml"
        yield Notice(CODE, particulars.here, message, hints=(hint,))
    strakes = ship.package.strakes
    riveted = [one.strake for one in strakes if one.joints or _RIVETED.search(one.riveting.lower())]
    if hull.fastening == "welded" and riveted:
        message = f"her hull is said to be welded, and strake {riveted[0]} to be riveted"
        yield Notice(CODE, particulars.here, message, hints=("mend `fastening`, or the strakes",))


def _proportions(stated: Dimensions) -> Iterator[Notice]:
    length, beam, draft = stated.length_between_perpendiculars, stated.beam, stated.draft.si
    against = f"a ship {length} long is from {like(length.si / 14, beam)} to {like(length.si / 1.6, beam)} broad"
    yield from held(CODE, "beam", beam, length.si / 14, length.si / 1.6, against, exact=True)
    overall = stated.length_overall
    against = f"she is {length} long between perpendiculars"
    yield from held(CODE, "length overall", overall, 0.995 * length.si, 1.4 * length.si, against, exact=True)
    against = f"a ship {beam} broad draws from {like(beam.si / 10, stated.draft)} to {like(beam.si, stated.draft)}"
    yield from held(CODE, "draft", stated.draft, beam.si / 10, beam.si, against, exact=True)
    against = f"she draws {stated.draft} and is {length} long"
    yield from held(CODE, "depth", stated.depth, draft, length.si / 3, against, exact=True)


def _heights(stated: Dimensions, shell: Shell | None) -> Iterator[Notice]:
    draft, depth, air = stated.draft, stated.depth, stated.air_draft
    if shell is not None:
        against = f"she is {depth} deep"
        yield from held(CODE, "draft", draft, 0.15 * depth.si, depth.si, against, exact=True)
    if air is not None:
        top = float(shell.form.deck_heights.max()) if shell is not None else depth.si
        least, most = max(top - draft.si, 0.0), 1.3 * stated.length_overall.si
        against = f"her deck stands {like(least, air)} above the water, and no mast is taller than {like(most, air)}"
        yield from held(CODE, "air draft", air, least, most, against, exact=True)


def _keel(particulars: Particulars, shell: Shell) -> Iterator[Notice]:
    keel = particulars.keel
    flat = shell.form.half_breadths[:, 0][shell.form.keel_heights < shell.form.waterlines[0] + 1e-6]
    if flat.size:
        width = 2 * median(flat)
        if keel.kind == "bar" and width > 0:
            against = f"her lines stand {like(width, keel.width)} apart at the keel"
            yield from held(CODE, "width of the bar keel", keel.width, 0.5 * width, 2 * width, against)
    if keel.depth is not None:
        against = "a bar keel is from half to five times as deep as it is wide"
        low, high = (0.4 * keel.width.si, 5 * keel.width.si) if keel.kind == "bar" else (0.0, 0.15 * shell.depth)
        yield from held(CODE, "depth of the keel", keel.depth, low, high, against)
    if keel.kind == "flat" and keel.depth is not None and keel.depth.si > 0.5 * keel.width.si:
        message = f"a flat keel {keel.width} wide stands {keel.depth} below the keel line, as only a bar keel does"
        yield Notice(CODE, keel.here, message, hints=("look at `kind` and at the depth",))
    ends = sorted((keel.straight.from_.x, keel.straight.to.x))
    x, heights = shell.form.stations, shell.form.keel_heights
    line = median(heights)
    run = x[np.abs(heights - line) <= 0.004 * shell.depth]
    along = (x >= ends[0]) & (x <= ends[1])
    off = np.abs(heights - line)
    if (off[along] > 0.03 * shell.depth).any():
        at = float(x[along & (off > 0.03 * shell.depth)][0])
        message = (
            f"the straight keel runs over {keel.straight}, and her lines have the keel off its line at "
            f"{show(at, 'centre')}"
        )
        yield Notice(CODE, keel.straight.here, message, hints=("look for another frame, or mend the height there",))
    elif run.size > 3 and ends[1] - ends[0] < 0.7 * (run[-1] - run[0]):
        message = (
            f"the straight keel is {show(ends[1] - ends[0], 'centre', more=-1)} long over {keel.straight}, "
            f"and her lines have it straight over {show(run[-1] - run[0], 'centre', more=-1)}"
        )
        yield Notice(CODE, keel.straight.here, message, hints=(FRAME,))


def _shafts(ship: Ship, particulars: Particulars) -> Iterator[Notice]:
    for shaft in particulars.shafts:
        tube = tube_of(shaft, ship.package.openings)
        if tube is not None and tube.side != shaft.side:
            message = f"shaft `{shaft.shaft}` lies {_lies(shaft.side)}, and its stern tube {_lies(tube.side)}"
            yield Notice(CODE, shaft.here, message, hints=("look at the side of both",))
        if shaft.propeller is not None:
            yield from _propeller(particulars, shaft, shaft.propeller, tube)


def _lies(side: str) -> str:
    return "on the centreline" if side == "centreline" else f"to {side}"


def _propeller(particulars: Particulars, shaft: Shaft, propeller: Propeller, tube: Opening | None) -> Iterator[Notice]:
    stated = particulars.dimensions
    draft, size = stated.draft, propeller.diameter.si
    against = f"she draws {draft}"
    yield from held(CODE, "diameter of the propeller", propeller.diameter, 0.15 * draft.si, 1.1 * draft.si, against)
    yield from held_number(
        CODE, "the number of blades", propeller.blades, shaft.here, 2, 8, "a propeller has from 2 to 8"
    )
    if propeller.mass is not None:
        low, high = 15.0 * size**3, 350.0 * size**3
        against = f"one of {propeller.diameter} weighs from {like(low, propeller.mass)} to {like(high, propeller.mass)}"
        yield from held(CODE, "mass of the propeller", propeller.mass, low, high, against)
    length = stated.length_between_perpendiculars.si
    if propeller.at is not None and 0.15 * length < propeller.at.x < 0.85 * length:
        message = (
            f"the propeller stands at {propeller.at}, {show(propeller.at.x, 'centre', more=-1)} from the after "
            "perpendicular"
        )
        yield Notice(CODE, propeller.at.at, message, hints=(FRAME,))
    height = height_of(shaft, tube)
    if height is not None:
        below = height.si - size / 2
        keel = -(particulars.keel.depth.si if particulars.keel.depth is not None else 0.0)
        if below < keel - 0.05 * size:
            reach = f"{show(keel - below, 'centre')} below the keel"
            message = f"a propeller of {propeller.diameter} at a shaft {height} up would reach {reach}"
            hints = ("look at the diameter and at the height of the shaft",)
            yield Notice(CODE, propeller.diameter.at, message, hints=hints)
    if tube is not None and propeller.at is not None and abs(propeller.at.x - tube.at.x) > 0.15 * length:
        message = f"the propeller stands at {propeller.at}, and its stern tube at {tube.at}"
        yield Notice(CODE, propeller.at.at, message, hints=(FRAME,))
