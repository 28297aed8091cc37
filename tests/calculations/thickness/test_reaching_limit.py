from __future__ import annotations

import pytest

from tenderwright.calculations.thickness.reaching_limit import reaching_limit
from tenderwright.calculations.thickness.readings import year_of
from tenderwright.calculations.thickness.shell_forecast import call_plates
from tests.calculations.thickness.test_shell_forecast import AHEAD, survey


def test_the_worst_place_by_hand() -> None:
    """(8.1 - 7.5)/(r + 2 u) against (7.8 - 7.5)/(r + 2 u): the plate with least to spare, at its own drawn rate."""
    found = reaching_limit(call_plates(survey((0.0100, 0.0100), (0.0090, 0.0081), (0.0087, 0.0078)), **AHEAD))
    assert found.plate == "A3 port"
    assert found.limit == pytest.approx(0.0075)
    years = (found.thickness - found.limit) / (found.rate + 2 * found.u)
    assert year_of(found.early) == pytest.approx(year_of("2025-10-06") + years, abs=0.01)
    assert found.early < found.likely


def test_what_is_renewed_is_left_out() -> None:
    shell = call_plates(survey((0.0100, 0.0100), (0.0090, 0.0081), (0.0087, 0.0078)), **AHEAD)
    assert reaching_limit(shell, ["A3 port"]).plate == "A2 port"
    assert reaching_limit(shell, ["A1 port", "A2 port", "A3 port"]).early == ""


def test_a_place_past_its_limit_was_due_when_it_was_gauged() -> None:
    assert reaching_limit(call_plates(survey((0.0087, 0.0074)), **AHEAD)).early == "2025-10-06"
