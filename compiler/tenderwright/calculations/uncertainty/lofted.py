"""How sure a hull is that was lofted from a few sections: what leaving out each of them changes, and the readings."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.hydrostatics.band_area import band_area
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.lofting import Lofted, drawn_through, lofting
from tenderwright.calculations.hydrostatics.read_sections import LEAST, SECTIONS_EXAMPLE, SECTIONS_INPUT
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.hydrostatics.upright import hydrostatics
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity

SHARE = 0.4
"""Part of the root of the sum of squares of what each section changes that is one standard uncertainty (derived: the
tests hold it against hulls known by full tables of offsets)."""
SHELL = 0.01
"""Standard uncertainty of an area of shell drawn through few waterlines, as a share (derived likewise)."""


class LoftedSure(Struct, frozen=True):
    """Standard uncertainties: of the volume and of areas as shares, of centre of buoyancy and metacentre in m."""

    volume: float
    centre: float
    metacentre: float
    area: float


def lofted_sure(
    length: float,
    sections: Sequence[Mapping[str, Any]],
    reading: float,
    draft: float,
    stern: Mapping[str, Any] | None = None,
    stem: Mapping[str, Any] | None = None,
) -> LoftedSure:
    """Find how sure a lofted hull is at a draft.

    Formula: u^2 = (0.4)^2 sum over sections of (change of the figure where the section is left out)^2 + what the
        readings bring: u_V = 2 u sqrt(sum w^2 v^2), u_x = 2 u sqrt(sum (w (x - x_B) v)^2)/V, u_KM = 2 u sqrt(sum (w
        y^2)^2)/V; areas besides 1 %.
    Symbols: u standard uncertainty of a reading [m]; w breadth of ship that a section stands for, v^2 the sum of
        squares of the heights that its readings stand for, y its half-breadth at the draft [m].
    Source: derived; held against hulls known by full tables of offsets, see the tests.
    Range: four sections or more that close the hull, deck edge above the draft. Raises OutOfRange.
    """
    lofted = lofting(length, sections, reading, stern, stem)
    base = _figures(lofted.form, draft)
    left_out = range(lofted.stern is None, len(lofted.sections) - (lofted.stem is None))
    if len(lofted.sections) <= LEAST or not left_out:
        raise OutOfRange("it takes more than three sections to tell how sure the hull is between them")
    changes = np.array([_figures(_without(lofted, length, i), draft) - base for i in left_out])
    between = SHARE * np.sqrt((changes**2).sum(axis=0))
    volume, centre, metacentre = _by_readings(lofted, reading, draft)
    return LoftedSure(
        volume=float(np.hypot(between[0] / base[0], volume)),
        centre=float(np.hypot(between[1], centre)),
        metacentre=float(np.hypot(between[2], metacentre)),
        area=float(np.hypot(between[3] / base[3], SHELL)),
    )


def _figures(form: HullForm, draft: float) -> Floats:
    at = hydrostatics(form, draft)
    return np.array([at.volume, at.lcb, at.km_transverse, band_area(form)])


def _without(lofted: Lofted, length: float, i: int) -> HullForm:
    others = [*lofted.sections[:i], *lofted.sections[i + 1 :]]
    return drawn_through(length, others, lofted.stern, lofted.stem)


def _by_readings(lofted: Lofted, reading: float, draft: float) -> tuple[float, float, float]:
    """Give what the readings by themselves bring: to the volume as a share, to its centre and to the metacentre."""
    sections, form = lofted.sections, lofted.form
    x = np.array([form.stations[0], *(one.x for one in sections), form.stations[-1]])
    wide = (x[2:] - x[:-2]) / 2
    high = np.array([_high(np.minimum(one.heights, draft)) for one in sections])
    y = np.array([one.at(draft) for one in sections])
    at = hydrostatics(form, draft)
    part = wide * high
    volume, centre = (2 * reading * float(np.linalg.norm(v)) / at.volume for v in (part, part * (x[1:-1] - at.lcb)))
    return volume, centre, 2 * reading * float(np.linalg.norm(wide * y**2)) / at.volume


def _high(heights: Floats) -> float:
    """Give the root of the sum of squares of the heights that readings at these heights stand for [m]."""
    ends = np.concatenate([heights[:1], heights, heights[-1:]])
    return float(np.linalg.norm((ends[2:] - ends[:-2]) / 2))


def outputs_of(found: LoftedSure) -> Mapping[str, Any]:
    """Give the standard uncertainties as outputs."""
    return {name: getattr(found, name) for name in LoftedSure.__struct_fields__}


METHOD = Method(
    name="uncertainty.lofted",
    title="How sure a hull is that was lofted from a few sections",
    formula="u² = 0.16 Σ(change where a section is left out)² + what the readings bring; areas besides 1 %",
    source=Citation("leaving out one section after the other", "held against hulls of full offsets", "derived"),
    valid="four sections or more, one near each end and one at each shoulder; deck edge above the draft",
    inputs={**SECTIONS_INPUT, "draft": quantity("length", "Draft at which it is told, even keel.")},
    outputs=(
        Symbol("volume", "standard uncertainty of volume and displacement at a draft", "fraction", "%"),
        Symbol("centre", "standard uncertainty of the centre of buoyancy along the ship", "length", "m"),
        Symbol("metacentre", "standard uncertainty of the transverse metacentre", "length", "m"),
        Symbol("area", "standard uncertainty of areas of shell", "fraction", "%"),
    ),
    kernel=lofted_sure,
    figures=outputs_of,
    example={**SECTIONS_EXAMPLE, "draft": "3 m"},
    optional=frozenset({"stern", "stem"}),
    cautions=(
        "a bluff end or a shoulder without a section of its own is known no better than this tells, and may be worse",
    ),
)
