"""What floats: a hull known by its offsets, or by a table of hydrostatics alone."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.curves_input import CURVES, curves_from_input
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.offsets import OFFSETS, hull_from_offsets
from tenderwright.calculations.method import OutOfRange

Buoyant = HullForm | HullCurves

HULL: Mapping[str, Mapping[str, Any]] = {"offsets": OFFSETS, "curves": CURVES}
"""The inputs of a method that takes either; each may be left out."""


def buoyant(offsets: Mapping[str, Any] | HullForm | None, curves: Mapping[str, Any] | HullCurves | None) -> Buoyant:
    """Make what floats from converted input, one of the two. Raises OutOfRange."""
    if (offsets is None) == (curves is None):
        raise OutOfRange("the hull is given by `offsets` or by `curves`, one of the two")
    if curves is not None:
        return curves_from_input(curves)
    assert offsets is not None
    return hull_from_offsets(offsets)
