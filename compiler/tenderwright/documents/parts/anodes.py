"""Anodes: what was left of them, how long they last, what is needed, and unlike metals in contact."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from datetime import date

from tenderwright.calculations.anodes.each import OneAnode
from tenderwright.calculations.anodes.galvanic import SOURCE as SERIES
from tenderwright.calculations.ship.anode_life import SeenAnode, anodes_reconciled, each_anode, seen_anodes
from tenderwright.calculations.ship.anode_need import anode_demand, anodes_lasting, anodes_needed, further_anodes
from tenderwright.calculations.ship.anodes import anode_duty, fitted_anodes
from tenderwright.calculations.ship.metals import judged_pair, metal_pairs
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.documents.desk import Desk, capital, joined
from tenderwright.documents.edition import Block, Bullets, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated, why_not
from tenderwright.model.anode_duty import AnodeDuty
from tenderwright.model.anode_families import family_of
from tenderwright.model.vessel import Anode, AnodeFamily
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals, in_column, show, unit_of

_YEAR = 365.25 * 86400.0


def anodes(desk: Desk) -> Part | None:
    """Compose what is known of the anodes; None where the package has neither anodes nor unlike metals."""
    written = desk.package.condition
    if not desk.package.anodes and (written is None or (written.anodes is None and not written.metals)):
        return None
    duty = desk.calculated.outcome(anode_duty)
    blocks: list[Block] = [*_lots(desk), *_needed(desk, duty)] if not isinstance(duty, Absent) else []
    if isinstance(duty, Absent) and desk.package.anodes:
        why = not_calculated(duty, "How long the anodes last, and how many are needed")
        blocks += [*fitted_table(desk, desk.package.anodes), why]
    blocks += _metals(desk)
    return Part(
        "anodes", "", "Anodes and unlike metals", "data", "The ship", tuple(blocks), caution=True, audience="yard"
    )


def _lots(desk: Desk) -> list[Block]:
    """Give what was left of each anode, by the day on which they were fitted, and what comes of it."""
    seen, each = desk.calculated.outcome(seen_anodes), desk.calculated.outcome(each_anode)
    heading = Heading("What was left of each")
    if isinstance(seen, Absent) or isinstance(each, Absent):
        why = seen if isinstance(seen, Absent) else each
        assert isinstance(why, Absent)
        return [*fitted_table(desk, desk.package.anodes), heading, not_calculated(why)]
    label = desk.package.frames.label if desk.package.frames else (lambda x: show(x, "centre", more=-1))
    found = {one.name: one for one in each.anodes}
    rows: list[Row] = []
    for fitted, renewed in sorted({(one.fitted, one.renewed or date.min) for one in seen.seen}):
        lot = [one for one in seen.seen if (one.fitted, one.renewed or date.min) == (fitted, renewed)]
        days = joined([day(one) for one in sorted({one.seen for one in lot})])
        anew = f"; new ones fitted {day(renewed)}" if renewed != date.min else ""
        rows.append(Row((inline(f"Fitted {day(fitted)}, seen {days}{anew}"),), "group"))
        families: set[str] = set()
        for one in lot:
            family = family_of(desk.package, one.anode)
            if family is None:
                rows.append(_one(desk, one, found[one.anode.anode], label(one.anode.at.x)))
            elif family.family not in families:
                families.add(family.family)
                whole = f"{family.family.upper()}, each of {family.count}"
                rows.append(_one(desk, one, found[one.anode.anode], str(family.extent), whole))
    columns = (
        Column("Anode", width=0.6),
        Column("Where", width=2.4),
        Column("Left", "right", 0.6),
        Column("Wasted a year", "right", 0.8),
        Column("New one lasts, years", "right", 1),
        Column("Wasted at the next docking", "right", 1.1),
        Column("Current given", "right", 0.8),
        Column("Alloy, net mass, fixing", width=1.9),
        Column("If kept", width=0.7),
    )
    note = inline(
        "Each by what was left of itself: wastage in step with time from the day of fitting. Zincs found half to three "
        "fifths wasted are commonly judged in fair order, and bolted ones renewed by divers every other year (common "
        "practice, no source)."
    )
    unseen = [one for one in desk.package.anodes if one.anode in seen.not_seen]
    names = ", ".join(one.anode.upper() for one in unseen)
    said = [Paragraph(inline(f"Nothing is known of what was left of {names}.")), *fitted_table(desk, unseen)]
    notes = Counter(text for one in each.anodes for text in one.life.notes if "divers" not in text)
    told = [Bullets(tuple(inline(f"{capital(text)} ({count}).") for text, count in notes.items()))] if notes else []
    return [
        heading,
        Table(columns, tuple(rows), note=note, small=True),
        *told,
        *(said if unseen else []),
        *_reconciled(desk),
    ]


def fitted_table(desk: Desk, anodes: Sequence[Anode]) -> list[Block]:
    """List anodes as fitted, a family of them in one row; nothing where there are none."""
    rows: dict[str, Row] = {}
    for one in anodes:
        family = family_of(desk.package, one)
        if family is None:
            cells = [one.anode.upper(), f"{one.at}, {one.side}, {desk.quantity(one.height)} up", _kind(desk, one)]
            name = one.anode
        else:
            where = f"{family.extent}, as evenly spread, {family.side}, {desk.quantity(family.height)} up"
            cells = [f"{family.family.upper()}-1 to -{family.count}", where, _kind(desk, family)]
            name = f"{family.family}-1"
        cells.append(desk.quantity(one.left, "–"))
        rows.setdefault(name, Row(tuple(inline(cell) for cell in cells), anchor=desk.anchor("anode", name)))
    columns = (
        Column("Anode", width=1),
        Column("Where", width=3),
        Column("Alloy, net mass, fixing", width=2),
        Column("Left when last seen", "right", 1.3),
    )
    return [Table(columns, tuple(rows.values()), small=True)] if rows else []


def _kind(desk: Desk, one: Anode | AnodeFamily) -> str:
    return ", ".join(word for word in (one.alloy, desk.quantity(one.mass), one.fixing) if word)


def _one(desk: Desk, seen: SeenAnode, found: OneAnode, frame: str, family: str = "") -> Row:
    life, one = found.life, seen.anode
    of = family_of(desk.package, one)
    cells = (
        family or one.anode.upper(),
        f"{frame}, {one.side}, {desk.quantity(one.height)} up",
        f"{100 * seen.left:.0f} %",
        f"{decimals(100 * life.rate, 1)} %",
        "–" if life.whole_life is None else decimals(life.whole_life, 1),
        f"{decimals(100 * min(life.at_next, 1.0), 0)} %",
        f"{decimals(1e3 * found.current, 0)} mA",
        _kind(desk, one),
        capital(life.decision),
    )
    anchor = desk.anchor("anode", one.anode if of is None else f"{of.family}-1")
    return Row(tuple(inline(cell) for cell in cells), anchor=anchor)


_READINGS = {
    "as calculated": "The two agree as well as either is known",
    "more than calculated": (
        "Her coating is worse than assumed, or current goes elsewhere: to bare bronze, to another ship at the "
        "berth, or to the quay"
    ),
    "less than calculated": (
        "Her coating holds better than assumed, or she had less than she needs: only potentials measured on the "
        "hull tell which"
    ),
    "less, and some were spent": (
        "Some anodes were spent and gave no more, so that she had less than she needs for part of the time, unless her "
        "coating holds better than assumed: potentials measured on the hull tell which"
    ),
}


def _reconciled(desk: Desk) -> list[Block]:
    found, demand = desk.calculated.outcome(anodes_reconciled), desk.calculated.found(anode_demand)
    each = desk.calculated.found(each_anode)
    if isinstance(found, Absent):
        return [not_calculated(found, "What they gave, beside what is calculated")]
    if demand is None or each is None:
        return []  # neither can be wanting where the two were set beside each other
    words = (
        f"Measured wastage says that they gave {decimals(each.current, 2)} A on the mean; the surfaces below are "
        f"calculated to take {decimals(demand['mean'], 2)} A: {100 * found.share:.0f} %. {_READINGS[found.reading]}. "
        "The number below follows from what is calculated."
    )
    return [Paragraph(inline(words))]


def _needed(desk: Desk, duty: AnodeDuty) -> list[Block]:
    rows = []
    for surface in duty.surfaces:
        area = f"{desk.quantity(surface.area)}" if surface.area else f"zone {desk.label('zone', str(surface.zone))}"
        coating = f"a {surface.a or 0:g}, b {surface.b or 0:g} a year" if surface.a is not None else "bare"
        figures = " / ".join(in_column(q.si, "current density") for q in (surface.initial, surface.mean, surface.final))
        cells = (capital(surface.name), area, figures, coating, surface.source)
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("Surface", width=2),
        Column("Area", width=2),
        Column(f"{unit_of('current density')} at first, mean, end", width=1.5),
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
        f"{show(needed.mass, 'small part', more=-1)} of alloy, which is {needed.by_mass} anodes of "
        f"{show(fitted['mass'] / fitted['count'], 'small part')}; by current {needed.by_initial} when new and "
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
    label = desk.package.frames.label if desk.package.frames else (lambda x: show(x, "centre", more=-1))
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
        care += [f"coated or separated: {pair.coated}"] if pair.coated else []
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
