"""The hull from the side as every drawing shows it: outline, keel, rudder, stern frame and bilge keels."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.ship.outline import Outline
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.view import View
from tenderwright.model.package import Package

NOT_HER_FORM = "outline from main dimensions: not her form"


def hull_ground(package: Package, form: HullForm, view: View) -> str:
    """Fill the hull with paper and draw what lies behind everything else: keel and appendages."""
    marks = [pen.polygon(view.all(outline.profile(form)), 0, fill=pen.PAPER)]
    for _, shape in outline.centreline_appendages(package, form):
        marks.append(pen.polygon(view.all(shape), pen.FINE, fill=pen.PAPER))
    if package.particulars and (keel := outline.bar_keel(package.particulars)):
        marks.append(pen.polygon(view.all(keel), pen.FINE, fill="#bbbbbb"))
    for screw in outline.propellers(package):
        marks.append(pen.polygon(view.all(screw), pen.FINE, fill=pen.PAPER))
    return "".join(marks)


def hull_lines(package: Package, drawn: Outline, view: View, words_at: float = 0.12) -> str:
    """Draw the hull's outline heavy and her bilge keels hidden.

    A stand-in for the outline says that it is one, from a share of its length on.
    """
    keels = [(view.at(a), view.at(b)) for a, b in outline.bilge_keels(package)]
    shape = view.all(outline.profile(drawn.form))
    return pen.strokes(keels, pen.FINE, pen.HIDDEN) + pen.polygon(shape, pen.HEAVY) + stand_in(drawn, shape, words_at)


def stand_in(drawn: Outline, shape: Sequence[pen.Point], words_at: float) -> str:
    """Write within an outline on paper, under its upper edge, that it is not her form; nothing where it is."""
    if drawn.known:
        return ""
    left, right = min(x for x, _ in shape), max(x for x, _ in shape)
    top = min(y for _, y in shape)
    return pen.text((left + words_at * (right - left), top + 3.0), NOT_HER_FORM, pen.SMALL, kind="stand-in")


def extent(package: Package, form: HullForm) -> tuple[float, float]:
    """Give the aftermost and foremost point of hull and appendages, m."""
    ends = [float(form.stations[0]), float(form.stations[-1])]
    for one, _ in outline.centreline_appendages(package, form):
        ends += [one.extent.from_.x, one.extent.to.x]
    if package.frames and package.frames.numbers:
        ends += [package.frames.distances[0], package.frames.distances[-1]]
    return min(ends), max(ends)
