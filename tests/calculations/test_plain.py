"""Inputs as plain data build the same thing again."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.calculations.hydrostatics.offsets import hull_from_offsets
from tenderwright.calculations.hydrostatics.upright import hydrostatics
from tenderwright.calculations.plain import plain
from tenderwright.calculations.ship.hull import hull
from tenderwright.calculations.ship.tanks import tank_shape
from tenderwright.calculations.tanks.tank_input import body_from_input
from tenderwright.pipeline import compile_package, read

MARRAM = Path(__file__).parents[2] / "package_src"


@pytest.fixture(scope="module")
def calculated():  # type: ignore[no-untyped-def]
    return compile_package(read(MARRAM)).calculated


def test_a_hull_comes_back_to_the_last_bit(calculated) -> None:  # type: ignore[no-untyped-def]
    form = calculated.found(hull).form
    again = hull_from_offsets(plain(form))
    assert plain(again) == plain(form)
    assert hydrostatics(again, 2.5, 0.3) == hydrostatics(form, 2.5, 0.3)


def test_tanks_come_back_to_the_last_bit(calculated) -> None:  # type: ignore[no-untyped-def]
    shapes = calculated.found(tank_shape)
    assert len(shapes) > 10
    for shape in shapes.values():
        assert body_from_input(plain(shape.body)).volume == shape.body.volume


def test_nothing_that_is_built_is_left_in_plain_data(calculated) -> None:  # type: ignore[no-untyped-def]
    def kinds(data: object) -> set[type]:
        if isinstance(data, dict):
            return set().union(*map(kinds, data.values())) if data else set()
        return set().union(*map(kinds, data)) if isinstance(data, list) and data else {type(data)}

    inputs = calculated.record.values["condition.arrival.trim"].working.inputs
    assert kinds({name: plain(given.si) for name, given in inputs.items()}) <= {float, int, str}
