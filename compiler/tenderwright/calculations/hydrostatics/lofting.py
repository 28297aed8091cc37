"""A hull form lofted from a few sections: faired, and drawn through along the ship."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.hydrostatics.fairing import faired
from tenderwright.calculations.hydrostatics.hull_form import NEAR, HullForm, hull_form
from tenderwright.calculations.hydrostatics.monotone import monotone
from tenderwright.calculations.hydrostatics.read_sections import (
    CLOSE,
    LEAST,
    SECTIONS_EXAMPLE,
    SECTIONS_INPUT,
    End,
    Section,
    end_of,
    section_of,
)
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.quantities.display import show

WATERLINES = 17
"""Waterlines of the lofted form, from the lowest keel to the highest deck, closer towards the keel."""
RAIL = 1e-3
"""Least height of the deck edge over the keel line [m], where her profile runs up to the very deck."""
CLOSER = 1.3
"""Power of the share of the height that spaces them."""
STATIONS = 33
"""Even stations of the lofted form, beside those of the sections and of the corners of her profile."""


class Lofted(Struct, frozen=True, eq=False):
    """The hull form, and how far her sections were moved to make it fair."""

    form: HullForm
    sections: tuple[Section, ...]
    """As faired."""
    stern: End | None
    stem: End | None
    residuals: tuple[Floats, ...]
    """How far each half-breadth of each section was moved [m]."""

    @property
    def largest(self) -> tuple[int, int]:
        """Give the section and the point in it that were moved farthest."""
        by_section = [int(np.abs(moved).argmax()) for moved in self.residuals]
        at = max(range(len(by_section)), key=lambda i: abs(self.residuals[i][by_section[i]]))
        return at, by_section[at]


def lofting(
    length: float,
    sections: Sequence[Mapping[str, Any]],
    reading: float,
    stern: Mapping[str, Any] | None = None,
    stem: Mapping[str, Any] | None = None,
) -> Lofted:
    """Loft a hull form from sections read off a plan.

    Formula: each section a monotone cubic by its girth; each waterline a monotone cubic through the sections, closed
        where it meets the profile of stem and stern; the readings faired before, see `faired`.
    Symbols: length between perpendiculars [m]; sections with x [m], heights and half-breadths [m]; reading: standard
        uncertainty of a half-breadth [m]; stern and stem: x and heights [m] from the keel up; without one the hull
        ends flat at the outermost section.
    Source: derived; measured on hulls known by full tables of offsets, see the tests.
    Range: at least three sections, rising from keel to deck edge. Raises OutOfRange.
    """
    read = [section_of(one) for one in sorted(sections, key=lambda one: float(one["x"]))]
    if len(read) < LEAST:
        raise OutOfRange(f"a hull is lofted from at least {LEAST} sections")
    for before, after in pairwise(read):
        if after.x - before.x < CLOSE * length:
            raise OutOfRange(f"two sections stand at {show(after.x, 'centre')} forward of the after perpendicular")
    aft, fore = end_of(stern, length, -1), end_of(stem, length, 1)
    if (aft is not None and aft.x[-1] > read[0].x + NEAR) or (fore is not None and fore.x[-1] < read[-1].x - NEAR):
        raise OutOfRange("a section stands beyond the end of her profile")
    heights = _waterlines(read, aft, fore)
    lines = [_Line(z, read, _Profile(read, aft, fore), CLOSE * length) for z in heights.tolist()]
    moved = _moved(read, heights, lines, reading)
    fair = [Section(s.x, s.heights, np.maximum(s.half_breadths + m, 0.0)) for s, m in zip(read, moved, strict=True)]
    residuals = tuple(new.half_breadths - old.half_breadths for new, old in zip(fair, read, strict=True))
    return Lofted(drawn_through(length, fair, aft, fore), tuple(fair), aft, fore, residuals)


def drawn_through(length: float, sections: Sequence[Section], stern: End | None, stem: End | None) -> HullForm:
    """Draw the hull through sections as they are; see `lofting`."""
    profile = _Profile(sections, stern, stem)
    keel_x, keel_z = profile.keel
    heights, stations = _waterlines(sections, stern, stem), _stations(length, sections, keel_x)
    breadths = np.zeros((stations.size, heights.size))
    for k, z in enumerate(heights.tolist()):
        line = _Line(z, sections, profile, CLOSE * length)
        if line.x.size > 1:
            inside = (stations > line.x[0] - NEAR) & (stations < line.x[-1] + NEAR)
            breadths[inside, k] = _positive(monotone(line.x, line.y[:, None]).at(stations[inside])[0][:, 0])
    rows = [(s.x, s.heights[-1], s.half_breadths[-1], s.at(float(s.heights[0]))) for s in sections]
    if stern is not None and stern.x[-1] < rows[0][0] - CLOSE * length:
        rows.insert(0, (stern.x[-1], stern.heights[-1], stern.deck_half_breadth, stern.half_breadth))
    if stem is not None and stem.x[-1] > rows[-1][0] + CLOSE * length:
        rows.append((stem.x[-1], stem.heights[-1], stem.deck_half_breadth, stem.half_breadth))
    edge = np.array(rows)
    deck, deck_breadth, siding = monotone(edge[:, 0], edge[:, 1:]).at(stations)[0].T
    bottom = np.minimum(np.interp(stations, keel_x, keel_z), deck - RAIL)
    breadths[heights < bottom[:, None] - NEAR] = 0.0
    return hull_form(
        length=length,
        stations=stations,
        waterlines=heights,
        half_breadths=breadths,
        keel_heights=bottom,
        deck_heights=deck,
        deck_half_breadths=_positive(deck_breadth),
        half_sidings=_positive(siding),
    )


class _Profile:
    """The bottom of her profile from the taffrail down, along the keel, and up to the stem head."""

    def __init__(self, sections: Sequence[Section], stern: End | None, stem: End | None) -> None:
        low, high = stern.x[0] if stern else -np.inf, stem.x[0] if stem else np.inf
        between = [one for one in sections if low + NEAR < one.x < high - NEAR]
        ends = ([] if stern is None else [stern]), ([] if stem is None else [stem])
        self.x = np.concatenate([*(e.x[::-1] for e in ends[0]), [s.x for s in between], *(e.x for e in ends[1])])
        self.z = np.concatenate(
            [*(e.heights[::-1] for e in ends[0]), [s.heights[0] for s in between], *(e.heights for e in ends[1])]
        )
        self.sidings = (stern.half_breadth if stern else None, stem.half_breadth if stem else None)
        lowest = int(self.z.argmin())
        self._aft = self._rising(self.x[lowest::-1], self.z[lowest::-1])
        self._fore = self._rising(self.x[lowest:], self.z[lowest:])

    @staticmethod
    def _rising(x: Floats, z: Floats) -> tuple[Floats, Floats]:
        """Give a branch by its height, which must rise: a level part counts where it ends."""
        return np.maximum.accumulate(z) - NEAR * 1e-3 * np.arange(z.size)[::-1], x

    def ends(self, height: float) -> tuple[float, float]:
        """Give where a waterline at a height [m] meets the profile aft and forward [m]."""
        return float(np.interp(height, *self._aft)), float(np.interp(height, *self._fore))

    @property
    def keel(self) -> tuple[Floats, Floats]:
        """Give the keel line, x rising and height; of an upright end only its foot."""
        first = int(np.flatnonzero(self.x < self.x[0] + NEAR)[-1])
        last = int(np.flatnonzero(self.x > self.x[-1] - NEAR)[0])
        return self.x[first : last + 1], self.z[first : last + 1]


class _Line:
    """A waterline: where it ends, and the sections that it crosses between."""

    def __init__(self, height: float, sections: Sequence[Section], profile: _Profile, close: float) -> None:
        aft, fore = profile.ends(height)
        crossed = [
            i for i, s in enumerate(sections) if s.heights[0] <= height + NEAR and aft - close < s.x < fore + close
        ]
        x, y = [sections[i].x for i in crossed], [sections[i].at(height) for i in crossed]
        self.first = 0
        """Where the first section crossed stands in the line."""
        self.crossed = crossed
        if profile.sidings[0] is not None and (not x or x[0] > aft + close):
            x, y, self.first = [aft, *x], [profile.sidings[0], *y], 1
        if profile.sidings[1] is not None and (not x or x[-1] < fore - close):
            x, y = [*x, fore], [*y, profile.sidings[1]]
        self.x, self.y = np.array(x), np.array(y)


def _moved(sections: Sequence[Section], heights: Floats, lines: Sequence[_Line], reading: float) -> list[Floats]:
    """Give how far fairing moves each half-breadth of each section [m]."""
    drawn = [(z, line) for z, line in zip(heights.tolist(), lines, strict=True) if line.x.size > 1]
    fair = faired([line.x for _, line in drawn], [line.y for _, line in drawn], reading) if reading > 0 else []
    at: list[tuple[list[float], list[float]]] = [([], []) for _ in sections]
    for (z, line), y in zip(drawn, fair, strict=bool(fair)):
        for k, i in enumerate(line.crossed, line.first):
            at[i][0].append(z)
            at[i][1].append(float(y[k] - line.y[k]))
    return [
        np.interp(one.heights, z, off) if z else np.zeros(one.heights.size)
        for one, (z, off) in zip(sections, at, strict=True)
    ]


def _positive(half_breadths: Floats) -> Floats:
    """Take what rounding leaves below nothing as nothing."""
    return np.maximum(half_breadths, 0.0)


def _waterlines(sections: Sequence[Section], stern: End | None, stem: End | None) -> Floats:
    """Give the heights of the waterlines [m], closer towards the keel."""
    every = np.concatenate([*(one.heights for one in sections), *(end.heights for end in (stern, stem) if end)])
    low, high = float(every.min()), float(every.max())
    return low + (high - low) * np.linspace(0.0, 1.0, WATERLINES) ** CLOSER


def _stations(length: float, sections: Sequence[Section], keel: Floats) -> Floats:
    """Give the stations [m]: the corners of the keel line, the sections, and even ones between."""
    kept = keel.tolist()
    for x in (*(one.x for one in sections), *np.linspace(keel[0], keel[-1], STATIONS).tolist()):
        if keel[0] < x < keel[-1] and min(abs(x - other) for other in kept) > CLOSE * length:
            kept.append(x)
    return np.unique(kept)


def outputs_of(lofted: Lofted) -> Mapping[str, Any]:
    """Give the outputs: how large the form is, and how far the readings were moved to make it fair."""
    moved = np.concatenate(lofted.residuals)
    section, point = lofted.largest
    return {
        "sections": len(lofted.sections),
        "residual": float(np.sqrt(np.mean(moved**2))),
        "largest": float(abs(lofted.residuals[section][point])),
        "largest_at": lofted.sections[section].x,
        "largest_height": float(lofted.sections[section].heights[point]),
    }


METHOD = Method(
    name="hydrostatics.lofting",
    title="Hull form lofted from a few sections",
    formula="sections by monotone cubics; waterlines by monotone cubics through them, closed at the profile of stem "
    "and stern; readings faired by least squares within their uncertainty",
    source=Citation(
        "fairing: E. T. Whittaker, Proc. Edinburgh Math. Soc. 41 (1923); monotone cubics: Fritsch and Butland, SIAM J. "
        "Sci. Stat. Comput. 5 (1984)",
        "lofting",
        "derived",
    ),
    valid="five sections or more, one near each end and one at each shoulder; stem and stern that do not run back as "
    "they rise",
    inputs=SECTIONS_INPUT,
    outputs=(
        Symbol("sections", "sections that the form is lofted from", "number", ""),
        Symbol("residual", "root of the mean square by which fairing moved a half-breadth", "length", "mm"),
        Symbol("largest", "farthest that it moved one", "length", "mm"),
        Symbol("largest_at", "where that section stands, forward of AP", "length", "m"),
        Symbol("largest_height", "height of that point above the baseline", "length", "m"),
    ),
    kernel=lofting,
    figures=outputs_of,
    example=SECTIONS_EXAMPLE,
    optional=frozenset({"stern", "stem"}),
    cautions=("Between sections the form is drawn, not known: see how sure it is.",),
)
