"""The bottom from above: blocks of the plan and of earlier dockings, strips covered again, and what is to be clear."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import cos, radians, sin

from tenderwright.calculations.blocks.footprint import Footprint as Rectangle
from tenderwright.calculations.ship.block_places import KeelBlockResult, SideBlockPlace, SideBlockResult
from tenderwright.calculations.ship.footprints import Conflict, Footprint, Strip
from tenderwright.calculations.ship.works import Work
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.block_marks import letter
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.drawings.view import View
from tenderwright.quantities.display import show

LAST = Hatch((45,), 0.8, pen.FINE, "", pen.INK)
BEFORE = Hatch((135,), 1.1, pen.FINE, "1.2 0.6", pen.INK)
"""Hatchings of the last docking's footprints and of the docking before it."""
_SMALLEST = 0.7
"""Radius of the smallest opening as drawn, and half the height of the narrowest strip, mm."""
_LETTER = 3.0
"""Least length of a side block that its letter stands in, mm; it stands outboard of a shorter one."""
_LANE = 0.12
"""Space between the rows of keel blocks of two earlier dockings, m."""


@dataclass(frozen=True)
class Bottom:
    """What stands on the bottom by the plan, and stood there at earlier dockings."""

    footprints: Sequence[Footprint]
    keel_blocks: Sequence[KeelBlockResult]
    side_blocks: Sequence[SideBlockResult]
    pairs: Sequence[SideBlockPlace]
    earlier: Mapping[str, Sequence[Footprint]]
    """By earlier docking, oldest first."""
    strips: Sequence[Strip]
    conflicts: Sequence[Conflict]
    works: Sequence[Work]


@dataclass(frozen=True)
class Thing:
    """What blocks keep clear of: its kind, its rectangle, and what is written beside it."""

    kind: str
    rectangle: Rectangle
    shown: str = ""


def within(ends: tuple[float, float], aft: float, forward: float) -> bool:
    """Tell whether something from aft to forward lies on a sheet between two ends."""
    return forward > ends[0] and aft < ends[1]


def box(view: View, aft: float, forward: float, right: float, left: float, ends: tuple[float, float]) -> list[Point]:
    """Give the corners on paper of a rectangle, cut off at the ends of the sheet."""
    a, b = view.x(max(aft, ends[0])), view.x(min(forward, ends[1]))
    return [(a, view.y(left)), (b, view.y(left)), (b, view.y(right)), (a, view.y(right))]


def earlier_marks(docking: Bottom, view: View, ends: tuple[float, float]) -> str:
    """Hatch the footprints of the last two dockings above the centreline.

    On the keel those of the last stand at the line and those of the docking before it in a row above them; beside it
    all stand where they stood, on the port side alone where starboard was alike.
    """
    groups = list(docking.earlier.values())[-2:]
    lane, marks = 0.0, []
    for group, hatch in reversed(list(zip(groups, (BEFORE, LAST)[-len(groups) :], strict=False))):
        keel = [one for one in group if on_keel(one)]
        shapes = [box(view, one.aft, one.forward, lane, lane + one.left, ends) for one in keel if _seen(one, ends)]
        shapes += [_box(one, view, ends) for one in _one_side(group, 1) if _seen(one, ends)]
        marks += [hatch.over([shape]) for shape in shapes]
        marks += [pen.polygon(shape, pen.FINE, "" if hatch is LAST else pen.HIDDEN) for shape in shapes]
        lane += max((one.left for one in keel), default=0.0) + _LANE
    return "".join(marks)


def on_keel(one: Footprint) -> bool:
    """Tell whether a footprint lies across the centreline."""
    return one.right < 0 < one.left


def _one_side(group: Sequence[Footprint], side: int) -> list[Footprint]:
    """Give the side blocks on one side, and of the other those that have no twin there."""
    beside = [one for one in group if not on_keel(one)]
    near = {(round(one.x, 2), round(abs(one.y), 2)) for one in beside if one.y * side > 0}
    return [one for one in beside if one.y * side > 0 or (round(one.x, 2), round(abs(one.y), 2)) not in near]


def _seen(one: Footprint, ends: tuple[float, float]) -> bool:
    return within(ends, one.aft, one.forward)


def strip_marks(strips: Sequence[Strip], view: View, ends: tuple[float, float]) -> str:
    """Fill the strips covered at two or more dockings running; those that the plan covers again are ringed."""
    marks = []
    for one in strips:
        if not within(ends, one.aft, one.forward):
            continue
        shape = box(view, one.aft, one.forward, one.right, one.left, ends)
        middle = (shape[0][0] + shape[1][0]) / 2, (shape[0][1] + shape[2][1]) / 2
        half = max((shape[2][1] - shape[0][1]) / 2, _SMALLEST)
        (a, b), high, low = (shape[0][0], shape[1][0]), middle[1] - half, middle[1] + half
        marks.append(pen.polygon([(a, high), (b, high), (b, low), (a, low)], fill=pen.INK))
        if one.dockings[-1] == "plan":
            marks.append(pen.circle(middle, 2.2, pen.HEAVY, colour=pen.RED))
    return "".join(marks)


