"""Outputs in the units they are shown in, tables column by column."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec.structs import replace

from tenderwright.calculations.method import BY_ROW, Symbol
from tenderwright.quantities.customs import system
from tenderwright.quantities.display import METRIC_UNITS, in_unit
from tenderwright.quantities.purposes import PURPOSES, purpose_of


def as_told(symbol: Symbol) -> Symbol:
    """Give a symbol, and those of its columns, in the units in which figures are told."""
    purpose = purpose_of(symbol.dimension, symbol.unit)
    unit = PURPOSES[purpose].us.unit if purpose and system() == "us" else symbol.unit
    return replace(symbol, unit=unit, columns=tuple(map(as_told, symbol.columns)))


def in_shown_units(symbol: Symbol, figure: Any) -> Any:
    """Turn a plain output in SI into the unit of its symbol, or a table into those of its columns."""
    if isinstance(figure, list):
        return [in_shown_units(symbol, entry) for entry in figure]
    if isinstance(figure, Mapping):
        return _row(symbol, figure)
    if isinstance(figure, bool) or not isinstance(figure, (int, float)) or not symbol.unit:
        return figure
    return in_unit(float(figure), symbol.unit, symbol.dimension)


def _row(table: Symbol, row: Mapping[str, Any]) -> dict[str, Any]:
    """Convert a row; one that names its own dimension says its unit too."""
    dimension = row.get("dimension", "")
    unit = METRIC_UNITS[dimension] if dimension else ""
    if dimension and system() == "us":
        unit = PURPOSES[purpose_of(dimension, unit)].us.unit
    shown = {}
    for column in table.columns:
        one = replace(column, dimension=dimension, unit=unit) if column.dimension == BY_ROW else column
        shown[column.name] = in_shown_units(one, row[column.name])
    return {**shown, "unit": unit} if unit else shown
