"""Walk a JSON Schema and give each schema inside it, with its path."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

Schema = dict[str, Any]

_MANY = ("properties", "$defs")
_ONE = ("items", "additionalProperties", "propertyNames", "if", "then")
_LIST = ("allOf", "anyOf", "oneOf")


def subschemas(schema: Schema, path: str = "") -> Iterator[tuple[str, Schema]]:
    """Yield a schema and every schema in it."""
    yield path, schema
    for key in _MANY:
        for name, below in schema.get(key, {}).items():
            yield from subschemas(below, f"{path}/{key}/{name}")
    for key in _ONE:
        if isinstance(schema.get(key), dict):
            yield from subschemas(schema[key], f"{path}/{key}")
    for key in _LIST:
        for index, below in enumerate(schema.get(key, ())):
            yield from subschemas(below, f"{path}/{key}/{index}")
