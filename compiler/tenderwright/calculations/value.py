"""Values: calculated figures with their working, kept in a record that can be printed and explained."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from msgspec import Struct, field

from tenderwright.calculations.method import Method, Symbol
from tenderwright.notices import Notice, Place
from tenderwright.quantities.display import show, written_as
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity


class Given(Struct, frozen=True):
    """An input of a calculation: its SI value, how it is shown, and where it comes from."""

    si: Any
    text: str
    origin: Place | str
    """A place in the package, the identifier of another value, or words such as a cited default."""


class Working(Struct, frozen=True):
    """One use of a method: what it was about, with which inputs."""

    method: Method[Any]
    about: str
    inputs: Mapping[str, Given]


class Value(Struct, frozen=True):
    """A calculated figure: identifier, SI value, what it means, and its working."""

    name: str
    si: Any
    symbol: Symbol
    working: Working

    @property
    def dimension(self) -> str:
        """Give what the value measures."""
        return self.symbol.dimension

    @property
    def unit(self) -> str:
        """Give the unit it is shown in."""
        return self.symbol.unit


def given(thing: Quantity | Position | Value | float | int, text: str = "", origin: Place | str = "") -> Given:
    """Make an input from a thing that knows where it comes from, or from a number and its origin."""
    if isinstance(thing, Quantity):
        return Given(thing.si, written_as(thing, beside=True), thing.at)
    if isinstance(thing, Position):
        return Given(thing.x, f"{thing.text} = {show(thing.x, 'centre', more=1)}", thing.at)
    if isinstance(thing, Value):
        return Given(thing.si, text, thing.name)
    return Given(thing, text or f"{thing:g}", origin)


class Record(Struct):
    """The record of calculation: every value by identifier, what failed, and the notices that say why."""

    values: dict[str, Value] = field(default_factory=dict)
    failed: dict[str, str] = field(default_factory=dict)
    """Identifiers that would stand here but for a mistake that is told, with the reason."""
    missing: dict[str, str] = field(default_factory=dict)
    """Identifiers that would stand here had the package the data, with what it lacks."""
    notices: list[Notice] = field(default_factory=list)

    @property
    def known(self) -> set[str]:
        """Name every value there is, or would be but for a mistake already told or data not given."""
        return {*self.values, *self.failed, *self.missing}

    def chain(self, name: str) -> Iterator[Value]:
        """Yield a value and, depth first, every value it rests on, each once."""
        seen: set[str] = set()

        def visit(one: str) -> Iterator[Value]:
            if one in seen or one not in self.values:
                return
            seen.add(one)
            value = self.values[one]
            yield value
            for entry in value.working.inputs.values():
                for origin in _origins(entry):
                    yield from visit(origin)

        yield from visit(name)


def _origins(entry: Given) -> Sequence[str]:
    return [part.strip() for part in entry.origin.split(",")] if isinstance(entry.origin, str) else []
