"""Who tows her where, and how she floats: out, home, and against what the dock wants."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import degrees
from typing import Any

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.ship.docking_condition import docking
from tenderwright.calculations.ship.how_sure import how_sure
from tenderwright.calculations.ship.tow import (
    tow_condition,
    tow_home_condition,
    tow_home_reserve,
    tow_reserve,
    towed,
    towed_home,
)
from tenderwright.calculations.ship.wanted import trim_tolerance
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.steps.step import Step
from tenderwright.calculations.verdict import Limit, Verdict
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Column, Facts, Heading, Inline, Paragraph, Row, Table, inline
from tenderwright.documents.floated_on import floated_on
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.documents.parts.limits import both, shown, word
from tenderwright.model.build import TO_BE_WRITTEN
from tenderwright.model.tow import Tow
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals, head, in_column, show

_PASSAGES: tuple[tuple[str, Step[FloatingPosition], Step[Mapping[str, Any]], Step[Verdict]], ...] = (
    ("Out", towed, tow_reserve, tow_condition),
    ("Home", towed_home, tow_home_reserve, tow_home_condition),
)


def in_short(desk: Desk, plan: Tow) -> list[Block]:
    """Say who, where, when and how, in a few facts."""
    ship, events = desk.package.particulars, desk.tender.events
    dock = next((one for one in desk.package.facilities if plan.dock and one.facility == plan.dock.name), None)
    facts: list[tuple[str, Inline]] = []
    if ship is not None:
        size = ship.dimensions
        air = f", {desk.quantity(size.air_draft)} high above the water" if size.air_draft else ""
        sizes = f"{desk.quantity(size.length_overall)} over all, {desk.quantity(size.beam)} broad{air}"
        facts.append(("Ship", inline(f"{ship.name}, {ship.type}, {ship.built or TO_BE_WRITTEN}; {sizes}")))
    facts += [
        ("Out", inline(f"{desk.tender.owner.place} to {dock.name if dock else 'a dock not chosen yet'}, "
                       f"to arrive {day(events.get('arrival'))}")),
        ("Home", inline(f"from {day(events.get('redelivery'))}")),
        ("Tower", inline(plan.tower)),
        ("Tow master", inline(plan.master or _unsaid("master"))),
        ("Surveyor", inline(plan.surveyor or _unsaid("surveyor"))),
        ("Owner", inline(f"{desk.tender.owner.name}; {desk.tender.owner.contact or desk.tender.owner.representative}")),
        ("How", inline(_how(desk, plan))),
        ("Riding crew", inline(plan.riding_crew or _unsaid("riding_crew"))),
        ("Paid for", inline(_paid(desk))),
    ]  # fmt: skip
    return [Facts(tuple(facts))]


def _unsaid(key: str) -> str:
    return f"Not said: {key} in tow.yaml"


def _how(desk: Desk, plan: Tow) -> str:
    length = f", {desk.quantity(plan.length)} from the tug's stern to hers" if plan.length else ""
    screw = "" if plan.propeller == "none" else f", propeller {plan.propeller}"
    return f"Towed {plan.towed}{length}; a dead ship{screw}"


def _paid(desk: Desk) -> str:
    """Say whether the tow is in the tender, from the answers to the services and the rules of award."""
    answer = desk.tender.services.get("tow-survey")
    if answer is not None and answer.item is not None:
        return f"In the tender, item {answer.item.name}"
    by_owner = answer.why if answer is not None and answer.why else "Not in the tender: the owner's"
    rule = desk.tender.award
    counted = "; counted in the award" if rule is not None and "towing" in (rule.counts or ()) else ""
    return f"{by_owner}{counted}"


def condition(desk: Desk, plan: Tow) -> list[Block]:
    """Say how she floats on both passages, and hold it against the limits of the tow."""
    blocks: list[Block] = [Heading("How she floats"), *floated_on(desk)]
    afloat = [(name, found) for name, step, _, _ in _PASSAGES if (found := desk.calculated.found(step)) is not None]
    for name, step, _, _ in _PASSAGES:
        outcome = desk.calculated.outcome(step)
        if isinstance(outcome, Absent):
            blocks.append(not_calculated(outcome, f"{name}"))
    if afloat:
        blocks.append(_afloat(desk, afloat))
    blocks += _against(desk)
    blocks += _for_the_dock(desk)
    return [*blocks, *_not_known(desk, plan)]


def _afloat(desk: Desk, afloat: list[tuple[str, FloatingPosition]]) -> Table:
    marks = desk.package.particulars.draft_marks if desk.package.particulars else ()
    columns = [
        Column("Passage"),
        Column(head("Weight", "weight"), "decimal"),
        *(Column(head(f"Mark {mark.name}", "draft mark"), "decimal") for mark in marks),
        Column(head("Trim by the stern", "trim"), "decimal"),
        Column("List", "decimal"),
        Column(head("GM", "metacentric height"), "decimal"),
        Column(head("Lost to slack tanks", "metacentric height"), "decimal", 1.2),
    ]
    rows = []
    for name, found in afloat:
        h = found.hydrostatics
        cells = (
            name,
            in_column(found.loading.mass, "weight"),
            *(in_column(found.draft_at_marks(m.at.x, m.datum.si if m.datum else 0.0), "draft mark") for m in marks),
            in_column(h.trim, "trim"),
            "–" if found.heel is None else f"{decimals(degrees(found.heel), 1)}°",
            in_column(found.gm_fluid, "metacentric height"),
            in_column(found.gm_solid - found.gm_fluid, "metacentric height"),
        )
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    known = desk.calculated.found(how_sure)
    u = known.u("gm") if known is not None else None
    sure = f" GM is known to ± {show(2 * u, 'metacentric height')}, twice its standard uncertainty." if u else ""
    period = desk.record.values.get("tow.roll.period")
    roll = ""
    if period is not None:
        roll = (
            f" With that GM she rolls out and back in about {period.si:.0f} s (from memory): a slower roll means less."
        )
    note = inline(
        "Tanks as last sounded and changed for the tow; out with what is landed before docking, "
        "home with what the items "
        f"put on and take off and the tanks as she is floated. GM after free surfaces.{sure}{roll}"
    )
    return Table(tuple(columns), tuple(rows), note=note, small=True)


def _against(desk: Desk) -> Iterator[Block]:
    """Hold both passages against the limits, side by side."""
    judged: dict[str, dict[str, Limit]] = {}
    asked: dict[str, str] = {}
    for name, _, _, step in _PASSAGES:
        outcome = desk.calculated.outcome(step)
        if isinstance(outcome, Absent):
            if not isinstance(outcome, NotAsked):
                yield not_calculated(outcome, f"{name}, against the limits")
            continue
        judged[name] = {one.name: one for one in outcome.limits}
        asked |= {one.name: shown(one.limit, one) for one in outcome.limits}
    if not judged:
        return
    rows = []
    for limit, allowed in asked.items():
        cells = [capital(limit), allowed]
        for passage in judged.values():
            one = passage.get(limit)
            cells += [both(one), word(one.met)] if one is not None else ["–", "–"]
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    pairs = [column for name in judged for column in (Column(name, width=1.2), Column("Verdict"))]
    stated = desk.package.tow.limits if desk.package.tow else None
    note = inline(f"Asked by: {stated.source}." if stated else "")
    yield Table((Column("Limit", width=2), Column("Asked"), *pairs), tuple(rows), note=note, small=True)


def _for_the_dock(desk: Desk) -> Iterator[Block]:
    """Say what lies between the trim of the tow and the trim that the dock wants."""
    found, docked, light = desk.calculated.found(towed), desk.calculated.found(docking), desk.package.lightship
    if found is None or docked is None or light is None or light.docking is None:
        return
    wanted, length = light.docking.trim.si, found.hydrostatics.length
    trim, tolerance = found.hydrostatics.trim, float(trim_tolerance(light).si)
    share = f"{decimals(100 * trim / length, 1)} % of her length"
    asked = f"the dock wants {show(wanted, 'trim')} ± {show(tolerance, 'trim')}"
    moved = (
        "ballast is moved between the tow and the dock"
        if abs(trim - wanted) > tolerance
        else "the same ballast serves both"
    )
    yield Paragraph(
        inline(
            f"Tow and dock. Under tow {show(trim, 'trim')} by the stern, {share}, "
            "where 1 % is usual (TB 55-1900-232-10); "
            f"{asked}: {moved}. Density of the water {show(found.hydrostatics.density, 'density')}."
        )
    )


def _not_known(desk: Desk, plan: Tow) -> Iterator[Block]:
    """Say what an insurer asks of stability that is not calculated, and what it would take."""
    reserve = desk.calculated.outcome(tow_reserve)
    words = (
        "Not calculated: righting levers at large heel (area, range, lever and angle of the maximum, "
        "heel by wind), and "
        "whether she stays afloat with a compartment flooded. "
        "Both take the naval architect's curves of righting levers and "
        "damage sums; they go with this plan."
    )
    if isinstance(reserve, Absent):
        words += f" Height of openings over the water: {reserve.why}." if not isinstance(reserve, NotAsked) else ""
    else:
        first = "every opening listed on deck closes tight"
        if reserve["first"]:
            first = f"a heel of {degrees(reserve['angle']):.0f}° brings {reserve['first']} to the water"
        words = (
            f"Lowest on deck that is not watertight, going out: {reserve['lowest']}, "
            f"{show(reserve['freeboard'], 'clearance')} over the water; {first}, "
            f"by the upright waterline alone. {words}"
        )
    if plan.limits is None:
        words += " No limits are stated: limits in tow.yaml."
    yield Paragraph(inline(words))
