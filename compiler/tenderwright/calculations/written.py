"""Inputs of a method as a person would write them for `reckon`, so that reading them gives the same figures."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.schema import properties_of
from tenderwright.quantities.display import si_unit


def as_written(schema: Mapping[str, Any], data: Any) -> Any:
    """Turn plain data in SI into what `to_si` reads back to the last bit."""
    if "quantity" in schema and isinstance(data, (int, float)) and not isinstance(data, bool):
        # Not every fraction is a percentage of so many digits.
        unit = "of one" if schema["quantity"] == "fraction" else si_unit(schema["quantity"])
        return f"{float(data)!r} {unit}"
    if isinstance(data, list):
        return [as_written(schema.get("items", {}), entry) for entry in data]
    if isinstance(data, Mapping):
        properties = properties_of(schema, data)
        return {key: as_written(properties.get(key, {}), value) for key, value in data.items()}
    return data
