"""The load on every keel block: by a rigid and by an elastic keel, with what its cap may carry and the landing load."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.calculations.ship.block_places import KeelBlockResult
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.chart import Field
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.view import View
from tenderwright.quantities.display import axis, axis_unit, in_column

LEAST = 36.0
"""Least height that the diagram takes on the sheet, mm."""
_OVER, _BELOW = 5.5, 4.0
"""Space over its field for the key, and below it for the loads, mm."""
_WITHIN = Hatch((135,), 1.0, pen.FINE, "", pen.FAINT)


@dataclass(frozen=True)
class LandingLoad:
    """The load of the one block that is touched first, just before she lies on all of them, kg."""

    x: float
    load: float


def allowable_load(block: KeelBlockResult, allowable: float | None) -> float | None:
    """Give the load at which a block's cap is pressed to the allowable pressure [Pa], kg; None where not known."""
    if allowable is None or not block.load or not block.pressure:
        return None
    return block.load * allowable / block.pressure


def keel_load_diagram(
    blocks: Sequence[KeelBlockResult],
    allowable: float | None,
    landing: LandingLoad | None,
    view: View,
    ends: tuple[float, float],
) -> str:
    """Draw the diagram between two heights on the sheet; nothing where no load is known."""
    top, foot = ends
    loads = [one.load / axis_unit("weight") for one in blocks if one.load is not None]
    if not loads:
        return ""
    limits = [
        (one, limit / axis_unit("weight")) for one in blocks if (limit := allowable_load(one, allowable)) is not None
    ]
    most = max([*loads, landing.load / axis_unit("weight") if landing else 0.0])
    greatest = max([most, *(limit for _, limit in limits if limit <= 3 * most)]) * 1.05
    base = foot - _BELOW
    per = (base - top - _OVER) / greatest
    left, right = view.x(blocks[0].x) - 10, view.x(blocks[-1].x) + 10
    marks = [
        pen.text((4, top + 2.6), axis("Load on each keel block", "weight"), pen.NORMAL, bold=True),
        _key(blocks, bool(limits), landing, top + 1.7),
        _axis(greatest, left, right, base, per),
        *(_bar(one, view, base, per) for one in blocks),
        _elastic(blocks, view, base, per),
        _limits(limits, greatest, view, base, per),
        _landing(landing, blocks, view, base, per),
        *_figures(blocks, view, base),
    ]
    return "".join(marks)


def _key(blocks: Sequence[KeelBlockResult], limits: bool, landing: LandingLoad | None, y: float) -> str:
    """Explain the marks, each by a sample, in one row beside the title."""
    marks, left = [], 50.0
    samples: list[tuple[str, str]] = []
    if any(one.rigid is not None for one in blocks):
        samples.append(("rigid keel", "bar"))
    if any(one.elastic is not None for one in blocks):
        samples.append(("elastic keel", "dot"))
    if limits:
        samples.append(("allowed by the pressure on the cap", "limit"))
    if landing is not None:
        samples.append(("block touched first, as she comes to lie on all", "landing"))
    for words, kind in samples:
        marks.append(_sample(kind, left, y))
        marks.append(pen.text((left + 6, y + 0.9), words, pen.SMALL, kind="key"))
        left += 6 + pen.text_width(words, pen.SMALL) + 5
    return "".join(marks)


def _sample(kind: str, left: float, y: float) -> str:
    if kind == "bar":
        box = [(left, y - 1.2), (left + 4, y - 1.2), (left + 4, y + 1.2), (left, y + 1.2)]
        return _WITHIN.over([box]) + pen.polygon(box, pen.FINE)
    if kind == "dot":
        return pen.line((left, y), (left + 4.4, y), pen.MEDIUM, colour=pen.BLUE) + _dot(left + 2.2, y)
    if kind == "limit":
        return pen.line((left, y), (left + 4.4, y), pen.HEAVY, colour=pen.RED)
    return _diamond(left + 2.2, y)


def _dot(x: float, y: float) -> str:
    return pen.circle((x, y), 0.6, 0, pen.BLUE)


def _diamond(x: float, y: float) -> str:
    return pen.polygon([(x - 1.1, y), (x, y - 1.1), (x + 1.1, y), (x, y + 1.1)], pen.MEDIUM, fill=pen.PAPER)


def _axis(greatest: float, left: float, right: float, base: float, per: float) -> str:
    field = Field(left, right, base - greatest * per, base, (0.0, 1.0), (0.0, greatest))
    edges = pen.line((left, base), (left, field.top), pen.FINE) + pen.line((left, base), (right, base), pen.MEDIUM)
    return edges + field.beside(field.step_up(5.0, 1.0), lines=True)


def _bar(block: KeelBlockResult, view: View, base: float, per: float) -> str:
    if block.rigid is None:
        return ""
    left, right = view.x(block.x - block.length / 2), view.x(block.x + block.length / 2)
    high = base - block.rigid / axis_unit("weight") * per
    box = [(left, base), (right, base), (right, high), (left, high)]
    return pen.polygon(box, 0, fill=pen.PAPER) + _WITHIN.over([box]) + pen.polygon(box, pen.FINE)


def _elastic(blocks: Sequence[KeelBlockResult], view: View, base: float, per: float) -> str:
    places = [
        (view.x(one.x), base - one.elastic / axis_unit("weight") * per) for one in blocks if one.elastic is not None
    ]
    if not places:
        return ""
    return pen.curve(places, pen.MEDIUM, colour=pen.BLUE) + "".join(_dot(x, y) for x, y in places)


def _limits(
    limits: Sequence[tuple[KeelBlockResult, float]], greatest: float, view: View, base: float, per: float
) -> str:
    """Draw what each cap may carry as a heavy stroke over its block; strokes beyond the axis are left out."""
    strokes = [
        ((view.x(one.x) - 1.7, base - limit * per), (view.x(one.x) + 1.7, base - limit * per))
        for one, limit in limits
        if limit <= greatest
    ]
    return pen.strokes(strokes, pen.HEAVY, colour=pen.RED)


def _landing(
    landing: LandingLoad | None, blocks: Sequence[KeelBlockResult], view: View, base: float, per: float
) -> str:
    """Mark the landing load, with its figure on the side where no block stands."""
    if landing is None:
        return ""
    x, y = view.x(landing.x), base - landing.load / axis_unit("weight") * per
    out, anchor = (-1.8, "end") if landing.x - blocks[0].x <= blocks[-1].x - landing.x else (1.8, "start")
    figure = pen.label((x + out, y), in_column(landing.load, "weight"), pen.SMALL, anchor, True, kind="landing")
    return _diamond(x, y) + figure


def _figures(blocks: Sequence[KeelBlockResult], view: View, base: float) -> list[str]:
    """Write the greater load of each block under it, without decimals, where there is room; the greatest in bold."""
    most = max((one for one in blocks if one.load is not None), key=lambda one: one.load or 0.0)
    marks, edge = [pen.text((4, base + 3.2), axis("load", "weight"), pen.SMALL)], -1.0e9
    for one in blocks:
        if one.load is None:
            continue
        shown, x = in_column(one.load, "weight", more=-1), view.x(one.x)
        half = pen.text_width(shown, pen.SMALL, True) / 2
        if x - half > edge + 0.3:
            marks.append(pen.text((x, base + 3.2), shown, pen.SMALL, "middle", one is most, kind="load"))
            edge = x + half
    return marks
