"""Build nouns from clean data by their type hints, so that every noun and quantity knows its place."""

from __future__ import annotations

import types
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from functools import cache
from typing import Annotated, Any, TypeVar, Union, get_args, get_origin, get_type_hints

from tenderwright.model.day import Day
from tenderwright.model.marks import Measures, Refers
from tenderwright.model.noun import Noun, keys_of
from tenderwright.notices import Notice, Place
from tenderwright.quantities.position import FrameTable, Position, parse_position
from tenderwright.quantities.quantity import Quantity, QuantityError, parse_quantity
from tenderwright.reading.source import Path, Source

N = TypeVar("N", bound=Noun)


@dataclass(frozen=True)
class Reference:
    """A name written in a file that stands for something elsewhere in the package."""

    kind: str
    name: str
    at: Place = field(compare=False)

    def __str__(self) -> str:
        """Give the name as written."""
        return self.name


@dataclass(frozen=True)
class Name:
    """A name written in a file for something that is no thing of the package, such as a source of money."""

    name: str
    at: Place = field(compare=False)

    def __str__(self) -> str:
        """Give the name as written."""
        return self.name


@dataclass(frozen=True)
class Prose:
    """CommonMark text as written, with the source that can place any word of it."""

    text: str
    at: Place = field(compare=False)
    source: Source = field(compare=False, repr=False)
    path: Path = field(compare=False)

    def __str__(self) -> str:
        """Give the text as written."""
        return self.text

    def place_of(self, words: str, nth: int = 0) -> Place:
        """Find the place of the nth occurrence of some words of the text."""
        return self.source.find_in(self.path, words, nth)


class Builder:
    """Builds nouns from one source; mistakes that the schema could not see become notices."""

    def __init__(self, source: Source, frames: FrameTable | None = None) -> None:
        self.source = source
        self.frames = frames
        self.notices: list[Notice] = []

    def build(self, noun: type[N], data: Mapping[str, Any], at: Path = ()) -> N:
        """Build a noun from a mapping that the schema has checked."""
        values = {name: read(self, data[key], (*at, key)) for name, key, read in _fields(noun) if key in data}
        if "here" in noun.__struct_fields__:
            values["here"] = self.source.place(at)
        return noun(**values)

    def quantity(self, text: str, dimension: str, at: Path) -> Quantity:
        """Read a quantity that the schema has checked."""
        return parse_quantity(text, dimension, self.source.place(at))

    def position(self, text: str, at: Path) -> Position:
        """Read a position; a frame that does not exist becomes a notice."""
        place = self.source.place(at)
        try:
            return parse_position(text, self.frames or FrameTable([0], [0.0]), place)
        except QuantityError as error:
            if self.frames is not None:
                self.notices.append(Notice(error.code, place, error.message, hints=error.hints))
            return Position(text, 0.0, place)


_Read = Callable[[Builder, Any, Path], Any]


@cache
def _fields(noun: type[Noun]) -> tuple[tuple[str, str, _Read], ...]:
    hints = get_type_hints(noun, include_extras=True)
    return tuple((name, key, _reader(hints[name])) for name, key in keys_of(noun))


def _reader(hint: Any) -> _Read:
    """Choose how to read a value of this type."""
    origin, args = get_origin(hint), get_args(hint)
    if origin is Annotated:
        return _marked(args[0], args[1:])
    if origin in (Union, types.UnionType):
        return _reader(next(arg for arg in args if arg is not type(None)))
    if origin is tuple:
        entry = _reader(args[0])
        return lambda b, data, at: tuple(entry(b, value, (*at, i)) for i, value in enumerate(data))
    if origin is Mapping:
        value_of = _reader(args[1])
        return lambda b, data, at: {str(key): value_of(b, value, (*at, key)) for key, value in data.items()}
    if isinstance(hint, type) and issubclass(hint, Noun):
        return lambda b, data, at: b.build(hint, data, at)
    return _SIMPLE.get(hint, _as_is)


def _marked(hint: Any, marks: tuple[Any, ...]) -> _Read:
    for mark in marks:
        if isinstance(mark, Refers):
            return _reference(mark.kind)
        if isinstance(mark, Measures):
            return _quantity(mark)
    return _reader(hint)


def _reference(kind: str) -> _Read:
    return lambda b, data, at: Reference(kind, str(data), b.source.place(at))


def _quantity(mark: Measures) -> _Read:
    words, dimension = mark.words, mark.dimension
    return lambda b, data, at: data if data in words else b.quantity(data, dimension, at)


def _as_is(builder: Builder, data: Any, at: Path) -> Any:
    return data


def _day(builder: Builder, data: Any, at: Path) -> Day:
    try:
        return Day.read(data)
    except ValueError:
        builder.notices.append(Notice("bad-date", builder.source.place(at), f"`{data}` is not a date of the calendar"))
        return Day(data)


_SIMPLE: dict[Any, _Read] = {
    Day: _day,
    str: lambda b, data, at: str(data),
    float: lambda b, data, at: float(data),
    Decimal: lambda b, data, at: Decimal(str(data)),
    date: lambda b, data, at: date.fromisoformat(data),
    Name: lambda b, data, at: Name(str(data), b.source.place(at)),
    Position: lambda b, data, at: b.position(data, at),
    Prose: lambda b, data, at: Prose(data.strip(), b.source.place(at), b.source, at),
}
