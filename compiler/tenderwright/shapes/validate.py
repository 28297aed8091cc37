"""Validate a source against its schema and tell each mistake in our own words, at its place."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from functools import cache
from typing import Any

from msgspec.structs import replace

from tenderwright.notices import Notice, Place
from tenderwright.notices.suggest import did_you_mean
from tenderwright.quantities.quantity import QuantityError
from tenderwright.reading.source import Path, Source
from tenderwright.shapes.fold import fold
from tenderwright.shapes.keywords import EARLIEST, LATEST, format_checker, is_date, validator_class
from tenderwright.shapes.quick import Fits, NotQuick, quick
from tenderwright.shapes.schemas import load_schema

_NOUNS = {
    "string": "text",
    "object": "keys with their values",
    "array": "a list",
    "integer": "a whole number",
    "number": "a number",
    "boolean": "true or false",
    "null": "nothing",
}


_KEPT_BY_OWNER = {
    "history/": ("owner/closing/", ("prices", "currency")),
    "facilities/": ("owner/facilities/", ("kept_because", "notes")),
}
"""Keys that a file of a folder may not hold, and under which folder the owner keeps them."""


@cache
def validator_of(name: str) -> Any:
    """Make the full validator of a schema by name."""
    return validator_class()(load_schema(name), format_checker=format_checker())


@cache
def _quick(name: str) -> Fits:
    try:
        return quick(load_schema(name))
    except NotQuick:
        return lambda data: False


def validate(source: Source, name: str) -> list[tuple[Path, Notice]]:
    """Check a source against a schema by name; gives each mistake with its path in the data."""
    if _quick(name)(source.data):
        return []
    return validate_with(source, validator_of(name), source.todos)


def validate_with(source: Source, validator: Any, todos: Collection[Path] = ()) -> list[tuple[Path, Notice]]:
    """Check a source with a validator that knows our keywords; nothing is asked of the values at `todos`."""
    found: list[tuple[Path, Notice]] = []
    for error in validator.iter_errors(source.data):
        at = tuple(error.absolute_path)
        if at in todos or (error.validator == "minItems" and any(todo[: len(at)] == at for todo in todos)):
            continue
        notices = _translate(source, error)
        if at and error.validator == "additionalProperties":
            notices = [_of_the_top(notice, validator.schema.get("properties", {})) for notice in notices]
        found += [(at, notice) for notice in notices]
    return fold(source, found)


def _of_the_top(notice: Notice, top: Collection[str]) -> Notice:
    """Tell of an unknown key that is one of the file itself: it stands too far to the right, or under the wrong one."""
    key = next((key for key in top if notice.message == f"key `{key}` is not known here"), None)
    hint = f"`{key}` belongs to the file itself: begin its line at the left margin, outside all lists"
    return notice if key is None else replace(notice, hints=(hint,))


def _written(source: Source, at: Path) -> str:
    """Give a scalar as it stands in the file: `1.10` is read as a number, and the reader wrote two decimals."""
    start, end = source.ends.get(at, (0, 0))
    return source.text[start:end]


def _noun(value: Any, written: str = "") -> str:
    if value is None:
        return "nothing"
    kinds = {
        str: "text",
        bool: "true or false",
        int: "a number",
        float: "a number",
        list: "a list",
        dict: "keys with their values",
    }
    text = kinds.get(type(value), "something else")
    shown = written if isinstance(value, (int, float)) and written else str(value)
    return f"{text} `{shown}`" if isinstance(value, (str, int, float)) and len(shown) < 40 else text


def _schema_at(error: Any) -> dict[str, Any]:
    schema: Any = error.schema
    return schema if isinstance(schema, dict) else {}


def _translate(source: Source, error: Any) -> list[Notice]:
    at: Path = tuple(error.absolute_path)
    place = source.place(at)
    kind = str(error.validator)
    handler = _HANDLERS.get(kind)
    if handler is not None:
        return list(handler(source, at, place, error))
    raise AssertionError(f"the schema keyword {kind!r} has no wording")


def _extra(source: Source, at: Path, place: Place, error: Any) -> Iterable[Notice]:
    known = _schema_at(error).get("properties", {})
    for key in error.instance:
        if key not in known:
            hints = did_you_mean(key, known) or (f"known keys: {', '.join(sorted(known))}",)
            if not at and (notice := _kept_by_owner(source, key)) is not None:
                yield notice
                continue
            if error.instance[key] is None and " " in key:
                hints = ("a comma inside `{ }` begins another key: put the text before it in quotes",)
            yield Notice("unknown-key", source.key_place((*at, key)), f"key `{key}` is not known here", hints=hints)


def _kept_by_owner(source: Source, key: str) -> Notice | None:
    """Tell of a key that stood in a file that all may read, and is the owner's alone."""
    folder, _, name = source.path.rpartition("/")
    place, keys = _KEPT_BY_OWNER.get(f"{folder}/", ("", ()))
    if key not in keys:
        return None
    hint = f"move it to {place}{name}, under the same key"
    message = f"`{key}` is the owner's alone, and {folder}/ may be public"
    return Notice("kept-by-owner", source.key_place((key,)), message, hints=(hint,))


def _required(source: Source, at: Path, place: Place, error: Any) -> Iterable[Notice]:
    schema = _schema_at(error)
    for key in error.validator_value:
        if key not in error.instance:
            about = schema.get("properties", {}).get(key, {})
            example = next(iter(about.get("examples", ())), None)
            hints = [f"`{key}`: {about['description'].rstrip('.')}"] if about.get("description") else []
            hints += [f"for example `{key}: {example}`"] if example is not None else []
            yield Notice("missing-key", source.key_place(at), f"key `{key}` is missing", hints=tuple(hints))


