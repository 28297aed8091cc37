"""Docking data: the condition on arrival and on docking, liquid to move, hydrostatics, load along the keel."""

from __future__ import annotations

from collections.abc import Sequence
from math import degrees

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.condition.target_trim import TrimPlan
from tenderwright.calculations.ship.buoyancy import buoyancy
from tenderwright.calculations.ship.condition import arrival
from tenderwright.calculations.ship.docking_condition import docking
from tenderwright.calculations.ship.how_sure import WHERE, how_sure
from tenderwright.calculations.ship.hydrostatics import hydrostatics_table
from tenderwright.calculations.ship.sections import lofted, lofted_sure
from tenderwright.calculations.ship.stability import stability
from tenderwright.calculations.ship.trim import trim_plan
from tenderwright.calculations.ship.wanted import least_gm, trim_tolerance
from tenderwright.calculations.ship.water import dock_water
from tenderwright.calculations.ship.weight import weight_alone
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.uncertainty.afloat import FIGURES, HowSure
from tenderwright.calculations.verdict import Limit, within
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Column, Facts, Heading, Paragraph, Row, Table, inline
from tenderwright.documents.floated_on import floated_on
from tenderwright.documents.not_calculated import not_calculated, not_calculated_of
from tenderwright.documents.parts.abreast import abreast
from tenderwright.model.lightship import LightshipWeight, Weight
from tenderwright.quantities.display import abbreviation, head, in_column, no_finer, plus_minus, show
from tenderwright.quantities.purposes import purpose_of

_MET = 0.005
"""A trim this near to the one wanted is met, m: nobody reads a draft mark nearer."""


def condition(desk: Desk) -> list[Block]:
    """Compose the conditions, the liquid to move, the hydrostatics and the load along the keel."""
    found = {"On arrival": desk.calculated.outcome(arrival), "When docked": desk.calculated.outcome(docking)}
    there = [(name, one) for name, one in found.items() if not isinstance(one, Absent)]
    blocks: list[Block] = [Heading("Condition on arrival and on docking")]
    blocks += [condition_table(desk, there, driven=True)] if there else []
    blocks += not_calculated_of({name: one for name, one in found.items() if isinstance(one, Absent)})
    blocks += _weight_alone(desk)
    return [
        *blocks,
        *floated_on(desk),
        *_how_sure(desk),
        *_weights(desk),
        *abreast((_movements(desk), _line_load(desk))),
        *_hydrostatics(desk),
    ]


def _weight_alone(desk: Desk) -> list[Block]:
    """Say what she weighs where she cannot be floated, on which blocks, cradle and lift then rest."""
    found = desk.calculated.outcome(weight_alone)
    if isinstance(found, Absent):
        return []
    text = (
        f"By her weights and tanks she weighs {show(found.mass, 'weight')}, with its centre "
        f"{show(found.lcg, 'centre')} forward of the after perpendicular and {show(found.vcg, 'centre')} above the "
        "keel line. Keel blocks, line load, cradle and lift rest on that; it says nothing about drafts and stability."
    )
    return [Paragraph(inline(text))]


def _weights(desk: Desk) -> list[Block]:
    """Compose what she weighs without her tanks: the lightship and the weights aboard, each with how it is known."""
    lightship = desk.package.lightship
    if lightship is None:
        return []
    light = lightship.lightship
    rows = [_weight(desk, "Lightship", desk.quantity(light.at), light, light.source)]
    rows += [_weight(desk, capital(one.what), f"{one.at}", one, one.basis) for one in lightship.weights]
    columns = (
        Column("Weight", width=3),
        Column("Mass", "right", 1),
        Column("Centre along the ship", width=1.5),
        Column("Height", "right", 1.3),
        Column("Off centre", "right", 0.8),
        Column("How it is known", width=3.2),
    )
    note = inline("On arrival, tanks apart. Heights are above the keel line; off the centreline, port is plus.")
    return [Heading("Weights aboard"), Table(columns, tuple(rows), note=note, small=True)]


