"""Her particulars afloat in the dock's water, held constant while she lands, and the blocks that she lands on."""

from __future__ import annotations

import math

from msgspec import Struct

from tenderwright.calculations.method import OutOfRange
from tenderwright.quantities.display import plainly

LARGEST_DECLIVITY = math.radians(10.0)
"""Of a line of blocks (judgement, no source)."""


class Afloat(Struct, frozen=True):
    """Particulars as she floats over the blocks; all but the drafts are held constant in the hand method.

    Heights are above the line of the keel on which she lands; x is forward of the after perpendicular.
    """

    displacement: float
    """W, kg."""
    length: float
    """Between the drafts, m."""
    draft_aft: float
    draft_forward: float
    lcf: float
    mass_per_immersion: float
    """TPI, kg/m (TPC)."""
    moment_to_change_trim: float
    """MCT, kg m per m (MCTC)."""
    km: float
    kg: float
    free_surface_moment: float = 0.0
    """Of the slack tanks, kg m; counted once, as a fixed moment."""

    def __post_init__(self) -> None:
        """Check the figures. Raises OutOfRange."""
        if not all(math.isfinite(getattr(self, name)) for name in self.__struct_fields__):
            raise OutOfRange("every particular must be a finite number")
        positive = (self.displacement, self.length, self.mass_per_immersion, self.moment_to_change_trim, self.km)
        if min(positive) <= 0:
            raise OutOfRange("displacement, length, TPC, MCTC and KM must be more than nothing")
        if self.kg < 0 or self.free_surface_moment < 0:
            raise OutOfRange("KG and the free-surface moment must not be less than nothing")

    @property
    def trim(self) -> float:
        """Give the trim, m, positive by the stern."""
        return self.draft_aft - self.draft_forward

    @property
    def true_mean_draft(self) -> float:
        """Give the draft at the centre of flotation, d_aft - t LCF/L, m."""
        return self.draft_at(self.lcf)

    @property
    def gm(self) -> float:
        """Give the fluid metacentric height afloat, m."""
        return self.km - self.kg - self.free_surface_moment / self.displacement

    def draft_at(self, x: float) -> float:
        """Give the draft at x, m."""
        return self.draft_aft - self.trim * x / self.length


class BlockLine(Struct, frozen=True):
    """A straight line of keel blocks from x_aft to x_forward, m forward of the after perpendicular."""

    aft: float
    forward: float
    declivity: float = 0.0
    """Angle by which the block line falls aft, rad."""

    def __post_init__(self) -> None:
        """Check the line. Raises OutOfRange."""
        if not self.forward > self.aft:
            raise OutOfRange(
                f"the blocks must end forward of where they start, got {plainly(self.aft, 'centre')} to "
                f"{plainly(self.forward, 'centre')}"
            )
        if not abs(self.declivity) < LARGEST_DECLIVITY:
            raise OutOfRange("the declivity of the blocks must be within 10 degrees")

    def resting_trim(self, length: float) -> float:
        """Give the trim of a straight keel on all the blocks over a length, L tan(declivity), m."""
        return length * math.tan(self.declivity)

    def trim_to_remove(self, trim: float, length: float) -> float:
        """Give t_c = t - L tan(declivity), m; less than nothing where the forward end touches first."""
        return trim - self.resting_trim(length)

    def first_touched(self, trim: float, length: float) -> float:
        """Give the position of the block that touches first, m: the after one for a trim above the blocks'."""
        return self.aft if self.trim_to_remove(trim, length) >= 0.0 else self.forward


def lever(blocks: BlockLine, afloat: Afloat) -> float:
    """Give the distance l from the block touched first to the centre of flotation, m. Raises OutOfRange."""
    if not blocks.aft < afloat.lcf < blocks.forward:
        raise OutOfRange(
            f"the centre of flotation at {plainly(afloat.lcf, 'centre')} is not over the blocks, "
            f"{plainly(blocks.aft, 'centre')} to {plainly(blocks.forward, 'centre')}"
        )
    return abs(afloat.lcf - blocks.first_touched(afloat.trim, afloat.length))
