"""The law of propagation of uncertainty for sources that have nothing to do with each other."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import sqrt
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, record, text

GUM = "JCGM 100:2008, Guide to the expression of uncertainty in measurement"


class Combined(Struct, frozen=True):
    """The standard uncertainty of a figure, and the share that each source has in its square."""

    u: float
    shares: tuple[tuple[str, float], ...]
    """The greatest first."""

    @property
    def driver(self) -> str:
        """Name the source with the greatest share; empty where nothing is uncertain."""
        return self.shares[0][0] if self.shares else ""


def combined(parts: Sequence[tuple[str, float]]) -> Combined:
    """Combine what each source by itself makes uncertain.

    Formula: u^2 = sum (c_i u_i)^2; share_i = (c_i u_i)^2 / u^2.
    Symbols: parts: each source's name and c_i u_i, its sensitivity times its standard uncertainty, in one unit.
    Source: JCGM 100:2008, 5.1.2, equation 10, sources not correlated.
    """
    square = sum(part * part for _, part in parts)
    by_size = sorted((part for part in parts if part[1]), key=lambda part: -abs(part[1]))
    return Combined(sqrt(square), tuple((name, part * part / square) for name, part in by_size))


def _kernel(sources: Sequence[Mapping[str, Any]]) -> Combined:
    if not sources:
        raise OutOfRange("there is no source of uncertainty")
    if any(one["u"] < 0 for one in sources):
        raise OutOfRange("a standard uncertainty must not be less than nothing")
    return combined([(str(one["name"]), one["sensitivity"] * one["u"]) for one in sources])


def outputs_of(found: Combined) -> Mapping[str, Any]:
    """Give it as outputs."""
    return {
        "u": found.u,
        "expanded": 2 * found.u,
        "shares": [{"name": name, "share": share} for name, share in found.shares],
    }


METHOD = Method(
    name="uncertainty.combined",
    title="Standard uncertainty of a figure from those of its sources",
    formula="u² = Σ (c_i u_i)²; U = 2 u",
    source=Citation(GUM, "5.1.2 and 6.2.1"),
    valid="to first order; sources that have nothing to do with each other",
    inputs={
        "sources": listed(
            record(
                "A source.",
                ("name", "u", "sensitivity"),
                name=text("What is uncertain."),
                u=number("Its standard uncertainty, in its own unit."),
                sensitivity=number("How much the figure changes for one of that unit."),
            ),
            "The sources, each with its sensitivity.",
        )
    },
    outputs=(
        Symbol("u", "standard uncertainty, in the figure's unit", "none", ""),
        Symbol("expanded", "twice that: about 95 % of what may be", "none", ""),
        Symbol(
            "shares",
            "each source's share, the greatest first",
            "table",
            "",
            (Symbol("name", "the source", "text", ""), Symbol("share", "share of the square", "fraction", "%")),
        ),
    ),
    kernel=_kernel,
    figures=outputs_of,
    example={
        "sources": [
            {"name": "metacentre", "u": 0.03, "sensitivity": 1.0},
            {"name": "centre of gravity", "u": 0.05, "sensitivity": -1.0},
        ]
    },
)
