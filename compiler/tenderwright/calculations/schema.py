"""Short forms for the input schemas of methods, and standard gravity."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

GRAVITY = 9.80665
"""Standard acceleration of free fall, m/s2 (3rd CGPM, 1901)."""


def quantity(dimension: str, description: str, *examples: str) -> dict[str, Any]:
    """Give the schema of a quantity."""
    schema: dict[str, Any] = {"type": "string", "quantity": dimension, "description": description}
    return schema | {"examples": list(examples)} if examples else schema


def length(description: str, *examples: str) -> dict[str, Any]:
    """Give the schema of a length."""
    return quantity("length", description, *examples)


def number(description: str, **keywords: Any) -> dict[str, Any]:
    """Give the schema of a plain number."""
    return {"type": "number", "description": description} | keywords


def text(description: str) -> dict[str, Any]:
    """Give the schema of a text."""
    return {"type": "string", "description": description}


def listed(items: Mapping[str, Any], description: str, least: int = 1) -> dict[str, Any]:
    """Give the schema of a list."""
    return {"type": "array", "minItems": least, "items": items, "description": description}


def record(description: str, required: tuple[str, ...], **properties: Mapping[str, Any]) -> dict[str, Any]:
    """Give the schema of a closed record."""
    return {
        "type": "object",
        "additionalProperties": False,
        "required": list(required),
        "description": description,
        "properties": properties,
    }


def as_dimension(dimension: str, *keys: str) -> dict[str, Any]:
    """Give the rule of a record that these keys are quantities of the dimension where its `dimension` says so."""
    measured = {key: {"type": "string", "quantity": dimension} for key in keys}
    where = {"properties": {"dimension": {"const": dimension}}, "required": ["dimension"]}
    return {"if": where, "then": {"properties": measured}}


def properties_of(schema: Mapping[str, Any], data: Mapping[str, Any]) -> Mapping[str, Any]:
    """Give the schemas of a record's keys, those that such a rule settles included."""
    found = dict(schema.get("properties", {}))
    for rule in schema.get("allOf", ()):
        if all(data.get(key) == asked.get("const") for key, asked in rule["if"]["properties"].items()):
            found |= rule["then"]["properties"]
    return found
