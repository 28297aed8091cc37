"""The docking plan from the side: hull on her blocks, waterlines as she lands, and the load on every keel block."""

from __future__ import annotations

from math import degrees

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.landing.landing import BothLandings
from tenderwright.calculations.landing.settling import Landing
from tenderwright.calculations.ship.block_places import KeelBlockResult, side_block_places, side_block_seats
from tenderwright.calculations.ship.docking_condition import docking
from tenderwright.calculations.ship.how_sure import how_sure
from tenderwright.calculations.ship.keel import KeelLine, keel_line
from tenderwright.calculations.ship.keel_loads import elastic_keel_loads, loaded_keel_blocks, planned_keel_blocks
from tenderwright.calculations.ship.landing import landing as landing_step
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.side_loads import planned_side_blocks
from tenderwright.calculations.steps.outcome import Absent, Each, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import keel_load_diagram as load
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.block_ends import block_ends, seen_marks
from tenderwright.documents.drawings.block_marks import (
    NUMBERS,
    SPACING,
    block_numbers,
    block_spacing,
    blocks_height,
    keel_block_marks,
    letter,
    side_block_marks,
)
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale, perpendiculars
from tenderwright.documents.drawings.framed import MARGIN, Framed, framed
from tenderwright.documents.drawings.hull_marks import extent, hull_ground, hull_lines
from tenderwright.documents.drawings.landing_waterlines import landing_waterlines, named_aft
from tenderwright.documents.drawings.sheet import PROPOSAL
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.documents.not_calculated import not_drawn
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.package import Package
from tenderwright.quantities.display import decimals, head, plus_minus, show

TITLE = "Docking plan: profile and keel blocks"
_HEAD, _SIDE = 4.5, 15.5
"""Space over the hull and beside it, mm."""


def docking_profile(package: Package, calculated: Calculated) -> Figure | Absent:
    """Draw hull, blocks and loads from the side, or say why not."""
    found, blocks, plan = (
        calculated.outcome(hull_outline),
        calculated.outcome(planned_keel_blocks),
        package.docking_plan,
    )
    if isinstance(blocks, Absent):
        return blocks
    if isinstance(found, Absent):
        return found
    if plan is None or not blocks:
        return Lacking("it needs `keel_blocks` in vessel/docking-plan.yaml")
    form, landed = found.form, calculated.outcome(landing_step)
    first, last = extent(package, form)
    under, raised = outline.keel_underside(package.particulars), blocks_height(blocks)
    facts = _facts(plan, blocks, calculated)
    least = load.LEAST if any(one.load is not None for one in blocks) else 0.0
    loaded = any(one.load is not None for one in blocks)
    rows = 1.2 + NUMBERS + FRAMES_HEIGHT + 2 * SPACING

    def size(scale: int) -> tuple[float, float]:
        metre = 1000 / scale
        return (last - first) * metre + 2 * _SIDE, (form.depth - under + raised) * metre + _HEAD + rows + least

    sheet = framed(package, "docking-plan", TITLE, found.drawn_from, PROPOSAL)
    room = Room(sheet.right - MARGIN, sheet.over - MARGIN)
    sheet = sheet.at(largest_scale(room, size))
    spare = room.height - size(sheet.scale)[1]
    over = min(max(0.0, sheet.mm(outline.highest(package) - form.depth)), max(0.0, spare))
    spare = 0.0 if loaded else max(0.0, spare - over)
    left = (sheet.frame.width - sheet.mm(last - first)) / 2 - sheet.mm(first)
    view = View(sheet.scale, left, MARGIN + _HEAD + over + spare / 2 + sheet.mm(form.depth))
    cut_at = form.depth + over * sheet.scale / 1000
    numbers_at = view.y(under - raised) + 1.2
    frames_at = numbers_at + NUMBERS
    spacing_at = frames_at + FRAMES_HEIGHT
    diagram = spacing_at + 2 * SPACING + 1, sheet.over - 1
    landing, curve = (None, None) if isinstance(landed, Absent) else (landed.exact, landed.curve)
    touched = first_touched(blocks, landing) if landing else None
    allowable = plan.allowable.value.si if plan.allowable else None
    alone = load.LandingLoad(touched.x, landing.settling.upthrust) if landing and touched else None
    afloat = calculated.found(docking)
    through = (diagram[0] + 4.5, diagram[1] - 5.5) if loaded else None
    marks = [
        pen.strokes([(view.at(a), view.at(b)) for a, b in outline.superstructure(package, cut_at)]),
        hull_ground(package, form, view),
        keel_block_marks(blocks, touched.number if touched else None, view, under),
        hull_lines(package, found, view, 0.53 if named_aft(curve) else 0.06),
        side_block_marks(calculated.found(planned_side_blocks) or (), view, under - raised),
        side_block_outlines(calculated, view, (under - raised, under)),
        landing_waterlines(curve, form.length, view, (first, last), under),
        perpendiculars(view, form.length, view.y(form.depth) - 1.5, frames_at + 0.4),
        _centre_of_gravity(
            afloat,
            view,
            view.y(cut_at) - _HEAD / 2,
            numbers_at - 1.6,
            through,
        ),
        block_numbers(blocks, view, numbers_at),
        pen.text((4, numbers_at + 2.6), "block, from aft", pen.SMALL),
        frame_scale(package.frames, view, frames_at) if package.frames else "",
        pen.text((4, frames_at + 4.8), _places(package), pen.SMALL),
        block_spacing(blocks, view, spacing_at),
        pen.text((4, spacing_at + 3.1), head("spacing", "distance"), pen.SMALL),
        block_ends(blocks, seen_marks(package, form.length), view, spacing_at + 1.5 * SPACING, (first, last)),
        pen.text((4, spacing_at + SPACING + 3.1), head("from a mark", "distance"), pen.SMALL),
        load.keel_load_diagram(blocks, allowable, alone, view, diagram),
        _table(facts, sheet),
    ]
    alternative = _alternative(calculated, package, facts)
    caption = (
        _caption(loaded, found.drawn_from) + _cut_off(package, cut_at) + not_drawn(landed, "Waterlines as she lands")
    )
    caption += _raked(calculated.found(keel_line), package)
    caption += not_drawn(calculated.outcome(loaded_keel_blocks), "Loads of the keel blocks")
    seats = calculated.outcome(side_block_seats)
    without = list(seats.absent.values()) if isinstance(seats, Each) else [seats]
    caption += not_drawn(without[0], "Side blocks drawn dashed have no height") if without else ""
    return sheet.figure(marks, caption, alternative)


