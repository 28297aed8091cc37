"""Make the JSON Schema of a noun from what its fields declare."""

from __future__ import annotations

import inspect
import types
from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

from msgspec.structs import fields

from tenderwright.model.build import Name, Prose, Reference
from tenderwright.model.day import Day
from tenderwright.model.marks import (
    AbsentMeans,
    Amount,
    Count,
    Either,
    Form,
    Kept,
    Key,
    Keys,
    MayWait,
    Measured,
    Measures,
    Needs,
    OneOf,
    Refers,
    Within,
)
from tenderwright.model.noun import Noun, keys_of
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity

Schema = dict[str, Any]

_TEXT: Schema = {"type": "string", "minLength": 1}
_DATE: Schema = {"type": "string", "format": "date"}
_BASES: dict[Any, Schema] = {
    str: _TEXT,
    Name: _TEXT,
    Quantity: {"type": "string"},
    Reference: _TEXT,
    Position: {"type": "string", "quantity": "position"},
    Prose: {**_TEXT, "prose": True},
    Day: {"type": "string"},
    date: _DATE,
    Decimal: {"type": "number"},
    float: {"type": "number", "minimum": 0, "maximum": 1_000_000},
    int: {"type": "integer", "minimum": 0, "maximum": 1_000_000},
    bool: {"type": "boolean"},
}


def file_schema(noun: type[Noun], pattern: str) -> Schema:
    """Make the schema of a kind of file, by the pattern of its path, whose whole content is one noun."""
    head = {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": pattern}
    return head | noun_schema(noun)


def noun_schema(noun: type[Noun]) -> Schema:
    """Make the schema of a noun, described by its docstring."""
    hints = get_type_hints(noun, include_extras=True)
    needed = {field.name for field in fields(noun) if field.required}
    keys = keys_of(noun)
    schema: Schema = {
        "description": " ".join((inspect.getdoc(noun) or "").split()),
        "type": "object",
        "additionalProperties": False,
        "required": [key for name, key in keys if name in needed],
        "properties": {key: _of(hints[name]) for name, key in keys},
    }
    rules = [rule for need in getattr(noun, "rules", ()) for rule in _rules(need)]
    return schema | ({"allOf": rules} if rules else {})


def _rules(need: Needs) -> list[Schema]:
    then = {"required": [need.key], "properties": {need.key: {"minItems": 1}}}
    return [
        {"if": {"properties": {need.where: {"const": word}}, "required": [need.where]}, "then": then}
        for word in need.among.words
    ]


def _of(hint: Any) -> Schema:
    """Make the schema of a value of this type."""
    origin, args = get_origin(hint), get_args(hint)
    if origin is Annotated:
        schema = _of(args[0])
        for mark in args[1:]:
            schema = _MARKS[type(mark)](schema, mark)
        return schema
    if origin in (Union, types.UnionType):
        return _of(next(arg for arg in args if arg is not type(None)))
    if origin is tuple:
        return {"type": "array", "items": _of(args[0])}
    if origin is Mapping:
        return {"type": "object", "additionalProperties": _of(args[1])}
    if isinstance(hint, type) and issubclass(hint, Noun):
        return noun_schema(hint)
    return dict(_BASES[hint])


def _said(schema: Schema) -> Schema:
    """Keep only what is said of a value, not how it is written."""
    return {key: schema[key] for key in ("description", "examples") if key in schema}


def _key(schema: Schema, key: Key) -> Schema:
    said = {"description": key.says} if key.says else {}
    return schema | said | ({"examples": list(key.examples)} if key.examples else {})


def _measures(schema: Schema, mark: Measures) -> Schema:
    words = {"or": list(mark.words)} if mark.words else {}
    return schema | {"quantity": mark.dimension} | words | ({"signed": True} if mark.signed else {})


def _measured(schema: Schema, mark: Measured) -> Schema:
    return schema | {"uncertainty": {"usual": mark.usual, "source": mark.source}}


def _amount(schema: Schema, mark: Amount) -> Schema:
    return schema | {"money": True} | ({"signed": True} if mark.signed else {})


def _form(schema: Schema, mark: Form) -> Schema:
    bare = {key: value for key, value in schema.items() if key != "minLength"}
    longest = {"maxLength": mark.longest} if mark.longest else {}
    examples = {"examples": list(mark.examples)} if mark.examples else {}
    return {"title": mark.title} | bare | {"pattern": mark.pattern} | longest | examples


def _either(schema: Schema, mark: Either) -> Schema:
    other = {"const": mark.other} if isinstance(mark.other, str) else _form({"type": "string"}, mark.other)
    return _said(schema) | {"anyOf": [_DATE, other]}


def _within(schema: Schema, mark: Within) -> Schema:
    if "quantity" in schema:
        return schema | {"within": [mark.least or "", mark.most or ""]}
    bounds = {"minimum": mark.least, "maximum": mark.most, "exclusiveMinimum": mark.above}
    kept = {key: value for key, value in schema.items() if mark.above is None or key != "minimum"}
    return kept | {key: bound for key, bound in bounds.items() if bound is not None}


def _count(schema: Schema, mark: Count) -> Schema:
    return schema | {"minProperties" if schema["type"] == "object" else "minItems": mark.least}


def _kept(schema: Schema, mark: Kept) -> Schema:
    said = str(schema.get("description", "")).removesuffix(".")
    return schema | {"description": f"{said}. Kept for the record, no paper prints it: {mark.why}."}


def _keys(schema: Schema, mark: Keys) -> Schema:
    return schema | {"propertyNames": _MARKS[type(mark.are)]({}, mark.are)}


_MARKS: dict[type, Any] = {
    Key: _key,
    Measured: _measured,
    Measures: _measures,
    Refers: lambda schema, mark: schema | {"refers": mark.kind},
    OneOf: lambda schema, mark: _said(schema) | {"enum": list(mark.words)},
    Amount: _amount,
    Form: _form,
    Either: _either,
    Within: _within,
    Count: _count,
    Kept: _kept,
    Keys: _keys,
    MayWait: lambda schema, mark: schema,
    AbsentMeans: lambda schema, mark: schema,
}
