"""Every method of hydrostatics, tanks and condition runs on its own example."""

from __future__ import annotations

import math

import pytest

from tenderwright.calculations.condition import ballast_for_trim, floating
from tenderwright.calculations.hydrostatics import (
    band_area,
    block_coefficient,
    denny,
    holtrop_mennen,
    simpson,
    upright,
    wetted_surface,
)
from tenderwright.calculations.tanks import (
    dock_water_allowance,
    free_surface,
    sounding_volume,
    table_volume,
    trim_correction,
    water_density,
    wedge,
)
from tests.calculations.hydrostatics.inputs import si

HYDROSTATICS = (
    band_area,
    block_coefficient,
    denny,
    holtrop_mennen,
    simpson,
    upright,
    wetted_surface,
)
TANKS = (
    dock_water_allowance,
    free_surface,
    sounding_volume,
    table_volume,
    trim_correction,
    water_density,
    wedge,
)
CONDITION = (ballast_for_trim, floating)


@pytest.mark.parametrize("module", [*HYDROSTATICS, *TANKS, *CONDITION], ids=lambda m: m.METHOD.name)
def test_example_runs_and_gives_the_outputs_declared(module):
    method = module.METHOD
    needed = set(method.inputs) - method.optional
    assert needed <= set(method.example) <= set(method.inputs)
    found = method.run(**{name: si(value, method.inputs[name]) for name, value in method.example.items()})
    left_open = {"least", "greatest"} if module is sounding_volume else set()  # given where the liquid misses the pipe
    assert list(found) == [symbol.name for symbol in method.outputs if symbol.name not in left_open]
    assert all(math.isfinite(v) for v in found.values() if isinstance(v, float))
