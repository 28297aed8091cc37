"""Every method of facility runs on its own example."""

from __future__ import annotations

import math

import pytest

from tenderwright.calculations.facility import drafts, fit, floating_dock, shiplift, slipway, water
from tests.calculations.landing.test_methods import run


@pytest.mark.parametrize("module", [drafts, fit, floating_dock, shiplift, slipway, water], ids=lambda m: m.METHOD.name)
def test_example_runs_and_gives_the_outputs_declared(module):
    method = module.METHOD
    needed = set(method.inputs) - method.optional
    assert needed <= set(method.example) <= set(method.inputs)
    found = run(method)
    assert list(found) == [symbol.name for symbol in method.outputs]
    assert all(math.isfinite(v) for v in found.values() if isinstance(v, float))
