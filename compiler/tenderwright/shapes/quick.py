"""Tell quickly whether data fits a schema; only where it does not is the full validator asked what is wrong.

A schema is turned once into nested functions. Each keyword means what JSON Schema 2020-12 says it means; a keyword
that stands in no list here makes `quick` refuse the schema, so that nothing is passed over in silence.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Any

from tenderwright.shapes.keywords import is_date, money_mistake, quantity_mistake

Fits = Callable[[Any], bool]
Schema = Mapping[str, Any]

_SILENT = {
    *("$schema", "title", "description", "examples", "default"),
    *("prose", "refers", "or", "signed", "within", "uncertainty"),
}


class NotQuick(ValueError):
    """The schema uses a keyword that is not known here."""


def quick(schema: Schema) -> Fits:
    """Turn a schema into a function that tells whether data fits it; raises NotQuick."""
    groups = {_GROUPS.get(key, key): None for key in schema if key not in _SILENT}
    unknown = [key for key in groups if key not in _MAKERS]
    if unknown:
        raise NotQuick(f"schema keyword {unknown[0]!r}")
    tests = tuple(_MAKERS[key](schema) for key in groups)
    if len(tests) == 1:
        return tests[0]

    def fits(data: Any) -> bool:
        for test in tests:  # noqa: SIM110 - a plain loop is twice as fast as all() here
            if not test(data):
                return False
        return True

    return fits


def _is_number(data: Any) -> bool:
    return isinstance(data, (int, float)) and not isinstance(data, bool)


_TYPES: dict[str, Fits] = {
    "string": lambda data: isinstance(data, str),
    "object": lambda data: isinstance(data, dict),
    "array": lambda data: isinstance(data, list),
    "boolean": lambda data: isinstance(data, bool),
    "null": lambda data: data is None,
    "number": _is_number,
    "integer": lambda data: _is_number(data) and (isinstance(data, int) or data.is_integer()),
}


def _type(schema: Schema) -> Fits:
    wanted = schema["type"]
    if isinstance(wanted, str):
        return _TYPES[wanted]
    tests = [_TYPES[one] for one in wanted]
    return lambda data: any(test(data) for test in tests)


def _one_of_words(words: list[Any]) -> Fits:
    if not all(isinstance(word, str) for word in words):
        raise NotQuick("a choice that is not text")
    known = frozenset(words)
    return lambda data: isinstance(data, str) and data in known


def _object(schema: Schema) -> Fits:
    properties = {key: quick(below) for key, below in schema.get("properties", {}).items()}
    extra = schema.get("additionalProperties", True)
    other: Fits = quick(extra) if isinstance(extra, dict) else lambda data: bool(extra)
    required = tuple(schema.get("required", ()))

    def fits(data: Any) -> bool:
        if not isinstance(data, dict):
            return True
        for key, value in data.items():
            if not properties.get(key, other)(value):
                return False
        return all(key in data for key in required)

    return fits


def _items(schema: Schema) -> Fits:
    entry = quick(schema["items"])
    return lambda data: not isinstance(data, list) or all(map(entry, data))


def _names(schema: Schema) -> Fits:
    name = quick(schema["propertyNames"])
    return lambda data: not isinstance(data, dict) or all(map(name, data))


def _if(schema: Schema) -> Fits:
    if "if" not in schema:
        return lambda data: True
    condition, then = quick(schema["if"]), quick(schema.get("then", {}))
    return lambda data: not condition(data) or then(data)


def _pattern(schema: Schema) -> Fits:
    search = re.compile(schema["pattern"]).search
    return lambda data: not isinstance(data, str) or search(data) is not None


def _format(schema: Schema) -> Fits:
    if schema["format"] != "date":
        raise NotQuick(f"format {schema['format']!r}")
    return is_date


def _all(schema: Schema) -> Fits:
    tests = [quick(below) for below in schema["allOf"]]
    return lambda data: all(test(data) for test in tests)


def _any(schema: Schema) -> Fits:
    tests = [quick(below) for below in schema["anyOf"]]
    return lambda data: any(test(data) for test in tests)


def _limit(key: str, kind: type[str] | type[list[Any]] | type[dict[str, Any]], least: bool) -> Callable[[Schema], Fits]:
    def make(schema: Schema) -> Fits:
        limit = int(schema[key])

        def fits(data: Any) -> bool:
            return not isinstance(data, kind) or (len(data) >= limit if least else len(data) <= limit)

        return fits

    return make


_GROUPS = {"required": "properties", "additionalProperties": "properties", "then": "if"}
"""Keywords that are tested together with another."""

_MAKERS: dict[str, Callable[[Schema], Fits]] = {
    "type": _type,
    "enum": lambda schema: _one_of_words(schema["enum"]),
    "const": lambda schema: _one_of_words([schema["const"]]),
    "properties": _object,
    "propertyNames": _names,
    "items": _items,
    "if": _if,
    "allOf": _all,
    "anyOf": _any,
    "pattern": _pattern,
    "format": _format,
    "minLength": _limit("minLength", str, True),
    "maxLength": _limit("maxLength", str, False),
    "minItems": _limit("minItems", list, True),
    "maxItems": _limit("maxItems", list, False),
    "minimum": lambda schema: lambda data: not _is_number(data) or data >= schema["minimum"],
    "maximum": lambda schema: lambda data: not _is_number(data) or data <= schema["maximum"],
    "exclusiveMinimum": lambda schema: lambda data: not _is_number(data) or data > schema["exclusiveMinimum"],
    "exclusiveMaximum": lambda schema: lambda data: not _is_number(data) or data < schema["exclusiveMaximum"],
    "minProperties": _limit("minProperties", dict, True),
    "maxProperties": _limit("maxProperties", dict, False),
    "quantity": lambda schema: lambda data: quantity_mistake(schema["quantity"], data, schema) is None,
    "money": lambda schema: lambda data: not schema["money"] or not money_mistake(data, schema),
}
