"""The day on which the first of some anodes is used up."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record, text
from tenderwright.calculations.thickness.readings import day_of, year_of

SEEN = 0.05
"""Standard uncertainty of what a diver says is left of an anode, as a share of it (common practice, no source)."""
_LEAST = 1e-9


class FirstSpent(Struct, frozen=True):
    """The anode that is used up first."""

    anode: str
    early: str
    """Day by the wastage and two standard uncertainties."""
    likely: str
    """Day by the wastage; empty where nothing wasted."""
    never: tuple[str, ...]
    """Anodes of which nothing had wasted: to be looked into."""


def first_spent(anodes: Sequence[Mapping[str, Any]], utilisation: float, u: float = SEEN) -> FirstSpent:
    """Find the anode that is first wasted to what can be used of it.

    Formula: day = day fitted + t x/w, early with w + 2 u; t from the day it was fitted to the day it was seen, w wasted
    by then, x the utilisation; counted from the day on which a new one was fitted in its place, where one was.
    Symbols: anodes, each with what was left, days fitted and seen, and fitted anew; u of what is left, as a share.
    Range: wastage in step with time; one found wholly wasted may have been so for long. Source: derived.
    Raises OutOfRange.
    """
    if not 0.0 < utilisation <= 1.0 or not 0.0 <= u < 0.5:
        raise OutOfRange("utilisation and uncertainty are shares of an anode")
    if not anodes:
        raise OutOfRange("no anode is known")
    found = []
    for one in anodes:
        fitted, seen = year_of(one["fitted"]), year_of(one["seen"])
        if seen <= fitted:
            raise OutOfRange(f"{one['name']} was seen before it was fitted")
        wasted, start = 1.0 - one["left"], year_of(one.get("anew", one["fitted"]))
        early = start + (seen - fitted) * utilisation / max(wasted + 2.0 * u, _LEAST)
        likely = start + (seen - fitted) * utilisation / wasted if wasted > _LEAST else None
        found.append((min(early, 9000.0), one["name"], likely))
    early, name, likely = min(found)
    never = tuple(sorted(name for _, name, day in found if day is None))
    return FirstSpent(name, day_of(early), "" if likely is None or likely > 9000.0 else day_of(likely), never)


def outputs_of(found: FirstSpent) -> Mapping[str, Any]:
    """Give it as the outputs of the method."""
    return {"anode": found.anode, "early": found.early, "likely": found.likely, "never": ", ".join(found.never)}


_DAY = {"type": "string", "format": "date"}
METHOD = Method(
    name="anode.first-spent",
    title="The anode that is used up first",
    formula="day = fitted + t x/w, early with w + 2 u",
    source=Citation("Wastage in step with time", standing="derived"),
    valid="anodes that waste in step with time",
    inputs={
        "anodes": listed(
            record(
                "An anode.",
                ("name", "left", "fitted", "seen"),
                name=text("Its name."),
                left=quantity("fraction", "What was left of it."),
                fitted=_DAY | {"description": "Day on which it was fitted."},
                seen=_DAY | {"description": "Day on which it was seen."},
                anew=_DAY | {"description": "Day on which a new one was fitted in its place, where one was."},
            ),
            "The anodes.",
        ),
        "utilisation": quantity("fraction", "Share of an anode that can be used."),
        "u": quantity("fraction", "Standard uncertainty of what is left; 5 % unless given.", "5 %"),
    },
    outputs=(
        Symbol("anode", "the anode", "text", ""),
        Symbol("early", "day by its wastage and two uncertainties", "text", ""),
        Symbol("likely", "day by its wastage", "text", ""),
        Symbol("never", "anodes of which nothing wasted, to be looked into", "text", ""),
    ),
    kernel=first_spent,
    figures=outputs_of,
    example={
        "anodes": [{"name": "p1", "left": "45 %", "fitted": "2018-05-24", "seen": "2026-06-16"}],
        "utilisation": "85 %",
    },
    optional=frozenset({"u"}),
)