def _weight(desk: Desk, what: str, along: str, weight: LightshipWeight | Weight, known: str) -> Row:
    off = weight.off_centre
    side = desk.quantity(off) if off is not None and off.si else "–"
    cells = (what, desk.quantity(weight.mass), along, desk.quantity(weight.height), side, known or "–")
    return Row(tuple(inline(cell) for cell in cells))


def condition_table(desk: Desk, columns: Sequence[tuple[str, FloatingPosition]], *, driven: bool = False) -> Table:
    """Set conditions side by side; `driven` adds what each uncertainty comes from, where that was worked out."""
    known = desk.calculated.found(how_sure) if driven else None
    rows = [
        [*row, *([_driver(known, name)] if known is not None else [])]
        for row, name in zip(
            zip(_NAMES.values(), *(_figures(desk, c) for _, c in columns), strict=True), _NAMES, strict=True
        )
    ]
    if known is not None:
        rows += _settling(desk, known, len(columns) - 1)
    density = show(columns[0][1].hydrostatics.density, "density")
    note = f"In water of {density}. Drafts are above the keel line. Upright, small angles of list."
    heads = [Column("", width=2.6), *(Column(title, width=1.7) for title, _ in columns)]
    if known is not None:
        heads.append(Column("± mostly by", width=2.4))
        note += _SURE
    made = tuple(Row(tuple(inline(cell) for cell in row)) for row in rows)
    return Table(tuple(heads), made, note=inline(note), small=True)


_NAMES = {
    "displacement": "Displacement",
    "lcg": "Centre of gravity forward of AP",
    "vcg": "Centre of gravity above the keel line",
    "draft_aft": "Draft aft, at AP",
    "draft_forward": "Draft forward, at FP",
    "draft": "Mean draft",
    "trim": "Trim",
    "list": "List",
    "km": "Transverse metacentre above the keel line",
    "fsm": "Free-surface moment",
    "gm": "Metacentric height, fluid",
}
"""By the name of its uncertainty, where it has one, each figure of a condition."""

_SURE = (
    " After ±: twice the standard uncertainty, so that about 19 times in 20 she lies within it (JCGM 100:2008). It "
    "comes from weights, soundings, water and lines, by what the package states after ± and by usual figures where it "
    "states none; the share is that of the square. Read the drafts at the dock: they govern."
)


def _driver(known: HowSure, name: str) -> str:
    one = known.figures.get(name)
    return f"{one.driver} ({100 * one.shares[0][1]:.0f} %)" if one is not None and one.driver else "–"


def _settling(desk: Desk, known: HowSure, before: int) -> list[list[str]]:
    """Give what safety rests on as she settles and stands dry, which only the docking condition has."""
    rows = []
    for name, one in known.figures.items():
        words, *measured = FIGURES[name]
        value = desk.record.values.get(WHERE[name])
        if name not in _NAMES and value is not None and isinstance(value.si, float):
            figure = plus_minus(value.si, one.u, purpose_of(*measured))
            rows.append([capital(words), *["–"] * before, figure, _driver(known, name)])
    return rows


def _figures(desk: Desk, found: FloatingPosition) -> list[str]:
    """Give the figures of a condition, with how sure they are of that over the blocks, and no finer of the others."""
    known = desk.calculated.found(how_sure)
    write = plus_minus if found is desk.calculated.found(docking) else no_finer
    h, loading = found.hydrostatics, found.loading
    heel = degrees(found.heel) if found.heel is not None else 0.0
    side = " to starboard" if heel > 0.005 else " to port" if heel < -0.005 else ""

    def shown(si: float, purpose: str, of: str) -> str:
        u = known.u(of) if known is not None else None
        return write(si, u, purpose) if u else show(si, purpose)

    return [
        shown(loading.mass, "weight", "displacement"),
        show(loading.lcg, "centre"),
        show(loading.vcg, "centre"),
        shown(h.draft_aft, "draft", "draft_aft"),
        shown(h.draft_forward, "draft", "draft_forward"),
        show(h.draft, "draft"),
        shown(abs(h.trim), "trim", "trim") + (" by the stern" if h.trim >= 0 else " by the head"),
        shown(abs(found.heel or 0.0), "angle", "list") + side,
        show(h.km_transverse, "centre"),
        show(loading.free_surface_moment, "moment"),
        shown(found.gm_fluid, "metacentric height", "gm"),
    ]


