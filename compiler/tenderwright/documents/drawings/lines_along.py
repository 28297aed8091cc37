"""The lines along the ship: her profile, and under it one half of every waterline, with the stations across both."""

from __future__ import annotations

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.framed import MARGIN
from tenderwright.documents.drawings.scale_bar import scale_name
from tenderwright.documents.drawings.view import Room, View, largest_scale

_HEAD, _GAP, _FOOT = 4.5, 3.0, 3.0
"""Space over the profile, between it and the waterlines, and under them, mm."""


def lines_along(form: HullForm, room: Room) -> tuple[str, float]:
    """Draw both at the head of a sheet, as large as the room allows; give the marks and where they end, mm."""
    first, last = float(form.stations[0]), float(form.stations[-1])
    half, low = float(form.deck_half_breadths.max()), min(0.0, float(form.keel_heights.min()))

    def size(scale: int) -> tuple[float, float]:
        metre = 1000 / scale
        return (last - first) * metre, (form.depth - low + half) * metre + _HEAD + _GAP + _FOOT

    scale = largest_scale(room, size)
    left = MARGIN + (room.width - size(scale)[0]) / 2 - first * 1000 / scale
    profile = View(scale, left, MARGIN + _HEAD + form.depth * 1000 / scale)
    plan = View(scale, left, profile.y(low) + _GAP)
    levels = [height for height in form.waterlines.tolist() if low < height < form.depth]
    keels = dict(zip(form.stations.tolist(), form.keel_heights.tolist(), strict=True))
    decks = zip(form.stations.tolist(), form.deck_heights.tolist(), form.deck_half_breadths.tolist(), strict=True)
    across = [
        pair
        for x, high, wide in decks
        for pair in ((profile.at((x, keels[x])), profile.at((x, high))), (plan.at((x, 0.0)), plan.at((x, -wide))))
    ]
    marks = [
        pen.text((MARGIN + 1, MARGIN + 3), f"Profile and waterlines, {scale_name(scale).removeprefix('Scale ')}"),
        pen.strokes(across, colour=pen.FAINT),
        *(_waterline(form, height, profile, plan) for height in levels),
        pen.curve(plan.all((x, -y) for x, y in outline.deck_plan(form)[: len(keels)]), pen.MEDIUM),
        pen.line(plan.at((first, 0.0)), plan.at((last, 0.0)), dash=pen.CHAIN),
        pen.polygon(profile.all(outline.profile(form)), pen.HEAVY),
    ]
    return "".join(marks), plan.y(-half) + _FOOT


def _waterline(form: HullForm, height: float, profile: View, plan: View) -> str:
    """Draw a waterline across the profile and its half in the plan; nothing where the hull does not reach it."""
    points = outline.waterline_plan(form, height, 120)
    half = [(x, -y) for x, y in points[: len(points) // 2]]
    if len(half) < 2:
        return ""
    level = [profile.at((x, height)) for x, _ in (half[0], half[-1])]
    return pen.line(level[0], level[1], colour=pen.FAINT) + pen.curve(plan.all(half))
