from __future__ import annotations

from itertools import pairwise

import pytest

from tenderwright.calculations.coatings.nozzle import NOZZLES, blasting_speed
from tenderwright.calculations.method import OutOfRange

POUNDS_PER_SQUARE_FOOT = 0.45359237 / 0.3048**2


@pytest.mark.parametrize(("bore", "printed"), [(1 / 4, 100), (5 / 16, 160), (3 / 8, 230)])
def test_published_blasting_speeds(bore: float, printed: float) -> None:
    # fssurfacesolutions.com, blasting reference: at 5 lb/ft² 494, 812, 1152 lb/h give 100, 160, 230 ft²/h.
    (nozzle,) = [n for n in NOZZLES if n.bore == pytest.approx(bore * 0.0254)]
    speed = blasting_speed(nozzle.abrasive, 5 * POUNDS_PER_SQUARE_FOOT)
    assert speed * 3600 / 0.3048**2 == pytest.approx(printed, abs=3)


def test_larger_nozzles_use_more() -> None:
    for small, large in pairwise(NOZZLES):
        assert small.bore < large.bore
        assert small.abrasive < large.abrasive
        assert small.air < large.air


def test_refuses_no_rate() -> None:
    with pytest.raises(OutOfRange, match="rate"):
        blasting_speed(0.1, 0.0)