def _type(source: Source, at: Path, place: Place, error: Any) -> Iterable[Notice]:
    wanted = error.validator_value
    words = " or ".join(_NOUNS[word] for word in ([wanted] if isinstance(wanted, str) else wanted))
    hints: tuple[str, ...] = ()
    schema = _schema_at(error)
    if wanted == "string" and isinstance(error.instance, (int, float)) and not isinstance(error.instance, bool):
        examples = schema.get("examples", ())
        hints = (
            ("write it with its unit, as in " + " or ".join(f"`{one}`" for one in examples),)
            if "quantity" in schema and examples
            else ("put it in quotes",)
        )
    elif error.instance is None:
        hints = ("write a value after the colon, or leave the key out",)
    yield Notice(
        "wrong-type", place, f"expected {words}, got {_noun(error.instance, _written(source, at))}", hints=hints
    )


def _choice(source: Source, at: Path, place: Place, error: Any) -> Iterable[Notice]:
    choices = error.validator_value if error.validator == "enum" else [error.validator_value]
    listed = ", ".join(f"`{choice}`" for choice in choices)
    hints = did_you_mean(str(error.instance), [str(choice) for choice in choices]) + (
        (f"one of {listed}",) if len(choices) <= 16 else ()
    )
    if "propertyNames" in error.absolute_schema_path:
        place = source.key_place((*at, str(error.instance)))
    yield Notice("wrong-choice", place, f"`{error.instance}` is not one of the choices", hints=hints)


def _form(source: Source, at: Path, place: Place, error: Any) -> Iterable[Notice]:
    schema = _schema_at(error)
    if "propertyNames" in error.absolute_schema_path:
        place = source.key_place((*at, str(error.instance)))
    examples = schema.get("examples", ())
    hints = (f"write it as in `{examples[0]}`",) if examples else (f"it must match {error.validator_value}",)
    what = schema.get("title", "the form needed")
    name = what[0].lower() + what[1:] if what else what
    yield Notice("wrong-form", place, f"`{error.instance}` is not written as {name}", hints=hints)


def _date(source: Source, at: Path, place: Place, error: Any) -> Iterable[Notice]:
    if is_date(error.instance, ever=True):
        message = f"`{error.instance}` is not a date from {EARLIEST} to {LATEST}"
        yield Notice("out-of-bounds", place, message, hints=("look at the year",))
        return
    message = f"`{error.instance}` is not a date of the calendar"
    yield Notice("bad-date", place, message, hints=("write year-month-day, as in `2027-04-12`",))


def _alternatives(source: Source, at: Path, place: Place, error: Any) -> Iterable[Notice]:
    if not isinstance(error.instance, str):
        yield Notice("wrong-type", place, f"expected text, got {_noun(error.instance)}")
        return
    words = " or ".join(_alternative(schema) for schema in error.validator_value)
    yield Notice("wrong-form", place, f"`{error.instance}` is not {words}")


def _alternative(schema: dict[str, Any]) -> str:
    if "const" in schema:
        return f"`{schema['const']}`"
    if schema.get("format") == "date":
        return "a date such as `2027-04-12`"
    return str(schema.get("title", "the form needed")).lower() + (
        f" such as `{schema['examples'][0]}`" if schema.get("examples") else ""
    )


def _bounds(source: Source, at: Path, place: Place, error: Any) -> Iterable[Notice]:
    limit = error.validator_value
    many = "entries" if limit != 1 else "entry"
    message = {
        "minItems": f"needs at least {limit} {many}",
        "maxItems": f"has more than {limit} {many}",
        "minLength": "is empty",
        "maxLength": f"is longer than {limit} characters",
        "minimum": f"`{error.instance}` is less than {limit}",
        "maximum": f"`{error.instance}` is more than {limit}",
        "exclusiveMinimum": f"`{error.instance}` is not more than {limit}",
        "exclusiveMaximum": f"`{error.instance}` is not less than {limit}",
        "minProperties": f"needs at least {limit} {'key' if limit == 1 else 'keys'}",
        "maxProperties": f"has more than {limit} {'key' if limit == 1 else 'keys'}",
    }[str(error.validator)]
    yield Notice(
        "out-of-bounds",
        place,
        message,
        hints=_between(_schema_at(error)) if str(error.validator) in _OF_NUMBERS else (),
    )


_OF_NUMBERS = {"minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum"}


def _between(schema: dict[str, Any]) -> tuple[str, ...]:
    """Say how much a number may be."""
    words = {
        "minimum": "{} or more",
        "exclusiveMinimum": "more than {}",
        "maximum": "{} or less",
        "exclusiveMaximum": "less than {}",
    }
    said = " and ".join(text.format(schema[key]) for key, text in words.items() if key in schema)
    return (f"write a number that is {said}",)


def _quantity(source: Source, at: Path, place: Place, error: Any) -> Iterable[Notice]:
    cause = error.cause
    assert isinstance(cause, QuantityError)
    yield Notice(cause.code, place, cause.message, hints=cause.hints)


def _money(source: Source, at: Path, place: Place, error: Any) -> Iterable[Notice]:
    yield Notice("bad-money", place, error.message, hints=("write it as in `1250` or `84.50`",))


_HANDLERS = {
    "additionalProperties": _extra,
    "required": _required,
    "type": _type,
    "enum": _choice,
    "const": _choice,
    "pattern": _form,
    "format": _date,
    "anyOf": _alternatives,
    "minItems": _bounds,
    "maxItems": _bounds,
    "minLength": _bounds,
    "maxLength": _bounds,
    "minimum": _bounds,
    "maximum": _bounds,
    "exclusiveMinimum": _bounds,
    "exclusiveMaximum": _bounds,
    "minProperties": _bounds,
    "maxProperties": _bounds,
    "quantity": _quantity,
    "money": _money,
}
