"""Build nouns from clean data by their type hints, so that every noun and quantity knows its place."""

from __future__ import annotations

import types
from collections.abc import Callable, Mapping
from datetime import date
from decimal import Decimal
from functools import cache
from typing import Annotated, Any, TypeVar, Union, get_args, get_origin

from msgspec import NODEFAULT
from msgspec.structs import fields as struct_fields

from tenderwright.model.day import Day
from tenderwright.model.marks import AbsentMeans, Either, Form, MayWait, Measures, OneOf, Refers
from tenderwright.model.noun import Noun, keys_of
from tenderwright.notices import Notice, Place
from tenderwright.notices.notice import Placed
from tenderwright.quantities.position import FrameTable, Position, parse_position
from tenderwright.quantities.quantity import Quantity, QuantityError, parse_quantity
from tenderwright.reading.scalars import Todo
from tenderwright.reading.source import Path, Source

N = TypeVar("N", bound=Noun)


class Reference(Placed, frozen=True, eq=False):
    """A name written in a file that stands for something elsewhere in the package."""

    kind: str
    name: str
    at: Place

    def __str__(self) -> str:
        """Give the name as written."""
        return self.name


class Name(Placed, frozen=True, eq=False):
    """A name written in a file for something that is no thing of the package, such as a source of money."""

    name: str
    at: Place

    def __str__(self) -> str:
        """Give the name as written."""
        return self.name


class Prose(Placed, frozen=True, eq=False):
    """CommonMark text as written, with the source that can place any word of it."""

    text: str
    at: Place
    source: Source
    path: Path

    def __str__(self) -> str:
        """Give the text as written."""
        return self.text

    def place_of(self, words: str, nth: int = 0) -> Place:
        """Find the place of the nth occurrence of some words of the text."""
        return self.source.find_in(self.path, words, nth)


TO_BE_WRITTEN = "To be written"
"""What stands on a page for a text that is still `todo`."""


class Awaited(Exception):
    """Something cannot be built, since values that it needs are still `todo`: the file and the path of each."""

    def __init__(self, wanted: tuple[tuple[str, Path], ...], whole: bool = False) -> None:
        """Take what is wanted, and whether what holds it cannot do without: it is part of a list, or places it."""
        super().__init__(wanted)
        self.wanted = wanted
        self.whole = whole


class Builder:
    """Builds nouns from one source; mistakes that the schema could not see become notices.

    A text that is still `todo` is given in fixed words, and another value as if its key were not there. Where it is
    needed, or is part of a list, the noun is not built, and so on upwards to the first that can be left out; `Awaited`
    is raised where there is none.
    """

    def __init__(
        self, source: Source, frames: FrameTable | None = None, wanted: tuple[tuple[str, Path], ...] = ()
    ) -> None:
        """Take the source, the frames by which it gives places, and what in those is still `todo`."""
        self.source = source
        self.frames = frames
        self.wanted = wanted
        self.notices: list[Notice] = []
        self.left_out = False
        """Whether entries of lists were left out of what was built."""

    def build(self, noun: type[N], data: Mapping[str, Any], at: Path = ()) -> N:
        """Build a noun from a mapping that the schema has checked; raises Awaited."""
        values: dict[str, Any] = {}
        wanted: list[tuple[str, Path]] = []
        whole = False
        for name, key, read, is_needed in _fields(noun):
            if key not in data:
                continue
            try:
                values[name] = self.value(read, data[key], (*at, key))
            except Awaited as awaited:
                if is_needed is None:
                    values[name] = None
                elif is_needed or awaited.whole:
                    wanted += awaited.wanted
                    whole |= awaited.whole
        if wanted:
            raise Awaited(tuple(wanted), whole)
        if "here" in noun.__struct_fields__:
            values["here"] = self.source.place(at)
        return noun(**values)

    def value(self, read: _Read, data: Any, at: Path) -> Any:
        """Read a value that may still be `todo`; raises Awaited."""
        if data.__class__ is not Todo:
            return read(self, data, at)
        if read not in _TEXTS:
            raise Awaited(((self.source.path, at),))
        return read(self, TO_BE_WRITTEN, at)

    def some(self, read: _Read, data: Any, at: Path) -> tuple[Any, ...]:
        """Read an entry that can be left out: gives nothing where it waits for something."""
        try:
            return (self.value(read, data, at),)
        except Awaited:
            return ()

    def quantity(self, text: str, dimension: str, at: Path) -> Quantity:
        """Read a quantity that the schema has checked."""
        return parse_quantity(text, dimension, self.source.place(at))

    def position(self, text: str, at: Path) -> Position:
        """Read a position; a frame that does not exist becomes a notice."""
        place = self.source.place(at)
        if self.wanted and self.frames is None and text.lstrip().startswith("Fr"):
            raise Awaited(self.wanted, whole=True)
        try:
            return parse_position(text, self.frames or FrameTable([0], [0.0]), place)
        except QuantityError as error:
            if self.wanted:
                raise Awaited(self.wanted, whole=True) from error
            if self.frames is not None:
                self.notices.append(Notice(error.code, place, error.message, hints=error.hints))
            return Position(text, 0.0, place)


