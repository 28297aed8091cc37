"""The condition of the ship: what the surveys found by zone, strake and plate, and what is expected of her."""

from __future__ import annotations

import math
from collections import Counter

import numpy as np

from tenderwright.calculations.ship.condition_of_shell import shell_forecast
from tenderwright.calculations.ship.members import members_found, members_gauged
from tenderwright.calculations.ship.shell_zones import zone_rates
from tenderwright.calculations.ship.survey_readings import survey_readings
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.thickness.drawn_rate import SOURCE as DRAWN_SOURCE
from tenderwright.calculations.thickness.limits import SUBSTANTIAL_SOURCE, renewal_thickness
from tenderwright.calculations.thickness.shell_forecast import PlateCall, ShellCondition
from tenderwright.calculations.thickness.zone_rate import ZoneSummary
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Column, Heading, Inline, Paragraph, Part, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated, why_not
from tenderwright.documents.parts.earlier_repairs import earlier_repairs
from tenderwright.documents.parts.old_metal import old_metal
from tenderwright.documents.parts.pits import pit_blocks
from tenderwright.documents.parts.renewal import renewal_blocks
from tenderwright.documents.parts.timber import timber
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals, factor_of, head, in_column, show, unit_of

_YEAR = 365.25 * 86400.0

WITHIN = ", within its uncertainty"
"""Said of a rate that cannot be told from none."""

YEAR = factor_of("yr")
"""A year, s."""


def condition(desk: Desk) -> Part | None:
    """Compose the condition of the ship; None where nothing in the package asks for it."""
    ship = desk.package.particulars
    if ship is not None and ship.hull is not None and not ship.hull.of_metal:
        return timber(desk)
    shell, written = desk.calculated.outcome(shell_forecast), desk.package.condition
    if isinstance(shell, Absent):
        asked = written is not None or desk.package.surveys
        return _part(not_calculated(shell)) if asked else None
    assert written is not None
    blocks: list[Block] = [
        _opening(desk, shell, written),
        *_zones(desk, shell, written),
        *_strakes(desk, shell),
        _called(desk, shell),
        *pit_blocks(desk),
        *_members(desk, written),
        *old_metal(desk),
        *earlier_repairs(desk),
        *renewal_blocks(desk),
    ]
    return _part(*blocks)


def _part(*blocks: Block) -> Part:
    return Part("condition", "", "Condition of the ship", "data", "The ship", blocks, caution=True, audience="yard")


def _opening(desk: Desk, shell: ShellCondition, written: ShipCondition) -> Paragraph:
    surveys = desk.calculated.found(survey_readings)
    number, latest = len(shell.readings), int(shell.analysis.latest.sum())
    years = f"{written.next_docking.si / _YEAR:g}"
    return Paragraph(
        inline(
            f"{number} readings of shell plate by {len(surveys.counts) if surveys else 0} surveys are set against the "
            f"thickness as built, never against a thickness of rules; the {latest} of the latest survey of each plate "
            "tell her state, and all of them her rate of loss. A reading above nominal is counted as no loss and is "
            "listed as such. Readings of plate renewed since are left out. What is expected is worked out to the "
            f"docking of {day(desk.tender.events.get('docking'))} and for {years} years after it. Limits are inputs "
            f"with their source; corrosion is substantial above three quarters of a limit ({SUBSTANTIAL_SOURCE}). "
            "Which limit holds, and what is done about a plate, the naval architect decides."
        )
    )


def percent(share: float, places: int = 0) -> str:
    """Write a fraction as a percentage."""
    return f"{decimals(100.0 * share, places)} %"


def thickness(length: float) -> str:
    """Write a thickness, for a column that says its unit."""
    return in_column(length, "thickness")


def rate_of_loss(rate: float) -> str:
    """Write a rate [m a year] without its unit."""
    return in_column(rate / YEAR, "rate of loss")


def a_year() -> str:
    """Name the unit of rates of loss in words."""
    return unit_of("rate of loss").replace("/yr", " a year")


def yearly(rate: float, uncertainty: float) -> str:
    """Write a rate [m a year] with its uncertainty, or that there is none to tell."""
    if math.isnan(rate):
        return "gauged once"
    if rate <= 0.0:
        return "no measurable loss"
    shown = f"{rate_of_loss(rate)} ± {rate_of_loss(uncertainty)}"
    return shown if rate > uncertainty else f"{shown}{WITHIN}"


