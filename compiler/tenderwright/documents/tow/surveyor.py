"""The tow surveyor's questions, each with what this package already answers and where, and the signatures."""

from __future__ import annotations

from tenderwright.calculations.ship.tow import towed, towed_home
from tenderwright.calculations.ship.tow_closures import tow_closures
from tenderwright.calculations.ship.tow_pull import tow_pull
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Row, Table, inline
from tenderwright.documents.tow.gear import alongside
from tenderwright.model.tow import Tow
from tenderwright.quantities.customs import day

_OPEN = "Open"


def surveyor(desk: Desk, plan: Tow, aboard_at: str) -> list[Block]:
    """Give the list of what is asked, with its answer or that it is open, and the chain of signatures."""
    rows = _rows(desk, plan, aboard_at)
    answered = sum(1 for _, answer in rows if not answer.startswith(_OPEN))
    columns = (
        Column("", width=0.3),
        Column("Asked", width=2.6),
        Column("Answered here", width=3),
        Column("Surveyor: seen, day", width=1.3),
    )
    told = tuple(
        Row(tuple(inline(cell) for cell in (f"{number}", asked, answer, "")))
        for number, (asked, answer) in enumerate(rows, start=1)
    )
    words = (
        f"{answered} of {len(rows)} are answered by this plan. "
        "The list follows an underwriter's for single tows (common practice, no source)."
    )
    return [Paragraph(inline(words)), Table(columns, told, small=True), Heading("Signed"), _signed()]


def _rows(desk: Desk, plan: Tow, aboard: str) -> list[tuple[str, str]]:
    found, beside = desk.calculated.found, alongside(plan)
    closures = found(tow_closures) or ()
    read = [tank.contents.read for tank in desk.package.tanks if tank.contents.read is not None]
    sounded = f"T1, T4; last sounded {day(min(read))}: sound again within 24 h of sailing" if read else ""
    gauged = bool(plan.points) and all(one.capacity is not None for one in plan.points if one.use != "astern")
    tested, proved = any(tug.tested for tug in plan.tugs), any(one.proved for one in plan.pumps)
    alarmed = any(one.alarm for one in plan.compartments)
    boards = plan.boarding is not None and plan.boarding_time is not None
    limited, lit = bool(plan.out) and plan.limits is not None, plan.electricity is not None
    rows: list[tuple[str, bool | None, str]] = [
        (
            "Draughts, list, density and metacentric height as she sails",
            found(towed) is not None,
            "T1; read on the day",
        ),
        ("The same for the passage home", found(towed_home) is not None, "T1"),
        ("Soundings of every tank", bool(sounded) if desk.package.tanks else None, sounded),
        ("Curves of righting levers, and damage", False, "naval architect"),
        ("Pull and speed in the worst weather, and hove to", found(tow_pull) is not None, "T3"),
        ("Tug: bollard pull by a test, winch and emergency release", tested, "T3; certificate from the tower"),
        ("Towing points: readings, calculation, and the deck under them", gauged, "T3"),
        ("Bridle, shackles and line", None if beside else plan.bridle is not None, "T3; certificates from the tower"),
        ("Second line, with messenger and buoy", None if beside else bool(plan.emergency_line), "T3"),
        ("An anchor ready, and who can let it go", bool(plan.anchor), "T3"),
        ("Every opening shut, locked and proved", bool(closures), f"T4, {len(closures)} rows; signed on the day"),
        ("Shaft locked and gland tight", None if plan.propeller == "none" else plan.shaft is not None, aboard),
        ("Rudder amidships and held", plan.rudder is not None, aboard),
        ("Lights, duplicate, and battery for the whole tow", lit, f"T3, {aboard}"),
        ("Alarms in each main space, at two levels", alarmed, f"{aboard}; tested from the tug on the day"),
        ("Pumps aboard, fuelled and seen to draw", proved, aboard),
        ("How somebody boards, and in what time", boards, aboard),
        ("Draught marks and white bars that the tug can read", False, "paint before the survey"),
        ("Route, shelter and limits of weather", limited, "T3"),
        ("What is loose: boats, derricks, museum objects", False, "lashed and listed before the survey"),
        ("Fire gear aboard, and no heating left on", False, "on the day"),
        ("Insurer, flag and harbour have agreed", False, "their letters"),
    ]
    outside = (
        "naval architect",
        "paint before the survey",
        "lashed and listed before the survey",
        "on the day",
        "their letters",
    )
    return [
        (asked, where if answered else f"{_OPEN}: {where if where in outside else 'not in tow.yaml yet'}")
        for asked, answered, where in rows
        if answered is not None
    ]


def _signed() -> Table:
    who = (
        "Prepared: every row of T4 closed",
        "Surveyed: fit for this passage, by whom and until when",
        "Tug master: accepted, with stated risks or none",
        "Owner: handed over",
        "At the dock: received",
    )
    columns = (Column("", width=2.2), Column("Name", width=1.6), Column("Signature", width=1.6), Column("Day and hour"))
    return Table(columns, tuple(Row((inline(one), (), (), ())) for one in who), ruled=True)
