"""What is aboard under way: shaft and rudder, lights, alarms, pumps, time to fill, and who may board how."""

from __future__ import annotations

from tenderwright.calculations.ship.tow import towed
from tenderwright.calculations.ship.tow_flooding import largest_hole, tow_boarding, tow_flooding
from tenderwright.calculations.ship.tow_pull import tow_battery, tow_battery_carried
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Caution, Column, Facts, Heading, Inline, Paragraph, Row, Table, inline
from tenderwright.documents.not_calculated import absent_of, not_calculated
from tenderwright.documents.parts.limits import word
from tenderwright.model.tow import Tow
from tenderwright.quantities.display import head, in_column, show


def aboard(desk: Desk, plan: Tow) -> list[Block]:
    """Say how she is secured and lit, and what keeps her afloat."""
    facts: list[tuple[str, Inline]] = [
        *_shaft(desk, plan),
        ("Rudder", desk.words(plan.rudder) if plan.rudder is not None else inline("Not said: rudder in tow.yaml.")),
        *_electricity(desk, plan),
    ]
    return [Facts(tuple(facts)), Heading("Alarms, pumps and time"), *_spaces(desk, plan), *_pumps(desk, plan)]


def _shaft(desk: Desk, plan: Tow) -> list[tuple[str, Inline]]:
    screw = [] if plan.propeller == "none" else [("Propeller", inline(_propeller(plan)))]
    if plan.shaft is None and plan.propeller == "none":
        return []
    return [
        *screw,
        ("Shaft", desk.words(plan.shaft) if plan.shaft is not None else inline("Not said: shaft in tow.yaml.")),
    ]


def _propeller(plan: Tow) -> str:
    return {
        "locked": "Locked: it drags, and steadies her (TB 55-1900-232-10).",
        "unshipped": "Off: less drag on a long tow.",
        "freewheeling": "Left to turn, which is not advised: shaft disconnected and lubricated, "
        "and no gear is turned dry (TB 55-1900-232-10).",
    }[plan.propeller]


def _electricity(desk: Desk, plan: Tow) -> list[tuple[str, Inline]]:
    found = plan.electricity
    if found is None:
        return [("Lights, battery", inline("Not said: electricity in tow.yaml."))]
    loads = "; ".join(
        f"{one.what}: {one.count} of {desk.quantity(one.power)}, {desk.quantity(one.hours)} a day"
        for one in found.loads
    )
    facts: list[tuple[str, Inline]] = [("On the battery", inline(f"{loads}."))]
    asked, carried = desk.calculated.found(tow_battery), desk.calculated.outcome(tow_battery_carried)
    if asked is not None:
        words = (
            f"{show(asked['charge'], 'charge')} at {desk.quantity(found.voltage)} for "
            f"{desk.quantity(found.lasts)}, with half as "
            "much again in hand (common practice, no source)"
        )
        verdict = ""
        if not isinstance(carried, Absent):
            aboard_ = desk.quantity(found.battery, "not known")
            verdict = f". Carried: {aboard_}, {word(carried.met).lower()}"
        facts.append(("Battery", (*inline(f"{words}{verdict}. "), *(desk.words(found.notes) if found.notes else ()))))
    return facts


def _spaces(desk: Desk, plan: Tow) -> list[Block]:
    outcome, ship = desk.calculated.outcome(tow_flooding), desk.package.particulars
    if isinstance(outcome, Absent):
        if not plan.compartments:
            words = (
                "Not said: compartments in tow.yaml, the spaces between main bulkheads with alarm and pump of each. "
            )
            return [Paragraph(inline(f"{words}Without them nobody knows how fast she fills."))]
        return [not_calculated(outcome, "Time to fill")]
    boarding, position = desk.calculated.outcome(tow_boarding), desk.calculated.found(towed)
    limits = {} if isinstance(boarding, Absent) else {one.name: one for one in boarding.limits}
    rows = []
    for space in plan.compartments:
        found = outcome.get(space.compartment)
        hole = None if position is None else largest_hole(space, desk.package.openings, position, ship)
        cells = [space.name, space.alarm or "none stated", space.pump or "none"]
        if found is None:
            absent = absent_of(outcome, space.compartment)
            told = (
                "no opening under water listed"
                if isinstance(absent, NotAsked) or absent is None
                else f"not calculated: {absent.why}"
            )
            cells += [told, "–", "–", "–"]
        else:
            limit = limits.get(space.name)
            filled = "pump keeps up" if found["time"] is None else in_column(found["time"], "minutes")
            cells += [
                hole.name if hole else "–",
                in_column(found["inflow"] or 0.0, "flow"),
                filled,
                word(limit.met) if limit else "–",
            ]
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("Space", width=1.4),
        Column("Alarm", width=1.7),
        Column("Pump", width=1.4),
        Column("Largest opening under water", width=1.5),
        Column(head("Lets in", "flow"), "decimal", 0.9),
        Column(head("Full in", "minutes"), "decimal", 0.9),
        Column("In time", width=0.8),
    )
    time = f"Somebody can be aboard in {desk.quantity(plan.boarding_time)}. " if plan.boarding_time is not None else ""
    note = inline(
        f"{time}Were the largest closure under water to fail wholly, the head held and the pump running: "
        "a chest as if its whole "
        "opening let water in, a stern tube by what its shaft leaves open. Where nobody is aboard in time, "
        "a second barrier "
        "is put behind that opening before she sails: a blank, or a cover from outside. One calculation for planning."
    )
    return [Table(columns, tuple(rows), note=note, small=True)]


def _pumps(desk: Desk, plan: Tow) -> list[Block]:
    if not plan.pumps:
        return [Paragraph(inline("Pumps aboard: none stated, pumps in tow.yaml."))]
    rows = tuple(
        Row(tuple(inline(cell) for cell in (
            one.what, one.where, desk.quantity(one.flow, "not known"), one.proved or "not yet: run before she sails", ""
        )))
        for one in plan.pumps
    )  # fmt: skip
    columns = (
        Column("Pump", width=1.6),
        Column("Where", width=2.6),
        Column("Takes", "right", 0.8),
        Column("Seen to draw", width=1.4),
        Column("Signed on the day", width=1),
    )
    return [Table(columns, rows, small=True)]


def boarding(desk: Desk, plan: Tow) -> list[Block]:
    """Give what somebody needs to know who boards her under way."""
    told = desk.words(plan.boarding) if plan.boarding is not None else inline("Not said: boarding in tow.yaml.")
    hazards = desk.package.particulars.hazards if desk.package.particulars else ()
    known = "; ".join(f"{one.material}, {one.where}" for one in hazards if one.status != "tested absent")
    confined = [tank.name for tank in desk.package.tanks if tank.confined]
    spaces = f"{len(confined)} tanks and voids are confined spaces. " if confined else ""
    return [
        Heading("Boarding under way"),
        Paragraph(told),
        Caution(
            "Before anybody boards",
            (
                inline(
                    "By the tug master's word alone, in the weather he chooses, with lifejacket, "
                    "radio and one who stays outside. "
                    f"{spaces}A space that has stood shut lacks oxygen: nobody goes below until it is tested, "
                    "and nobody alone. "
                    "A space that makes water is not entered."
                ),
                *([inline(f"Hazardous materials aboard: {known}.")] if known else ()),
            ),
        ),
    ]