def _zones(desk: Desk, shell: ShellCondition, written: ShipCondition) -> list[Block]:
    found = desk.calculated.outcome(zone_rates)
    if isinstance(found, Absent):
        return [Heading("By zone"), not_calculated(found)]
    rows = []
    for zone in written.zones:
        summary = found.get(zone.zone)
        place = f"strakes {', '.join(map(str, zone.strakes))}" + (
            f", {zone.from_} to {zone.to}" if zone.from_ and zone.to else ""
        )
        rows.append(Row((inline(capital(zone.name)), inline(place), *_zone_cells(zone.allowable.si, summary))))
    columns = (
        Column("Zone", width=2.4),
        Column("Takes in", width=2.2),
        Column("Limit", "right", 0.8),
        Column("Readings", "right", 1),
        Column("Mean loss", "right", 0.9),
        Column("Greatest", "right", 1),
        Column("Substantial", "right", 1.2),
        Column("Beyond limit", "right", 0.9),
    )
    confidence = percent(shell.outlook.confidence)
    rates = tuple(Row((inline(capital(zone.name)), *_rate_cells(found.outcomes[zone.zone]))) for zone in written.zones)
    rate_columns = (
        Column("Zone", width=2.6),
        Column("Frame spaces gauged twice", "right", 1.2),
        Column(f"Rate of loss, {a_year()}", width=2.2),
        Column(f"Spread, {a_year()}", "right", 1),
        Column("Mean loss at the next docking", "right", 1.4),
        Column(f"At {confidence}", "right", 1.1),
    )
    sources = {zone.source: None for zone in written.zones}
    first = inline(f"Limits: {'; '.join(sources)}. Losses are of the thickness as built, latest readings.")
    second = inline(
        "A zone's rate is the mean of the rates of those of its frame spaces that two surveys or more gauged, each "
        "counted by what is known of it. Its uncertainty, one standard deviation, joins that of the gauges, which a "
        "survey's readings share, with that of the mean. The spread is how far frame spaces differ beyond chance. The "
        f"last column is the loss not exceeded at {confidence} confidence, one-sided."
    )
    return [
        Heading("By zone"),
        Table(columns, tuple(rows), note=first, small=True),
        Table(rate_columns, rates, caption="Rate of loss and forecast", note=second, small=True),
    ]


def _rate_cells(found: ZoneSummary | Absent) -> tuple[Inline, ...]:
    if isinstance(found, Absent):
        return (inline("–"), inline(why_not(found)), *[inline("–")] * 3)
    return (
        inline(str(found.bays)),
        inline(yearly(found.rate, found.uncertainty)),
        inline(rate_of_loss(found.spread) if found.bays > 1 else "–"),
        inline(percent(found.mean_at_next, 1) if found.bays else "–"),
        inline(percent(found.upper_at_next, 1) if found.bays else "–"),
    )


def _zone_cells(limit: float, found: ZoneSummary | None) -> tuple[Inline, ...]:
    words = ["–"] * 5
    if found is not None:
        words = [
            str(found.readings),
            percent(found.mean_loss, 1),
            percent(found.greatest_loss),
            str(found.substantial - found.renew),
            str(found.renew),
        ]
    return tuple(inline(word) for word in [percent(limit), *words])


def _strakes(desk: Desk, shell: ShellCondition) -> list[Block]:
    found, readings, rows = shell.analysis, shell.readings, []
    for index, name in enumerate(shell.strakes):
        for code, side in enumerate(("port", "starboard")):
            of = found.latest & (readings.strake == index) & (readings.side == code)
            if not of.any():
                continue
            loss = found.found.fraction[of]
            worst = int(np.flatnonzero(of)[int(loss.argmax())])
            place = desk.package.frames.label(float(readings.x[worst])) if desk.package.frames else ""
            rows.append(
                Row(
                    (
                        inline(f"{name}, {side}"),
                        inline(str(int(of.sum()))),
                        inline(thickness(float(readings.measured[of].mean()))),
                        inline(percent(float(loss.mean()), 1)),
                        inline(
                            f"{thickness(float(readings.measured[worst]))} of "
                            f"{thickness(float(readings.as_built[worst]))}"
                        ),
                        inline(percent(float(loss.max()))),
                        inline(place),
                        inline(str(int(found.found.above_nominal[of].sum()))),
                    )
                )
            )
    columns = (
        Column("Strake", width=1.4),
        Column("Readings", "right", 1),
        Column(head("Mean", "thickness"), "right", 1),
        Column("Mean loss", "right", 1),
        Column(head("Worst", "thickness"), "right", 1.4),
        Column("Its loss", "right", 0.9),
        Column("Where", width=1.6),
        Column("Above nominal", "right", 0.9),
    )
    return [Heading("By strake"), Table(columns, tuple(rows), small=True)]


def _called(desk: Desk, shell: ShellCondition) -> Paragraph:
    """Say how many plates are called for, and where they are listed one by one."""
    counts = Counter(call.call for call in shell.calls)
    named = "; ".join(f"{number} to {call}" for call, number in counts.items()) or "none calls for anything"
    words = f"Plates gauged: {shell.analysis.call.size}, of which {named}. They stand one by one in "
    return Paragraph(inline(words, desk.part("gauging"), "."))


