"""The tow surveyor's questions, each with what this package already answers and where, and the signatures."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.calculations.ship.tow import towed, towed_home
from tenderwright.calculations.ship.tow_closures import tow_closures
from tenderwright.calculations.ship.tow_pull import tow_pull
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Row, Table, inline
from tenderwright.model.tow import Tow

_OPEN = "Open"


def surveyor(desk: Desk, plan: Tow) -> list[Block]:
    """Give the list of what is asked, with its answer or that it is open, and the chain of signatures."""
    rows = _rows(desk, plan)
    answered = sum(1 for _, answer in rows if not answer.startswith(_OPEN))
    table = Table(
        (
            Column("", width=0.3),
            Column("Asked", width=2.6),
            Column("Answered here", width=3),
            Column("Surveyor: seen, day", width=1.3),
        ),
        tuple(
            Row(tuple(inline(cell) for cell in (f"{number}", asked, answer, "")))
            for number, (asked, answer) in enumerate(rows, start=1)
        ),
        small=True,
    )
    words = (
        f"{answered} of {len(rows)} are answered by this plan. "
        "The list follows an underwriter's for single tows (common practice, no source)."
    )
    return [Paragraph(inline(words)), table, Heading("Signed"), _signed()]


def _rows(desk: Desk, plan: Tow) -> Sequence[tuple[str, str]]:
    found = desk.calculated.found
    closures = found(tow_closures) or ()
    read = [tank.contents.read for tank in desk.package.tanks if tank.contents.read is not None]
    sounded = f"T1, T4; last sounded {min(read).isoformat()}: sound again within 24 h of sailing" if read else ""
    gauged = bool(plan.points) and all(one.capacity is not None for one in plan.points if one.use != "astern")
    return [
        ("Draughts, list, density and metacentric height as she "
            "sails", _said(found(towed) is not None, "T1; read again on the day")),
        ("The same for the passage home", _said(found(towed_home) is not None, "T1")),
        ("Soundings of every tank", _said(bool(sounded), sounded)),
        ("Curves of righting levers, and damage", f"{_OPEN}: naval architect"),
        ("Pull and speed in the worst weather, and hove to", _said(found(tow_pull) is not None, "T3")),
        ("Tug: continuous bollard pull by a test, winch and emergency "
            "release", _said(any(t.tested for t in plan.tugs), "T3; certificate from the tower")),
        ("Towing points: readings, calculation, and the deck under them", _said(gauged, "T3")),
        ("Bridle, shackles and line with "
            "certificates", _said(plan.bridle is not None, "T3; certificates from the tower")),
        ("Second line, with messenger and buoy", _said(bool(plan.emergency_line), "T3")),
        ("An anchor ready, and who can let it go", _said(bool(plan.anchor), "T3")),
        ("Every opening shut, locked and proved", _said(bool(closures), f"T4, {len(closures)} rows; "
            "signed on the day")),
        ("Shaft locked and gland tight", _said(plan.shaft is not None, "T5")),
        ("Rudder amidships and held", _said(plan.rudder is not None, "T5")),
        ("Lights, duplicate, and battery for the whole tow", _said(plan.electricity is not None, "T3, T5")),
        ("Alarms in each main space, at two levels, "
            "seen from the tug", _said(_alarmed(plan), "T5; tested from the tug on the day")),
        ("Pumps aboard, fuelled and seen to draw", _said(any(one.proved for one in plan.pumps), "T5")),
        ("How somebody boards, and in what "
            "time", _said(plan.boarding is not None and plan.boarding_time is not None, "T5")),
        ("Marks to be read from the tug: draught, white bar at stem and stern", f"{_OPEN}: paint before the survey"),
        ("Route, shelter and limits of weather", _said(bool(plan.out) and plan.limits is not None, "T3")),
        ("What is loose: boats, derricks, museum objects, outfit", f"{_OPEN}: lashed and listed before the survey"),
        ("Fire gear aboard, and no heating left on", f"{_OPEN}: on the day"),
        ("Insurer, flag and harbour have agreed", f"{_OPEN}: their letters"),
    ]  # fmt: skip


def _alarmed(plan: Tow) -> bool:
    return bool(plan.compartments) and any(one.alarm for one in plan.compartments)


def _said(answered: bool, where: str) -> str:
    return where if answered else f"{_OPEN}: not in tow.yaml yet"


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