def _how_sure(desk: Desk) -> list[Block]:
    """Say how the docking condition stands to what is asked of it, or why it is not known how sure it is."""
    found = desk.calculated.outcome(how_sure)
    if isinstance(found, Absent):
        return [not_calculated(found, "How sure the docking condition is")] if desk.package.docking_plan else []
    return _stability(desk)


def _stability(desk: Desk) -> list[Block]:
    """Say how the metacentric heights stand to the least asked for."""
    found, least = desk.calculated.outcome(stability), least_gm(desk.package.docking_plan, desk.package.lightship)
    if least is None:
        return []
    if isinstance(found, Absent):
        return [not_calculated(found, "Metacentric heights against the least asked for")]
    heights = "; ".join(f"{_height(one)} {one.name}" for one in found.limits)
    words = {"pass": "is kept", "fail": "is not kept", "not known": "is not known to be kept"}[found.words]
    text = f"The metacentric height asked for, {desk.quantity(least)} at least, {words} as calculated: {heights}."
    return [Paragraph(inline(text))]


def _height(one: Limit) -> str:
    gm = one.demand or 0.0
    return plus_minus(gm, one.uncertainty, "metacentric height") if one.uncertainty else show(gm, "metacentric height")


def _movements(desk: Desk) -> list[Block]:
    plan, lightship = desk.calculated.outcome(trim_plan), desk.package.lightship
    if lightship is None or lightship.docking is None:
        return []
    wanted = desk.quantity(lightship.docking.trim)
    blocks: list[Block] = [Heading("Liquid to move for the trim wanted")]
    if isinstance(plan, Absent):
        return [*blocks, not_calculated(plan)]
    names = {tank.tank: tank.name for tank in desk.package.tanks} | {"sea": "the sea"}
    blocks.append(Paragraph(inline(_reached(desk, plan, wanted))))
    if not plan.transfers:
        return blocks
    rows = tuple(
        Row(
            (
                inline(names.get(t.source, t.source)),
                inline(names.get(t.destination, t.destination)),
                inline(t.liquid),
                inline(in_column(t.mass, "load of a tank")),
            )
        )
        for t in plan.transfers
    )
    columns = (
        Column("From", width=2),
        Column("To", width=2),
        Column("Liquid", width=1.4),
        Column(head("Mass", "load of a tank"), "decimal"),
    )
    note = inline(
        "The least movement between the tanks marked movable. Sound all tanks and read the drafts again after it."
    )
    return [*blocks, Table(columns, rows, note=note, small=True)]


def _reached(desk: Desk, plan: TrimPlan, wanted: str) -> str:
    """Say what trim and list the movement is calculated to give, beside those wanted, and nothing that differs."""
    position, tolerance = plan.position, trim_tolerance(desk.package.lightship).si
    trim, sought = position.hydrostatics.trim, desk.package.lightship
    assert sought is not None
    assert sought.docking is not None
    moved = "With the movement below she" if plan.transfers else "Without moving any liquid she"
    heel = f"{show(abs(position.heel), 'angle')} of list" if position.heel is not None else "a list not known"
    there = f"{moved} is calculated to float with a trim of {show(trim, 'trim')} and {heel}"
    if plan.feasible:
        return f"{there}; wanted are {wanted} and no list. Subject to soundings and drafts read on the day."
    off, most = abs(trim - sought.docking.trim.si), sought.docking.most_list
    if off < _MET and position.heel is not None and (most is None or within(abs(position.heel), most.si)):
        allowed = f", within the {desk.quantity(most)} allowed" if most is not None else ""
        return f"{there}: the trim of {wanted} is met, and the movable tanks cannot take out that list{allowed}."
    held = "within" if within(off, tolerance) else "beyond"
    return (
        f"{there}. A trim of {wanted} without list cannot be reached with the movable tanks: this is the nearest, "
        f"{show(off, 'trim')} from it, {held} the {show(tolerance, 'trim')} allowed."
    )


