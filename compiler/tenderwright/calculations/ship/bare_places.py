"""Places of the shell that the blocks of a docking covered, one by one, with the area that each touched."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from tenderwright.model.found import UsedBlock, UsedBlocks
from tenderwright.quantities.position import FrameTable


class BarePlace(Struct, frozen=True):
    """What one block covered."""

    kind: str
    """`keel` or `side`."""
    position: str
    """By the frame at or abaft its middle."""
    side: str
    off_centre: float
    """Of the middle of its cap from the centreline, m."""
    length: float | None
    """Of the cap along the ship, m."""
    width: float | None
    """Of the cap across the ship, m; under the keel no more than the keel is wide."""
    painted: bool

    @property
    def area(self) -> float | None:
        """Give the area touched, m2: length times width; None where the cap was not measured."""
        return self.length * self.width if self.length is not None and self.width is not None else None


def bare_places(blocks: UsedBlocks, frames: FrameTable, keel_width: float) -> list[BarePlace]:
    """Give every block of every row by itself, from aft, keel blocks first; `keel_width` in m."""
    keel = [place for block in blocks.keel for place in _places("keel", block, frames, keel_width)]
    sides = [place for block in blocks.sides for place in _places("side", block, frames, None)]
    return keel + sides


def bare_area(places: list[BarePlace]) -> float:
    """Add up the areas that were not painted, m2; caps without a size count as nothing."""
    return sum(place.area or 0.0 for place in places if not place.painted)


def _places(kind: str, block: UsedBlock, frames: FrameTable, most: float | None) -> Iterator[BarePlace]:
    width = block.width.si if block.width else None
    if width is not None and most is not None:
        width = min(width, most)
    length = block.length.si if block.length else None
    off = abs(block.off_centre.si) if block.off_centre else 0.0
    sides = ("port", "starboard") if block.side == "both" and off else (block.side,)
    for x in _middles(block):
        for side in sides:
            yield BarePlace(kind, frames.label(x), side, off, length, width, block.painted)


def _middles(block: UsedBlock) -> Iterator[float]:
    if block.to is None or block.pitch is None or block.pitch.si <= 0:
        yield block.at.x
        return
    count = int(abs(block.to.x - block.at.x) / block.pitch.si + 1e-6)
    sign = 1.0 if block.to.x >= block.at.x else -1.0
    yield from (block.at.x + sign * number * block.pitch.si for number in range(count + 1))
