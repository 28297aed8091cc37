"""The shell expansion: every insert and strake where it should stand, and hatching that grows with the loss."""

from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.condition_of_shell import shell_forecast
from tenderwright.calculations.ship.renewals import shell_renewal
from tenderwright.calculations.ship.shell_plan import shell_plan
from tenderwright.documents.drawings.shell_cells import runs, worst_by_cell
from tenderwright.documents.drawings.shell_expansion import shell_expansion
from tests.replacing import replace

from .ship import LACKING, altered, figure, marram, of_kind, scale, texts

DRAWN = "shell-expansion"


def test_every_insert_is_named_with_its_worst_reading_on_its_own_side() -> None:
    _, calculated = marram()
    drawn = figure(DRAWN)
    inserts = calculated.found(shell_renewal).inserts
    labels = {text.content.split()[0]: text for text in texts(drawn) if text.kind == "renewal"}
    assert len(labels) == len(inserts)
    sides = [text.baseline for text in texts(drawn) if text.kind == "side"]
    middle = sum(sides) / 2
    for one in inserts:
        assert (labels[one.name].baseline < middle) == (one.side == "port")
    assert any("(item 335)" in words for words in of_kind(drawn, "renewal"))


def test_strakes_are_named_on_both_sides_at_both_ends() -> None:
    package, _ = marram()
    named = of_kind(figure(DRAWN), "strake")
    for strake in package.strakes[:7]:
        assert named.count(strake.strake) == 4


def test_the_worst_reading_of_a_frame_space_is_kept_as_a_share_of_its_limit() -> None:
    package, calculated = marram()
    shell, plan = calculated.found(shell_forecast), calculated.found(shell_plan)
    assert shell is not None
    assert plan is not None
    assert package.frames is not None
    worst, gauged = worst_by_cell(shell, plan.grid)
    bay = int(plan.grid.bay_of(np.array([package.frames.x(43) + 0.1]))[0])
    assert worst[0, 2, bay] == pytest.approx((3.0 / 9.5) / 0.25)
    assert int(gauged.sum()) == len({*zip(*_cells(shell, plan), strict=True)})
    assert (worst[~gauged] == 0).all()


def _cells(shell, plan) -> tuple[list[int], ...]:  # type: ignore[no-untyped-def]
    rows = shell.analysis.latest
    bays = plan.grid.bay_of(shell.readings.x[rows])
    return shell.readings.side[rows].tolist(), shell.readings.strake[rows].tolist(), bays.tolist()


def test_where_inserts_are_not_calculated_it_says_so_and_what_it_would_take() -> None:
    package, _ = marram()
    assert package.condition is not None
    without = replace(package, condition=replace(package.condition, renewal=None))
    drawn = shell_expansion(without, calculate(without))
    assert (
        "Inserts. Not calculated: it needs the rules for renewing plate in the account of her condition."
        in drawn.alternative
    )
    assert of_kind(drawn, "renewal") == []


def test_runs_are_found_end_to_end() -> None:
    assert list(runs(np.array([True, True, False, True]))) == [(0, 2), (3, 4)]
    assert list(runs(np.array([False, False]))) == []


def test_the_sheet_is_to_scale_and_none_is_drawn_without_readings() -> None:
    assert scale(figure(DRAWN)) == 250
    for step in (shell_forecast, shell_plan):
        assert shell_expansion(marram()[0], altered({step: LACKING})) == LACKING