def _hydrostatics(desk: Desk) -> list[Block]:
    found = desk.calculated.outcome(hydrostatics_table)
    if isinstance(found, Absent):
        return [Heading("Hydrostatics"), not_calculated(found)]
    afloat = desk.calculated.found(arrival)
    kg = afloat.loading.vcg if afloat else None
    rows = tuple(
        Row(
            tuple(
                inline(text)
                for text in (
                    in_column(h.draft, "draft"),
                    in_column(h.displacement, "weight"),
                    in_column(h.mass_per_immersion, "immersion"),
                    in_column(h.moment_to_change_trim(kg), "change of trim"),
                    in_column(h.lcb, "centre"),
                    in_column(h.lcf, "centre"),
                    in_column(h.kb, "centre"),
                    in_column(h.km_transverse, "centre"),
                    in_column(h.waterplane_area, "area"),
                )
            )
        )
        for h in found
    )
    columns = tuple(
        Column(head(title, purpose), "decimal")
        for title, purpose in (
            ("Draft", "draft"),
            ("Displ.", "weight"),
            (abbreviation("immersion"), "immersion"),
            (abbreviation("change of trim"), "change of trim"),
            ("LCB", "centre"),
            ("LCF", "centre"),
            ("KB", "centre"),
            ("KM", "centre"),
            ("Waterplane", "area"),
        )
    )
    water = desk.calculated.found(dock_water)
    assert water is not None  # the table rests on it
    density = show(water.si, "density")
    floats = desk.calculated.found(buoyancy)
    assert floats is not None  # and on this
    note = inline(
        f"Even keel, water of {density}, {'moulded, ' if floats.known_by_form else ''}{floats.source}. LCB and LCF are "
        "forward of the after perpendicular, heights and drafts above the keel line."
    )
    return [Heading("Hydrostatics"), Table(columns, rows, note=note, small=True), *_lofted(desk)]


def _lofted(desk: Desk) -> list[Block]:
    """Say how good the hull is, where it is lofted from a few sections."""
    sure = desk.calculated.outcome(lofted_sure)
    if isinstance(sure, Absent):
        is_lofted = desk.calculated.found(lofted) is not None
        return [not_calculated(sure, "How sure the hull is between her sections")] if is_lofted else []
    text = (
        "The hull is drawn between the sections that were read, not known there. One standard uncertainty of what that "
        f"and the readings bring: {100 * sure.volume:.1f} % of the displacement at a draft, "
        f"{show(sure.centre, 'centre')} of the centre of buoyancy along her, {show(sure.metacentre, 'centre')} of the "
        f"metacentre, {100 * sure.area:.1f} % of areas of shell."
    )
    return [Paragraph(inline(text))]


def _line_load(desk: Desk) -> list[Block]:
    record, ship = desk.record, desk.package.particulars
    if "keel.line-load.peak" not in record.values or ship is None:
        return []
    facts = (
        ("Straight of keel", inline(str(ship.keel.straight))),
        ("Load at its after end", inline(desk.told("keel.line-load.load-at-keel-aft"))),
        ("Load at its forward end", inline(desk.told("keel.line-load.load-at-keel-forward"))),
        ("Keel without load", inline(desk.told("keel.line-load.lift-off", "centre"))),
    )
    note = "Rigid hull on a full line of equal blocks; a stern overhang loads the last blocks more than this."
    return [Heading("Load along the keel"), Facts(facts), Paragraph(inline(note), as_note=True)]
