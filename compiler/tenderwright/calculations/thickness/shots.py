"""How many thickness readings a survey needs."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Literal

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol

Extent = Literal["selected plates", "all plates", "substantial corrosion"]

SOURCE = Citation("IMO 2011 ESP Code", "tables of interpretation for thickness measurement")

GIRDER_SHOTS = 4
"""Readings of one girder at one place: three on the web, one on the face (`SOURCE`)."""
LONGITUDINAL_SHOTS = 6
"""Readings of one longitudinal in way of substantial corrosion: three on the flange, three on the web (`SOURCE`)."""


def plate_shots(plates: int, extent: Extent) -> int:
    """Count the readings of plates: one plate in three, two a plate, or the pattern of five a panel.

    Formula: ceil(n / 3) for selected plates, 2 n for all plates (at the quarters of their length, or representative
    places), 5 n for panels with substantial corrosion. Source: `SOURCE`. Raises OutOfRange.
    """
    if plates < 0:
        raise OutOfRange(f"the number of plates cannot be less than nothing, got {plates}")
    if extent == "selected plates":
        return math.ceil(plates / 3)
    return (2 if extent == "all plates" else 5) * plates


def _kernel(plates: int, extent: Extent, girders: int = 0, longitudinals: int = 0) -> Mapping[str, float]:
    if girders < 0 or longitudinals < 0:
        raise OutOfRange("the number of members cannot be less than nothing")
    on_plates = plate_shots(plates, extent)
    on_members = GIRDER_SHOTS * girders + LONGITUDINAL_SHOTS * longitudinals
    return {
        "plates": float(on_plates),
        "members": float(on_members),
        "shots": float(on_plates + on_members),
    }


METHOD = Method(
    name="thickness.shots",
    title="Number of thickness readings",
    formula="ceil(n/3) selected plates, 2 n all plates, 5 n substantial corrosion; 4 a girder, 6 a longitudinal",
    source=SOURCE,
    valid="a least number; suspect places are gauged besides",
    inputs={
        "plates": {"type": "integer", "minimum": 0, "description": "Plates, or panels."},
        "extent": {
            "type": "string",
            "enum": ["selected plates", "all plates", "substantial corrosion"],
            "description": "How far the survey goes.",
        },
        "girders": {"type": "integer", "minimum": 0, "description": "Places on girders; none unless given."},
        "longitudinals": {
            "type": "integer",
            "minimum": 0,
            "description": "Longitudinals in way of substantial corrosion; none unless given.",
        },
    },
    outputs=(
        Symbol("plates", "readings on plates", "each", "each"),
        Symbol("members", "readings on members", "each", "each"),
        Symbol("shots", "readings in all", "each", "each"),
    ),
    kernel=_kernel,
    example={"plates": 164, "extent": "all plates", "girders": 12},
    optional=frozenset({"girders", "longitudinals"}),
    cautions=("a pattern spread evenly is wanted, not a search for thick spots to pass a belt",),
)