def _places(package: Package) -> str:
    """Say what the scale along her counts."""
    return "frame" if package.frames and package.frames.numbers else "forward of AP"


def side_block_outlines(calculated: Calculated, view: View, heights: tuple[float, float]) -> str:
    """Draw the side blocks over which the shell is not known, dashed from the floor to the height of the keel."""
    known = {one.number for one in calculated.found(planned_side_blocks) or ()}
    marks = []
    for one in calculated.found(side_block_places) or ():
        if one.number in known:
            continue
        ends = (one.x - one.length / 2, one.x + one.length / 2)
        box = [(x, z) for x, z in zip((*ends, *reversed(ends)), (heights[0],) * 2 + (heights[1],) * 2, strict=True)]
        marks.append(pen.polygon(view.all(box), pen.MEDIUM, pen.HIDDEN))
        above = (view.x(one.x), view.y(heights[1]) - 2.2)
        marks.append(pen.label(above, letter(one.number), pen.SMALL, bold=True, kind="side-block"))
    return "".join(marks)


def first_touched(blocks: tuple[KeelBlockResult, ...], landing: Landing) -> KeelBlockResult:
    """Give the keel block that she touches first."""
    return min(blocks, key=lambda one: abs(one.x - landing.settling.first_block))


def _centre_of_gravity(
    position: FloatingPosition | None, view: View, over: float, foot: float, field: tuple[float, float] | None
) -> str:
    """Mark the centre of gravity on docking down to a foot, and again over the field of the loads."""
    if position is None:
        return ""
    x, y = view.x(position.loading.lcg), view.y(position.loading.vcg)
    lines = [((x, over + 1.4), (x, foot))] + ([((x, field[0]), (x, field[1]))] if field else [])
    return (
        pen.strokes(lines, pen.FINE, pen.CHAIN)
        + pen.circle((x, y), 1.2, pen.MEDIUM, pen.PAPER)
        + pen.strokes([((x - 1.9, y), (x + 1.9, y)), ((x, y - 1.9), (x, y + 1.9))], pen.FINE)
        + pen.label((x, over), f"centre of gravity {show(position.loading.lcg, 'centre')}", kind="gravity")
    )


