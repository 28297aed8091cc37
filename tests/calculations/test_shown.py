from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import suppress
from typing import Any

import pytest

from tenderwright.calculations.alone import run_alone
from tenderwright.calculations.method import BY_ROW, Method, Symbol
from tenderwright.calculations.registry import methods
from tenderwright.calculations.shown import in_shown_units
from tenderwright.quantities.spellings import AmbiguousUnit
from tenderwright.quantities.units import UnknownUnit, unit

TABLE = Symbol(
    "rows",
    "rows",
    "table",
    "",
    (
        Symbol("name", "name", "text", ""),
        Symbol("dimension", "what it is", "text", ""),
        Symbol("limit", "limit", BY_ROW, ""),
        Symbol("film", "film", "length", "um"),
        Symbol("met", "met", "truth", ""),
    ),
)


def test_figures_lists_and_lists_of_lists_are_shown_in_their_unit() -> None:
    mass = Symbol("mass", "mass", "mass", "t")
    assert in_shown_units(mass, 1500.0) == 1.5
    assert in_shown_units(mass, [1000, [2000.0, None]]) == [1.0, [2.0, None]]
    assert in_shown_units(Symbol("angle", "angle", "angle", "deg"), 0.017453292519943295) == pytest.approx(1.0)


def test_a_table_is_shown_column_by_column_and_its_own_dimension_row_by_row() -> None:
    rows = [
        {"name": "lift", "dimension": "mass", "limit": 2e6, "film": 1e-4, "met": True},
        {"name": "haul", "dimension": "force", "limit": None, "film": 0.0, "met": None},
    ]
    shown = in_shown_units(TABLE, rows)
    assert shown[0] == {
        "name": "lift",
        "dimension": "mass",
        "limit": 2000.0,
        "film": pytest.approx(100.0),
        "met": True,
        "unit": "t",
    }
    assert (shown[1]["limit"], shown[1]["unit"]) == (None, "kN")


@pytest.mark.parametrize("method", methods().values(), ids=lambda method: method.name)
def test_the_columns_of_every_table_are_declared(method: Method[Any]) -> None:
    for output in run_alone(method, method.example):
        tabular = isinstance(output.si, list) and any(isinstance(row, dict) for row in output.si)
        assert tabular or not output.symbol.columns or output.si in (None, [])
        for row in output.si if tabular else ():
            assert list(row) == [column.name for column in output.symbol.columns]


def _all(symbols: Iterable[Symbol], name: str) -> Iterator[tuple[str, Symbol]]:
    for symbol in symbols:
        yield f"{name}: {symbol.name}", symbol
        yield from _all(symbol.columns, name)


def test_a_unit_is_declared_and_not_only_told() -> None:
    """`difference of potential, V` would be a figure that nothing can convert."""
    told = []
    for name, method in methods().items():
        for where, symbol in _all(method.outputs, name):
            last = symbol.meaning.rpartition(", ")[2]
            if symbol.meaning != last and not symbol.unit:
                with suppress(UnknownUnit, AmbiguousUnit):
                    told.append((where, unit(last).name))
    assert told == []
