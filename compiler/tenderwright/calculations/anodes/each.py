"""Anodes one by one: how each wasted, how long a new one lasts there, and whether it is renewed now."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.anodes.life import METHOD as LIFE
from tenderwright.calculations.anodes.life import AnodeLife, Found, anode_life
from tenderwright.calculations.anodes.mean_current import mean_current
from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity, record, text

_YEAR = 365.25 * 86400.0


class OneAnode(Struct, frozen=True):
    """One anode: how it wastes, and the mean current that it gave, A."""

    name: str
    life: AnodeLife
    current: float


class EachAnode(Struct, frozen=True):
    """All of them."""

    anodes: tuple[OneAnode, ...]

    @property
    def to_renew(self) -> tuple[OneAnode, ...]:
        """Give those that do not last to the next docking."""
        return tuple(one for one in self.anodes if one.life.decision == "renew")

    @property
    def to_look_into(self) -> tuple[OneAnode, ...]:
        """Give those of which nothing wasted."""
        return tuple(one for one in self.anodes if one.life.decision == "look into it")

    @property
    def fastest(self) -> OneAnode:
        """Give the one that wastes fastest."""
        return max(self.anodes, key=lambda one: one.life.rate)

    @property
    def current(self) -> float:
        """Give the mean current that all of them gave, A."""
        return sum(one.current for one in self.anodes)


def each_anode(anodes: Sequence[Mapping[str, Any]], utilisation: float, capacity: float) -> EachAnode:
    """Find how each anode wastes, by what was left of itself.

    Formula: `anode.life` and `anode.mean-current` for each by itself.
    Symbols: anodes with name, mass [kg], left (of one), time since new and to the next docking [s], and whether a new
    one was fitted in its place when it was seen; capacity in A h/kg.
    Source: derived. Raises OutOfRange.
    """
    if not anodes:
        raise OutOfRange("what was left of one anode at least is needed")
    found = []
    for one in anodes:
        look = Found(one["time"] / _YEAR, one["left"])
        life = anode_life([look], utilisation, one["to_next"] / _YEAR, renewed=one.get("renewed", False))
        found.append(OneAnode(one["name"], life, mean_current(look.wasted, one["mass"], 1, capacity, look.years)))
    return EachAnode(tuple(found))


def outputs_of(found: EachAnode) -> Mapping[str, Any]:
    """Give it as the outputs of the method."""
    fastest = found.fastest.life
    return {
        "to_renew": len(found.to_renew),
        "fastest": found.fastest.name,
        "shortest_life": None if fastest.whole_life is None else fastest.whole_life * _YEAR,
        "current": found.current,
        "each": [
            {
                "name": one.name,
                "rate": one.life.rate,
                "whole_life": None if one.life.whole_life is None else one.life.whole_life * _YEAR,
                "at_next": one.life.at_next,
                "current": one.current,
                "decision": one.life.decision,
            }
            for one in found.anodes
        ],
    }


METHOD = Method(
    name="anode.each",
    title="Anodes one by one, from what was left of each",
    formula=f"for each: {LIFE.formula}; I = (1 - left) m eps/t",
    source=LIFE.source,
    valid="wastage in step with time; an anode found wholly wasted may have been so for long",
    inputs={
        "anodes": listed(
            record(
                "An anode.",
                ("name", "mass", "left", "time", "to_next"),
                name=text("Its name."),
                mass=quantity("mass", "Net mass when new."),
                left=quantity("fraction", "What was left of it."),
                time=quantity("time", "From when it was fitted new to when it was seen."),
                renewed={"type": "boolean", "description": "Whether a new one was fitted in its place then."},
                to_next=quantity("time", "From when it was seen to the next docking."),
            ),
            "What was left of each.",
        ),
        "utilisation": LIFE.inputs["utilisation"],
        "capacity": number("Capacity of the alloy in A h/kg.", exclusiveMinimum=0),
    },
    outputs=(
        Symbol("to_renew", "anodes that do not last to the next docking", "each", "each"),
        Symbol("fastest", "the anode that wastes fastest", "text", ""),
        Symbol("shortest_life", "time that a new one lasts in its place", "time", "yr"),
        Symbol("current", "mean current that all of them gave", "current", "A"),
        Symbol(
            "each",
            "each anode",
            "table",
            "",
            (
                Symbol("name", "the anode", "text", ""),
                Symbol("rate", "fraction wasted per year", "fraction", "%"),
                Symbol("whole_life", "time that a new one lasts", "time", "yr"),
                Symbol("at_next", "fraction wasted expected at the next docking", "fraction", "%"),
                Symbol("current", "mean current that it gave", "current", "A"),
                Symbol("decision", "keep, renew, or look into it", "text", ""),
            ),
        ),
    ),
    kernel=each_anode,
    figures=outputs_of,
    example={
        "anodes": [
            {"name": "p1", "mass": "6.5 kg", "left": "45 %", "time": "8 yr", "to_next": "6 yr"},
            {"name": "p4", "mass": "10 kg", "left": "30 %", "time": "18.7 yr", "to_next": "6 yr"},
        ],
        "utilisation": "85 %",
        "capacity": 780,
    },
    cautions=LIFE.cautions,
)
