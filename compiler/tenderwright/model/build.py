"""Build dataclasses from clean data by their type hints, so that every object and quantity knows its place."""

from __future__ import annotations

import dataclasses
import types
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from functools import cache
from typing import Annotated, Any, TypeVar, Union, cast, get_args, get_origin, get_type_hints

from tenderwright.model.day import Day
from tenderwright.notices import Notice, Place
from tenderwright.quantities.position import FrameTable, Position, parse_position
from tenderwright.quantities.quantity import Quantity, QuantityError, parse_quantity
from tenderwright.reading.source import Path, Source

T = TypeVar("T")


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


@dataclass(frozen=True)
class Refers:
    """Marks a text field as the name of a thing of this kind."""

    kind: str


@dataclass(frozen=True)
class Measures:
    """Marks a quantity field with its dimension, and the words that may stand instead of one."""

    dimension: str
    words: tuple[str, ...] = ()


class Builder:
    """Builds dataclasses from one source; mistakes that the schema could not see become notices."""

    def __init__(self, source: Source, frames: FrameTable | None = None) -> None:
        self.source = source
        self.frames = frames
        self.notices: list[Notice] = []

    def build(self, cls: type[T], data: Mapping[str, Any], at: Path = ()) -> T:
        """Build one dataclass from a mapping; keys that the class has no field for are a bug."""
        values: dict[str, Any] = {}
        for name, read in _fields(cast(Any, cls)):
            if name == "here":
                values["here"] = self.source.place(at)
            else:
                key = name.rstrip("_")
                if key in data:
                    values[name] = read(self, data[key], (*at, key))
        return cls(**values)

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
def _fields(cls: Any) -> tuple[tuple[str, _Read], ...]:
    hints = get_type_hints(cls, include_extras=True)
    return tuple((f.name, _reader(hints[f.name])) for f in dataclasses.fields(cls) if f.init)


@cache
def _reader(hint: Any) -> _Read:
    """Choose how to read a value of this type."""
    origin, args = get_origin(hint), get_args(hint)
    if origin is Annotated:
        return _marked(args[1])
    if origin in (Union, types.UnionType):
        return _reader(next(arg for arg in args if arg is not type(None)))
    if origin is tuple:
        entry = _reader(args[0])
        return lambda b, data, at: tuple(entry(b, value, (*at, i)) for i, value in enumerate(data))
    if origin in (Mapping, dict) or origin is types.MappingProxyType:
        value_of = _reader(args[1])
        return lambda b, data, at: {str(key): value_of(b, value, (*at, key)) for key, value in data.items()}
    if hint in _SIMPLE:
        return _SIMPLE[hint]
    if dataclasses.is_dataclass(hint) and isinstance(hint, type):
        return lambda b, data, at: b.build(hint, data, at)
    return _as_is


def _marked(mark: Any) -> _Read:
    if isinstance(mark, Refers):
        return lambda b, data, at: Reference(mark.kind, str(data), b.source.place(at))
    assert isinstance(mark, Measures)
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
