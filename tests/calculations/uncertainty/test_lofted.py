"""How sure a lofted hull is covers how far it is out, on hulls known by full tables of offsets."""

from __future__ import annotations

from math import hypot

import numpy as np
import pytest

from tenderwright.calculations.hydrostatics.lofting import lofting
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.hull import LINES
from tenderwright.calculations.uncertainty.lofted import lofted_sure
from tests.calculations.hydrostatics.hulls import wigley
from tests.calculations.hydrostatics.sectioned import sectioned, spread
from tests.calculations.hydrostatics.test_lofting import HULLS, figures


@pytest.mark.parametrize("name", HULLS)
def test_twice_the_standard_uncertainty_covers_the_error_and_says_not_much_more_than_it(name: str) -> None:
    make, draft = HULLS[name]
    form = make()
    true = figures(form, draft)
    over = []
    for count in (5, 7, 9):
        for out, seed in ((0.0, 0), (0.03, 1), (0.05, 2)):
            read = sectioned(form, spread(form, count), out, seed)
            sure = lofted_sure(draft=draft, **read)
            drawn = figures(lofting(**read).form, draft)
            off = [b - a for a, b in zip(true, drawn, strict=True)]
            u = [
                hypot(sure.volume, LINES) * true[0],
                sure.centre,
                hypot(sure.metacentre, LINES * true[2]),
                sure.area * true[3],
                sure.area * true[4],
            ]
            over.append([abs(one) / by for one, by in zip(off, u, strict=True)])
    ratios = np.array(over)
    assert ratios.max() < 2.4, ratios.max(axis=0)
    assert (ratios > 2).mean() < 0.06  # 5 % are expected beyond twice
    assert sure.volume < 0.01  # nine sections, read to 50 mm


def test_more_sections_are_surer() -> None:
    form = wigley()
    found = [lofted_sure(draft=5.0, **sectioned(form, spread(form, count))) for count in (5, 7, 9)]
    for name in ("volume", "centre", "metacentre", "area"):
        sizes = [getattr(one, name) for one in found]
        assert sizes == sorted(sizes, reverse=True)


def test_readings_that_are_less_sure_make_the_hull_so() -> None:
    form = wigley()
    fine, coarse = (lofted_sure(draft=5.0, **{**sectioned(form, spread(form, 7)), "reading": u}) for u in (0.01, 0.10))
    assert coarse.volume > fine.volume
    assert coarse.metacentre > fine.metacentre


def test_three_sections_do_not_tell_how_sure_the_hull_is() -> None:
    form = wigley()
    with pytest.raises(OutOfRange, match="more than three sections"):
        lofted_sure(draft=5.0, **sectioned(form, spread(form, 3)))
