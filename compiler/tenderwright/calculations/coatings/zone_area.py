"""Area of a coating zone with what is added to it and taken away."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from tenderwright.calculations.coatings.ranges import require_not_negative
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record, text


def zone_area(
    surface: float,
    added: Sequence[Mapping[str, Any]] = (),
    taken_away: Sequence[Mapping[str, Any]] = (),
    uncertainty: float = 0.0,
) -> dict[str, float]:
    """Sum the area of a zone, m².

    Formula: A = A_surface + sum(added) - sum(taken away); its standard uncertainty is that of the surface. Symbols:
    surface in m²; added and taken away as records of `what` and `area` in m²; uncertainty in m². Range: each counted
    once. Source: derived. Raises OutOfRange where nothing is left.
    """
    require_not_negative("area of the surface", surface)
    for entry in (*added, *taken_away):
        require_not_negative(f"area of {entry['what']}", entry["area"])
    area = surface + sum(entry["area"] for entry in added) - sum(entry["area"] for entry in taken_away)
    if area <= 0:
        raise OutOfRange("more is taken away than there is")
    return {"area": area, "uncertainty": uncertainty}


def _areas(description: str) -> dict[str, Any]:
    entry = record("", ("what", "area"), what=text("What."), area=quantity("area", "Its area."))
    return listed(entry, description, 0)


METHOD = Method(
    name="zone.area",
    title="Area of a coating zone with what is added and taken away",
    formula="A = A_surface + sum(added) - sum(taken away)",
    source=Citation("Sum of areas", standing="derived"),
    valid="areas of one zone, each counted once",
    inputs={
        "surface": quantity("area", "Area of the shell, of the inside, or as stated."),
        "added": _areas("What is added, such as bilge keels."),
        "taken_away": _areas("What is taken away, such as grids of sea chests."),
        "uncertainty": quantity("area", "Standard uncertainty of that surface.", "6 m2"),
    },
    outputs=(
        Symbol("area", "area of the zone", "area", "m2"),
        Symbol("uncertainty", "standard uncertainty of its surface; what is added is as stated", "area", "m2"),
    ),
    kernel=zone_area,
    example={
        "surface": "402 m2",
        "added": [{"what": "bilge keels, both faces", "area": "19.2 m2"}],
        "taken_away": [{"what": "grids of the sea chests", "area": "0.4 m2"}],
    },
    optional=frozenset({"added", "taken_away", "uncertainty"}),
)
