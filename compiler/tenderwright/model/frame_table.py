"""Place every frame along the ship, from runs of spacing or from a table."""

from __future__ import annotations

from itertools import pairwise

from tenderwright.model.vessel import FramePosition, FrameRun, Frames
from tenderwright.notices import Notice
from tenderwright.quantities.position import FrameTable


def frame_table(frames: Frames, length: float | None = None) -> tuple[FrameTable | None, list[Notice]]:
    """Make the table of frames from runs of spacing, or from a table of positions.

    Runs must follow on without a gap and include frame 0. The length between perpendiculars [m] is where frames
    stand that are numbered from forward, unless their origin is given.
    """
    if bool(frames.spacing) == bool(frames.positions):
        why = "give the frames by `spacing` or by `positions`, one of the two"
        return None, [Notice("bad-table", frames.here, why)]
    origin = frames.origin.si if frames.origin is not None else 0.0 if frames.direction == "forward" else length
    if origin is None:
        why = "frames numbered from the forward perpendicular need the length between perpendiculars"
        hint = "write it in vessel/particulars.yaml, or `origin` here"
        return None, [Notice("bad-table", frames.here, why, hints=(hint,))]
    placed, notices = _listed(frames.positions) if frames.positions else _spaced(frames.spacing)
    if notices:
        return None, notices
    sign = 1.0 if frames.direction == "forward" else -1.0
    along = sorted((round(origin + sign * at, 9), number) for number, at in placed)
    return FrameTable([number for _, number in along], [x for x, _ in along], length), []


def _spaced(spacing: tuple[FrameRun, ...]) -> tuple[list[tuple[int, float]], list[Notice]]:
    """Give each frame with its distance from frame 0, the way the numbers grow."""
    notices: list[Notice] = []
    numbers: list[int] = []
    gaps: list[float] = []
    end: int | None = None
    for run in spacing:
        if run.to <= run.from_:
            notices.append(Notice("bad-table", run.here, f"a run from frame {run.from_} to {run.to} holds no space"))
        elif end is not None and run.from_ != end:
            message = f"this run begins at frame {run.from_}, the one before ends at {end}"
            notices.append(Notice("bad-table", run.here, message))
        elif run.space.si <= 0:
            notices.append(Notice("bad-table", run.here, "a frame space must be more than zero"))
        else:
            numbers = numbers or [run.from_]
            numbers += range(run.from_ + 1, run.to + 1)
            gaps += [run.space.si] * (run.to - run.from_)
        end = run.to
    if not notices and 0 not in numbers:
        notices.append(Notice("bad-table", spacing[0].here, "frame 0 is in none of the runs"))
    if notices:
        return [], notices
    distances = [0.0]
    for gap in gaps:
        distances.append(distances[-1] + gap)
    zero = distances[numbers.index(0)]
    return [(number, at - zero) for number, at in zip(numbers, distances, strict=True)], []


def _listed(positions: tuple[FramePosition, ...]) -> tuple[list[tuple[int, float]], list[Notice]]:
    """Give each frame with its distance from where the table counts; spaces are equal between two of it."""
    notices = []
    for before, one in pairwise(positions):
        if one.frame <= before.frame or one.at.si <= before.at.si:
            message = f"frame {one.frame} at {one.at} does not come after frame {before.frame} at {before.at}"
            hint = "list the frames in their order, with distances that grow the way the numbers do"
            notices.append(Notice("bad-table", one.here, message, hints=(hint,)))
    if len(positions) < 2:
        notices.append(Notice("bad-table", positions[0].here, "a table of frames needs two or more"))
    if notices:
        return [], notices
    placed = [(positions[0].frame, positions[0].at.si)]
    for before, one in pairwise(positions):
        count = one.frame - before.frame
        space = (one.at.si - before.at.si) / count
        placed += [(before.frame + k, before.at.si + k * space) for k in range(1, count)] + [(one.frame, one.at.si)]
    return placed, []
