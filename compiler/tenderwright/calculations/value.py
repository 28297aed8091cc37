"""Values: calculated figures with their working, kept in a record that can be printed and explained."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.notices import Notice, Place
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity


@dataclass(frozen=True)
class Given:
    """An input of a calculation: its SI value, how it is shown, and where it comes from."""

    si: Any
    text: str
    origin: Place | str
    """A place in the package, the identifier of another value, or words such as a cited default."""


@dataclass(frozen=True)
class Working:
    """One use of a method: what it was about, with which inputs."""

    method: Method[Any]
    about: str
    inputs: Mapping[str, Given]


@dataclass(frozen=True)
class Value:
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
        return Given(thing.si, thing.text, thing.at)
    if isinstance(thing, Position):
        return Given(thing.x, f"{thing.text} = {thing.x:.3f} m", thing.at)
    if isinstance(thing, Value):
        return Given(thing.si, text, thing.name)
    return Given(thing, text or f"{thing:g}", origin)


@dataclass
class Record:
    """The record of calculation: every value by identifier, what failed, and the notices that say why."""

    values: dict[str, Value] = field(default_factory=dict)
    failed: dict[str, str] = field(default_factory=dict)
    """Identifiers that would stand here but for a mistake that is told, with the reason."""
    missing: dict[str, str] = field(default_factory=dict)
    """Identifiers that would stand here had the package the data, with what it lacks."""
    notices: list[Notice] = field(default_factory=list)

    def run(
        self,
        method: Method[Any],
        prefix: str,
        about: str,
        inputs: Mapping[str, Given],
        at: Place,
        names: Mapping[str, str] | None = None,
    ) -> Mapping[str, Any] | None:
        """Run a method's kernel and keep its outputs as `prefix.output`; outside its range a notice is kept instead."""
        try:
            outputs = method.run(**{name: entry.si for name, entry in inputs.items()})
        except OutOfRange as error:
            self.fail(method, prefix, str(error), at, names)
            return None
        self.keep(method, prefix, about, inputs, outputs, names)
        return outputs

    def keep(
        self, method: Method[Any], prefix: str, about: str, inputs: Mapping[str, Given], outputs: Mapping[str, Any],
        names: Mapping[str, str] | None = None,
    ) -> None:  # fmt: skip
        """Keep outputs that were calculated by the method's own function."""
        working = Working(method, about, inputs)
        for symbol in method.outputs:
            if symbol.name in outputs and (names is None or symbol.name in names):
                name = f"{prefix}.{names[symbol.name] if names else symbol.name.replace('_', '-')}"
                self.values[name] = Value(name, outputs[symbol.name], symbol, working)

    def fail(
        self, method: Method[Any], prefix: str, why: str, at: Place, names: Mapping[str, str] | None = None
    ) -> None:
        """Keep the names of what could not be calculated, and say why at its place."""
        for symbol in method.outputs:
            if names is None or symbol.name in names:
                self.failed[f"{prefix}.{names[symbol.name] if names else symbol.name.replace('_', '-')}"] = why
        notice = Notice("out-of-range", at, f"{method.title[0].lower()}{method.title[1:]}: {why}")
        if notice not in self.notices:
            self.notices.append(notice)

    def spoil(self, method: Method[Any], prefix: str, why: str) -> None:
        """Keep the names of what cannot be calculated because of a mistake that is told elsewhere."""
        self.failed |= {f"{prefix}.{symbol.name.replace('_', '-')}": why for symbol in method.outputs}

    def lack(self, method: Method[Any], prefix: str, why: str) -> None:
        """Keep the names of what the package has not the data for."""
        self.missing |= {f"{prefix}.{symbol.name.replace('_', '-')}": why for symbol in method.outputs}

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
