"""The shell expansion: readings and diminution by strake and frame, and the inserts that are to renew plate."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from tenderwright.calculations.renewal.shell_renewal import PlannedRenewal, RenewalPlan
from tenderwright.calculations.ship.condition_of_shell import shell_forecast
from tenderwright.calculations.ship.renewals import shell_renewal
from tenderwright.calculations.ship.shell_plan import shell_plan
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.shell_forecast import ShellCondition
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale
from tenderwright.documents.drawings.framed import MARGIN, Framed, framed
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.plane import uncrossed
from tenderwright.documents.drawings.shell_cells import SIGNS, Expansion, runs, worst_by_cell
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.documents.not_calculated import why_not
from tenderwright.model.package import Package
from tenderwright.quantities.display import in_column, unit_of

REPAIR = "For tender. Outlines for pricing: the naval architect draws each plate and decides which limit holds."
TITLE = "Shell expansion: readings and renewals"
BOUNDS = (0.5, 0.75, 1.0)
"""Shares of the limit at which the hatching grows denser."""
CLASSES = (
    ("half to three quarters of the limit", Hatch((45,), 1.5, pen.FINE)),
    ("substantial: above three quarters", Hatch((45,), 0.9, pen.FINE)),
    ("beyond the limit", Hatch((45, 135), 0.8, pen.FINE)),
)
RENEWAL = Hatch((90,), 0.8, pen.FINE, "", pen.RED)
_SIDE, _ROW, _LEGEND = 12.0, 5.0, 4.4


def shell_expansion(package: Package, calculated: Calculated) -> Figure | Absent:
    """Draw the shell laid flat with its readings, or say why not."""
    shell, plan = calculated.outcome(shell_forecast), calculated.outcome(shell_plan)
    if isinstance(shell, Absent):
        return shell
    if isinstance(plan, Absent):
        return plan
    renewal = calculated.outcome(shell_renewal)
    inserts = () if isinstance(renewal, Absent) else renewal.inserts
    frames = plan.grid.frames
    length, girth = float(frames[-1] - frames[0]), float(np.max(plan.grid.seams))
    fixed = 2 * _ROW + FRAMES_HEIGHT + 3

    def size(scale: int) -> tuple[float, float]:
        return length * 1000 / scale + 2 * _SIDE, 2 * girth * 1000 / scale + fixed

    sheet = framed(package, "shell-expansion", TITLE, "thickness readings and strakes of the shell", REPAIR)
    room = Room(sheet.right - MARGIN, sheet.over - MARGIN)
    sheet = sheet.at(largest_scale(room, size))
    spare = max(0.0, room.height - size(sheet.scale)[1]) / 2
    row = MARGIN + spare
    middle = row + _ROW + sheet.mm(girth) + 1
    view = View(sheet.scale, (sheet.frame.width - sheet.mm(length)) / 2 - sheet.mm(float(frames[0])), middle)
    drawn = Expansion(plan, view)
    edges = drawn.edges
    worst, gauged = worst_by_cell(shell, plan.grid)
    bottom = middle + sheet.mm(girth) + _ROW
    marks = [
        *_classes(drawn, worst, edges),
        _dots(drawn, gauged, edges),
        *_lines(drawn, edges),
        *_renewals(drawn, inserts, edges),
        *_names(drawn, edges),
        *_labels(drawn, shell, inserts, edges, (row + 1.0, bottom - 1.5), sheet.right),
        frame_scale(package.frames, view, bottom + 1) if package.frames else "",
        pen.line((MARGIN, sheet.over + 1), (sheet.beside, sheet.over + 1)),
        *_legend(sheet.over + 4),
        *_list(package, inserts, sheet),
    ]
    words = _words(shell, renewal, gauged)
    girths = (
        "girths are those of the hull at each frame, shared by the strakes as amidships"
        if plan.by_form
        else "girths are those of amidships at every frame, so that the ends are too large: for hers it needs "
        "the table of offsets or sections of the hull"
    )
    caption = (
        f"The shell laid flat, port above and starboard below, forward to the right; {girths}. Hatching grows denser "
        "with the loss of the worst reading of a frame space, as a share of what plate may lose there; a dot marks a "
        "space gauged by the latest survey, and "
        "one without dot or hatching was not gauged. Heavy outlines are inserts, numbered as listed."
    )
    return sheet.figure(marks, caption, words)


def _words(shell: ShellCondition, renewal: RenewalPlan | Absent, gauged: Flags) -> str:
    said = f"Shell expansion of {len(shell.strakes)} strakes on both sides with {int(gauged.sum())} frame spaces gauged"
    if isinstance(renewal, Absent):
        return f"{said}. Inserts. {why_not(renewal)}"
    inserts = renewal.inserts
    named = ", ".join(f"{one.name} on strake {' and '.join(one.strakes)} {one.side}" for one in inserts)
    return f"{said} and {len(inserts)} inserts: {named or 'none'}."


def _classes(drawn: Expansion, worst: Floats, edges: Floats) -> list[str]:
    """Hatch the frame spaces by class, neighbours of one class along a strake as one."""
    limits = (*BOUNDS, np.inf)
    marks = []
    for (_, hatch), low, high in zip(CLASSES, limits, limits[1:], strict=False):
        outlines = []
        for side in (0, 1):
            for strake in range(drawn.plan.grid.strakes):
                row = (worst[side, strake] > low + 1e-9) & (worst[side, strake] <= high + 1e-9)
                outlines += [drawn.strip(strake, side, a, b, edges) for a, b in runs(row)]
        marks += [hatch.over([outline]) for outline in outlines]
    return marks


def _dots(drawn: Expansion, gauged: Flags, edges: Floats) -> str:
    """Mark the frame spaces that were gauged."""
    frames, view = drawn.plan.grid.frames, drawn.view
    segments = []
    for side, strake, bay in np.argwhere(gauged).tolist():
        x = view.x(0.5 * float(frames[bay] + frames[bay + 1]))
        girth = 0.25 * float(edges[strake : strake + 2, bay : bay + 2].sum())
        y = view.y(SIGNS[side] * girth)
        segments.append(((x - 0.15, y), (x + 0.15, y)))
    return pen.strokes(segments, pen.MEDIUM)


def _lines(drawn: Expansion, edges: Floats) -> list[str]:
    """Draw seams where there is plate, butts, and the keel."""
    plan, view = drawn.plan, drawn.view
    frames, exists = plan.grid.frames, plan.exists
    marks = []
    for side, sign in enumerate(SIGNS):
        for strake in range(plan.grid.strakes):
            for aft, forward in runs(exists[strake]):
                outline = drawn.strip(strake, side, aft, forward, edges)
                marks.append(pen.polygon(outline, pen.FINE))
            ends = []
            for x in plan.butts[strake].tolist():
                low, high = (float(np.interp(x, frames, edges[strake + up])) for up in (0, 1))
                ends.append(((view.x(x), view.y(sign * low)), (view.x(x), view.y(sign * high))))
            marks.append(pen.strokes(ends, pen.MEDIUM))
    centre = view.y(0.0)
    marks.append(pen.line((view.x(float(frames[0])), centre), (view.x(float(frames[-1])), centre), pen.FINE, pen.CHAIN))
    return marks


def _renewals(drawn: Expansion, renewals: Sequence[PlannedRenewal], edges: Floats) -> list[str]:
    marks = []
    for one in renewals:
        outline = drawn.renewal(one, edges)
        dash = pen.LIMIT if one.apart else ""
        marks.append(RENEWAL.over([outline]) + pen.polygon(outline, pen.HEAVY, dash, pen.RED))
    return marks


def _names(drawn: Expansion, edges: Floats) -> list[str]:
    """Name the strakes where they are broad, a fifth of the length from either end."""
    plan, view = drawn.plan, drawn.view
    frames = plan.grid.frames
    marks = []
    for side, sign in enumerate(SIGNS):
        for strake, name in enumerate(plan.strakes):
            for share in (0.2, 0.8):
                x = float(frames[0] + share * (frames[-1] - frames[0]))
                low, high = (float(np.interp(x, frames, edges[strake + up])) for up in (0, 1))
                if view.mm(high - low) >= 1.7:
                    marks.append(
                        pen.label(view.at((x, sign * 0.5 * (low + high))), name, pen.SMALL, bold=True, kind="strake")
                    )
        y = view.y(sign * 0.9 * float(edges[-1].max()))
        marks.append(pen.text((4, y), ("Port", "Starboard")[side], pen.NORMAL, bold=True, kind="side"))
    return marks


def _labels(
    drawn: Expansion,
    shell: ShellCondition,
    renewals: Sequence[PlannedRenewal],
    edges: Floats,
    rows: tuple[float, float],
    width: float,
) -> list[str]:
    """Name the inserts in a row above or below, each on a leader."""
    marks = []
    for side, name in enumerate(("port", "starboard")):
        of_side = [one for one in renewals if one.side == name]
        words = [_named(shell, one) for one in of_side]
        feet = []
        for one in of_side:
            outline = drawn.renewal(one, edges)
            xs, ys = [x for x, _ in outline], [y for _, y in outline]
            feet.append((0.5 * (min(xs) + max(xs)), min(ys) if side == 0 else max(ys)))
        row = rows[side] + (1.5 if side == 0 else 0.0)
        widths = [pen.text_width(word, pen.NORMAL, True) + 0.8 for word in words]
        places = uncrossed(feet, widths, row + (1.4 if side == 0 else -1.4), (MARGIN, width))
        for word, foot, x in zip(words, feet, places, strict=True):
            marks.append(pen.line((x, row + (1.4 if side == 0 else -1.4)), foot, pen.FINE, "", pen.RED))
            marks.append(pen.label((x, row), word, pen.NORMAL, "middle", True, kind="renewal"))
    return marks


def _named(shell: ShellCondition, one: PlannedRenewal) -> str:
    """Name an insert with the worst reading in it, in mm, or with the item that renews it."""
    readings, outline = shell.readings, one.made.outline
    inside = shell.analysis.latest & (readings.side == ("port", "starboard").index(one.side))
    inside &= (readings.strake >= outline.lower) & (readings.strake < outline.upper)
    inside &= (readings.x >= one.aft) & (readings.x <= one.forward)
    worst = f" {in_column(float(readings.measured[inside].min()), 'thickness')}" if inside.any() else ""
    return f"{one.name}{worst} (item {one.apart})" if one.apart else f"{one.name}{worst}"


def _legend(top: float) -> list[str]:
    """Explain the marks, one under the other beside the title block."""
    marks = [pen.text((4, top + 0.9), "Loss of the worst reading", pen.SMALL, bold=True)]
    entries = [(words, hatch, False) for words, hatch in CLASSES] + [("plate to renew", RENEWAL, True)]
    for row, (words, hatch, heavy) in enumerate(entries, 1):
        y = top + _LEGEND * row
        marks.append(hatch.swatch(4, y))
        if heavy:
            marks.append(
                pen.polygon([(4, y - 1.3), (11, y - 1.3), (11, y + 1.3), (4, y + 1.3)], pen.HEAVY, "", pen.RED)
            )
        marks.append(pen.text((12.5, y + 0.9), words, pen.SMALL, kind="legend"))
    lines = (
        "broken outline: renewed by an item of its own",
        "thin lines: seams; heavy: butts; dot: gauged",
        f"figure at an insert: its worst reading, {unit_of('thickness')}",
    )
    y = top + _LEGEND * (len(entries) + 1) + 0.9
    return [*marks, *(pen.text((4, y + 3.8 * row), line, pen.SMALL, kind="legend") for row, line in enumerate(lines))]


def _list(package: Package, renewals: Sequence[PlannedRenewal], sheet: Framed) -> list[str]:
    """List the inserts beside the key, as many as there is room for."""
    left, top, apart = 72.0, sheet.over + 4.9, 3.8
    rows = int((sheet.foot - top) / apart)
    each = (sheet.beside - left) / 2
    marks = [pen.text((left, top), "Inserts", pen.SMALL, bold=True)] if renewals else []
    for index, one in enumerate(renewals[: 2 * rows]):
        x, y = left + (index // rows) * each, top + (index % rows + 1) * apart
        where = f"{package.frames.label(one.aft)} to {package.frames.label(one.forward)}" if package.frames else ""
        told = f"strake {' and '.join(one.strakes)} {one.side}, {where}".rstrip(", ")
        marks.append(pen.text((x, y), one.name, bold=True))
        marks.append(pen.text((x + 8, y), pen.shortened(told, pen.SMALL, each - 9), kind="insert-list"))
    return marks
