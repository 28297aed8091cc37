"""The standard uncertainty of a quantity: stated after it, or the usual one of its field."""

from math import sqrt

import pytest

from tenderwright.model.common import Water
from tenderwright.model.lightship import LightshipWeight
from tenderwright.model.uncertain import standard_uncertainty, usual_uncertainty
from tenderwright.notices import Place
from tenderwright.quantities.quantity import parse_quantity

HERE = Place("vessel/lightship.yaml")


def _lightship(mass: str = "560 t", height: str = "3.6 m") -> LightshipWeight:
    return LightshipWeight(
        mass=parse_quantity(mass, "mass"),
        at=parse_quantity("23.4 m", "length"),
        height=parse_quantity(height, "length"),
        source="inclined",
        here=HERE,
    )


def test_half_the_width_of_a_band_over_the_root_of_three() -> None:
    """JCGM 100:2008, 4.3.7: a rectangular band of half-width a has a standard uncertainty of a/sqrt(3)."""
    assert standard_uncertainty(_lightship("560 t ± 6 t"), "mass") == pytest.approx(6000 / sqrt(3))
    assert standard_uncertainty(_lightship("560 t +/- 1 %"), "mass") == pytest.approx(5600 / sqrt(3))


def test_the_usual_one_as_a_share_and_as_a_quantity() -> None:
    assert standard_uncertainty(_lightship(), "mass") == pytest.approx(5600)
    assert standard_uncertainty(_lightship(), "height") == pytest.approx(0.15)


def test_the_usual_one_of_what_is_left_out() -> None:
    assert standard_uncertainty(_lightship(), "off_centre") == pytest.approx(0.002)
    assert standard_uncertainty(Water(here=HERE), "density") == pytest.approx(0.5)


def test_the_usual_one_names_its_source() -> None:
    assert usual_uncertainty(LightshipWeight, "mass").source.endswith("common practice, no source")
