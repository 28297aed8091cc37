"""A file of the format as a form to fill in, made from its schema: `todo` wherever the answer is not known.

Every needed key is there, with what the schema says of it as a comment, and of the others those that are asked for;
the rest are named at the end of what holds them.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from tenderwright.quantities.customs import telling_in
from tenderwright.quantities.display import show
from tenderwright.quantities.purposes import purpose_of
from tenderwright.quantities.quantity import parse_quantity
from tenderwright.reading.scalars import Todo
from tenderwright.shapes.schemas import load_schema
from tenderwright.writing.yaml_file import one_line

TODO = Todo("todo")
WIDTH = 120
_MOST_CHOICES = 12

Fill = Mapping[str, Any]
"""Values by key, nested as the file is; an optional key that stands here is written."""


class Row(dict[str, Any]):
    """What is filled in of an entry that stands on one line, as a row of a table does."""


Schema = Mapping[str, Any]


def template(name: str, fill: Fill, system: str, head: Sequence[str] = (), schema_path: str = "") -> str:
    """Write a file by the name of its schema; `head` are lines of comment that say what it is for."""
    first = [f"# yaml-language-server: $schema={schema_path}"] if schema_path else []
    above = [line for text in head for line in _comment(text, "")]
    body = _mapping(load_schema(name), fill, system, "")
    return "".join(f"{line}\n" for line in (*first, *above, *body))


def _mapping(schema: Schema, fill: Fill, system: str, indent: str) -> Iterator[str]:
    properties: Mapping[str, Schema] = schema.get("properties", {})
    needed = schema.get("required", ())
    for key, about in properties.items():
        if key in fill or key in needed:
            yield from _entry(key, about, fill.get(key, TODO), system, indent)
    left = [key for key in properties if key not in fill and key not in needed]
    if left:
        yield from _comment(f"may be added: {', '.join(left)}", indent)


def _entry(key: str, about: Schema, value: Any, system: str, indent: str) -> Iterator[str]:
    """Write a key with its value, from its part of the schema."""
    inner = about.get("items") if about.get("type") == "array" else None
    if about.get("type") == "object" and "properties" in about and (value is TODO or isinstance(value, Mapping)):
        yield from _comment(str(about.get("description", "")), indent)
        yield f"{indent}{key}:"
        yield from _mapping(about, value if isinstance(value, Mapping) else {}, system, f"{indent}  ")
    elif about.get("type") == "object" and isinstance(value, Mapping):
        yield from _comment(str(about.get("description", "")), indent)
        yield f"{indent}{key}:"
        yield from (f"{indent}  {one}: {one_line(given)}" for one, given in value.items())
    elif inner is not None and inner.get("type") == "object" and (value is TODO or isinstance(value, (list, tuple))):
        yield from _comment(str(about.get("description", "")), indent)
        yield f"{indent}{key}:"
        told: set[str] = set()
        for given in [{}] if value is TODO else value:
            if isinstance(given, Row):
                yield from _row(inner, given, system, f"{indent}  ", told)
            else:
                yield from _listed(inner, given, system, f"{indent}  ")
    else:
        written: Any = [TODO] if inner is not None and value is TODO else value
        says = _said(inner or {}, about, system, is_open=value is TODO)
        yield from _with_comment(f"{indent}{key}: {one_line(written)}", says, indent)


def _listed(schema: Schema, given: Any, system: str, indent: str) -> Iterator[str]:
    """Write an entry of a list: on one line where it is given whole, else as a mapping after its dash."""
    needed = schema.get("required", ())
    if isinstance(given, Mapping) and given and all(key in given for key in needed) and TODO not in given.values():
        yield f"{indent}- {one_line(given)}"
        return
    lines = list(_mapping(schema, given, system, f"{indent}  "))
    first = next(place for place, line in enumerate(lines) if not line.lstrip().startswith("#"))
    yield from (line for line in lines[:first])
    yield f"{indent}- {lines[first].lstrip()}"
    yield from lines[first + 1 :]


def _row(schema: Schema, given: Row, system: str, indent: str, told: set[str]) -> Iterator[str]:
    """Write an entry on one line; above the first of them, what each of its open values means."""
    properties: Mapping[str, Schema] = schema["properties"]
    needed = schema.get("required", ())
    keys = [key for key in properties if key in given or key in needed]
    for key in keys:
        if given.get(key, TODO) is TODO and key not in told:
            yield from _comment(f"{key}: {_said({}, properties[key], system, is_open=True)}", indent)
    left = [key for key in properties if key not in keys]
    if left and not told:
        yield from _comment(f"may be added: {', '.join(left)}", indent)
    told.update(properties)
    yield f"{indent}- {one_line({key: given.get(key, TODO) for key in keys})}"


def _said(entry: Schema, about: Schema, system: str, *, is_open: bool) -> str:
    """Say what a value means and, where it is open, how it is written."""
    says = str(about.get("description") or entry.get("description") or "").rstrip(".")
    return "; ".join(part for part in (says, _how(entry or about, system) if is_open else "") if part)


def _how(about: Schema, system: str) -> str:
    choices = about.get("enum", ())
    if choices:
        more = ", …" if len(choices) > _MOST_CHOICES else ""
        return f"one of: {', '.join(map(str, choices[:_MOST_CHOICES]))}{more}"
    if dimension := about.get("quantity", ""):
        words = [one for one in about.get("or", ()) if one != "none"]
        return " or ".join([*_samples(about, dimension, system), *words])
    if about.get("format") == "date" or any(one.get("format") == "date" for one in about.get("anyOf", ())):
        return "year-month-day"
    if about.get("type") == "boolean":
        return "true or false"
    return f"the name of a {about['refers']}" if about.get("refers") not in (None, "value") else ""


def _samples(about: Schema, dimension: str, system: str) -> Iterator[str]:
    """Give the field's own example as it is written in the package's units."""
    words = about.get("or", ())
    sample = next((one for one in about.get("examples", ()) if isinstance(one, str) and one not in words), "")
    if sample:
        yield f"as {sample if system != 'us' or dimension == 'position' else _in_us(sample, dimension)}"


def _in_us(sample: str, dimension: str) -> str:
    read = parse_quantity(sample, dimension)
    purpose = purpose_of(read.dimension, read.unit)
    if not purpose:
        return sample
    with telling_in("us"):
        return show(read.si, purpose, digits=2)


def _with_comment(line: str, says: str, indent: str) -> Iterator[str]:
    """Put a comment after a line, or above it where it is too long."""
    if says and len(line) + len(says) + 3 > WIDTH:
        yield from _comment(says, indent)
        yield line
    else:
        yield f"{line} # {says}" if says else line


def _comment(text: str, indent: str) -> Iterator[str]:
    mark = f"{indent}# "
    yield from (f"{mark}{line}" for line in textwrap.wrap(text, WIDTH - len(mark)))
