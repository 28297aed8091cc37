"""How far the docking is paid for, as donors see it: the ship from the side, filled from the stern forward."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.donor_bar import KINDS
from tenderwright.documents.drawings.funding_ladder import WIDTH
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.edition import Figure

_KEY = 5.0
"""Height of the key under her, mm."""


def donor_ship(ship: str, form: HullForm, shares: Sequence[tuple[str, int]]) -> Figure:
    """Draw her profile: dense where the money is safe, hatched where it is asked for, white where it is wanted.

    Shares are of a hundred, by the words of `KINDS`.
    """
    aft, forward = float(form.stations[0]), float(form.stations[-1])
    per = (WIDTH - 1.0) / (forward - aft)
    top = max(form.deck_heights.tolist())
    low = min(form.keel_heights.tolist())

    def place(point: Point) -> Point:
        return (0.5 + (point[0] - aft) * per, 0.5 + (top - point[1]) * per)

    marks: list[str] = []
    x, reached = aft, 0
    for word, share in shares:
        if share <= 0:
            continue
        reached += share
        end = aft + (forward - aft) * min(reached, 100) / 100
        piece = list(map(place, _piece(form, x, end)))
        marks.append(KINDS[word].over([piece]) + pen.polygon(piece, pen.FINE))
        x = end
    marks.append(pen.polygon(list(map(place, outline.profile(form))), pen.HEAVY))
    foot = 0.5 + (top - low) * per + 2.0
    marks += _key(shares, foot + _KEY / 2)
    told = ", ".join(f"{share} {word}" for word, share in shares if share > 0)
    words = f"{ship} from the side. Of every 100 that the docking comes to: {told}."
    svg = pen.picture(WIDTH, foot + _KEY, words, marks)
    return Figure("donor-ship", svg, "", words, title="How far we are", audience="public")


def _piece(form: HullForm, aft: float, forward: float) -> list[Point]:
    """Outline the part of her profile between two places."""
    inside = [x for x in form.stations.tolist() if aft < x < forward]
    cuts = np.array([aft, *inside, forward])
    keel = np.interp(cuts, form.stations, form.keel_heights).tolist()
    deck = np.interp(cuts, form.stations, form.deck_heights).tolist()
    along = cuts.tolist()
    return [*zip(along, keel, strict=True), *reversed(list(zip(along, deck, strict=True)))]


def _key(shares: Sequence[tuple[str, int]], middle: float) -> list[str]:
    marks, x = [], 0.5
    for word, share in shares:
        if share > 0:
            told = f"{share} of every 100 {word}"
            marks.append(KINDS[word].swatch(x, middle))
            marks.append(pen.text((x + 8.4, middle + 1.0), told, pen.NORMAL, bold=True, kind="share"))
            x += 14.0 + pen.text_width(told, pen.NORMAL, True)
    return marks
