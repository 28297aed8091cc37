"""The range that a method states is held by it."""

from __future__ import annotations

from typing import Any

import pytest

from tenderwright.calculations.alone import run_alone
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.registry import methods


@pytest.mark.parametrize(
    ("name", "changed", "words"),
    [
        ("blocks.heights", {"declivity": "11 deg"}, "within 10 degrees"),
        ("blocks.heights", {"floor_declivity": "-11 deg"}, "within 10 degrees"),
        ("blocks.heights", {"rake": 0.2}, "within 10 degrees"),
        ("blocks.overhang", {"keel_line": "20 m"}, "not long"),
        ("blocks.weight-curve", {"lcg": "40 m"}, "ninth"),
        ("climate.dew-point", {"temperature": "61 degC"}, "60 degC"),
        ("coating.profile-fill", {"profile_factor": 0.4}, "0.5 to 1.0"),
        ("coating.profile-fill", {"profile_factor": 1.1}, "0.5 to 1.0"),
        ("cost.estimate-class", {"estimate_class": 6}, "1 to 5"),
        ("cost.exposure", {"paid": []}, "nothing is paid"),
        ("cost.exposure", {"leaving": -1}, "below nothing"),
        ("cradle.line-load", {"lcg": "41 m"}, "not over the keel"),
        ("docking.dock-water", {"density_dock": "900 kg/m3"}, "ships float in"),
        ("facility.slipway", {"wedge": "30 deg"}, "1 in 2"),
        ("facility.slipway", {"run": 1.5}, "1 in 2"),
        ("hydrostatics.block-displacement", {"block_coefficient": 0.2}, "0.3 to 1"),
        ("hydrostatics.from-dimensions", {"displacement": "1400 t"}, "outside 0.35 to 0.85"),
        ("hydrostatics.at-weight", {"density": "0 kg/m3"}, "must be positive"),
        ("hydrostatics.from-curves", {"draft": "3.6 m"}, "it takes rows on to"),
        ("hydrostatics.from-curves", {"trim": "0.9 m"}, "2% of her length"),
        ("hydrostatics.wetted-surface-from-curves", {"draft": "0.9 m"}, "not to 0.900 m"),
        ("hydrostatics.lofting", {"sections": []}, "at least 3 sections"),
        ("hydrostatics.upright", {"draft": "4.9 m"}, "deck edge"),
        ("steel.man-hours", {"thickness": "25 mm"}, "up to 20 mm"),
        ("care.reference-cell", {"salinity": "0.2 g/kg"}, "0.5 to 45 g/kg"),
        ("cost.set-aside", {"years": "101 yr"}, "within 100 years"),
        ("time.elapsed", {"week": 8}, "up to 7 days"),
        ("uncertainty.lofted", {"draft": "5 m"}, "deck edge"),
        ("tow.battery", {"margin": 0.9}, "1 or more"),
        ("tow.flooding", {"permeability": 1.1}, "over 0 to 1"),
        ("tow.gear", {"leg": "3 m"}, "half the spread"),
        ("tow.resistance-navy", {"speed": "16 kn"}, "15 knots"),
        ("tow.resistance-ufc", {"fouling": 0.5}, "1 or more"),
        ("water.density", {"salinity": "43 g/kg"}, "0 to 42"),
        ("water.dock-water-allowance", {"density": "999 kg/m3"}, "1000 to 1025"),
        ("zone.girth-area", {"along": "39 m"}, "along the shell"),
        ("zone.band-estimate", {"upper": "5 m", "depth": "4 m"}, "above the depth"),
    ],
)
def test_beyond_the_range_that_is_stated_nothing_is_given(name: str, changed: dict[str, Any], words: str) -> None:
    method = methods()[name]
    run_alone(method, method.example)
    with pytest.raises(OutOfRange, match=words):
        run_alone(method, {**method.example, **changed})
