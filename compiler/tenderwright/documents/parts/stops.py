"""When to stop, landing and floating, and how to put her back: for the dockside, where it is used."""

from __future__ import annotations

from math import degrees

from tenderwright.calculations.ship.landing import entry_limit, landing
from tenderwright.calculations.ship.stops import floating_stops
from tenderwright.calculations.ship.undocking import lifting_off, trim_limit
from tenderwright.calculations.ship.wanted import most_list
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Paragraph, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.documents.parts.landing import by_stern
from tenderwright.quantities.display import decimals, head, show


def landing_stops(desk: Desk) -> list[Block]:
    """Say when to stop as the water falls."""
    found, entry = desk.calculated.found(landing), desk.calculated.found(entry_limit)
    assert found is not None
    trim = "the trim is not that asked for"
    if entry is not None and entry.governs.limit is not None:
        end = "stern" if by_stern(desk) else "head"
        trim = f"trim outside {show(entry.least_trim, 'trim')} to {show(entry.governs.limit, 'centre')} by the {end}"
    one = found.exact.settling
    settled = one.water_at_touch - one.fall
    rows = [
        (
            f"Before she touches: list above {_list(desk)}, or {trim}",
            "Hold the water. Move ballast, sound again, read the drafts again: the blocks are not to level her",
        ),
        (
            f"From {show(one.water_at_touch, 'water level')}, first block, to {show(settled, 'water level')}, "
            "on all blocks: she lists, slews or leaves the centreline, or a block crushes or slips",
            "Raise the water until she floats free of every block; centre her, mend the block, begin again",
        ),
    ]
    if found.bear_within is not None and found.bear_within >= 0:
        bear = show(settled - found.bear_within, "water level")
        rows.append(
            (
                f"At {bear}: side blocks do not bear, shores are not set, or no diver has reported it",
                f"Let it fall no farther: raise it to {show(settled, 'water level')} or above and hold",
            )
        )
    return [_table(desk, "Stop when, landing", rows, head("Water over the first block", "water level"))]


def floating_off_stops(desk: Desk) -> list[Block]:
    """Say when to stop as the water rises."""
    found, last = desk.calculated.outcome(floating_stops), desk.calculated.found(lifting_off)
    if isinstance(found, Absent) or last is None:
        why = found if isinstance(found, Absent) else None
        return [Paragraph(inline(_ordered(desk))), *([not_calculated(why, "Levels at which to stop")] if why else [])]
    rows = []
    if found.covered is not None:
        rows.append(
            (
                f"{show(found.covered, 'centre')}, the last opening, {found.last_opening}, covered: hold here; a space "
                "makes water, or a valve, plug or rivet weeps",
                "Pump out below the leak, make it tight, begin again",
            )
        )
    if found.shores is not None:
        rows.append(
            (
                f"Up to {show(found.shores, 'centre')}: shores and side blocks stay in place",
                "A shore that has left: lower the water and set it again",
            )
        )
    frames = desk.package.frames
    block = frames.label(last.settling.first_block) if frames else show(last.settling.first_block, "centre")
    rows.append(
        (
            f"{show(found.last_block, 'centre')}, when she leaves all blocks but that at {block}, to "
            f"{show(found.afloat, 'centre')}, when she leaves it: list above {_list(desk)}, trim above "
            f"{show(trim_limit(desk.package.lightship), 'trim')}, or she moves at another level",
            "Lower the water until she stands on all blocks, centred; sound every tank, find why, calculate again",
        )
    )
    return [_table(desk, "Stop when, floating", rows, "Water over the block that she leaves last")]


def _list(desk: Desk) -> str:
    return f"{decimals(degrees(most_list(desk.package.lightship).si), 1)}°"


def _ordered(desk: Desk) -> str:
    plan = desk.package.docking_plan
    who = plan.ordered_by if plan is not None else ""
    asked = "somebody not yet named in the docking plan"
    return f"Water is moved on the order of {who or asked}."


def _table(desk: Desk, when: str, rows: list[tuple[str, str]], water: str) -> Table:
    columns = (Column(when, width=3), Column("Put her back", width=2.4))
    note = inline(f"{water}; in a floating dock or on a lift it falls as she is raised. {_ordered(desk)}")
    return Table(columns, tuple(Row((inline(a), inline(b))) for a, b in rows), note=note, small=True)