def _facts(plan: DockingPlan, blocks: tuple[KeelBlockResult, ...], calculated: Calculated) -> list[tuple[str, str]]:
    """Say in words and figures what the drawing cannot hold."""
    pairs = calculated.found(side_block_places) or ()
    landed, afloat = calculated.found(landing_step), calculated.found(docking)
    standing = calculated.found(elastic_keel_loads)
    height = (
        f"{_range([one.height for one in blocks], 'height')} over the dock floor" if plan.block_height else "not given"
    )
    caps = (
        f"{_range([one.length for one in blocks], 'distance')} by {_range([one.width for one in blocks], 'distance')}"
    )
    facts = [
        ("Keel blocks", f"{len(blocks)}, caps {caps}"),
        ("Height of keel blocks", height),
    ]
    if plan.declivity is not None:
        facts.append(("Declivity of the blocks", f"{decimals(degrees(plan.declivity.value.si), 2)}°"))
    if pairs:
        places = ", ".join(f"{letter(one.number)} {one.position}" for one in pairs)
        facts.append((f"Side blocks, {len(pairs)} pairs", places))
    if landed is not None:
        facts += _landing_facts(blocks, landed)
    if afloat is not None:
        mass, gm, known = afloat.loading.mass, afloat.gm_fluid, calculated.found(how_sure)
        u = known.u("displacement") if known is not None else None
        weight = plus_minus(mass, u, "weight") if u else show(mass, "weight")
        facts.append(("Afloat, on docking", f"{weight}, GM {show(gm, 'metacentric height')} fluid"))
    most = max((one for one in blocks if one.pressure is not None), key=lambda one: one.pressure or 0, default=None)
    if most is not None and most.pressure is not None and most.load is not None:
        against = f" of {show(plan.allowable.value.si, 'block load')} allowed" if plan.allowable else ""
        facts.append(
            (
                "Greatest pressure on a cap",
                f"block {most.number}, {most.position}: {show(most.load, 'weight')}, "
                f"{show(most.pressure, 'block load')}{against}",
            )
        )
    if standing is not None:
        held = "good enough" if standing.rigid_justified else "not justified: the elastic one governs"
        facts.append(("Keel line", f"λL {decimals(standing.slenderness, 1)}; a rigid keel is {held}"))
    return facts


def _landing_facts(blocks: tuple[KeelBlockResult, ...], landed: BothLandings) -> list[tuple[str, str]]:
    landing = landed.exact
    touched, settling = first_touched(blocks, landing), landing.settling
    return [
        (
            "Touched first",
            f"block {touched.number}, {touched.position}, {show(settling.water_at_touch, 'water level')} "
            "of water over it",
        ),
        (
            "When settled",
            f"water {show(settling.fall, 'water level')} lower, upthrust {show(settling.upthrust, 'weight')}, "
            f"GM {show(min(settling.stability.gm_km_falls, settling.stability.gm_kg_rises), 'metacentric height')}",
        ),
        ("Side blocks bear", _bear(landed)),
    ]


def _bear(landed: BothLandings) -> str:
    """Say within what fall of the water side blocks and shores bear."""
    within = landed.bear_within
    if within is None:
        return "not known: no least GM is asked for"
    if within < 0:
        return f"the least GM is reached {show(-within, 'water level')} before settled"
    return f"before {show(within, 'water level')} of fall from settled, where GM is the least asked for"


def _range(values: list[float | None] | list[float], purpose: str) -> str:
    known = [one for one in values if one is not None]
    least, most = show(min(known), purpose), show(max(known), purpose)
    return least if least == most else f"{least} to {most}"


def _table(facts: list[tuple[str, str]], sheet: Framed) -> str:
    """Set the facts beside the title block."""
    top, marks = sheet.over + 2.0, [pen.line((MARGIN, sheet.over + 1), (sheet.beside, sheet.over + 1))]
    apart = min(5.0, (sheet.foot - top) / len(facts))
    for index, (name, words) in enumerate(facts):
        y = top + (index + 0.75) * apart
        marks.append(pen.text((4, y), name, pen.SMALL, bold=True))
        marks.append(pen.text((42, y), pen.shortened(words, pen.SMALL, sheet.beside - 43), pen.SMALL, kind="fact"))
    return "".join(marks)


def _raked(keel: KeelLine | None, package: Package) -> str:
    """Say what is not drawn of a keel that rakes against the base line."""
    if keel is None or not keel.rake or package.particulars is None:
        return ""
    straight = package.particulars.keel.straight
    rise = abs(keel.rake) * (straight.to.x - straight.from_.x)
    return (
        f" Her base line is drawn level: the straight keel stands {show(rise, 'centre')} lower "
        f"{'aft' if keel.rake > 0 else 'forward'}, and the blocks with it as she lies on them."
    )


def _cut_off(package: Package, height: float) -> str:
    """Say that what stands over the deck is cut off where the sheet ends."""
    higher = outline.highest(package) > height + 1e-6
    return f" What stands over the deck is cut off {show(height, 'centre')} above the keel line." if higher else ""


def _caption(loaded: bool, drawn_from: str) -> str:
    bars = (
        " Each bar and dot is the load on one block; figures under them are the greater of the two, without decimals."
        if loaded
        else ""
    )
    return (
        "Owner's docking plan for tender, from the side: keel blocks numbered from aft, pairs of side blocks lettered "
        "and drawn as outlines, the block touched first in black, and her waterlines at the first touch and when "
        f"settled.{bars} Hull outline from {drawn_from}; keel, rudder and stern frame by their extents only."
    )


def _alternative(calculated: Calculated, package: Package, facts: list[tuple[str, str]]) -> str:
    blocks, pairs = calculated.found(planned_keel_blocks) or (), calculated.found(side_block_places) or ()
    over = [("Over the deck", ", ".join(one.name for one in outline.over_deck(package)))]
    told = " ".join(f"{name}: {words}." for name, words in [*over, *facts] if words)
    return f"Profile of the ship on {len(blocks)} keel blocks and {len(pairs)} pairs of side blocks. {told}"
