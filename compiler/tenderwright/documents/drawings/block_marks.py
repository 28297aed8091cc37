"""Blocks from the side: keel blocks on the dock floor, side blocks beside them, their numbers and their spacing."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby, pairwise

from tenderwright.calculations.ship.block_places import KeelBlockResult, SideBlockResult
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.view import View
from tenderwright.quantities.display import in_column

NOMINAL = 1.2
"""Height of blocks as drawn where the plan gives none, m."""
NUMBERS, SPACING = 3.4, 4.4
"""Height of the rows of numbers and of spacings on the sheet, mm."""
TIMBER = Hatch((0,), 0.9, pen.FINE, "", pen.FAINT)


def blocks_height(blocks: Sequence[KeelBlockResult]) -> float:
    """Give the height of the highest keel block over the floor, m: a nominal one where none is given."""
    return max((one.height for one in blocks if one.height is not None), default=NOMINAL)


def keel_block_marks(blocks: Sequence[KeelBlockResult], first: int | None, view: View, under: float) -> str:
    """Draw the keel blocks under the keel, that touched first in black, and the dock floor under them."""
    marks = []
    floor = [(one.x, under - (one.height if one.height is not None else NOMINAL)) for one in blocks]
    for one, (_, foot) in zip(blocks, floor, strict=True):
        left, right = view.x(one.x - one.length / 2), view.x(one.x + one.length / 2)
        box = [(left, view.y(under)), (right, view.y(under)), (right, view.y(foot)), (left, view.y(foot))]
        touched = one.number == first
        marks.append(pen.polygon(box, pen.FINE, fill=pen.INK if touched else pen.PAPER))
        marks.append("" if touched else TIMBER.over([box]))
    line = view.all(floor)
    beyond = [(line[0][0] - 5, line[0][1]), *line, (line[-1][0] + 5, line[-1][1])]
    return "".join(marks) + pen.curve(beyond, pen.HEAVY)


def side_block_marks(pairs: Sequence[SideBlockResult], view: View, floor: float) -> str:
    """Draw the side blocks, nearer than the keel blocks, as lettered outlines from the floor to the shell."""
    marks = []
    for one in pairs:
        left, right = view.x(one.x - one.length / 2), view.x(one.x + one.length / 2)
        top, foot = view.y(one.shell), view.y(floor if one.height is None else one.shell - one.height)
        marks.append(pen.polygon([(left, top), (right, top), (right, foot), (left, foot)], pen.MEDIUM))
        marks.append(pen.label((view.x(one.x), top - 2.2), letter(one.number), pen.SMALL, bold=True, kind="side-block"))
    return "".join(marks)


def letter(number: int) -> str:
    """Name a pair of side blocks by its number from aft: A to Z, then A2 and so on."""
    again, index = divmod(number - 1, 26)
    return chr(ord("A") + index) + (str(again + 1) if again else "")


def block_numbers(blocks: Sequence[KeelBlockResult], view: View, top: float) -> str:
    """Write the number of every keel block that there is room for."""
    marks, edge = [], -1.0e9
    for one in blocks:
        shown, x = str(one.number), view.x(one.x)
        half = pen.text_width(shown, pen.SMALL) / 2
        if x - half > edge + 0.4:
            marks.append(pen.text((x, top + 2.6), shown, pen.SMALL, "middle", kind="block"))
            edge = x + half
    return "".join(marks)


def block_spacing(blocks: Sequence[KeelBlockResult], view: View, top: float) -> str:
    """Dimension the spacing from middle to middle: equal spaces together, as `4 × 1.20`."""
    y = top + SPACING / 2
    gaps = [(round((b.x - a.x) * 100), a.x, b.x) for a, b in pairwise(blocks)]
    marks, edge = [], -1.0e9
    for _, run in groupby(gaps, key=lambda gap: gap[0]):
        spaces = list(run)
        space = (spaces[-1][2] - spaces[0][1]) / len(spaces)
        left, right = view.x(spaces[0][1]), view.x(spaces[-1][2])
        marks.append(pen.line((left, y), (right, y), pen.FINE))
        marks.append(pen.strokes([((x, y - 1), (x, y + 1)) for x in (left, right)], pen.FINE))
        shown = (f"{len(spaces)} × " if len(spaces) > 1 else "") + in_column(space, "distance")
        half = pen.text_width(shown, pen.SMALL) / 2 + 0.3
        middle = (left + right) / 2
        if half * 2 < right - left and middle - half > edge:
            marks.append(pen.label((middle, y), shown, pen.SMALL, kind="spacing"))
            edge = middle + half
    return "".join(marks)