def plan_marks(docking: Bottom, things: Sequence[Thing], view: View, ends: tuple[float, float]) -> str:
    """Outline the footprints of the plan heavily below the centreline, number keel blocks and letter pairs.

    A block to port is drawn as well where something is too near to it or an item works there.
    """
    warned = [one.footprint for one in docking.conflicts] + [one.footprint for one in docking.works]
    shown = [one for one in docking.footprints if on_keel(one)] + _one_side(docking.footprints, -1)
    shown += [one for one in docking.footprints if one in warned and one not in shown]
    marks = [
        pen.polygon(box(view, one.aft, one.forward, one.right, 0.0 if on_keel(one) else one.left, ends), pen.HEAVY)
        for one in shown
        if _seen(one, ends)
    ]
    taken = [_room(one, view) for one in things if one.kind != "bilge keel"]
    taken += [_name_room(one, view) for one in things if one.shown and one.kind != "anode"]
    for block in docking.keel_blocks:
        if ends[0] <= block.x <= ends[1]:
            x, y = view.x(block.x), view.y(-block.width / 2) + 2.2
            while any(_meet((x - 1.5, y - 1.1, x + 1.5, y + 1.1), other) for other in taken):
                y += 0.5
            taken.append((x - 1.5, y - 1.1, x + 1.5, y + 1.1))
            marks.append(pen.label((x, y), str(block.number), pen.SMALL, bold=True, kind="block"))
    taken += [_corners(_box(one, view, ends)) for one in docking.footprints if not on_keel(one) and _seen(one, ends)]
    for pair in docking.pairs:
        if ends[0] <= pair.x <= ends[1]:
            down = 0.0 if view.mm(pair.length) > _LETTER else view.mm(pair.width / 2) + 2.2
            at = view.x(pair.x), view.y(-pair.off_centre) + down
            taken.append(_words_room(at, 1.2))
            marks.append(pen.label(at, letter(pair.number), pen.SMALL, bold=True, kind="side-block"))
            marks.append(_offset(pair, view, taken))
    return "".join(marks)


def _offset(pair: SideBlockPlace, view: View, taken: list[tuple[float, float, float, float]]) -> str:
    """Dimension how far the middle of a side block stands off the centreline, beside it and clear of other words."""
    words = show(pair.off_centre, "distance")
    half = pen.text_width(words, pen.SMALL) / 2 + 0.3
    near, far = view.base, view.y(-pair.off_centre)
    places = [
        (view.x(pair.x + side * pair.length / 2) + side * 1.6, near + share * (far - near))
        for side in (-1, 1)
        for share in (0.62, 0.7, 0.54, 0.78)
    ]
    places += [(x, far + side) for side in (view.mm(pair.width / 2) + 2.2, 4.2, 6.4) for x, _ in places[::4]]
    x, y = next((at for at in places if not any(_meet(_words_room(at, half), one) for one in taken)), places[0])
    taken.append(_words_room((x, y), half))
    edge = view.x(pair.x + (pair.length / 2 if x > view.x(pair.x) else -pair.length / 2))
    slants = [((x - 0.7, end + 0.7), (x + 0.7, end - 0.7)) for end in (near, far)]
    return (
        pen.strokes([((x, near), (x, far)), ((x - 0.8, far), (x + 0.8, far)), ((edge, far), (x, far))])
        + pen.strokes(slants, pen.MEDIUM)
        + pen.label((x, y), words, pen.SMALL, kind="offset")
    )


def _words_room(at: Point, half: float) -> tuple[float, float, float, float]:
    return at[0] - half, at[1] - 1.3, at[0] + half, at[1] + 1.3


def conflict_marks(docking: Bottom, view: View, ends: tuple[float, float]) -> str:
    """Ring the blocks that stand too near to something, or on plating on which an item works."""
    near = [one.footprint for one in docking.conflicts] + [one.footprint for one in docking.works]
    return "".join(
        pen.circle((view.x(one.x), view.y(one.y)), 5.0, pen.HEAVY, colour=pen.RED)
        for one in dict.fromkeys(near)
        if ends[0] <= one.x <= ends[1]
    )


def thing_marks(things: Sequence[Thing], clearance: float, view: View, ends: tuple[float, float]) -> str:
    """Draw openings with the clearance wanted round them, anodes and bilge keels."""
    marks = [_bilge_keels([one.rectangle for one in things if one.kind == "bilge keel"], view, ends)]
    for one in things:
        aft, forward = one.rectangle.x - one.rectangle.length / 2, one.rectangle.x + one.rectangle.length / 2
        if one.kind == "bilge keel" or not within(ends, aft - 0.05, forward + 0.05):
            continue
        if one.kind == "anode":
            marks.append(pen.polygon(box(view, aft, forward, *_across(one.rectangle), ends), pen.FINE, fill="#bbbbbb"))
        else:
            marks.append(pen.polygon(view.all(_round(one.rectangle, clearance)), pen.FINE, pen.HIDDEN))
            marks.append(_opening(one, view))
    return "".join(marks)


