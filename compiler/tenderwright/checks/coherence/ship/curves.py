"""Her curves of form are fair, agree with each other, and are hers.

Ground: the displacement rises by the waterplane, and its moment by that at the centre of flotation; of all waterplanes
of one area and length none has less of a second moment than the rectangle, and of one area and breadth none has more
(derived). The room left is for figures read off a curve: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.hydrostatics.upright import hydrostatics
from tenderwright.calculations.median import median
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.buoyancy import curves_hull
from tenderwright.calculations.ship.hull import hull
from tenderwright.checks.coherence.ship.held import held, like
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.curves import CurvesOfForm
from tenderwright.model.particulars import Dimensions
from tenderwright.notices import Notice
from tenderwright.quantities.quantity import Quantity

CODE = "curves-disagree"
FAIR = 0.012
"""How far a figure may be from those at other drafts, as a share of it."""
CENTRE = 0.004
"""The same of a centre along the ship, as a share of her length."""
_COLUMNS = (
    "displacement", "volume", "km", "kb", "bm", "immersion", "moment", "bm_longitudinal", "wetted_surface", "lcb",
    "lcf",
)  # fmt: skip
_WORDS = {"km": "KM", "kb": "KB", "bm": "BM", "lcb": "LCB", "lcf": "LCF", "bm_longitudinal": "longitudinal BM"}


def check(ship: Ship) -> Iterator[Notice]:
    """Report figures of the curves of form that are not fair, that contradict each other, or are of another ship."""
    curves, found, particulars = ship.package.curves, ship.calculated.found(curves_hull), ship.package.particulars
    if curves is None or found is None or particulars is None:
        return
    unfair = [notice for name in _COLUMNS for notice in _fair(curves, found.hull, name)]
    yield from unfair
    if unfair:
        return
    wrong = [*_of_her_size(curves, found.hull, particulars.dimensions)]
    yield from wrong
    if not wrong:
        yield from _agree(curves, found.hull, particulars.dimensions)
        yield from _as_her_lines(ship, curves, found.hull)


def _column(curves: CurvesOfForm, name: str) -> list[Quantity]:
    return [one for one in (getattr(row, name) for row in curves.rows) if one is not None]


def _fair(curves: CurvesOfForm, hull: HullCurves, name: str) -> Iterator[Notice]:
    """Hold each figure of a column against the curve through those at the four drafts nearest; tell the worst."""
    column = _column(curves, name)
    if len(column) < 6:
        return
    drafts, figures = hull.drafts, np.array([one.si for one in column])
    room = CENTRE * hull.length if name in ("lcb", "lcf") else FAIR * np.abs(figures)
    fair = np.array([_through_others(drafts, figures, k) for k in range(figures.size)])
    ends = np.ones(figures.size)
    ends[[0, -1]], ends[[1, -2]] = 8.0, 2.0
    beyond = np.abs(figures - fair) / (room * ends)
    worst = int(np.argmax(beyond))
    if beyond[worst] <= 1:
        return
    stated, half = column[worst], float(np.broadcast_to(room * ends, figures.shape)[worst])
    what = f"{_WORDS.get(name, name.replace('_', ' '))} at a draft of {curves.rows[worst].draft}"
    against = f"{like(float(fair[worst]), stated)} would be fair with the drafts about it"
    low, high = float(fair[worst]) - half, float(fair[worst]) + half
    yield from held(CODE, what, stated, low, high, against, exact=True)


def _through_others(drafts: Floats, figures: Floats, k: int) -> float:
    """Give what the cubic through the four nearest other drafts has at draft k."""
    first = min(max(k - 2, 0), drafts.size - 5)
    others = [j for j in range(first, first + 5) if j != k]
    shares = [np.prod([(drafts[k] - drafts[j]) / (drafts[i] - drafts[j]) for j in others if j != i]) for i in others]
    return float(np.dot(shares, figures[others]))


def _middle(curves: CurvesOfForm, name: str) -> tuple[Quantity | None, int]:
    """Give the figure of a column half way up the table, and its row."""
    k = len(curves.rows) // 2
    found = getattr(curves.rows[k], name)
    return (found if isinstance(found, Quantity) else None), k


def _of_her_size(curves: CurvesOfForm, hull: HullCurves, size: Dimensions) -> Iterator[Notice]:
    """Hold the table against her main dimensions."""
    length, beam, draft = size.length_overall.si, size.beam.si, size.draft
    low, high = float(hull.drafts[0]), float(hull.drafts[-1])
    if not low <= draft.si <= high:
        run = f"from {_draft(curves, 0)} to {_draft(curves, -1)}"
        message = f"she draws {draft} as a rule, and her curves of form run {run}"
        yield Notice(CODE, draft.at, message, hints=("look at the drafts, at their unit and at `draft_zero`",))
        return
    stated, k = _middle(curves, "displacement" if _has(curves, "displacement") else "volume")
    block = hull.density * length * beam * float(hull.drafts[k])
    unit = block if stated is not None and stated.dimension == "mass" else block / hull.density
    against = f"she is {size.length_overall} long and {size.beam} broad, and draws {_draft(curves, k)} there"
    yield from held(CODE, "displacement of the curves of form", stated, 0.2 * unit, 0.95 * unit, against)
    immersion, k = _middle(curves, "immersion")
    plane = hull.density * length * beam
    against = f"she is {size.length_overall} long and {size.beam} broad"
    yield from held(CODE, "immersion of the curves of form", immersion, 0.4 * plane, 1.02 * plane, against)
    for name in ("lcb", "lcf"):
        centre, k = _middle(curves, name)
        place = float((hull.lcb if name == "lcb" or hull.lcf is None else hull.lcf)[k])
        if centre is not None and not 0.38 * hull.length <= place <= 0.6 * hull.length:
            there = f"{like(place, centre)} forward of AP"
            message = f"{name.upper()} at a draft of {_draft(curves, k)} is {centre}, which is {there}"
            yield Notice(CODE, centre.at, message, hints=("look at `from` and `plus` of `centres`, and at the sign",))


def _has(curves: CurvesOfForm, name: str) -> bool:
    """Tell whether the table has a column."""
    return bool(_column(curves, name))


def _draft(curves: CurvesOfForm, k: int) -> Quantity:
    return curves.rows[k].draft


def _agree(curves: CurvesOfForm, hull: HullCurves, size: Dimensions) -> Iterator[Notice]:
    """Hold the columns against each other, half way up the table."""
    d, volume = hull.drafts, hull.volume
    planes = np.diff(volume) / np.diff(d)
    immersion, k = _middle(curves, "immersion")
    if immersion is not None and hull.immersion is not None:
        stated = (hull.immersion[1:] + hull.immersion[:-1]) / 2 / hull.density
        share = median(planes / stated)
        low, high = 0.97 * share * immersion.si, 1.03 * share * immersion.si
        against = f"the displacement rises by {like(share * immersion.si, immersion)}"
        yield from held(CODE, f"immersion at a draft of {_draft(curves, k)}", immersion, low, high, against)
    lcf, k = _middle(curves, "lcf")
    if lcf is not None and hull.lcf is not None:
        risen = np.diff(volume * hull.lcb) / np.diff(volume)
        off = median(risen - (hull.lcf[1:] + hull.lcf[:-1]) / 2)
        if abs(off) > 0.02 * hull.length:
            message = (
                f"LCF at a draft of {_draft(curves, k)} is {lcf}, and LCB moves as if it lay {like(abs(off), lcf)} "
                f"further {'forward' if off > 0 else 'aft'}"
            )
            hints = ("are both measured from one place, and the same way?",)
            yield Notice(CODE, lcf.at, message, hints=hints)
    row, length, beam = len(d) // 2, size.length_overall.si, size.beam.si
    _, _, kb, plane, _, across, along = hull.curves.values[row]
    at = f"at a draft of {_draft(curves, row)}"
    stated_kb, _ = _middle(curves, "kb")
    shift = (kb - stated_kb.si) if stated_kb is not None else 0.0
    against = "a centre of buoyancy lies from 0.45 to 0.75 of the draft up"
    yield from held(CODE, f"KB {at}", stated_kb, 0.45 * d[row] - shift, 0.75 * d[row] - shift, against)
    name = "km" if _has(curves, "km") else "bm"
    height, _ = _middle(curves, name)
    low, high = 0.9 * plane**3 / (12 * length**2), 1.05 * plane * beam**2 / 12
    if height is not None:
        base = height.si - across / volume[row]
        least, most = base + low / volume[row], base + high / volume[row]
        against = f"the waterplane gives from {like(least, height)} to {like(most, height)}"
        yield from held(CODE, f"{_WORDS[name]} {at}", height, least, most, against)
    name = "moment" if _has(curves, "moment") else "bm_longitudinal"
    stated_along, _ = _middle(curves, name)
    low, high = 0.45 * plane * hull.length**2 / 12, 1.1 * plane * length**2 / 12
    if stated_along is not None:
        rate = stated_along.si / along
        against = f"the waterplane gives from {like(low * rate, stated_along)} to {like(high * rate, stated_along)}"
        words = f"{'moment' if name == 'moment' else _WORDS[name]} {at}"
        yield from held(CODE, words, stated_along, low * rate, high * rate, against)


def _as_her_lines(ship: Ship, curves: CurvesOfForm, table: HullCurves) -> Iterator[Notice]:
    """Hold the displacement against that of her lines, where both are known."""
    lines = ship.calculated.found(hull)
    name = "displacement" if _has(curves, "displacement") else "volume"
    stated, k = _middle(curves, name)
    if lines is None or ship.package.offsets is None or stated is None:
        return
    try:
        found = hydrostatics(lines.form, float(table.drafts[k]), 0.0, table.density)
    except OutOfRange:
        return
    figure = found.displacement if name == "displacement" else found.volume
    against = f"her offsets give {like(figure, stated)}"
    yield from held(CODE, f"{name} at a draft of {_draft(curves, k)}", stated, 0.97 * figure, 1.03 * figure, against)
