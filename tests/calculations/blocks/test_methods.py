"""Every method of blocks runs on its own example."""

from __future__ import annotations

import math

import pytest

from tenderwright.calculations.blocks import (
    area_moment,
    bare_area,
    clearance,
    covered,
    frame_shift,
    heights,
    keel_line,
    one_out,
    overhang,
    overturning,
    pressure,
    shift,
    side_block,
    stiffness,
    weight_curve,
    wind,
    winkler,
)
from tests.calculations.landing.test_methods import run

MODULES = (
    area_moment,
    bare_area,
    clearance,
    covered,
    frame_shift,
    heights,
    keel_line,
    one_out,
    overhang,
    overturning,
    pressure,
    shift,
    side_block,
    stiffness,
    weight_curve,
    wind,
    winkler,
)


@pytest.mark.parametrize("module", MODULES, ids=lambda m: m.METHOD.name)
def test_example_runs_and_gives_the_outputs_declared(module):
    method = module.METHOD
    needed = set(method.inputs) - method.optional
    assert needed <= set(method.example) <= set(method.inputs)
    found = run(method)
    assert list(found) == [symbol.name for symbol in method.outputs]
    assert all(math.isfinite(v) for v in found.values() if isinstance(v, float))
