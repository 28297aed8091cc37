"""Her places do not hang on how her frames are numbered, nor on whether she has any."""

from __future__ import annotations

from functools import cache

import pytest

from tenderwright.calculations.ship.block_places import placed_keel_blocks
from tenderwright.calculations.ship.shell_plan import shell_plan
from tenderwright.calculations.ship.shift import plan_shift
from tenderwright.calculations.steps.outcome import Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings.all import drawings, figures_of
from tenderwright.documents.drawings.frame_scale import frame_scale
from tenderwright.documents.drawings.view import View
from tenderwright.model.package import Package
from tenderwright.quantities.position import FrameTable, Position
from tests.calculations.ship import marram
from tests.outcomes import result_of
from tests.replacing import replace


def _from_forward() -> FrameTable:
    frames = marram.package().frames
    assert frames is not None
    return FrameTable([84 - number for number in frames.numbers], frames.distances, 48.0)


TABLES = {"none": FrameTable([], [], 48.0), "from forward": _from_forward}


@cache
def _with(kind: str) -> tuple[Package, Calculated]:
    """Give her with another table of frames, every keel block at a place of its own."""
    table = TABLES[kind]
    frames = table() if callable(table) else table
    blocks = tuple(
        replace(one.row, at=Position(f"{one.x:.3f} m", one.x, one.row.here), to=None)
        for one in marram.found(placed_keel_blocks)
    )
    package = replace(marram.with_plan(keel_blocks=blocks), frames=frames)
    return package, marram.calculated(package)


@pytest.mark.parametrize("kind", TABLES)
def test_docking_is_the_same_whatever_the_frames_are_called(kind: str) -> None:
    values, hers = _with(kind)[1].record.values, marram.ship().record.values
    families = ("condition.", "docking.", "blocks.keel.", "tank.", "cradle.", "facility.", "undocking.")
    names = [name for name in hers if name.startswith(families)]
    assert len(names) > 200
    assert [name for name in names if name not in values] == []
    assert [name for name in names if repr(values[name].si) != repr(hers[name].si) and "unsupported" not in name] == []


def test_without_frames_places_are_distances_and_what_goes_by_frame_spaces_says_so() -> None:
    _, bare = _with("none")
    assert result_of(bare, placed_keel_blocks)[0].position == "1.50 m"
    for step in (plan_shift, shell_plan):
        outcome = bare.outcome(step)
        assert isinstance(outcome, Lacking)
        assert "vessel/frames.yaml" in outcome.why


def test_numbered_from_forward_the_first_block_has_the_highest_frame() -> None:
    _, forward = _with("from forward")
    assert result_of(forward, placed_keel_blocks)[0].position == "Fr 81"


def test_a_row_of_blocks_may_go_by_its_pitch() -> None:
    """Derived: from 4 m to 10 m every 1.5 m there are five, from either end."""
    for first, last in (("4 m", "10 m"), ("10 m", "4 m")):
        row = replace(
            marram.row("Fr 6", "Fr 8", 1), at=marram.at(first), to=marram.at(last), pitch=marram.length("1.5 m")
        )
        package = replace(marram.with_plan(keel_blocks=(row,)), frames=FrameTable([], [], 48.0))
        placed = result_of(marram.calculated(package), placed_keel_blocks)
        assert [one.x for one in placed] == pytest.approx([4.0, 5.5, 7.0, 8.5, 10.0])


def test_the_scale_of_a_drawing_is_of_distances_where_there_are_no_frames() -> None:
    view = View(200, 10.0, 50.0)
    drawn = frame_scale(FrameTable([], [], 48.0), view, 60.0)
    assert [word for word in ("0 m", "10 m", "40 m") if f">{word}<" not in drawn] == []
    assert "Fr" not in drawn
    assert ">10 m<" not in frame_scale(FrameTable([], []), view, 60.0)


@pytest.mark.parametrize("kind", TABLES)
def test_every_drawing_is_made(kind: str) -> None:
    package, calculated = _with(kind)
    drawn = figures_of(drawings(package, calculated))
    names = " ".join(one.name for one in drawn)
    for wanted in ("docking-plan", "docking-bottom-aft", "tank-plan", "anode-plan"):
        assert wanted in names
