"""Each block of the plan stands under a frame, where floor and keel carry it.

Ground: between frames shell and keel bend into the hold; blocks go under floors and bulkheads (common practice, no
source). A frame within the middle half of the cap counts as over it.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.position import FrameTable, Position
from tenderwright.quantities.quantity import Quantity

MIDDLE = 0.25
"""Share of the cap's length on each side of its centre within which the frame lies."""
LEAST = 0.100
"""Metres; for a cap whose length is not given."""


def check(context: Context) -> Iterator[Notice]:
    """Warn of keel and side blocks whose caps no frame crosses near the middle, unless the plan says why."""
    plan, frames = context.package.docking_plan, context.package.frames
    if plan is None or frames is None or not frames.numbers:
        return
    for keel in plan.keel_blocks:
        for at in (keel.at, keel.to):
            if at is not None and not keel.off_frame:
                yield from _off("keel block", at, keel.length, frames)
    for side in plan.side_blocks:
        yield from _off("pair of side blocks", side.at, side.length, frames)


def _off(what: str, at: Position, length: Quantity | None, frames: FrameTable) -> Iterator[Notice]:
    nearest = min(frames.distances, key=lambda distance: abs(distance - at.x))
    allowed = MIDDLE * length.si if length is not None else LEAST
    off = abs(at.x - nearest)
    if off > allowed + 1e-6:
        message = (
            f"the {what} at {at} stands {show(off, 'thickness', more=-1)} off the nearest frame, "
            f"{frames.label(nearest)}"
        )
        hint = "set it under the frame, leave it out, or say under `off_frame` why it has to stand there"
        yield Notice("blocks-off-frames", at.at, message, hints=(hint,))
