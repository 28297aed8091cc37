"""Run one method alone on data that a person wrote: its schema, the conversion to SI, and the outputs with units."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from tenderwright.calculations.method import Method, Symbol
from tenderwright.calculations.plain import plain
from tenderwright.calculations.schema import properties_of
from tenderwright.calculations.shown import as_told, in_shown_units
from tenderwright.quantities.quantity import parse_quantity


@dataclass(frozen=True)
class Output:
    """One output of a method; None where it has none for these inputs."""

    symbol: Symbol
    value: Any
    """The figure in the unit it is shown in; a table column by column."""
    si: Any


def input_schema(method: Method[Any]) -> dict[str, Any]:
    """Give the JSON Schema of a method's input file."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": method.title,
        "description": f"Input of `reckon {method.name}`. {method.formula}",
        "type": "object",
        "additionalProperties": False,
        "required": [name for name in method.inputs if name not in method.optional],
        "properties": {
            name: _shown_by(method.example.get(name), _signed(schema)) for name, schema in method.inputs.items()
        },
        "examples": [dict(method.example)],
    }


def _signed(schema: Any) -> Any:
    """Let quantities be negative: a kernel knows its own range and says what is outside it."""
    if isinstance(schema, Mapping):
        own = {key: _signed(value) for key, value in schema.items()}
        return {**own, "signed": True} if "quantity" in schema else own
    return [_signed(entry) for entry in schema] if isinstance(schema, list) else schema


def _shown_by(example: Any, schema: dict[str, Any]) -> dict[str, Any]:
    """Let each input show what the method's own example gives it, however deep it lies."""
    if example is None or "enum" in schema or isinstance(example, bool):
        return schema
    if isinstance(example, Mapping) and "properties" in schema:
        inner = {key: _shown_by(example.get(key), below) for key, below in schema["properties"].items()}
        return {**schema, "properties": inner}
    if isinstance(example, Sequence) and example and schema.get("type") == "array":
        entries: Any = {**example[0]} if isinstance(example[0], Mapping) else example[0]
        for entry in example[1:] if isinstance(entries, dict) else ():
            entries |= {key: value for key, value in entry.items() if key not in entries}
        return {**schema, "items": _shown_by(entries, schema["items"])}
    others = [one for one in schema.get("examples", ()) if one != example]
    return {**schema, "examples": [example, *others]}


def to_si(schema: Mapping[str, Any], data: Any) -> Any:
    """Turn validated data into SI numbers, wherever its schema says that a text is a quantity."""
    if isinstance(data, str) and "quantity" in schema:
        return data if data in schema.get("or", ()) else parse_quantity(data, schema["quantity"]).si
    if isinstance(data, list):
        return [to_si(schema.get("items", {}), entry) for entry in data]
    if isinstance(data, dict):
        properties = properties_of(schema, data)
        return {key: to_si(properties.get(key, {}), value) for key, value in data.items()}
    return data


def run_alone(method: Method[Any], data: Mapping[str, Any]) -> list[Output]:
    """Run a method on validated data, and give each of its outputs; raises OutOfRange where the method does."""
    figures = method.run(**to_si(input_schema(method), dict(data)))
    return [_output(symbol, plain(figures.get(symbol.name))) for symbol in method.outputs]


def _output(symbol: Symbol, si: Any) -> Output:
    told = as_told(symbol)
    return Output(told, in_shown_units(told, si), si)
