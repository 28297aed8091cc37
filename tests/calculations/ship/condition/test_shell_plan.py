from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.renewal.shell_plan import ShellPlan
from tenderwright.calculations.ship.hull import hull
from tenderwright.calculations.ship.shell_plan import plan_of, shell_plates
from tests.outcomes import result_of

from .ship import marram


def plan(*, form: bool = True) -> ShellPlan:
    package, _, calculated = marram()
    assert package.frames is not None
    plates = calculated.found(shell_plates)
    assert plates is not None
    return plan_of(package.strakes, package.frames, plates, result_of(calculated, hull).form if form else None)


def test_plates_end_at_butts_and_where_the_thickness_changes() -> None:
    package, _, calculated = marram()
    frames = package.frames
    assert frames is not None
    plates = calculated.found(shell_plates)
    assert plates is not None
    expected = [4, 11, 18, 27, 36, 44, 52, 60, 68, 76, 82]
    assert plates.grid.edges[1].tolist() == pytest.approx([frames.x(number) for number in expected])


def test_girths_amidships_are_those_given_and_the_strakes_take_the_girth_of_the_hull_at_every_frame() -> None:
    package, _, calculated = marram()
    form, found = result_of(calculated, hull).form, plan()
    assert form is not None
    assert package.frames is not None
    grid = found.grid
    middle = 0.5 * (grid.frames[:-1] + grid.frames[1:])
    girths = np.interp(middle, form.stations, form.curves.half_girth(form.deck_heights))
    absent = 1e-3 * (~found.exists).sum(axis=0)
    assert grid.seams[-1] == pytest.approx(girths + absent, abs=1e-9)
    amidships = int(np.searchsorted(grid.frames, package.frames.x(43)))
    given = [strake.to_girth.si for strake in package.strakes]
    assert grid.seams[1:, amidships] == pytest.approx(given, abs=0.30)


def test_without_offsets_the_girths_are_those_given_over_the_whole_length() -> None:
    package, _, _ = marram()
    seams = plan(form=False).grid.seams
    assert seams[-1, 40] == pytest.approx(package.strakes[-1].to_girth.si)


def test_thickness_stands_where_there_is_plate_only() -> None:
    package, _, _ = marram()
    assert package.frames is not None
    found = plan()
    at = int(np.searchsorted(found.grid.frames, package.frames.x(43), side="right")) - 1
    assert found.thickness[1, at] == pytest.approx(0.0111125, abs=2e-5)
    assert not found.exists[0, 0]
    assert found.exists[7, 0]
