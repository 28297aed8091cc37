"""The shell expansion: every insert and strake where it should stand, and hatching that grows with the loss."""

from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.condition_results import ConditionResults
from tenderwright.documents.drawings.shell_cells import runs, worst_by_cell
from tenderwright.documents.drawings.shell_expansion import shell_expansion
from tests.replacing import replace

from .ship import figure, marram, of_kind, scale, texts

DRAWN = "shell-expansion"


def test_every_insert_is_named_with_its_worst_reading_on_its_own_side() -> None:
    _, _, results = marram()
    drawn = figure(DRAWN)
    labels = {text.content.split()[0]: text for text in texts(drawn) if text.kind == "renewal"}
    assert len(labels) == len(results.condition.renewals)
    sides = [text.baseline for text in texts(drawn) if text.kind == "side"]
    middle = sum(sides) / 2
    for one in results.condition.renewals:
        assert (labels[one.name].baseline < middle) == (one.side == "port")
    assert any("(item 335)" in words for words in of_kind(drawn, "renewal"))


def test_strakes_are_named_on_both_sides_at_both_ends() -> None:
    package, _, _ = marram()
    named = of_kind(figure(DRAWN), "strake")
    for strake in package.strakes[:7]:
        assert named.count(strake.strake) == 4


def test_the_worst_reading_of_a_frame_space_is_kept_as_a_share_of_its_limit() -> None:
    package, _, results = marram()
    shell = results.condition.shell
    assert shell is not None
    assert package.frames is not None
    worst, gauged = worst_by_cell(shell)
    bay = int(shell.grid.bay_of(np.array([package.frames.x(43) + 0.1]))[0])
    assert worst[0, 2, bay] == pytest.approx((3.0 / 9.5) / 0.25)
    assert int(gauged.sum()) == len({*zip(*_cells(shell), strict=True)})
    assert (worst[~gauged] == 0).all()


def _cells(shell) -> tuple[list[int], ...]:  # type: ignore[no-untyped-def]
    rows = shell.analysis.latest
    bays = shell.grid.bay_of(shell.readings.x[rows])
    return shell.readings.side[rows].tolist(), shell.readings.strake[rows].tolist(), bays.tolist()


def test_runs_are_found_end_to_end() -> None:
    assert list(runs(np.array([True, True, False, True]))) == [(0, 2), (3, 4)]
    assert list(runs(np.array([False, False]))) == []


def test_the_sheet_is_to_scale_and_none_is_drawn_without_readings() -> None:
    package, _, results = marram()
    assert scale(figure(DRAWN)) == 250
    assert shell_expansion(package, replace(results, condition=ConditionResults())) is None
