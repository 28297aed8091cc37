"""Areas by a few girths, and by formula, against the shell of hulls known by their offsets."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest

from tenderwright.calculations.coatings.band_estimate import band_estimate
from tenderwright.calculations.coatings.girth_area import girth_area
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.shell_area import shell_area
from tenderwright.calculations.hydrostatics.upright import hydrostatics
from tenderwright.calculations.method import OutOfRange
from tests.calculations.hydrostatics.hulls import wigley
from tests.calculations.hydrostatics.test_lofting import HULLS

EDGES = {"Marram": (2.9, 3.6), "Wigley": (4.5, 5.5), "coaster with bluff ends": (2.6, 3.2)}


def taped(form: HullForm, lower: float | None, upper: float | None, count: int) -> list[dict[str, float]]:
    """Measure girths of a band as a tape would, with the height of the band at its very ends."""
    height = form.depth if upper is None else upper
    fine = np.linspace(form.stations[0], form.stations[-1], 2001)
    there = fine[np.array([form.keel_at(float(x)) < height - 1e-6 for x in fine])]
    aft, span = float(there[0]), float(there[-1] - there[0])
    places = [aft, *(aft + span * np.linspace(0.05, 0.95, count)).tolist(), aft + span]
    return [{"x": x, "girth": _girth(form, x, lower, upper, at_end=x in (places[0], places[-1]))} for x in places]


def _girth(form: HullForm, x: float, lower: float | None, upper: float | None, *, at_end: bool) -> float:
    keel, deck = form.keel_at(x), form.deck_at(x)
    low, high = max(keel, lower or keel), deck if upper is None else min(upper, deck)
    z = np.linspace(low, max(low, high), 100)
    y = form.half_breadth_at(x, np.minimum(z, deck - 1e-9))
    girth = float(np.hypot(np.diff(z), np.diff(y)).sum()) + (float(y[0]) if lower is None else 0.0)
    return max(girth, upper - lower) if at_end and lower is not None and upper is not None else girth


@pytest.mark.parametrize(("name", "count"), list(product(HULLS, (5, 7, 9))))
def test_twice_what_is_said_covers_the_area_of_the_shell(name: str, count: int) -> None:
    form = HULLS[name][0]()
    lower, upper = EDGES[name]
    for low, high, within in ((None, lower, 0.012), (lower, upper, 0.026), (upper, None, 0.055)):
        true = shell_area(form, low, high)
        found = girth_area(taped(form, low, high, count), 2 * float(form.half_breadths.max()))
        assert found["area"] == pytest.approx(true, rel=within)
        assert abs(found["area"] - true) < 2 * found["uncertainty"]


@pytest.mark.parametrize("name", HULLS)
def test_twice_what_is_said_of_a_formula_covers_it_too(name: str) -> None:
    form = HULLS[name][0]()
    lower, upper = EDGES[name]
    beam, between = 2 * float(form.half_breadths.max()), form.length
    under = {"draft": lower, "displacement": hydrostatics(form, lower).displacement, "density": 1025.0}
    over_all, depth = float(form.stations[-1] - form.stations[0]), form.deck_at(between / 2)
    for found, true in (
        (band_estimate(beam, between, upper=lower, **under), shell_area(form, None, lower)),
        (band_estimate(beam, between, lower=lower, upper=upper), shell_area(form, lower, upper)),
        (band_estimate(beam, length_overall=over_all, depth=depth, lower=upper), shell_area(form, upper, None)),
    ):
        assert abs(found["area"] - true) < 2 * found["uncertainty"]


def test_a_length_along_the_shell_stands_for_the_slope() -> None:
    """A box of straight sides that taper: the sides are longer than the ship by the secant of their slope."""
    girths = [{"x": x, "girth": 2.0} for x in (0.0, 10.0, 20.0, 30.0, 40.0)]
    found = girth_area(girths, beam=8.0, along=40.8)
    assert found["area"] == pytest.approx(2 * 2.0 * 40.8)
    assert found["uncertainty"] == pytest.approx(0.02 * found["area"])
    assert girth_area(girths, beam=8.0)["uncertainty"] > found["uncertainty"]


def test_too_few_girths_or_a_length_that_cannot_be_are_refused() -> None:
    girths = taped(wigley(), None, 4.5, 5)
    with pytest.raises(OutOfRange, match="at least 3"):
        girth_area(girths[:2], 10.0)
    with pytest.raises(OutOfRange, match="do not go with"):
        girth_area(girths, 10.0, along=200.0)
    with pytest.raises(OutOfRange, match="less than nothing"):
        girth_area([{"x": float(x), "girth": -1.0} for x in range(4)], 10.0)
