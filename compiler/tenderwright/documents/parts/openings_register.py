"""The register of openings: what is opened or taken out, by which item, and who saw it closed and tested."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.calculations.ship.tightness import boundary_test
from tenderwright.documents.desk import Desk, capital, joined
from tenderwright.documents.edition import Block, Column, Heading, Inline, Paragraph, Row, Table, inline
from tenderwright.documents.parts.item_head import where_of
from tenderwright.model.item import Item
from tenderwright.planning.inspection.points import points_of_item
from tenderwright.planning.inspection.register import RegisterRow

_GROUPS = (
    ("opening", "Plugs, valves and other openings of the hull"),
    ("tank", "Manholes and lids of tanks and voids"),
    ("shell", "Plates, rivets and holes in the shell"),
    ("anodes", "Covers and studs of anodes"),
    ("block", "Keel blocks taken out"),
)
_BLANK_ROWS = 8
"""Rows left for holes that are cut, each with its own number."""
_NOT_LISTED = (
    "The openings of her hull are not listed in the data: before she is docked, write every valve, plug and pipe that "
    "goes through it in the free rows."
)
COLUMNS = (
    Column("No.", width=8),
    Column("What, and where", width=66),
    Column("Opened by", width=22),
    Column("Test", width=44),
    Column("Opened", width=17),
    Column("Closed", width=17),
    Column("Tested", width=17),
    Column("Yard", width=21),
    Column("Owner", width=21),
)


def openings_register(desk: Desk, rows: Sequence[RegisterRow]) -> list[Block]:
    """Compose the register as a form, the rows numbered through, with room for holes that the work will cut."""
    plugs = sum(1 for one in rows if is_plug(desk, one))
    count = f" Docking plugs: {plugs}. Drawn: ____. Back in place: ____." if plugs else ""
    words = (
        "Each row is signed twice, by two people who answer to different firms, when it is closed and tested. "
        f"She is not floated while a row is open.{count}"
    )
    blocks: list[Block] = [Paragraph(inline(words))]
    if not desk.package.openings:
        blocks.append(Paragraph(inline(_NOT_LISTED)))
    numbers = {row.key: n for n, row in enumerate(rows, start=1)}
    for kind, title in _GROUPS:
        found = [row for row in rows if row.kind == kind]
        made = [Row((*told(desk, row, numbers[row.key]), (), (), (), (), ())) for row in found]
        if kind == "shell":
            made += [Row(((), inline("Hole no.       where:"), (), (), (), (), (), (), ())) for _ in range(_BLANK_ROWS)]
        if made:
            wood = kind == "shell" and of_wood(desk)
            heading = Heading("Planks, fastenings and holes in the hull" if wood else title)
            blocks += [heading, Table(COLUMNS, tuple(made), note=_note(kind, wood=wood), small=True, ruled=True)]
    return blocks


def is_plug(desk: Desk, row: RegisterRow) -> bool:
    """Tell whether a row is of a docking plug."""
    kinds = {one.opening: one.kind for one in desk.package.openings}
    return row.kind == "opening" and kinds[row.name] == "docking plug"


def of_wood(desk: Desk) -> bool:
    """Tell whether her hull is of wood, or of wood on iron frames."""
    ship = desk.package.particulars
    return ship is not None and ship.hull is not None and not ship.hull.of_metal


def _note(kind: str, *, wood: bool) -> Inline:
    if kind == "shell":
        taken = "plank taken off, fastenings drawn" if wood else "plate taken off, group of rivets drawn"
        return inline(f"One row for each {taken} and hole cut, numbered as it is made.")
    if kind == "block":
        return inline("The next is not touched before the last bears again, wedged. None while a tank is filled.")
    return ()


def told(desk: Desk, row: RegisterRow, number: int) -> tuple[Inline, ...]:
    """Give the cells that say what a row is: its number, name and place, by which items it is opened, its test."""
    return inline(str(number)), named(desk, row), _items(desk, row.opened_by), inline(_test(desk, row))


def named(desk: Desk, row: RegisterRow) -> Inline:
    """Name what a row is of, and where it is."""
    if row.kind == "opening":
        one = next(o for o in desk.package.openings if o.opening == row.name)
        valve = f"; {one.valve}" if one.valve else ""
        return inline(f"{one.name}, {one.at}, {one.side}{valve}")
    if row.kind == "tank":
        return inline(f"{capital(desk.label('tank', row.name))}, manhole")
    if row.kind == "block":
        return inline(f"Keel block at {row.name}")
    item = row.opened_by[0]
    words = "Covers and studs" if row.kind == "anodes" else "Planking" if of_wood(desk) else "Shell"
    place = where_of(desk, item)
    return (*inline(f"{words}, item {item.number} {item.title}"), *(inline(": ") if place else ()), *place)


def _items(desk: Desk, items: Sequence[Item]) -> Inline:
    return inline(", ".join(item.number for item in items)) if items else inline("nobody")


def _test(desk: Desk, row: RegisterRow) -> str:
    """Say how it is proved tight: the test chosen for the boundary, and the items that hold one."""
    if row.kind == "block":
        return "wedges hard, no gap"
    if row.kind == "anodes":
        return "covers off, counted; no paint on the metal"
    if not row.opened:
        return "seen shut"
    tests = joined([_tests(item, row) for item in row.tested_by])
    chosen = desk.calculated.each(boundary_test).get(row.name) if row.kind == "tank" else None
    if not tests:
        return "lid seen shut; no item tests it" if row.kind == "tank" else "no item tests it"
    return f"{chosen.test}: {tests}" if chosen is not None else tests


def _tests(item: Item, row: RegisterRow) -> str:
    """Name the tests of an item by their points: those that name the tank, or all of them."""
    tests = [
        point.name
        for point, test in zip((one for one in points_of_item(item) if one.code == "P"), item.tests, strict=True)
        if row.kind != "tank" or not test.tanks or any(ref.name == row.name for ref in test.tanks)
    ]
    return joined(tests) or f"item {item.number}"
