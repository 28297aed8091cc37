"""How many thickness readings the survey in dock needs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.method import Method, Symbol
from tenderwright.calculations.thickness.shots import METHOD as SHOTS
from tenderwright.calculations.thickness.shots import plate_shots


def gauging(all_plates: int, selected_plates: int, substantial_plates: int) -> Mapping[str, float]:
    """Count readings: two a plate, or one plate in three, and five more where corrosion is substantial.

    Formula and source: as `plate_shots`. Raises OutOfRange.
    """
    found = float(
        plate_shots(all_plates, "all plates")
        + plate_shots(selected_plates, "selected plates")
        + plate_shots(substantial_plates, "substantial corrosion")
    )
    return {"plates": found, "shots": found}


def _plates(description: str) -> dict[str, Any]:
    return {"type": "integer", "minimum": 0, "description": description}


METHOD = Method(
    name="shell.gauging",
    title="Number of thickness readings of the shell",
    formula="2 n of strakes gauged throughout + ceil(n/3) of strakes gauged in part + 5 n with substantial corrosion",
    source=SHOTS.source,
    valid=SHOTS.valid,
    inputs={
        "all_plates": _plates("Plates of the strakes that are gauged throughout."),
        "selected_plates": _plates("Plates of the strakes of which one plate in three is gauged."),
        "substantial_plates": _plates("Plates with substantial corrosion, gauged by five readings besides."),
    },
    outputs=(
        Symbol("plates", "readings on plates", "each", "each"),
        Symbol("shots", "readings in all", "each", "each"),
    ),
    kernel=gauging,
    example={"all_plates": 120, "selected_plates": 44, "substantial_plates": 12},
    cautions=SHOTS.cautions,
)
