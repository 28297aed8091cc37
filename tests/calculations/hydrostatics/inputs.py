"""Reads a method's example as its input file would be read."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.quantities.quantity import parse_quantity


def si(data: Any, schema: Mapping[str, Any]) -> Any:
    if isinstance(data, Mapping):
        return {key: si(value, schema["properties"][key]) for key, value in data.items()}
    if isinstance(data, list | tuple):
        return [si(value, schema["items"]) for value in data]
    return parse_quantity(data, schema["quantity"]).si if "quantity" in schema else data
