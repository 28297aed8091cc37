"""Anodes: what was left of them, how long they last, what is needed, and unlike metals in contact."""

from __future__ import annotations

from tenderwright.calculations.anodes.galvanic import SOURCE as SERIES
from tenderwright.calculations.anodes.galvanic import galvanic_pair
from tenderwright.calculations.condition_results import AnodePlan
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Bullets, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.model.anode_duty import AnodeDuty
from tenderwright.quantities.display import decimals

_YEAR = 365.25 * 86400.0


def anodes(desk: Desk) -> Part | None:
    """Compose what is known of the anodes; None where nothing is."""
    written, found = desk.package.condition, desk.results.condition
    if written is None or (not found.anode_groups and found.anode_plan is None and not written.metals):
        return None
    blocks: list[Block] = [*_groups(desk)]
    if written.anodes is not None and found.anode_plan is not None:
        blocks += _needed(desk, written.anodes, found.anode_plan, written.next_docking.si / _YEAR)
    blocks += _metals(desk)
    return Part("anodes", "6.2", "Anodes and unlike metals", "data", "The ship", tuple(blocks), caution=True)


def _groups(desk: Desk) -> list[Block]:
    rows, notes = [], []
    for group in desk.results.condition.anode_groups:
        life = group.life
        rows.append(
            Row(
                (
                    inline(", ".join(name.upper() for name in group.anodes)),
                    inline(f"{group.fitted}, seen {group.seen}"),
                    inline(f"{group.mean_left:.0%}".replace("%", " %") + f", least {100 * group.least_left:.0f} %"),
                    inline(f"{decimals(100 * life.rate, 1)} %"),
                    inline("–" if life.years_left is None else decimals(life.years_left, 1)),
                    inline("–" if life.whole_life is None else decimals(life.whole_life, 1)),
                    inline(f"{decimals(100 * life.at_next, 0)} %"),
                    inline(f"{decimals(1e3 * group.mean_current, 0)} mA"),
                    inline(capital(life.decision)),
                )
            )
        )
        notes += [inline(f"Fitted {group.fitted}: {note}.") for note in life.notes]
    columns = (
        Column("Anodes", width=2.6),
        Column("Fitted", width=1.6),
        Column("Left", width=1.2),
        Column("Wasted a year", "right", 0.9),
        Column("Years left", "right", 0.8),
        Column("Life, years", "right", 0.8),
        Column("At the next docking", "right", 1),
        Column("Current given", "right", 1),
        Column("If kept", width=0.9),
    )
    note = inline(
        "Wastage is taken in step with time from the day of fitting; years left run from when last seen to the "
        "share of "
        "an anode that can be used. Zincs found half to three fifths wasted are commonly judged in fair order, and "
        "bolted "
        "ones renewed by divers every other year (common practice, no source)."
    )
    table: list[Block] = [Heading("What was left"), Table(columns, tuple(rows), note=note, small=True)] if rows else []
    return [*table, Bullets(tuple(notes))] if notes else table


def _needed(desk: Desk, duty: AnodeDuty, plan: AnodePlan, interval: float) -> list[Block]:
    needed = plan.needed
    rows = []
    for surface in duty.surfaces:
        area = f"{desk.quantity(surface.area)}" if surface.area else f"zone {desk.label('zone', str(surface.zone))}"
        coating = f"a {surface.a or 0:g}, b {surface.b or 0:g} a year" if surface.a is not None else "bare"
        figures = " / ".join(f"{1e3 * q.si:.0f}" for q in (surface.initial, surface.mean, surface.final))
        cells = (capital(surface.name), area, figures, coating, surface.source)
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("Surface", width=2),
        Column("Area", width=2),
        Column("mA/m² at first, mean, end", width=1.5),
        Column("Coating breaks down", width=1.4),
        Column("Source", width=3),
    )
    governs = {"mass": "mass governs"}.get(needed.governs, f"the {needed.governs} governs")
    words = (
        f"For {interval:g} years the surfaces ask {decimals(plan.initial, 1)} A at first, {decimals(plan.mean, 1)} "
        "A on "
        f"the mean and {decimals(plan.final, 1)} A at the end. That takes {decimals(needed.mass, 0)} kg of alloy, "
        "which is "
        f"{needed.by_mass} anodes of {decimals(plan.each, 1)} kg; by current {needed.by_initial} when new and "
        f"{needed.by_final} when spent. So {needed.number} are needed, and {governs}; {plan.fitted} are fitted. "
        "Renewed, "
        f"those last {decimals(plan.greatest_life, 1)} years by mass. Capacity {duty.capacity:g} A h/kg, water "
        f"{duty.resistivity:g} Ω m: {duty.source}."
    )
    more: list[Block] = []
    if plan.greatest_life < interval:
        more.append(
            Paragraph(
                inline("That is less than the interval: divers must renew anodes between the dockings, or more go on.")
            )
        )
    if plan.layout is not None:
        label = desk.package.frames.label if desk.package.frames else (lambda x: f"{x:.1f} m")
        places = ", ".join(label(x) for x in plan.layout.centres)
        more.append(Paragraph(inline(f"Room for more on each side, clear of anodes and openings: {places}.")))
    return [Heading("What is needed"), Table(columns, tuple(rows), small=True), Paragraph(inline(words)), *more]


def _metals(desk: Desk) -> list[Block]:
    written = desk.package.condition
    rows = []
    for pair in written.metals if written else ():
        judged = galvanic_pair(pair.one, pair.other)
        care = [f"bonded: {pair.bonded}"] if pair.bonded else []
        care += [f"coated or parted: {pair.coated}"] if pair.coated else []
        care += [f"anodes {', '.join(str(name).upper() for name in pair.anodes)}"] if pair.anodes else []
        item = inline(desk.ref(pair.item)) if pair.item else inline("–")
        wastes = f"{judged.wastes} wastes; {decimals(1e3 * judged.difference, 0)} mV, {judged.risk} risk"
        cells = (
            inline(capital(pair.what)),
            inline(pair.where),
            inline(capital(wastes)),
            inline("; ".join(care) or "nothing"),
        )
        rows.append(Row((*cells, item)))
    columns = (
        Column("Pair", width=2),
        Column("Where", width=1.6),
        Column("In sea water", width=2),
        Column("Care taken", width=2.4),
        Column("Item", width=0.9),
    )
    note = inline(f"{SERIES}. The smaller surface of the one that wastes goes the faster.")
    return [Heading("Unlike metals in contact"), Table(columns, tuple(rows), note=note, small=True)] if rows else []
