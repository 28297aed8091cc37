"""The plates of the shell between butts as an input."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.schema import length, listed, record, text
from tenderwright.calculations.thickness.plates import PlateGrid

PLATES = listed(
    record(
        "One strake.",
        ("strake", "ends"),
        strake=text("Its name."),
        ends=listed(length("Forward of the after perpendicular."), "Ends of its plates, from aft.", 2),
    ),
    "The strakes from the keel, with the ends of their plates.",
)


class NamedPlates(Struct, frozen=True, eq=False):
    """The plates of the shell, with the names of the strakes from the keel."""

    strakes: tuple[str, ...]
    grid: PlateGrid

    def as_input(self) -> list[dict[str, Any]]:
        """Give what it was built from."""
        rows = zip(self.strakes, self.grid.edges, strict=True)
        return [{"strake": name, "ends": ends.tolist()} for name, ends in rows]


def plates_from_input(plates: Sequence[Mapping[str, Any]] | NamedPlates) -> NamedPlates:
    """Make the plates of converted records, or take those that are made. Raises OutOfRange."""
    if isinstance(plates, NamedPlates):
        return plates
    edges = tuple(np.array(one["ends"], np.float64) for one in plates)
    return NamedPlates(tuple(one["strake"] for one in plates), PlateGrid(edges))