_Read = Callable[[Builder, Any, Path], Any]


@cache
def _fields(noun: type[Noun]) -> tuple[tuple[str, str, _Read, bool | None], ...]:
    """Give the fields of a noun: name, key, how it is read, and whether the noun cannot be without it.

    None means that it is needed in a file, and may be None in the noun while it is still `todo`.
    """
    declared = struct_fields(noun)
    hints = {one.name: one.type for one in declared}
    needed = {one.name: _or_none(one.type) for one in declared if one.required}
    needed |= {name: True for name, hint in hints.items() if any(isinstance(m, AbsentMeans) for m in _marks(hint))}
    # A default that is an answer would be given in place of the one that is still to be found.
    needed |= {one.name: True for one in declared if one.default not in (NODEFAULT, None, "", ())}
    return tuple((name, key, _reader(hints[name]), needed.get(name, False)) for name, key in keys_of(noun))


def _marks(hint: Any) -> tuple[Any, ...]:
    return get_args(hint)[1:] if get_origin(hint) is Annotated else ()


def _or_none(hint: Any) -> bool | None:
    bare = get_args(hint)[0] if get_origin(hint) is Annotated else hint
    return None if type(None) in get_args(bare) else True


def _reader(hint: Any) -> _Read:
    """Choose how to read a value of this type."""
    origin, args = get_origin(hint), get_args(hint)
    if origin is Annotated:
        return _marked(args[0], args[1:])
    if origin in (Union, types.UnionType):
        return _reader(next(arg for arg in args if arg is not type(None)))
    if origin is tuple:
        return _list(_reader(args[0]))
    if origin is Mapping:
        return _named(_reader(args[1]))
    if isinstance(hint, type) and issubclass(hint, Noun):
        return lambda b, data, at: b.build(hint, data, at)
    return _SIMPLE.get(hint, _as_is)


def _marked(hint: Any, marks: tuple[Any, ...]) -> _Read:
    for mark in marks:
        if isinstance(mark, Refers):
            return _reference(mark.kind)
        if isinstance(mark, Measures):
            return _quantity(mark)
        if isinstance(mark, MayWait):
            return _list_without(_reader(get_args(hint)[0]), mark.orders)
    read = _reader(hint)
    is_word = read is _text and any(isinstance(mark, (Form, OneOf, Either)) for mark in marks)
    return _word if is_word else read


def _list(read: _Read) -> _Read:
    """Read a list; where an entry waits for something, the whole of it is not known."""

    def read_all(b: Builder, data: Any, at: Path) -> tuple[Any, ...]:
        try:
            return tuple(b.value(read, entry, (*at, i)) for i, entry in enumerate(data))
        except Awaited as awaited:
            raise Awaited(awaited.wanted, whole=True) from awaited

    return read_all


def _named(read: _Read) -> _Read:
    """Read a mapping of names that people choose; an entry that waits for something is left out."""

    def read_all(b: Builder, data: Any, at: Path) -> dict[str, Any]:
        return {str(key): value for key, entry in data.items() for value in b.some(read, entry, (*at, key))}

    return read_all


def _list_without(read: _Read, orders: bool) -> _Read:
    """Read a list; an entry that waits for something is left out."""

    def read_all(b: Builder, data: Any, at: Path) -> tuple[Any, ...]:
        made = [value for i, entry in enumerate(data) for value in b.some(read, entry, (*at, i))]
        b.left_out |= len(made) < sum(orders or entry.__class__ is not Todo for entry in data)
        return tuple(made)

    return read_all


def _reference(kind: str) -> _Read:
    return lambda b, data, at: Reference(kind, str(data), b.source.place(at))


def _quantity(mark: Measures) -> _Read:
    words, dimension = mark.words, mark.dimension
    return lambda b, data, at: data if data in words else b.quantity(data, dimension, at)


def _text(builder: Builder, data: Any, at: Path) -> str:
    return str(data)


def _word(builder: Builder, data: Any, at: Path) -> str:
    """Read text that is one of some words, or of a form: none of them says that it is to be written."""
    return str(data)


def _prose(builder: Builder, data: Any, at: Path) -> Prose:
    return Prose(data.strip(), builder.source.place(at), builder.source, at)


_TEXTS = (_text, _prose)


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
    str: _text,
    float: lambda b, data, at: float(data),
    Decimal: lambda b, data, at: Decimal(str(data)),
    date: lambda b, data, at: date.fromisoformat(data),
    Name: lambda b, data, at: Name(str(data), b.source.place(at)),
    Position: lambda b, data, at: b.position(data, at),
    Prose: _prose,
}
