from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.model.build import Builder
from tenderwright.model.frame_table import frame_table
from tenderwright.model.vessel import Frames
from tenderwright.notices import Notice
from tenderwright.quantities.position import FrameTable
from tenderwright.reading.yaml_file import read_yaml

MARRAM = Path(__file__).parents[2] / "package_src" / "vessel" / "frames.yaml"


def table(text: str) -> tuple[FrameTable | None, list[Notice]]:
    source, notices = read_yaml("vessel/frames.yaml", text)
    assert notices == []
    return frame_table(Builder(source).build(Frames, source.data))


def made(text: str) -> FrameTable:
    frames, notices = table(text)
    assert notices == []
    assert frames is not None
    return frames


def test_frames_of_the_demonstration() -> None:
    """Worked by hand: 10 x 500, 20 x 560, 48 x 600, 6 x 500 mm make the 48 m between perpendiculars."""
    frames = made(MARRAM.read_text("utf-8"))
    known = {-5: -2.5, 0: 0.0, 10: 5.0, 30: 16.2, 44: 24.6, 78: 45.0, 84: 48.0}
    assert {number: frames.x(number) for number in known} == pytest.approx(known)


def test_numbers_may_grow_aft_from_a_perpendicular_forward() -> None:
    frames = made(
        "origin: 20 m\ndirection: aft\nspacing: [{from: -1, to: 2, space: 500 mm}, {from: 2, to: 4, space: 1 m}]"
    )
    assert {n: frames.x(n) for n in frames.numbers} == pytest.approx(
        {-1: 20.5, 0: 20.0, 1: 19.5, 2: 19.0, 3: 18.0, 4: 17.0}
    )
    assert frames.distances == sorted(frames.distances)


def test_the_origin_moves_all_frames() -> None:
    frames = made("origin: -1.2 m\ndirection: forward\nspacing: [{from: 0, to: 2, space: 2 ft}]")
    assert [frames.x(n) for n in (0, 1, 2)] == pytest.approx([-1.2, -1.2 + 0.6096, -1.2 + 1.2192])


@pytest.mark.parametrize(
    ("runs", "column", "words"),
    [
        ("[{from: 0, to: 0, space: 1 m}]", 11, "holds no space"),
        ("[{from: 3, to: 1, space: 1 m}]", 11, "holds no space"),
        (
            "[{from: 0, to: 2, space: 1 m}, {from: 3, to: 5, space: 1 m}]",
            41,
            "begins at frame 3, the one before ends at 2",
        ),
        ("[{from: 0, to: 2, space: 0 m}]", 11, "more than zero"),
        ("[{from: 1, to: 5, space: 1 m}]", 11, "frame 0 is in none"),
    ],
)
def test_runs_that_do_not_fit_are_told_at_the_run(runs: str, column: int, words: str) -> None:
    frames, (notice,) = table(f"origin: 0 m\ndirection: forward\nspacing: {runs}")
    assert frames is None
    assert (notice.code, notice.place.line) == ("bad-table", 3)
    assert words in notice.message
    assert notice.place.column == column


@given(st.lists(st.tuples(st.integers(1, 6), st.integers(200, 900)), min_size=1, max_size=5), st.booleans())
def test_the_table_is_as_long_as_its_runs_together(runs: list[tuple[int, int]], forward: bool) -> None:
    start, lines = 0, []
    for count, space in runs:
        lines.append(f"  - {{from: {start}, to: {start + count}, space: {space} mm}}")
        start += count
    direction = "forward" if forward else "aft"
    frames = made(f"origin: 0 m\ndirection: {direction}\nspacing:\n" + "\n".join(lines))
    length = sum(count * space for count, space in runs) / 1000
    assert frames.x(start) == pytest.approx(length if forward else -length)
    assert len(frames.numbers) == start + 1
    assert all(a < b for a, b in zip(frames.distances, frames.distances[1:], strict=False))
