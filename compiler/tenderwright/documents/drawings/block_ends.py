"""How far the first and the last keel block stand from marks that can be seen on the ship."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.calculations.ship.block_places import KeelBlockResult
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.view import View
from tenderwright.model.package import Package
from tenderwright.quantities.display import show


@dataclass(frozen=True)
class Mark:
    """A mark on the ship: its name, short where there is little room, and its place, m forward of AP."""

    name: str
    short: str
    x: float


def seen_marks(package: Package, length: float) -> tuple[Mark, Mark]:
    """Give the marks aft and forward: the after side of a stern frame if she has one, and otherwise perpendiculars."""
    frame = next((one for one in package.appendages if one.kind == "stern frame"), None)
    aft = Mark("after perpendicular", "AP", 0.0)
    if frame is not None:
        name = f"{frame.name[:1].lower()}{frame.name[1:]}"
        aft = Mark(f"after side of {name}", name, min(frame.extent.from_.x, frame.extent.to.x))
    return aft, Mark("fore perpendicular", "FP", length)


def block_ends(
    blocks: Sequence[KeelBlockResult],
    marks: tuple[Mark, Mark],
    view: View,
    middle: float,
    ends: tuple[float, float],
) -> str:
    """Dimension the first and the last block from their marks, each where it lies between two ends of a sheet."""
    if not blocks:
        return ""
    pairs = list(zip((blocks[0], blocks[-1]), marks, strict=True))
    seen = [ends[0] <= block.x <= ends[1] for block, _ in pairs]
    a, b = (view.x(min(max(block.x, ends[0]), ends[1])) for block, _ in pairs)
    words = [_from(block, mark, mark.name) for block, mark in pairs]
    widths = [pen.text_width(one, pen.SMALL) for one in words]
    if all(seen) and sum(widths) + 8 > b - a:
        words = [_from(block, mark, mark.short) for block, mark in pairs]
        widths = [pen.text_width(one, pen.SMALL) for one in words]
    whole = f"{blocks[0].number} to {blocks[-1].number}: {show(blocks[-1].x - blocks[0].x, 'distance')}"
    drawn = [
        _dimension(view.x(min(max(mark.x, ends[0]), ends[1])), x, middle)
        for x, (_, mark), shown in zip((a, b), pairs, seen, strict=True)
        if shown
    ]
    if all(seen):
        drawn.append(_dimension(a, b, middle))
    if seen[0]:
        drawn.append(pen.label((a + 2, middle), words[0], anchor="start", kind="from-mark"))
    if seen[1]:
        drawn.append(pen.label((b - 2, middle), words[1], anchor="end", kind="from-mark"))
    if all(seen) and sum(widths) + pen.text_width(whole, pen.SMALL) + 16 < b - a:
        drawn.append(pen.label(((a + widths[0] + b - widths[1]) / 2, middle), whole, kind="blocks-length"))
    return "".join(drawn)


def _dimension(a: float, b: float, middle: float) -> str:
    slants = [((x - 0.7, middle + 0.7), (x + 0.7, middle - 0.7)) for x in (a, b)]
    ticks = [((x, middle - 1.3), (x, middle + 1.3)) for x in (a, b)]
    return pen.strokes([((a, middle), (b, middle)), *ticks]) + pen.strokes(slants, pen.MEDIUM)


def _from(block: KeelBlockResult, mark: Mark, name: str) -> str:
    off = block.x - mark.x
    return f"block {block.number}: {show(abs(off), 'distance')} {'forward of' if off >= 0 else 'abaft'} {name}"