def plates(desk: Desk, shell: ShellCondition) -> list[Block]:
    """List the plates that are renewed or watched, with the reading that decides and what is expected of it."""
    rows: list[Row] = []
    said = ""
    for call in shell.calls:
        if call.call != said:
            said = call.call
            rows.append(Row((inline(capital(said)),), "group"))
        rows.append(_plate_row(desk, shell, call))
    columns = (
        Column("Plate", width=1.4),
        Column("Decided at", width=1.6),
        Column("Readings", "right", 0.9),
        Column("As built", "right", 0.8),
        Column("Read", "right", 0.7),
        Column("Limit", "right", 0.7),
        Column(f"Own rate, {a_year()}", width=1.6),
        Column("Rate used", width=1.6),
        Column("At docking", "right", 0.9),
        Column("At the next", "right", 0.8),
        Column(f"At {percent(shell.outlook.confidence)}", "right", 0.8),
    )
    found = shell.analysis.call
    note = inline(
        f"Thicknesses in {unit_of('thickness')}. A plate lies between butts and is numbered from aft: B5 "
        "is the fifth of strake B. Of "
        f"{found.size} plates gauged, {int((found == 0).sum())} are sound and not listed. Each reading goes on at the "
        "rate of its own frame space, drawn towards the mean of its zone the more, the less is known of it "
        f"({DRAWN_SOURCE}); a space that one survey alone gauged takes the mean. A spot that wastes faster than its "
        "frame space will be thinner than this says. The reading that decides is shown, with ± one standard deviation. "
        "What passes its limit before the next docking is renewed at this one. A plate is watched where it may pass "
        f"its limit by then at {percent(shell.outlook.confidence)} confidence, one-sided, or where its corrosion would "
        "be substantial. A star: a rate within its uncertainty."
    )
    return [Heading("Plates"), Table(columns, tuple(rows), note=note, small=True)]


def _starred(rate: str) -> str:
    """Put a star for words that a note explains."""
    return rate.replace(WITHIN, " *")


def _plate_row(desk: Desk, shell: ShellCondition, call: PlateCall) -> Row:
    found, row = shell.analysis, call.row
    places, place = found.places, int(found.governing[row])
    reading = int(places.row[place])
    built = float(shell.readings.as_built[reading])
    limit = float(renewal_thickness(built, float(shell.allowable[reading])))
    label = desk.package.frames.label if desk.package.frames else (lambda x: show(x, "centre", more=-1))
    used = _starred(yearly(float(places.rate[place]), float(places.uncertainty[place])))
    cells = (
        inline(call.name),
        inline(label(float(shell.readings.x[reading]))),
        inline(str(int(found.plates.count[row]))),
        inline(thickness(built)),
        inline(thickness(float(shell.readings.measured[reading]))),
        inline(thickness(limit)),
        inline(_starred(yearly(float(places.own[place]), float(places.own_uncertainty[place])))),
        inline(f"{used}, since built" if places.since_built[place] else used),
        inline(thickness(float(places.ahead.at_docking[place]))),
        inline(thickness(float(places.ahead.at_next[place]))),
        inline(thickness(float(places.ahead.least_at_next[place]))),
    )
    return Row(cells)


def _members(desk: Desk, written: ShipCondition) -> list[Block]:
    limit, found = written.members, desk.calculated.outcome(members_gauged)
    if isinstance(found, Absent):
        return [] if isinstance(found, NotAsked) else [Heading("Inside the tanks"), not_calculated(found)]
    absent = found.first_absent()
    rows = tuple(
        Row(
            (
                inline(capital(desk.label("tank", one.tank))),
                inline(one.member),
                inline(str(one.found.readings)),
                inline(thickness(one.found.as_built)),
                inline(thickness(one.found.least)),
                inline(percent(one.found.mean_loss)),
                inline(percent(one.found.greatest_loss)),
                inline("–" if math.isnan(one.found.rate) else rate_of_loss(one.found.rate)),
                inline({"renew": "beyond the limit", "substantial": "substantial"}.get(one.found.state, "sound")),
            )
        )
        for one in desk.calculated.found(members_found) or ()
    )
    columns = (
        Column("Space", width=1.7),
        Column("Member", width=2),
        Column("Readings", "right", 0.9),
        Column("As built", "right", 0.8),
        Column("Least", "right", 0.7),
        Column("Mean loss", "right", 0.8),
        Column("Greatest", "right", 0.8),
        Column(a_year(), "right", 0.8),
        Column("Worst reading", width=1.4),
    )
    blocks: list[Block] = [Heading("Inside the tanks")]
    if limit is not None and rows:
        note = inline(f"Thicknesses in mm. Limit {percent(limit.allowable.si)}: {limit.source}.")
        blocks.append(Table(columns, rows, note=note, small=True))
    return [*blocks, *([not_calculated(absent)] if absent else [])]
