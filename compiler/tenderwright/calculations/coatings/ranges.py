"""The ranges that paint calculations share: what a volume solids, a loss and a thickness may be."""

from __future__ import annotations

import math

from tenderwright.calculations.method import OutOfRange


def require_positive(name: str, value: float) -> None:
    """Refuse a value that is not a finite number greater than nothing."""
    if not (math.isfinite(value) and value > 0.0):
        raise OutOfRange(f"the {name} must be more than nothing, got {value:g}")


def require_not_negative(name: str, value: float) -> None:
    """Refuse a value that is not a finite number of at least nothing."""
    if not (math.isfinite(value) and value >= 0.0):
        raise OutOfRange(f"the {name} cannot be less than nothing, got {value:g}")


def require_volume_solids(value: float) -> None:
    """Refuse a volume solids that is not a fraction above 0 and at most 1."""
    if not 0.0 < value <= 1.0:
        raise OutOfRange(f"the volume solids must be above 0 % and at most 100 %, got {100.0 * value:g} %")


def require_loss(value: float) -> None:
    """Refuse a loss fraction that is not from 0 up to, but less than, 1."""
    if not 0.0 <= value < 1.0:
        raise OutOfRange(
            f"the loss must be from 0 % to less than 100 % of the paint, got {100.0 * value:g} %; "
            "a consumption factor such as 1.43 is not a loss"
        )
