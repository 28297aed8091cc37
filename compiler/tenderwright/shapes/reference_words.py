"""Say how a value of the format is written, in a few words for the reference."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

Schema = Mapping[str, Any]

_TYPES = {
    "string": "text",
    "integer": "whole number",
    "number": "number",
    "boolean": "`true` or `false`",
    "object": "keys",
    "array": "list",
}
_SIDE = ["port", "starboard", "both", "centreline"]
"""So many keys take these words that the page of all values explains them."""


def written_as(schema: Schema) -> str:
    """Say how a value is written, with an example where it is not a choice."""
    examples: Sequence[Any] = schema.get("examples") or schema.get("items", {}).get("examples") or ()
    first = examples[0] if examples else None
    entry = first[0] if isinstance(first, list) and first else first
    shown = entry is not None and not words_of(schema) and not isinstance(entry, (dict, list, bool))
    return _form(schema) + (f": `{entry}`" if shown else "")


def words_of(schema: Schema) -> Sequence[str]:
    """Give the words of which a value, an entry of a list or a key is one; none where any text may stand."""
    for one in (schema, schema.get("items", {}), schema.get("propertyNames", {})):
        if "enum" in one:
            words: Sequence[str] = one["enum"]
            return words
    return ()


def _form(schema: Schema) -> str:
    if schema.get("type") == "array":
        entry = schema.get("items", {})
        return "list" if entry.get("type") == "object" else f"list of {_form(entry)}"
    if schema.get("type") == "object":
        return _names(schema) if isinstance(schema.get("additionalProperties"), dict) else "keys"
    return _scalar(schema) + _bounds(schema)


def _scalar(schema: Schema) -> str:
    if "quantity" in schema:
        return _quantity(schema)
    if "refers" in schema:
        return f"name of {_a(schema['refers'])}"
    if "enum" in schema:
        return "side" if schema["enum"] == _SIDE else ", ".join(f"`{choice}`" for choice in schema["enum"])
    if "anyOf" in schema:
        return "day"
    for keyword in ("prose", "money"):
        if schema.get(keyword):
            return keyword + (", may be negative" if schema.get("signed") else "")
    if schema.get("format") == "date":
        return "date"
    if str(schema.get("pattern", "")).startswith("^(award|"):
        return "day"
    return "identifier" if schema.get("title") == "Identifier" else _TYPES[str(schema.get("type", "string"))]


def _quantity(schema: Schema) -> str:
    dimension = str(schema["quantity"])
    words = [f"`{word}`" for word in schema.get("or", ())]
    what = "a quantity" if dimension == "any" else _a(dimension.replace("_", " "))
    negative = ", may be negative" if schema.get("signed") else ""
    known = schema.get("uncertainty")
    band = f"; ± may follow, usually {known['usual']} ({known['source']})" if known else ""
    return " or ".join([*words, what]) + negative + _said_bounds(*schema.get("within", ("", ""))) + band


def _a(word: str) -> str:
    return {"each": "a count"}.get(word, f"{'an' if word[0] in 'aeiou' else 'a'} {word}")


def _bounds(schema: Schema) -> str:
    """Say the bounds of a number, but for the most of all, which the page of all values gives."""
    low, high = schema.get("minimum", ""), schema.get("maximum", "")
    if "exclusiveMinimum" in schema:
        return f", more than {schema['exclusiveMinimum']}" + (f", {high} or less" if high not in _ALL else "")
    if low == -(10**12):
        return ", may be negative"
    return _said_bounds(low if low != 0 else "", high if high not in _ALL else "") if schema.get("type") else ""


_ALL = ("", 1_000_000, 10**12)


def _said_bounds(low: object, high: object) -> str:
    if low != "" and low == high:
        return ", always this"
    if low != "" and high != "":
        return f", {low} to {high}"
    return f", {low} or more" if low != "" else f", {high} or less" if high != "" else ""


def _names(schema: Schema) -> str:
    words = words_of(schema)
    return f"keys: {', '.join(f'`{name}`' for name in words)}" if words else "keys of your own"
