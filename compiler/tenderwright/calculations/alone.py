"""Run one method alone on data that a person wrote: its schema, the conversion to SI, and the outputs with units."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from tenderwright.calculations.method import Method
from tenderwright.quantities.display import in_unit
from tenderwright.quantities.quantity import parse_quantity


@dataclass(frozen=True)
class Output:
    """One output: its SI value, and the figure in the unit it is shown in."""

    name: str
    meaning: str
    dimension: str
    unit: str
    value: Any
    si: Any = None


def input_schema(method: Method[Any]) -> dict[str, Any]:
    """Give the JSON Schema of a method's input file."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": method.title,
        "description": f"Input of `reckon {method.name}`. {method.formula}",
        "type": "object",
        "additionalProperties": False,
        "required": [name for name in method.inputs if name not in method.optional],
        "properties": {name: _signed(schema) for name, schema in method.inputs.items()},
        "examples": [dict(method.example)],
    }


def _signed(schema: Any) -> Any:
    """Let quantities be negative: a kernel knows its own range and says what is outside it."""
    if isinstance(schema, Mapping):
        own = {key: _signed(value) for key, value in schema.items()}
        return {**own, "signed": True} if "quantity" in schema else own
    return [_signed(entry) for entry in schema] if isinstance(schema, list) else schema


def to_si(schema: Mapping[str, Any], data: Any) -> Any:
    """Turn validated data into SI numbers, wherever its schema says that a text is a quantity."""
    if isinstance(data, str) and "quantity" in schema:
        return data if data in schema.get("or", ()) else parse_quantity(data, schema["quantity"]).si
    if isinstance(data, list):
        return [to_si(schema.get("items", {}), entry) for entry in data]
    if isinstance(data, dict):
        properties = schema.get("properties", {})
        return {key: to_si(properties.get(key, {}), value) for key, value in data.items()}
    return data


def run_alone(method: Method[Any], data: Mapping[str, Any]) -> Iterator[Output]:
    """Run a method on validated data; raises OutOfRange where the method does."""
    outputs = method.run(**to_si(input_schema(method), dict(data)))
    for symbol in method.outputs:
        if symbol.name in outputs:
            value = _shown(outputs[symbol.name], symbol.unit, symbol.dimension)
            yield Output(symbol.name, symbol.meaning, symbol.dimension, symbol.unit, value, outputs[symbol.name])


def _shown(value: Any, unit: str, dimension: str) -> Any:
    if isinstance(value, bool) or value is None or isinstance(value, str):
        return value
    if isinstance(value, (int, float)):
        return in_unit(float(value), unit, dimension) if unit else value
    if isinstance(value, (list, tuple)):
        return [_shown(entry, unit, dimension) for entry in value]
    return value
