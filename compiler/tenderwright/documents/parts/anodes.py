"""Anodes: what was left of them, how long they last, what is needed, and unlike metals in contact."""

from __future__ import annotations

from tenderwright.calculations.anodes.galvanic import SOURCE as SERIES
from tenderwright.calculations.ship.anode_life import anode_lots, lot_current, lot_life
from tenderwright.calculations.ship.anode_need import anode_demand, anodes_lasting, anodes_needed, further_anodes
from tenderwright.calculations.ship.anodes import anode_duty, fitted_anodes
from tenderwright.calculations.ship.metals import judged_pair, metal_pairs
from tenderwright.calculations.steps.outcome import Absent, Each, NotAsked
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Bullets, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.not_calculated import absent_of, not_calculated, not_calculated_of, why_not
from tenderwright.model.anode_duty import AnodeDuty
from tenderwright.quantities.display import decimals

_YEAR = 365.25 * 86400.0


def anodes(desk: Desk) -> Part | None:
    """Compose what is known of the anodes; None where the package has neither anodes nor unlike metals."""
    written = desk.package.condition
    if not desk.package.anodes and (written is None or (written.anodes is None and not written.metals)):
        return None
    duty = desk.calculated.outcome(anode_duty)
    blocks: list[Block] = [*_lots(desk), *_needed(desk, duty)] if not isinstance(duty, Absent) else []
    if isinstance(duty, Absent) and desk.package.anodes:
        blocks.append(not_calculated(duty, "How long the anodes last, and how many are needed"))
    blocks += _metals(desk)
    return Part("anodes", "6.2", "Anodes and unlike metals", "data", "The ship", tuple(blocks), caution=True)


def _lots(desk: Desk) -> list[Block]:
    lots, lives = desk.calculated.outcome(anode_lots), desk.calculated.outcome(lot_life)
    currents = desk.calculated.outcome(lot_current)
    if isinstance(lots, Absent):
        return [Heading("What was left"), not_calculated(lots)]
    assert isinstance(lives, Each)
    assert isinstance(currents, Each)
    rows, notes = [], []
    for key, fitted in lots.items():
        life, current = lives.get(key), currents.get(key)
        if life is None or current is None:
            continue
        rows.append(
            Row(
                (
                    inline(", ".join(anode.anode.upper() for anode in fitted.seen)),
                    inline(f"{fitted.lot.on}, seen {fitted.on}"),
                    inline(f"{fitted.left:.0%}".replace("%", " %") + f", least {100 * fitted.least_left:.0f} %"),
                    inline(f"{decimals(100 * life.rate, 1)} %"),
                    inline("–" if life.years_left is None else decimals(life.years_left, 1)),
                    inline("–" if life.whole_life is None else decimals(life.whole_life, 1)),
                    inline(f"{decimals(100 * life.at_next, 0)} %"),
                    inline(f"{decimals(1e3 * current['current'], 0)} mA"),
                    inline(capital(life.decision)),
                )
            )
        )
        notes += [inline(f"Fitted {fitted.lot.on}: {note}.") for note in life.notes]
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
        "Wastage is taken in step with time from the day of fitting; years left run from when last seen to the share "
        "of an anode that can be used. Zincs found half to three fifths wasted are commonly judged in fair order, and "
        "bolted ones renewed by divers every other year (common practice, no source)."
    )
    table: list[Block] = [Table(columns, tuple(rows), note=note, small=True)] if rows else []
    table += [Bullets(tuple(notes))] if notes else []
    said = not_calculated_of({f"Fitted {fitted.lot.on}": absent_of(lives, key) for key, fitted in lots.items()})
    return [Heading("What was left"), *table, *said]


def _needed(desk: Desk, duty: AnodeDuty) -> list[Block]:
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
    return [Heading("What is needed"), Table(columns, tuple(rows), small=True), *_number(desk, duty)]


def _number(desk: Desk, duty: AnodeDuty) -> list[Block]:
    calculated, condition = desk.calculated, desk.package.condition
    demand, fitted = calculated.outcome(anode_demand), calculated.outcome(fitted_anodes)
    needed, lasting = calculated.outcome(anodes_needed), calculated.outcome(anodes_lasting)
    if isinstance(demand, Absent):
        return [not_calculated(demand)]
    if isinstance(fitted, Absent):
        return [not_calculated(fitted)]
    if isinstance(needed, Absent):
        return [not_calculated(needed)]
    if isinstance(lasting, Absent):
        return [not_calculated(lasting)]
    assert condition is not None
    interval, lasts = condition.next_docking.si / _YEAR, lasting["lasts"] / _YEAR
    governs = {"mass": "mass governs"}.get(needed.governs, f"the {needed.governs} governs")
    words = (
        f"For {interval:g} years the surfaces ask {decimals(demand['initial'], 1)} A at first, "
        f"{decimals(demand['mean'], 1)} A on the mean and {decimals(demand['final'], 1)} A at the end. That takes "
        f"{decimals(needed.mass, 0)} kg of alloy, which is {needed.by_mass} anodes of "
        f"{decimals(fitted['mass'] / fitted['count'], 1)} kg; by current {needed.by_initial} when new and "
        f"{needed.by_final} when spent. So {needed.number} are needed, and {governs}; {fitted['count']:.0f} are "
        f"fitted. Renewed, those last {decimals(lasts, 1)} years by mass. Capacity {duty.capacity:g} A h/kg, water "
        f"{duty.resistivity:g} Ω m: {duty.source}."
    )
    blocks: list[Block] = [Paragraph(inline(words))]
    if lasts < interval:
        short = "That is less than the interval: divers must renew anodes between the dockings, or more go on."
        blocks.append(Paragraph(inline(short)))
    return [*blocks, *_further(desk)]


def _further(desk: Desk) -> list[Block]:
    layout = desk.calculated.outcome(further_anodes)
    if isinstance(layout, NotAsked):
        return []
    if isinstance(layout, Absent):
        return [Paragraph(inline(f"Room for more on each side. {why_not(layout)}"))]
    label = desk.package.frames.label if desk.package.frames else (lambda x: f"{x:.1f} m")
    places = ", ".join(label(x) for x in layout.centres)
    blocks: list[Block] = []
    if places:
        blocks.append(Paragraph(inline(f"Room for more on each side, clear of anodes and openings: {places}.")))
    if layout.missing:
        blocks.append(Paragraph(inline(f"{layout.missing} more on each side find no room on that strip.")))
    return blocks


def _metals(desk: Desk) -> list[Block]:
    rows = []
    pairs, found = desk.calculated.found(metal_pairs), desk.calculated.found(judged_pair)
    for key, pair in (pairs or {}).items():
        if found is None or key not in found:
            continue
        judged = found[key]
        care = [f"bonded: {pair.bonded}"] if pair.bonded else []
        care += [f"coated or parted: {pair.coated}"] if pair.coated else []
        care += [f"anodes {', '.join(str(name).upper() for name in pair.anodes)}"] if pair.anodes else []
        item = inline(desk.ref(pair.item)) if pair.item else inline("–")
        which = f"{judged['wastes']} wastes" if judged["wastes"] else "neither wastes"
        wastes = f"{which}; {decimals(1e3 * judged['difference'], 0)} mV, {judged['risk']} risk"
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
