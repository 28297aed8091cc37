"""Her waterlines as she lands, on the profile: at the first touch and when she lies on all the blocks."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.calculations.landing.curve import LandingCurve
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.plane import spread
from tenderwright.documents.drawings.view import View
from tenderwright.quantities.display import show

_REACH = 3.0
"""How far the lines run beyond the hull, mm."""


def landing_waterlines(
    curve: LandingCurve | None, length: float, view: View, ends: tuple[float, float], under: float
) -> str:
    """Draw both waterlines between two ends of the ship [m], with their drafts above the underside of the keel."""
    if curve is None:
        return ""
    drafts = [(float(curve.draft_aft[i]), float(curve.draft_forward[i])) for i in (0, curve.settled)]
    lines = []
    for aft, forward in drafts:
        slope = (forward - aft) / length
        lines.append([(view.x(x), view.y(under + aft + slope * x)) for x in ends])
    touch, settled = lines
    marks = [
        pen.line(
            (touch[0][0] - _REACH, touch[0][1]), (touch[1][0] + _REACH, touch[1][1]), pen.MEDIUM, pen.LIMIT, pen.BLUE
        ),
        pen.line(
            (settled[0][0] - _REACH, settled[0][1]), (settled[1][0] + _REACH, settled[1][1]), pen.MEDIUM, "", pen.BLUE
        ),
    ]
    for end, (anchor, out) in enumerate((("end", -_REACH - 0.8), ("start", _REACH + 0.8))):
        heights = [line[end][1] for line in lines]
        places = spread(heights, [pen.SMALL] * 2, 0, 1e4, 0.5)
        for pair, wanted, place in zip(drafts, heights, places, strict=True):
            x = lines[0][end][0] + out
            marks.append(pen.line((x - out * 0.2, wanted), (x, place), pen.FINE))
            marks.append(pen.label((x, place), show(pair[end], "draft"), pen.SMALL, anchor, kind="draft"))
    marks += _names(lines)
    return "".join(marks)


def named_aft(curve: LandingCurve | None) -> bool:
    """Tell whether the lines are named in the after half, where they lie farther apart there."""
    if curve is None:
        return True
    aft, forward = (abs(float(drafts[0] - drafts[curve.settled])) for drafts in (curve.draft_aft, curve.draft_forward))
    return aft >= forward


def _names(lines: Sequence[Sequence[tuple[float, float]]]) -> list[str]:
    """Name the lines where they lie farthest apart, the upper one above and the lower one below."""
    (a0, a1), (b0, b1) = lines
    share = 0.22 if abs(a0[1] - b0[1]) >= abs(a1[1] - b1[1]) else 0.78
    x = a0[0] + share * (a1[0] - a0[0])
    heights = [a0[1] + share * (a1[1] - a0[1]), b0[1] + share * (b1[1] - b0[1])]
    first_above = heights[0] <= heights[1]
    names = (("waterline at first touch", first_above), ("waterline when settled", not first_above))
    return [
        pen.label((x, y - 2.0 if above else y + 2.0), name, pen.SMALL, kind="waterline")
        for y, (name, above) in zip(heights, names, strict=True)
    ]
