"""Rows of a table are drawn from what the ship's files say once, and keep their name when others come or go."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from tenderwright.model.table_rows import rows_of
from tenderwright.notices import Notice
from tenderwright.pipeline import compile_package, read
from tests.fixtures.overlay import all_notices_of, notices_of
from tests.fixtures.wider_format import ITEM, Change, of_item, wider, wider_package

NEW = (
    "vessel/openings.yaml",
    "openings:\n",
    "openings:\n"
    "  - { opening: suction-aft, name: After suction, kind: suction, at: Fr 12, side: port, height: 0.8 m }\n",
)


def _lines(*changes: Change) -> list[str]:
    item = wider(*changes).compiled.package.item_by_name["510"]
    return [line.line for line in item.lines]


def test_a_line_is_priced_for_each_row() -> None:
    assert _lines() == ["a.sea-chest", "a.suction-fire", "a.suction-bilge", "b.fire", "b.2", "c", "d", "e"]


def test_a_row_that_comes_leaves_the_numbers_of_the_others() -> None:
    assert [line for line in _lines(NEW) if line not in _lines()] == ["a.suction-aft"]
    assert set(_lines()) < set(_lines(NEW))


def test_rows_show_what_the_file_of_the_things_says() -> None:
    package = wider(("vessel/openings.yaml", "bore: 80 mm", "bore: 65 mm")).compiled.package
    item = package.item_by_name["510"]
    fire = rows_of(package, item, item.tables[0])[1]
    assert [str(cell) for cell in fire.cells[:4]] == ["Fire pump suction", "gate, cast iron", "65 mm", "Fr 15"]
    assert fire.cells[4:] == (None, None, None)


def test_without_of_the_rows_are_what_the_item_names() -> None:
    changed = of_item("    of: [sea chest, suction]\n", "")
    assert _lines(changed) == _lines()


@pytest.mark.parametrize(
    ("rows_from", "column", "cells"),
    [
        ("anodes", "mass", ["4 kg", "4 kg"]),
        ("tanks", "use", ["ballast", "fresh water", "bilge or slops"]),
    ],
)
def test_rows_of_other_things(rows_from: str, column: str, cells: list[str]) -> None:
    new = f"""    rows_from: {rows_from}
    columns:
      - {{ column: Shown, shows: {column} }}
"""
    text = "    rows_from: openings\n    of: [sea chest, suction]\n    columns:\n"
    changes = (of_item(text, new), *(of_item(f", shows: {one} }}", ", filled: in dock }") for one in _OWN))
    with TemporaryDirectory() as folder:
        package = compile_package(read(wider_package(Path(folder) / "p", *changes))).package
    item = package.item_by_name["510"]
    assert [str(row.cells[0]) for row in rows_of(package, item, item.tables[0])] == cells


_OWN = ("name", "valve", "bore", "place")


@pytest.mark.parametrize(
    ("change", "code", "words"),
    [
        (of_item("of: [sea chest, suction]", "of: [sea chest, suctoin]"), "dead-reference", "`suctoin`"),
        (of_item("shows: bore", "shows: mass"), "bad-table", "`mass`"),
        (of_item("shows: bore }", "shows: bore, filled: in dock }"), "bad-table", "both shows"),
        (of_item("column: Kind, shows: valve", "column: Valve, shows: valve"), "duplicate-name", "column `Valve`"),
        (of_item("{ Kind: centrifugal }", "{ Kinds: centrifugal }"), "bad-table", "`Kinds`"),
        (
            of_item("      - { column: Kind }\n", "      - { column: Kind }\n      - { column: More }\n"),
            "bad-table",
            "`More`",
        ),
        (of_item("unit: week", "unit: weak"), "bad-quantity", "weak"),
        (of_item("each_row_of: pumps", "each_row_of: pump"), "dead-reference", "no table `pump`"),
        (of_item('row: "2"', "row: fire"), "duplicate-name", "row `fire`"),
        (of_item("table: pumps", "table: valves"), "duplicate-name", "twice"),
    ],
)
def test_what_does_not_fit_is_told(change: Change, code: str, words: str) -> None:
    found = [one for one in _notices(change) if one.severity == "error"]
    assert [one.code for one in found if words in one.message] in ([code], [code, code])
    assert all(one.place.path == ITEM for one in found)


def _notices(*changes: Change) -> list[Notice]:
    with TemporaryDirectory() as folder:
        return notices_of(wider_package(Path(folder) / "p", *changes))


def test_a_broken_file_of_things_brings_no_second_notice() -> None:
    change = ("vessel/openings.yaml", "kind: suction, at: Fr 15", "kind: sucktion, at: Fr 15")
    with TemporaryDirectory() as folder:
        found = all_notices_of(wider_package(Path(folder) / "p", change))
    assert [one.code for one in found if one.severity == "error"] == ["wrong-choice"]
