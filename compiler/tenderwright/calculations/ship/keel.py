"""The keel that stands on the blocks."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from tenderwright.calculations.median import median
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.steps.step import step
from tenderwright.calculations.value import Given, given
from tenderwright.model.particulars import Particulars
from tenderwright.notices import Place
from tenderwright.quantities.display import show

LEVEL = 1e-5
"""A keel that rises by less than this per length is level."""


class KeelLine(Struct, frozen=True):
    """The underside of the straight keel, which stands on the blocks."""

    at_ap: float
    """Height above the baseline at the after perpendicular, were it drawn on to there, m."""
    rake: float
    """Rise forward per length: more than nothing where she drags aft."""
    depth: Given | None
    """Of a bar keel below the keel line, as a height."""
    here: Place

    def at(self, x: float) -> float:
        """Give its height above the baseline at x, m."""
        return self.at_ap + self.rake * x

    @property
    def given(self) -> dict[str, Given]:
        """Give it as inputs; nothing where the keel line itself stands on the blocks, level."""
        if not self.rake:
            return {} if self.depth is None else {"keel": self.depth}
        return {
            "keel": Given(self.at_ap, show(self.at_ap, "centre", more=1), self.here),
            "rake": Given(self.rake, f"{self.rake:.5f}", self.here),
        }

    def given_at(self, x: float) -> dict[str, Given]:
        """Give its height at x as an input; nothing where the keel line itself stands on the blocks, level."""
        if not self.rake:
            return self.given
        return {"keel": Given(self.at(x), show(self.at(x), "centre", more=1), self.here)}


@step()
def keel_line(particulars: Particulars, hull: Hull | None) -> KeelLine:
    """Give the underside of the straight keel, which rakes where that of her form does, or as the drag that is stated.

    The rake is the middle one of the slopes between the stations over the straight keel, so that a forefoot that
    begins to rise does not count.
    """
    keel, depth = particulars.keel, underside(particulars)
    bar = Given(depth, f"−{keel.depth}", keel.depth.at) if depth and keel.depth is not None else None
    if hull is not None:
        x, z = hull.form.stations, hull.form.keel_heights
        over = (x >= keel.straight.from_.x) & (x <= keel.straight.to.x)
        if over.sum() > 1:
            rake = median(np.diff(z[over]) / np.diff(x[over]))
            if abs(rake) >= LEVEL:
                return KeelLine(median(z[over] - rake * x[over]) + depth, rake, bar, hull.here)
    elif keel.drag is not None and keel.drag.si:
        length = particulars.dimensions.length_between_perpendiculars.si
        return KeelLine(depth - keel.drag.si / 2, keel.drag.si / length, bar, keel.drag.at)
    return KeelLine(depth, 0.0, bar, keel.here)


def underside(particulars: Particulars) -> float:
    """Give the height above the keel line of what stands on the blocks, m: less than nothing for a bar keel."""
    keel = particulars.keel
    return -keel.depth.si if keel.kind == "bar" and keel.depth is not None else 0.0


def given_straight(particulars: Particulars) -> dict[str, Given]:
    """Give the ends of the straight keel as inputs."""
    straight = particulars.keel.straight
    return {"keel_aft": given(straight.from_), "keel_forward": given(straight.to)}
