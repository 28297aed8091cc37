"""Thickness readings as arrays: one element per reading."""

from __future__ import annotations

from datetime import date

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.quantities.display import plainly

GREATEST_THICKNESS = 0.5
"""Thicknesses above this are taken for mistakes of unit, m."""


class Readings(Struct, frozen=True, eq=False):
    """Readings of one or more surveys; every array has one element per reading."""

    strake: Ints
    side: Ints
    stage: Ints
    """Before or after blasting, afloat, and so on, by the code that the caller gave."""
    survey: Ints
    """The survey that a reading belongs to, from 0 for the first."""
    x: Floats
    """Forward from the after perpendicular, m."""
    as_built: Floats
    """m."""
    measured: Floats
    """m."""
    year: Floats
    """Date as years and decimals."""

    def __post_init__(self) -> None:
        count = self.strake.shape
        for name in self.__struct_fields__:
            if getattr(self, name).shape != count or len(count) != 1:
                raise OutOfRange(f"{name.replace('_', ' ')} has not one element per reading")
        require_thickness(self.as_built, "as built")
        require_thickness(self.measured, "measured")
        if not (np.isfinite(self.x).all() and np.isfinite(self.year).all()):
            raise OutOfRange("every reading needs a place and a date")

    def __len__(self) -> int:
        return int(self.strake.size)

    def only(self, rows: Flags | Ints) -> Readings:
        """Give some of the readings: those marked, or those numbered."""
        if rows.dtype == np.bool_:
            if rows.all():
                return self
            rows = np.flatnonzero(rows)  # once, not anew for each array
        return replace(self, **{name: getattr(self, name)[rows] for name in self.__struct_fields__})


def require_thickness(values: Floats, what: str) -> None:
    """Refuse thicknesses that are not above nothing, or are so great that their unit is in doubt."""
    if values.size and not (values.min() > 0.0 and values.max() < GREATEST_THICKNESS):
        row = int(np.flatnonzero(~((values > 0.0) & (values < GREATEST_THICKNESS)))[0])
        raise OutOfRange(
            f"reading {row + 1}: a thickness {what} lies between 0 and 500 mm, got {plainly(values[row], 'thickness')}"
        )


def year_of(day: str) -> float:
    """Give a day written YYYY-MM-DD as years of 365.25 days and decimals, from 1970.0; raises OutOfRange."""
    try:
        return 1970.0 + (date.fromisoformat(day).toordinal() - date(1970, 1, 1).toordinal()) / 365.25
    except ValueError as error:
        raise OutOfRange(f"{day!r} is no day written YYYY-MM-DD") from error


def day_of(year: float) -> str:
    """Give the day of a date that `year_of` gave, written YYYY-MM-DD."""
    return date.fromordinal(date(1970, 1, 1).toordinal() + round((year - 1970.0) * 365.25)).isoformat()