def thing_names(docking: Bottom, things: Sequence[Thing], view: View, ends: tuple[float, float]) -> str:
    """Write numbers of openings outboard of them, and names of anodes inboard where there is room for them."""
    marks: list[str] = []
    taken = [_corners(_box(one, view, ends)) for one in docking.footprints if within(ends, one.aft, one.forward)]
    for one in sorted(things, key=lambda thing: thing.kind == "anode"):
        if not one.shown or not ends[0] <= one.rectangle.x <= ends[1]:
            continue
        anode, space = one.kind == "anode", _name_room(one, view)
        if anode and any(_meet(space, other) for other in taken):
            continue
        taken.append(space)
        at = (space[0] + space[2]) / 2, (space[1] + space[3]) / 2
        size = pen.SMALL if anode else pen.NORMAL
        marks.append(pen.label(at, one.shown, size, bold=not anode, kind="anode" if anode else "opening"))
    return "".join(marks)


def _bilge_keels(pieces: Sequence[Rectangle], view: View, ends: tuple[float, float]) -> str:
    """Draw the inner and the outer edge of each bilge keel through the middles of its pieces."""
    marks = []
    for side in (1, -1):
        shown = [one for one in pieces if one.y * side > 0 and ends[0] <= one.x <= ends[1]]
        if len(shown) > 1:
            for out in (-1, 1):
                edge = [(one.x, one.y + side * out * one.width / 2) for one in shown]
                marks.append(pen.curve(view.all(edge), pen.FINE, pen.HIDDEN))
    return "".join(marks)


def _room(one: Thing, view: View) -> tuple[float, float, float, float]:
    """Give the box on paper that a thing takes, mm."""
    half = max(view.mm(one.rectangle.length / 2), _SMALLEST), max(view.mm(one.rectangle.width / 2), _SMALLEST)
    x, y = view.x(one.rectangle.x), view.y(one.rectangle.y)
    return x - half[0], y - half[1], x + half[0], y + half[1]


def _name_room(one: Thing, view: View) -> tuple[float, float, float, float]:
    """Give the box on paper of what is written beside a thing: outboard of an opening, inboard of an anode."""
    anode = one.kind == "anode"
    down = (1 if anode else -1) * (1 if one.rectangle.y >= 0 else -1)
    x = view.x(one.rectangle.x)
    y = view.y(one.rectangle.y) + down * (max(view.mm(one.rectangle.width / 2), _SMALLEST) + 1.9)
    half = pen.text_width(one.shown, pen.SMALL if anode else pen.NORMAL, not anode) / 2
    return x - half, y - 1.3, x + half, y + 1.3


def _corners(shape: Sequence[Point]) -> tuple[float, float, float, float]:
    return shape[0][0], shape[0][1], shape[2][0], shape[2][1]


def _meet(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def _opening(one: Thing, view: View) -> str:
    x, y = view.x(one.rectangle.x), view.y(one.rectangle.y)
    half = max(view.mm(one.rectangle.length / 2), _SMALLEST), max(view.mm(one.rectangle.width / 2), _SMALLEST)
    cross = pen.strokes([((x - half[0], y), (x + half[0], y)), ((x, y - half[1]), (x, y + half[1]))], pen.FINE)
    if abs(half[0] - half[1]) < 1e-9:
        return pen.circle((x, y), half[0], pen.MEDIUM, pen.PAPER) + cross
    corners = [(x + sx * half[0], y + sy * half[1]) for sx, sy in ((-1, -1), (1, -1), (1, 1), (-1, 1))]
    return pen.polygon(corners, pen.MEDIUM, fill=pen.PAPER) + cross


def _round(one: Rectangle, out: float) -> list[Point]:
    """Outline what lies within a distance of a rectangle, corners rounded, m."""
    corners = ((1, 1, 0), (-1, 1, 90), (-1, -1, 180), (1, -1, 270))
    return [
        (
            one.x + sx * one.length / 2 + out * cos(radians(start + turn)),
            one.y + sy * one.width / 2 + out * sin(radians(start + turn)),
        )
        for sx, sy, start in corners
        for turn in range(0, 91, 15)
    ]


def _box(one: Footprint, view: View, ends: tuple[float, float]) -> list[Point]:
    return box(view, one.aft, one.forward, one.right, one.left, ends)


def _across(one: Rectangle) -> tuple[float, float]:
    return one.y - one.width / 2, one.y + one.width / 2
