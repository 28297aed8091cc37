"""Place every frame along the ship from the runs of spacing."""

from __future__ import annotations

from tenderwright.model.vessel import Frames
from tenderwright.notices import Notice
from tenderwright.quantities.position import FrameTable


def frame_table(frames: Frames) -> tuple[FrameTable | None, list[Notice]]:
    """Make the table of frames; runs must follow on without a gap and include frame 0."""
    notices: list[Notice] = []
    numbers: list[int] = []
    gaps: list[float] = []
    end: int | None = None
    for run in frames.spacing:
        if run.to <= run.from_:
            notices.append(Notice("bad-table", run.here, f"a run from frame {run.from_} to {run.to} holds no space"))
        elif end is not None and run.from_ != end:
            notices.append(
                Notice(
                    "bad-table",
                    run.here,
                    f"this run begins at frame {run.from_}, the one before ends at {end}",
                )
            )
        elif run.space.si <= 0:
            notices.append(Notice("bad-table", run.here, "a frame space must be more than zero"))
        else:
            numbers = numbers or [run.from_]
            numbers += range(run.from_ + 1, run.to + 1)
            gaps += [run.space.si] * (run.to - run.from_)
        end = run.to
    if not notices and 0 not in numbers:
        notices.append(Notice("bad-table", frames.spacing[0].here, "frame 0 is in none of the runs"))
    if notices:
        return None, notices
    distances = [0.0]
    for gap in gaps:
        distances.append(distances[-1] + gap)
    zero = distances[numbers.index(0)]
    sign = 1.0 if frames.direction == "forward" else -1.0
    placed = sorted(
        (round(frames.origin.si + sign * (d - zero), 9), n) for d, n in zip(distances, numbers, strict=True)
    )
    return FrameTable([n for _, n in placed], [d for d, _ in placed]), []
