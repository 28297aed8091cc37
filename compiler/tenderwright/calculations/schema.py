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
