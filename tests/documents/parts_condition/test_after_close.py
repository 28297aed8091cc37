"""What a closed docking tells of clearances and valves stands where the next package tells of them."""

from __future__ import annotations

from dataclasses import replace as with_

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Part, Table, each_block, plain
from tenderwright.documents.parts.ship import fittings
from tenderwright.documents.parts.tightness import tightness
from tenderwright.model.clearances import clearances_of
from tests.calculations.ship.condition.ship import docked
from tests.replacing import replace

from .parts import desk

CLEARANCE = "of: shaft, where: Wear-down of the stern bearing, found: 6.1 mm, left: 0.9 mm, done: staves renewed"
VALVE = "opening: suction-fire, found: Sound., done: Lapped and repacked., tight: true"


def _after(entry: str, key: str) -> Desk:
    package = desk().package
    return with_(desk(), package=replace(package, history=(docked(package, entry, key=key), *package.history)))


def test_a_clearance_goes_on_from_what_was_found_and_left() -> None:
    after = _after(CLEARANCE, "clearances")
    one = next(one for one in clearances_of(after.package) if one.what == "wear-down of the stern bearing")
    assert [str(look.clearance) for look in one.found] == ["1.0 mm", "5.0 mm", "6.1 mm", "0.9 mm"]
    made = tightness(after)
    assert made is not None
    cells = _cells(made)
    assert any(cell.endswith("5 May 2027: 6.1 mm; 2 June 2027: 0.9 mm") for cell in cells)
    assert "6.1 mm short of it" in [cell.lower() for cell in cells]


def test_a_valve_says_what_was_done_at_it_last() -> None:
    cells = _cells(fittings(_after(VALVE, "valves")))
    assert any(cell.endswith("Docking of 2027: Lapped and repacked. Tight.") for cell in cells)


def _cells(made: Part) -> list[str]:
    tables = [one for one in each_block(made.blocks) if isinstance(one, Table)]
    return [plain(cell) for table in tables for row in table.rows for cell in row.cells]
