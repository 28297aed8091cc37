"""The potentials of the hull as last read at each place, held against what protects it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.care.reference_cell import CELL, USUAL_TEMPERATURE, on_silver
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record, text
from tenderwright.calculations.verdict import VERDICT_SYMBOLS, Limit, Verdict, verdict, verdict_outputs

PROTECTED, OVER = -0.80, -1.10
"""Steel in aerated sea water is protected at the first and more negative; coating suffers beyond the second. V."""
WOOD_OVER = -0.60
"""Bonded metals on wood are not held more negative than this, V."""
STEEL_SOURCE = "EN 16222 (from memory)"
WOOD_SOURCE = "guide for small craft (from memory)"
JUMP = 0.05
"""A change from round to round that is looked into, V (common practice, no source)."""


class PlacePotential(Struct, frozen=True):
    """The last reading of a place, against silver/silver chloride in sea water, V."""

    place: str
    day: str
    potential: float
    correction: float
    before: float | None
    """At the round before; None where it is the first."""
    u: float

    @property
    def jumped(self) -> bool:
        """Tell whether it changed so much since the round before that the cause is to be found."""
        return self.before is not None and abs(self.potential - self.before) > JUMP


class Potentials(Struct, frozen=True):
    """The places as last read, the least protected first, and the verdict over them."""

    places: tuple[PlacePotential, ...]
    judged: Verdict

    @property
    def worst(self) -> PlacePotential:
        """Give the least protected place; on wood the one most protected."""
        return self.places[0]


def potentials(readings: Sequence[Mapping[str, Any]], metal: str = "steel") -> Potentials:
    """Judge the last reading of each place.

    Formula: each as `on_silver`; steel: E <= -0.80 V and E >= -1.10 V; metals on wood: E >= -0.60 V.
    Symbols: readings with day, place, reading in V, cell, and salinity in g/kg and temperature in degC where read.
    Source: the limits from memory. Raises OutOfRange.
    """
    if metal not in ("steel", "wood"):
        raise OutOfRange(f"`{metal}` is neither steel nor wood")
    by_place: dict[str, list[Mapping[str, Any]]] = {}
    for one in sorted(readings, key=lambda one: str(one["day"])):
        by_place.setdefault(one["place"], []).append(one)
    if not by_place:
        raise OutOfRange("there is no reading of a potential")
    found = [_last(place, of) for place, of in by_place.items()]
    found.sort(key=lambda one: (-one.potential if metal == "steel" else one.potential, one.place))
    return Potentials(tuple(found), verdict(limit for one in found for limit in _limits(one, metal)))


def _last(place: str, readings: Sequence[Mapping[str, Any]]) -> PlacePotential:
    brought = [
        on_silver(one["reading"], one["cell"], one.get("salinity"), one.get("temperature", USUAL_TEMPERATURE))
        for one in readings[-2:]
    ]
    last = brought[-1]
    before = brought[0].potential if len(brought) > 1 else None
    return PlacePotential(place, readings[-1]["day"], last.potential, last.correction, before, last.u)


def _limits(one: PlacePotential, metal: str) -> list[Limit]:
    """Give the limits with how far the potential is below that of silver, so that more is more protection."""

    def limit(words: str, below: float, source: str, *, at_least: bool) -> Limit:
        name = f"{words}, {one.place}"
        return Limit(name, "potential", -one.potential, -below, at_least=at_least, source=source, uncertainty=one.u)

    if metal == "wood":
        return [limit("not over-protected", WOOD_OVER, WOOD_SOURCE, at_least=False)]
    return [
        limit("protected", PROTECTED, STEEL_SOURCE, at_least=True),
        limit("not over-protected", OVER, STEEL_SOURCE, at_least=False),
    ]


def outputs_of(found: Potentials) -> Mapping[str, Any]:
    """Give it as the outputs of the method."""
    values = [one.potential for one in found.places]
    return {"most": max(values), "least": min(values), "places": len(values), **verdict_outputs(found.judged)}


METHOD = Method(
    name="care.potentials",
    title="Potentials of the hull as last read",
    formula="each brought to silver/silver chloride in sea water; steel -1.10 V <= E <= -0.80 V, on wood E >= -0.60 V",
    source=Citation("EN 16222", standing="from memory"),
    valid="aerated sea or brackish water; steel in mud without air needs -0.90 V (from memory)",
    inputs={
        "readings": listed(
            record(
                "A reading.",
                ("day", "place", "reading", "cell"),
                day={"type": "string", "format": "date", "description": "Day of the reading."},
                place=text("Where it was read."),
                reading=quantity("potential", "The reading."),
                cell=CELL,
                salinity=quantity("salinity", "Salinity of the water, where it was read."),
                temperature=quantity("temperature", "Temperature of the water, where it was read."),
            ),
            "All readings; the last of each place is judged.",
        ),
        "metal": {"type": "string", "enum": ["steel", "wood"], "description": "Shell of steel or iron, or of wood."},
    },
    outputs=(
        Symbol("most", "the most positive potential", "potential", "V"),
        Symbol("least", "the most negative potential", "potential", "V"),
        Symbol("places", "places that were read", "each", "each"),
        *VERDICT_SYMBOLS,
    ),
    kernel=potentials,
    figures=outputs_of,
    example={
        "readings": [
            {"day": "2026-05-04", "place": "Fr 24 port", "reading": "-0.93 V", "cell": "silver", "salinity": "24 g/kg"},
            {"day": "2026-05-04", "place": "Fr 2 port", "reading": "-0.82 V", "cell": "silver", "salinity": "24 g/kg"},
        ],
        "metal": "steel",
    },
    optional=frozenset({"metal"}),
    cautions=("a hull is protected where it was read; between the places nothing is known",),
)
