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


def test_a_table_of_positions_may_be_uneven() -> None:
    """Worked by hand: between frames 3 and 6 there are three equal spaces of 0.7 m."""
    text = "origin: -0.2 m\ndirection: forward\npositions:\n"
    text += "\n".join(
        f"  - {{frame: {n}, at: {at}}}" for n, at in ((0, "0 m"), (1, "0.5 m"), (3, "1.7 m"), (6, "3.8 m"))
    )
    frames = made(text)
    known = {0: -0.2, 1: 0.3, 2: 0.9, 3: 1.5, 4: 2.2, 5: 2.9, 6: 3.6}
    assert {number: frames.x(number) for number in frames.numbers} == pytest.approx(known)


def test_frames_numbered_from_forward_begin_at_the_forward_perpendicular() -> None:
    text = "direction: aft\npositions: [{frame: 0, at: 0 ft}, {frame: 10, at: 20 ft}, {frame: 11, at: 22 ft 6 in}]"
    source, _ = read_yaml("vessel/frames.yaml", text)
    frames, notices = frame_table(Builder(source).build(Frames, source.data), 30.0)
    assert notices == []
    assert frames is not None
    assert [frames.x(n) for n in (0, 5, 10, 11)] == pytest.approx([30 - ft * 0.3048 for ft in (0, 10, 20, 22.5)])
    (missing,) = table(text)[1]
    assert "length between perpendiculars" in missing.message


@pytest.mark.parametrize(
    ("given_", "words"),
    [
        ("positions: [{frame: 0, at: 0 m}]", "two or more"),
        ("positions: [{frame: 0, at: 0 m}, {frame: 0, at: 1 m}]", "does not come after"),
        ("positions: [{frame: 0, at: 1 m}, {frame: 1, at: 1 m}]", "does not come after"),
        ("notes: none", "one of the two"),
        ("positions: [{frame: 0, at: 1 m}]\nspacing: [{from: 0, to: 1, space: 1 m}]", "one of the two"),
    ],
)
def test_what_is_no_table_of_frames(given_: str, words: str) -> None:
    frames, notices = table(f"direction: forward\n{given_}")
    assert frames is None
    assert words in notices[0].message
