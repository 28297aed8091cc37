"""The years to the next docking: what they do to steel, anodes and coating, and what divers must do between."""

from __future__ import annotations

from tenderwright.calculations.ship.interval import After, docking_interval, years_ahead
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import capital
from tenderwright.documents.edition import Block, Bullets, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.owner.care.paper import WITH, WITHOUT
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.planning.care.once import once
from tenderwright.planning.care.plan import kept
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals

NAMED = 12
"""Plates that are named; of more, their number stands."""


def years_to_next(desk: OwnerDesk) -> Part | None:
    """Compose the page; None where the package says nothing of the next docking."""
    condition = desk.package.condition
    if condition is None:
        return None
    ahead = desk.calculated.outcome(years_ahead)
    blocks = [_beside_history(desk, condition)]
    if isinstance(ahead, Absent):
        blocks.append(Paragraph(inline(f"Not calculated: {ahead.why}.")))
    else:
        blocks += [_table(ahead), *_between(desk)]
    return Part(
        "years-ahead", "", "The years to the next docking", "data", "Owner's papers", tuple(blocks), caution=True
    )


def _beside_history(desk: OwnerDesk, condition: ShipCondition) -> Block:
    found = desk.calculated.outcome(docking_interval)
    after = desk.quantity(condition.next_docking).replace(" yr", " years")
    planned = f"The next docking is planned {after} after this one."
    if isinstance(found, Absent):
        return Paragraph(inline(f"{planned} How long she went before is not known: {found.why}."))
    went = " and ".join(decimals(years, 1) for years in found.between)
    words = f"{planned} Between her dockings, this one included, she went {went} years."
    if condition.next_docking_because:
        words += f" What makes the time planned hold: {condition.next_docking_because}."
    return Paragraph(inline(words))


def _table(ahead: tuple[After, ...]) -> Block:
    rows = [Row((inline("Plates past their limit by then"), *(inline(_plates(one)) for one in ahead)))]
    rows.append(Row((inline("New anodes used up by then"), *(inline(_spent(one)) for one in ahead))))
    for index, (name, _) in enumerate(ahead[0].bare):
        shares = (inline(f"{decimals(100 * one.bare[index][1], 0)} %") for one in ahead)
        rows.append(Row((inline(f"Acting as bare: {name}"), *shares)))
    columns = (
        Column("With nothing done between", width=2.4),
        *(Column(f"{one.years} years", width=2) for one in ahead),
    )
    note = inline(
        "Plates beside those renewed now, each carried on at its own rate of loss. Anodes by what was left of those in "
        "the same places; coating by the constants of the anodes. Each is an expectation, not a promise; a survey in "
        "the water is worth more than any of them."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def _plates(one: After) -> str:
    if one.plates is None:
        return "not calculated: no readings under surveys/"
    if len(one.plates) > NAMED:
        return f"{len(one.plates)}"
    return f"{len(one.plates)}: {', '.join(one.plates)}" if one.plates else "none"


def _spent(one: After) -> str:
    return "not calculated: `left` and `seen` are missing" if one.anodes_spent is None else f"{one.anodes_spent}"


def _between(desk: OwnerDesk) -> list[Block]:
    """Say what must be done between the dockings, and where the rest of it stands."""
    told = [
        "Every year: look at the bottom, the sea chests and the stern gland, and measure the hull's potential at the "
        "places of the docking record (common practice, no source)."
    ]
    told += [f"{day(one.day)}: {one.what} ({one.source})." for one in once(desk.package, desk.calculated) if one.source]
    told.append(WITH if kept(desk.package) else WITHOUT)
    return [
        Heading("To be done between, by divers and from inside"),
        Bullets(tuple(inline(capital(one)) for one in told)),
    ]
