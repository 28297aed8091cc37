"""The condition of a hull of wood: planks, seams, borings, moisture, fastenings, borers, sheathing and hog."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from msgspec.structs import replace

from tenderwright.calculations.ship import timber as steps
from tenderwright.calculations.ship.timber import AIM, CONFIDENCE, wood
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.steps.step import Step
from tenderwright.calculations.timber.moisture import LEAST, MOST, SOURCE
from tenderwright.calculations.timber.proportion import SOURCE as BOUNDS_SOURCE
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Column, Facts, Heading, Inline, Paragraph, Part, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated, why_not
from tenderwright.documents.parts.timber_lists import (
    bolts_table,
    borers_table,
    borings_table,
    moisture_table,
    planks_table,
    potentials_table,
    seams_table,
    sheathing_blocks,
)
from tenderwright.model.build import Reference
from tenderwright.model.timber import FastenedZone, Hog, Timber, TimberPractice
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals


def timber(desk: Desk) -> Part:
    """Compose the condition of a hull of wood, or say what it needs."""
    found = desk.calculated.outcome(wood)
    blocks = [not_calculated(found)] if isinstance(found, Absent) else _blocks(desk, found)
    return Part(
        "condition", "", "Condition of the hull", "data", "The ship", tuple(blocks), caution=True, audience="yard"
    )


def _blocks(desk: Desk, found: Timber) -> list[Block]:
    return [
        _opening(desk, found),
        *_amounts(desk, found),
        *planks_table(desk, found),
        *seams_table(desk, found),
        *borings_table(desk, found, _verdict(desk, steps.borings_judged, "timber.borings.beyond", "beyond the limit")),
        *moisture_table(desk, found, _meter(desk, found)),
        *_fastenings(desk, found),
        *bolts_table(desk, found),
        *borers_table(desk, found),
        *sheathing_blocks(desk, found),
        *_hog(desk, found.hog),
        *potentials_table(desk, found, AIM),
        *_dry(desk, found.practice),
        *_notes(desk, found),
    ]


def _notes(desk: Desk, found: Timber) -> list[Block]:
    return [Heading("What else the survey says"), desk.prose(found.notes)] if found.notes else []


def _opening(desk: Desk, found: Timber) -> Paragraph:
    limits = f" Limits are inputs ({found.practice.source})." if found.practice else ""
    words = inline(
        f"Surveyed on {day(found.surveyed)} by the {found.surveyor}, {found.lying}.{limits} What is done about a "
        "plank, seam or fastening, shipwright and surveyor decide with the owner; more is found as planks come off."
    )
    return (
        Paragraph((*words, *inline(" Report: "), desk.ref(found.report), *inline(".")))
        if found.report
        else Paragraph(words)
    )


_AMOUNTS: tuple[tuple[str, Step[Any], tuple[tuple[str, str], ...]], ...] = (
    (
        "Planking to renew",
        steps.planking_to_renew,
        (("timber.planking.number", "planks"), ("timber.planking.length", ""), ("timber.planking.area", "")),
    ),
    ("Board for it, waste included", steps.planking_to_renew, (("timber.planking.board", ""),)),
    ("Seams and butts to rake out and caulk", steps.seams_by_state, (("timber.seams.rake", ""),)),
)


def _amounts(desk: Desk, found: Timber) -> list[Block]:
    facts: list[tuple[str, Inline]] = []
    for title, step, names in _AMOUNTS:
        outcome = desk.calculated.outcome(step)
        told = why_not(outcome) if isinstance(outcome, Absent) else ", ".join(_figure(desk, *one) for one in names)
        facts.append((title, inline(told)))
    likely = 0.0
    zones = desk.calculated.each(steps.zone_fastenings)
    for zone in found.fastenings:
        likely += zones[zone.zone]["likely"] if zone.zone in zones else 0
    if zones:
        most = sum(one["most"] for one in zones.values())
        words = f"{likely:.0f} likely, {most:.0f} at most, of the zones drawn"
        facts.append(("Fastenings to renew", inline(words)))
    return [Heading("What it comes to"), Facts(tuple(facts))]


def _figure(desk: Desk, name: str, of: str) -> str:
    value = desk.record.values[name]
    return f"{value.si:.0f} {of if value.si != 1 else of.removesuffix('s')}" if of else desk.figure(value, 3)


def _verdict(desk: Desk, step: Step[Any], name: str, of: str) -> str:
    outcome = desk.calculated.outcome(step)
    if isinstance(outcome, Absent):
        return why_not(outcome)
    count = desk.record.values[name].si
    return f"{count:.0f} {of}." if count else f"None {of}."


def _meter(desk: Desk, found: Timber) -> str:
    meter = f"Meter: {found.moisture_meter}. " if found.moisture_meter else "The meter is not named. "
    ranks = (
        f"A resistance meter measures from {100 * LEAST:.0f} % to {100 * MOST:.0f} % and beyond only ranks wet and "
        f"wetter ({SOURCE})."
    )
    return f"{meter}{_verdict(desk, steps.moisture_judged, 'timber.moisture.above', 'above the limit')} {ranks}"


def _fastenings(desk: Desk, found: Timber) -> list[Block]:
    if not found.fastenings:
        return []
    outcome = desk.calculated.outcome(steps.zone_fastenings)
    rows = []
    for zone in found.fastenings:
        one = outcome if isinstance(outcome, Absent) else outcome.outcomes[zone.zone]
        head = (
            inline(capital(zone.name)),
            inline("yes" if zone.below_water else "no"),
            inline(zone.kind),
            inline(f"{zone.number}" + (f": {zone.counted}" if zone.counted else "")),
            inline(_sides(zone)),
        )
        rows.append(Row((*head, *_judged(one), _item(desk, zone.item))))
    columns = (
        Column("Zone", width=1.8),
        Column("Below water", width=0.8),
        Column("Kind", width=1.1),
        Column("Fitted", width=2),
        Column("Drawn, port and starboard", width=1.1),
        Column("Loss of area, mean and greatest", width=1.3),
        Column("Failed", "right", 0.8),
        Column("To renew: likely; least to most", width=1.4),
        Column("Item", width=0.7),
    )
    confidence = found.practice.confidence if found.practice else None
    limit = found.practice.fastening_loss if found.practice else None
    above = f"A fastening counts as failed above a loss of {desk.quantity(limit)} of its area. " if limit else ""
    share = desk.quantity(confidence) if confidence else f"{100 * float(CONFIDENCE.si):.0f} %"
    note = inline(
        f"{above}Least and most are exact bounds at {share} confidence ({BOUNDS_SOURCE}), for fastenings drawn at "
        "random. The wood round a fastening is judged apart from it."
    )
    return [Heading("Fastenings"), Table(columns, tuple(rows), note=note, small=True), *_drawn(desk, found.fastenings)]


def _sides(zone: FastenedZone) -> str:
    return " and ".join(str(sum(one.side == side for one in zone.drawn)) for side in ("port", "starboard"))


def _judged(one: object) -> tuple[Inline, ...]:
    if isinstance(one, Absent):
        return (inline(why_not(one)), inline("–"), inline("–"))
    assert isinstance(one, dict)
    return (
        inline(f"{decimals(100 * one['mean_loss'], 0)} %, {decimals(100 * one['greatest_loss'], 0)} %"),
        inline(f"{one['failed']:.0f} of {one['drawn']:.0f}"),
        inline(f"{one['likely']:.0f}; {one['least']:.0f} to {one['most']:.0f}"),
    )


def _drawn(desk: Desk, zones: Sequence[FastenedZone]) -> list[Block]:
    return [_of_zone(desk, zone) for zone in zones if zone.drawn]


def _of_zone(desk: Desk, zone: FastenedZone) -> Table:
    rows = tuple(
        Row(
            (
                inline(one.fastening),
                inline(", ".join(word for word in (one.side, one.at.text if one.at else "") if word)),
                inline(f"{desk.quantity(one.new)} to {desk.quantity(one.now)}" + (", necked" if one.neck else "")),
                inline(one.pull or "–"),
                inline(one.wood or "–"),
                inline(one.replaced_by or "–"),
            )
        )
        for one in zone.drawn
    )
    columns = (
        Column("No.", width=0.6),
        Column("Where", width=1.5),
        Column("Diameter", width=2.8),
        Column("Drew", width=0.7),
        Column("Wood round it"),
        Column("Replaced by", width=1.6),
    )
    return Table(columns, rows, caption=f"Fastenings drawn: {zone.name}", small=True)


def _hog(desk: Desk, hog: Hog | None) -> list[Block]:
    if hog is None:
        return [Heading("Hog of the keel"), Paragraph(inline("Not measured: the survey of her timber has no hog."))]
    blocks: list[Block] = [Heading("Hog of the keel")]
    line = desk.calculated.outcome(steps.hog_measured)
    drafts = desk.calculated.outcome(steps.hog_from_drafts)
    words = [f"Measured on {day(hog.day)}: {hog.by}."]
    if isinstance(line, Absent):
        words.append(f"From the keel line. {why_not(line)}")
    else:
        words.append(
            f"Midway she is {_bent(desk, 'timber.hog.hog')}; the greatest distance from the straight line is "
            f"{desk.figure(desk.record.values['timber.hog.greatest'], 3)}, "
            f"{desk.figure(desk.record.values['timber.hog.at'], 3)} forward of the after perpendicular."
        )
    if not isinstance(drafts, Absent):
        words.append(f"By drafts read afloat she is {_bent(desk, 'timber.hog-by-drafts.hog')}.")
    elif not isinstance(drafts, NotAsked):
        words.append(f"By drafts. {why_not(drafts)}")
    built = {
        "measured line": "The keel blocks are built to the measured line.",
        "straight line": "The keel blocks are said to be built to a straight line, on which she would be strained.",
        "": "To which line the keel blocks are built is not said.",
    }[hog.blocks]
    words.append(
        f"{built} Hog is not pressed out in one docking without a structural plan (common practice, no source)."
    )
    blocks.append(Paragraph(inline(" ".join(words))))
    if not isinstance(line, Absent):
        pairs = zip(sorted(hog.keel, key=lambda one: one.at.x), line["off"], strict=True)
        rows = tuple(
            Row((inline(one.at.text), inline(desk.quantity(one.height)), inline(_off(desk, off)))) for one, off in pairs
        )
        columns = (
            Column("At", width=1.4),
            Column("Height as measured", "right"),
            Column("Over the straight line between the ends", "right", 1.6),
        )
        blocks.append(Table(columns, rows, note=inline("Heights to which the tops of the blocks are set.")))
    return blocks


def _bent(desk: Desk, name: str) -> str:
    value = desk.record.values[name]
    if abs(value.si) < 5e-4:
        return "straight"
    return f"{'hogged' if value.si > 0 else 'sagged'} by {desk.figure(value, 3).replace('−', '').replace('-', '')}"


def _off(desk: Desk, off: float) -> str:
    return desk.figure(replace(desk.record.values["timber.hog.greatest"], si=off), 3)


def _dry(desk: Desk, practice: TimberPractice | None) -> list[Block]:
    if practice is None:
        return [
            Heading("Standing dry and taking up"),
            Paragraph(inline("Not judged: the survey of her timber has no rules for judging wood.")),
        ]
    dry = desk.calculated.outcome(steps.planking_dry)
    facts: list[tuple[str, Inline]] = []
    if isinstance(dry, Absent):
        facts.append(("Days dry", inline(why_not(dry))))
    else:
        planned = f"{dry['planned'] / 86400:.0f} d planned"
        met = "within it" if dry["met"] else f"{dry['beyond'] / 86400:.0f} d beyond it, so that the planking is wetted"
        facts.append(
            ("Days dry", inline(f"{planned}; {practice.days_dry} d before the planking shrinks too far: {met}"))
        )
    facts.append(("Kept wet by", _with_item(desk, practice.wetting or "not said", practice.wetting_item)))
    taking_up = desk.quantity(practice.taking_up, "not said")
    facts.append(("Until the planking has taken up", inline(taking_up)))
    facts.append(("Pumps", inline(practice.pumps or "not said")))
    facts.append(
        ("Watch after floating", _with_item(desk, "" if practice.watch else "no item holds it", practice.watch))
    )
    note = (
        "She is floated slowly, and stays in the slings or over the blocks until the pumps gain on the leaks; nobody "
        "leaves her unwatched until she has taken up (common practice, no source)."
    )
    return [Heading("Standing dry and taking up"), Facts(tuple(facts)), Paragraph(inline(note))]


def _with_item(desk: Desk, words: str, item: Reference | None) -> Inline:
    if item is None:
        return inline(words)
    return (*inline(f"{words}, " if words else ""), desk.ref(item))


def _item(desk: Desk, item: Reference | None) -> Inline:
    return (desk.item_ref(item.name),) if item else inline("–")
