"""The ship's sounding pipes: heights are the package's, and the tape runs along the pipe."""

from __future__ import annotations

from math import cos, radians, sin

import pytest

from tenderwright.calculations.ship.tanks import tank_shape, tank_sounding_table
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.model.package import Package
from tenderwright.model.tank import Tank
from tenderwright.quantities.quantity import parse_quantity
from tests.calculations.ship import marram
from tests.outcomes import result_of
from tests.replacing import replace

NAME = "db-2-port"


def _tank() -> Tank:
    (tank,) = [one for one in marram.package().tanks if one.tank == NAME]
    return tank


def _with(slant: str, **contents: object) -> Calculated:
    """Give her at rest on an even keel, the pipe of one tank slanted and its contents read otherwise."""
    tank, lightship = _tank(), marram.package().lightship
    assert tank.pipe is not None
    assert lightship is not None
    read = replace(tank.contents, **{"sounding": None, **contents})
    changed = replace(tank, pipe=replace(tank.pipe, slant=parse_quantity(slant, "angle")), contents=read)
    tanks = tuple(changed if one.tank == NAME else one for one in marram.package().tanks)
    package: Package = replace(marram.package(), tanks=tanks, lightship=replace(lightship, observed=None))
    return marram.calculated(package)


def _volume(calculated: Calculated) -> float:
    return float(calculated.record.values[f"tank.{NAME}.volume"].si)


@pytest.mark.parametrize(("slant", "way"), [("20 deg", 1.0), ("-20 deg", -1.0)])
def test_a_slanted_pipe_reaches_the_height_of_its_head(slant: str, way: float) -> None:
    pipe = result_of(_with(slant, sounding=marram.length("0.70 m")), tank_shape)[NAME].pipe
    written = _tank().pipe
    assert pipe is not None
    assert written is not None
    assert written.head is not None
    rise = written.head.si - written.foot.si
    assert pipe.head[2] == pytest.approx(written.head.si)
    assert pipe.length == pytest.approx(rise / cos(radians(20)))
    assert pipe.head[0] - pipe.foot[0] == pytest.approx(way * pipe.length * sin(radians(20)))


@pytest.mark.parametrize("slant", [10, 25])
def test_on_an_even_keel_a_slanted_tape_tells_its_height(slant: int) -> None:
    """Derived: the level is the tape times the cosine of the slant above the foot, wherever the pipe leads."""
    share = cos(radians(slant))
    depth = 0.42
    upright = _volume(_with("0 deg", sounding=marram.length(f"{depth} m")))
    assert _volume(_with(f"{slant} deg", sounding=marram.length(f"{depth / share:.9f} m"))) == pytest.approx(upright)
    written = _tank().pipe
    assert written is not None
    assert written.head is not None
    ullage = (written.head.si - written.foot.si - depth) / share
    assert _volume(_with(f"{slant} deg", ullage=marram.length(f"{ullage:.9f} m"))) == pytest.approx(upright)


def test_the_table_of_a_slanted_pipe_goes_to_the_top_of_the_tank() -> None:
    calculated = _with("25 deg", sounding=marram.length("0.70 m"))
    shape = result_of(calculated, tank_shape)[NAME]
    table = result_of(calculated, tank_sounding_table)[NAME]
    assert shape.pipe is not None
    assert table.soundings[-1] == pytest.approx((shape.body.top - shape.pipe.foot[2]) / cos(radians(25)))
    assert table.volumes[-1][0] == pytest.approx(shape.capacity)
