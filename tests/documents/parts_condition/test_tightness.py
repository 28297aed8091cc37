from __future__ import annotations

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.tightness import boundary_test, opened_boundaries
from tenderwright.documents.desk import capital
from tenderwright.documents.edition import Table, plain
from tenderwright.documents.parts.tightness import tightness
from tests.replacing import replace

from .parts import desk, rows, tables, text


def test_every_boundary_stands_under_its_test_and_those_of_the_same_items_together() -> None:
    under = [one for one in tables("tightness") if one.columns[0].title == "Boundary"]
    assert [one.caption for one in under] == ["Head", "Hose"]
    assert plain(under[0].note).startswith("1.00 m of head (0.10 bar)")
    assert plain(under[1].note).startswith("2.00 bar")
    listed = [plain(row.cells[0]) for one in under for row in one.rows]
    assert "Double bottom 1, port and starboard" in listed
    found = desk().calculated.found(opened_boundaries) or {}
    names = {capital(desk().label(one.kind, one.name)) for one in found.values()}
    assert len(names) == len(desk().calculated.found(boundary_test) or {}) > 10
    assert all(any(name.split(",")[0].split(" port")[0] in one for one in listed) for name in names)
    assert "weathertight" not in text("tightness")


def test_leaks_carry_their_history_and_their_item() -> None:
    package = desk().package
    assert package.condition is not None
    listed = rows("tightness", "Leak")
    assert len(listed) == len(package.condition.leaks)
    assert listed[0] == [
        "Stern gland",
        "Fr 2, centreline, 1.25 m up (Stern tube)",
        "16 June 2026: one drop in five seconds, shaft at rest",
        "12 October 2007: dry after packing; 24 May 2018: one drop in a minute",
        "item 620",
    ]


def test_clearances_stand_against_their_limits() -> None:
    listed = rows("tightness", "Clearance")
    assert [cells[3] for cells in listed] == ["2.0 mm short of it", "Beyond it"]
    assert "docking report of 2007" in text("tightness")


def test_boundaries_whose_test_cannot_be_chosen_say_what_it_needs() -> None:
    bare = replace(desk().package, condition=None)
    calculated = calculate(bare)
    part = tightness(replace(desk(), package=bare, calculated=calculated))
    assert part is not None
    (table,) = (block for block in part.blocks if isinstance(block, Table))
    assert table.caption == "Not calculated"
    assert plain(table.note) == "It needs the tests of tightness in the account of her condition."
    assert len(table.rows) == sum(len(one.rows) for one in tables("tightness") if one.columns[0].title == "Boundary")
