"""Limits of diminution: what plate may lose before it is renewed, and when its corrosion is substantial."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, OutOfRange
from tenderwright.calculations.thickness.columns import Floats

SUBSTANTIAL_SHARE = 0.75
"""Share of the allowable diminution above which corrosion is substantial."""

SUBSTANTIAL_SOURCE = Citation("IMO 2011 ESP Code", "1.2.9; IACS UR Z7 and Z10")


def require_allowable(value: float) -> None:
    """Refuse an allowable diminution that is not above 0 and below 1."""
    if not 0.0 < value < 1.0:
        raise OutOfRange(f"an allowable diminution is above 0 % and below 100 %, got {100.0 * value:g} %")


class Limit(Struct, frozen=True):
    """What plate of one zone may lose, as a fraction of its thickness as built, and who says so."""

    zone: str
    allowable: float
    source: Citation

    def __post_init__(self) -> None:
        require_allowable(self.allowable)


_NVIC = "USCG NVIC 7-68 (TB 55-1900-201-45/1, Appendix E)"

PUBLISHED_LIMITS: tuple[Limit, ...] = (
    Limit("shell, local", 0.25, Citation(_NVIC, "local wastage; judgement both ways")),
    Limit("shell and deck of a lightly built hull", 0.15, Citation(_NVIC, "1/4 in deck and 3/8 in shell")),
    Limit("tank bulkhead", 0.35, Citation(_NVIC, "if no deformation under hydrostatic test")),
    Limit("deck longitudinals, average", 0.30, Citation(_NVIC, "greatest of any 40 % or 0.18 in")),
    Limit("deck longitudinals, greatest", 0.40, Citation(_NVIC, "or 0.18 in")),
)
"""Allowances that have been published, to cite as inputs; the naval architect decides which hold for a ship."""


def renewal_thickness(as_built: float | Floats, allowable: float | Floats) -> Floats:
    """Find the thickness below which plate is renewed, m: t0 (1 - a).

    Symbols: as_built t0 in m and allowable a, numbers or arrays. Source: the allowance itself, as cited by whoever
    gives it. Raises OutOfRange.
    """
    return _left(as_built, allowable, 1.0)


def substantial_thickness(as_built: float | Floats, allowable: float | Floats) -> Floats:
    """Find the thickness below which corrosion is substantial, m: t0 (1 - 0.75 a).

    Symbols: as `renewal_thickness`. Source: IMO 2011 ESP Code, 1.2.9. Raises OutOfRange.
    """
    return _left(as_built, allowable, SUBSTANTIAL_SHARE)


def _left(as_built: float | Floats, allowable: float | Floats, share: float) -> Floats:
    allowed = np.asarray(allowable, np.float64)
    if allowed.size:
        require_allowable(float(allowed.min()))
        require_allowable(float(allowed.max()))
    return np.asarray(as_built, np.float64) * (1.0 - share * allowed)
