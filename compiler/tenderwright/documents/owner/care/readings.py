"""What was read between dockings, as of the last day recorded."""

from __future__ import annotations

from tenderwright.calculations.care.potentials import OVER, PROTECTED, WOOD_OVER, PlacePotential, Potentials
from tenderwright.calculations.ship.care import (
    alarms_tested,
    damp_spaces,
    hull_potentials,
    last_recorded,
    leak_series,
    leak_trend,
)
from tenderwright.calculations.ship.timber import of_wood, timber_practice
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.edition import Block, Column, Facts, Heading, Paragraph, Row, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals, show

_DOUBT = 2.0


def as_last_read(desk: OwnerDesk) -> list[Block]:
    """Compose potentials, leaks, alarms and air as last read."""
    last = desk.calculated.found(last_recorded)
    if last is None:
        words = "Nothing is recorded yet: `tenderwright add care-readings log` writes the head of a file under care/."
        return [Heading("As last read"), Paragraph(inline(words))]
    blocks: list[Block] = [Heading(f"As last read, up to {day(last)}")]
    potentials = desk.calculated.outcome(hull_potentials)
    pairs = [("Potentials", inline(_unless(potentials)))] if isinstance(potentials, Absent) else []
    pairs += [("Bilges", inline(_unless(desk.calculated.outcome(leak_series))))] if not _leaks(desk) else []
    pairs += [("Wood", inline(_wood(desk)))] if of_wood(desk.package.particulars) else []
    pairs += [("Alarms", inline(_alarms(desk))), ("Air", inline(_air(desk)))]
    blocks += [_potentials(desk, potentials)] if not isinstance(potentials, Absent) else []
    blocks += [_leak_table(desk)] if _leaks(desk) else []
    return [*blocks, Facts(tuple(pairs))]


def _unless(outcome: object) -> str:
    return f"Not known: {outcome.why}." if isinstance(outcome, Absent) else ""


def _potentials(desk: OwnerDesk, found: Potentials) -> Table:
    wooden = of_wood(desk.package.particulars)
    rows = [
        Row(
            (
                inline(one.place),
                inline(one.day),
                inline(decimals(one.potential, 2)),
                inline(decimals(one.correction, 3) if one.correction else "–"),
                inline(decimals(one.before, 2) if one.before is not None else "–"),
                inline(_verdict(one, wooden=wooden, acted=_acted(desk, one.place))),
            )
        )
        for one in found.places
    ]
    columns = (
        Column("Potential at", width=2.4),
        Column("Read on", width=1.2),
        Column("V, silver in sea water", "decimal", 1.2),
        Column("of that, for cell and salt", "decimal", 1.2),
        Column("Round before", "decimal", 1),
        Column("Result", width=2.4),
    )
    limits = (
        f"On wood no more negative than {show(WOOD_OVER, 'potential')} (guide for small craft, from memory)."
        if wooden
        else f"Steel is protected at {show(PROTECTED, 'potential')} and more negative (EN 16222, from memory), in mud "
        f"without air at −0.90 V; beyond {show(OVER, 'potential')} coating may come off (from memory). An open silver "
        "cell is corrected for salinity by Nernst's equation (derived)."
    )
    return Table(columns, tuple(rows), small=True, note=inline(limits))


def _acted(desk: OwnerDesk, place: str) -> bool:
    """Tell whether something was done at a place between its last two potentials, which explains a change."""
    rows = [one for one in desk.package.care_readings if one.place == place and one.kind in ("potential", "action")]
    read = [number for number, one in enumerate(rows) if one.kind == "potential"]
    return len(read) > 1 and read[-1] - read[-2] > 1


def _verdict(one: PlacePotential, *, wooden: bool, acted: bool) -> str:
    limit = WOOD_OVER if wooden else PROTECTED
    spare = one.potential - limit if wooden else limit - one.potential
    if spare < 0:
        words = "over-protected" if wooden else "not protected"
    elif not wooden and one.potential < OVER:
        words = "over-protected"
    elif spare < _DOUBT * one.u:
        words = "not known: nearer the limit than the cell is sure"
    else:
        words = "in order"
    return f"{words}; changed by more than 0.05 V: find the cause" if one.jumped and not acted else words


def _leaks(desk: OwnerDesk) -> bool:
    return bool(desk.calculated.found(leak_series))


def _leak_table(desk: OwnerDesk) -> Table:
    series, trends = desk.calculated.found(leak_series) or {}, desk.calculated.each(leak_trend)
    rows = []
    for name, one in series.items():
        trend = trends.get(name)
        if trend is None:
            words = "no trend yet: four readings are needed"
        elif not trend.sure:
            words = "no trend beyond chance"
        elif trend.slope < 0:
            words = "falling"
        elif trend.reaches:
            words = f"growing: reaches the limit in {decimals(trend.reaches, 1)} years"
        else:
            words = "at its limit" if trend.reaches == 0 else "growing"
        last = show(one.values[-1], "paint", digits=2)
        rows.append(
            Row(
                tuple(
                    map(
                        inline,
                        (one.place, one.days[-1], last, show(one.limit, "paint", digits=2), words, one.limit_source),
                    )
                )
            )
        )
    columns = (
        Column("Water in a day, in", width=2),
        Column("Read on", width=1.2),
        Column("Last", width=1),
        Column("Limit", width=1),
        Column("Trend since something was done there", width=2.2),
        Column("Limit by", width=2),
    )
    return Table(columns, tuple(rows), small=True)


def _wood(desk: OwnerDesk) -> str:
    """Say the moisture of each spot as last read, beside what the shipwright or surveyor allows."""
    last = {one.place: one for one in desk.package.care_readings if one.kind == "moisture" and one.si is not None}
    if not last:
        return "Moisture is not known: care/ has no readings of kind `moisture`."
    told = ", ".join(f"{place} {decimals(100 * (one.si or 0.0), 0)} % on {one.day}" for place, one in last.items())
    practice = desk.calculated.found(timber_practice)
    if practice is None or practice.moisture is None:
        return f"{told}. No limit: it needs `moisture` under `practice` in vessel/timber.yaml."
    wet = [place for place, one in last.items() if (one.si or 0.0) > practice.moisture.si]
    over = f"over it: {', '.join(wet)}, where decay is looked for" if wet else "none over it"
    return f"{told}. Limit {desk.quantity(practice.moisture)} ({practice.source}); {over}."


def _alarms(desk: OwnerDesk) -> str:
    found = desk.calculated.outcome(alarms_tested)
    if isinstance(found, Absent):
        return _unless(found)
    bad = [f"{one.place} ({'fault' if one.fault else f'{one.age} days old'})" for one in found if not one.good]
    return f"{len(found)} tested, in order" if not bad else f"to be tested or mended: {', '.join(bad)}"


def _air(desk: OwnerDesk) -> str:
    found = desk.calculated.outcome(damp_spaces)
    if isinstance(found, Absent):
        return _unless(found)
    return (
        "dry enough"
        if not found
        else "too damp for two weeks and more: "
        + ", ".join(f"{one.place}, up to {decimals(100 * one.highest, 0)} %" for one in found)
    )
