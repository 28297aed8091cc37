"""Towing gear: the strength asked of each part, the bridle, and each towing point against it."""

from __future__ import annotations

from math import degrees

from tenderwright.calculations.ship.tow_pull import bridle_spread, tow_gear, tow_points
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Caution, Column, Facts, Heading, Inline, Row, Span, Table, inline
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.documents.parts.limits import word
from tenderwright.model.tow import Tow, TowingPoint
from tenderwright.quantities.display import head, in_column, show

_BRIDLE = (
    "Nobody stands in the bight, on the line of pull or astern of a bridle that is taking weight. "
    "No screw-pin shackles; "
    "nuts locked by a bolt through the pin, not by weld or cotter (TB 55-1900-232-10). "
    "Each leg is sized for the whole pull."
)
_BESIDE = "Nobody stands in a bight or between the hulls, and no hand or foot goes between them for a fender."


def alongside(plan: Tow) -> bool:
    """Tell whether she is towed made fast to the tug's side."""
    return plan.towed == "alongside"


def gear(desk: Desk, plan: Tow) -> list[Block]:
    """Give the strength asked of the gear, and the towing points."""
    blocks: list[Block] = [Heading("Gear")]
    found = desk.calculated.outcome(tow_gear)
    if isinstance(found, Absent):
        blocks += [] if isinstance(found, NotAsked) else [not_calculated(found, "Strength asked of the gear")]
    else:
        held = plan.tugs[0].held if plan.tugs else "hook"
        rows = tuple(
            Row(
                (
                    inline(capital(row["part"])),
                    inline(f"{row['factor']:g}"),
                    inline(in_column(row["strength"], "force")),
                    inline(row["measured"]),
                )
            )
            for row in found["parts"]
        )
        columns = (
            Column("Part", width=1.6),
            Column("Factor", "decimal", 0.6),
            Column(head("At least", "force"), "decimal"),
            Column("Of its", width=1.6),
        )
        note = inline(
            f"Line held by {held}. Least factors of TB 55-1900-232-10, Table 5-4: for new gear, "
            "fair weather and a short time. "
            "Old fittings and a long tow need more. Gear is sized for the tug too, who can pull more than is asked."
        )
        blocks.append(Table(columns, rows, note=note, small=True))
    blocks += _points(desk, plan)
    blocks.append(Facts(tuple(_lines(desk, plan))))
    blocks.append(Caution("Lines", (inline(_BESIDE if alongside(plan) else _BRIDLE),)))
    return blocks


def _points(desk: Desk, plan: Tow) -> list[Block]:
    judged = desk.calculated.outcome(tow_points)
    limits = {} if isinstance(judged, Absent) else {one.name: one for one in judged.limits}
    if not plan.points:
        return [not_calculated(judged, "Towing points")] if isinstance(judged, Absent) else []
    rows = []
    for one in plan.points:
        limit = limits.get(one.point)
        asked = in_column(limit.demand, "force") if limit is not None and limit.demand is not None else "–"
        stands = in_column(one.capacity.si, "force") if one.capacity is not None else "not known"
        verdict = word(limit.met) if limit is not None else "–"
        read = desk.words(one.readings) if one.readings is not None else inline("No readings")
        source: tuple[Span, ...] = inline(f" ({one.source})") if one.source else ()
        cells = (
            inline(f"{one.point}, {_place(one)}"),
            inline(one.use),
            inline(asked),
            inline(stands),
            inline(verdict),
            (*read, *source),
        )
        rows.append(Row(cells))
    columns = (
        Column("Towing point", width=1.6),
        Column("For", width=0.8),
        Column(head("Asked", "force"), "decimal", 0.8),
        Column(head("Stands", "force"), "decimal", 0.8),
        Column("Verdict", width=0.8),
        Column("Found of it", width=2.6),
    )
    weakest = ""
    if not isinstance(judged, Absent) and (tightest := judged.tightest) is not None and tightest.use is not None:
        weakest = f" Used most of those known: {tightest.name}, {tightest.use:.0%}."
    note = inline(
        "Asked of fitting and deck at yield. Old bitts and the deck under them waste: "
        "a towing point is gauged and calculated "
        f"before it is used (common practice, no source). Points for other uses are not judged.{weakest}"
    )
    return [Table(columns, tuple(rows), note=note, small=True)]


def _place(one: TowingPoint) -> str:
    """Say where a towing point stands: its frame, and how far off the centreline."""
    off = one.off_centre
    if off is None or off.si == 0:
        return f"{one.at}"
    return f"{one.at}, {show(abs(off.si), 'distance')} to {'port' if off.si > 0 else 'starboard'}"


def _lines(desk: Desk, plan: Tow) -> list[tuple[str, Inline]]:
    facts: list[tuple[str, Inline]] = []
    found = desk.calculated.found(tow_gear)
    if plan.bridle is not None:
        words = f"Legs of {desk.quantity(plan.bridle.leg)}"
        spread = bridle_spread(plan)
        words += f" on a spread of {spread.text}" if spread is not None else ""
        words += f": {plan.bridle.of}" if plan.bridle.of else ""
        if found is not None and found["apex"] is not None:
            words += f". At the apex {degrees(found['apex']):.0f}°, {show(found['leg_pull'], 'pull')} on each leg"
            words += "; 30° to 60° is usual, with the same count of links (TB 55-1900-232-10)"
        facts.append(("Bridle", inline(f"{words}.")))
    if plan.emergency_line or not alongside(plan):
        facts.append(("Second line", inline(plan.emergency_line or "Not said: emergency_line in tow.yaml.")))
    facts.append(("Anchor", inline(plan.anchor or "Not said: anchor in tow.yaml.")))
    for tug in plan.tugs:
        pulled = desk.quantity(tug.bollard_pull) if tug.bollard_pull is not None else "bollard pull not known"
        facts.append(
            ("Tug", inline(f"{tug.name}: {pulled}{f' ({tug.tested})' if tug.tested else ''}; line held by {tug.held}."))
        )
    return facts
