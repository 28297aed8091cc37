"""Every method of landing runs on its own example."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

import pytest

from tenderwright.calculations.alone import input_schema, to_si
from tenderwright.calculations.landing import (
    dock_water,
    entry_limit,
    entry_trim,
    from_drafts,
    landing,
    settling,
    stability,
    upthrust,
)
from tenderwright.calculations.method import Method

MODULES = (dock_water, entry_limit, entry_trim, from_drafts, landing, settling, stability, upthrust)


def run(method: Method[Any]) -> Mapping[str, Any]:
    return method.run(**to_si(input_schema(method), dict(method.example)))


@pytest.mark.parametrize("module", MODULES, ids=lambda m: m.METHOD.name)
def test_example_runs_and_gives_the_outputs_declared(module):
    method = module.METHOD
    needed = set(method.inputs) - method.optional
    assert needed <= set(method.example) <= set(method.inputs)
    found = run(method)
    assert list(found) == [symbol.name for symbol in method.outputs]
    assert all(math.isfinite(v) for v in found.values() if isinstance(v, float))
