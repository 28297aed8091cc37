"""Outputs in the units they are shown in, tables column by column."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec.structs import replace

from tenderwright.calculations.method import BY_ROW, Symbol
from tenderwright.quantities.display import METRIC_UNITS, in_unit


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
    shown = {}
    for column in table.columns:
        one = replace(column, dimension=dimension, unit=unit) if column.dimension == BY_ROW else column
        shown[column.name] = in_shown_units(one, row[column.name])
    return {**shown, "unit": unit} if unit else shown
