"""What floats her: offsets, else curves of form, else a hull lofted from a few sections, else an estimate."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

import numpy as np
from msgspec import Struct

from tenderwright.calculations.hydrostatics.buoyant import Buoyant
from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.from_dimensions import METHOD as FROM_DIMENSIONS
from tenderwright.calculations.hydrostatics.from_dimensions import Estimate
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.steps.outcome import Absent, Failed, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.curves import AtDraft, CurvesOfForm
from tenderwright.model.particulars import Particulars
from tenderwright.model.sections import Sections
from tenderwright.model.vessel import Offsets
from tenderwright.notices import Notice, Place
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

TABLE = 0.005
"""Standard uncertainty of the displacement at a draft in a table or in curves of form, as a share (common practice, no
source)."""
ESTIMATED = 0.05
"""Standard uncertainty of what is estimated from main dimensions, as a share (judged by the ships of the tests; no
source)."""
ESTIMATED_CENTRE = 0.02
"""Standard uncertainty of an estimated LCB, as a share of the length (judged by the ships of the tests; no source)."""
SALT_WATER = 1025.0
"""Density of the water that a table is for where it states none, kg/m3."""

CURVES_CAUTION = (
    "She is floated on her curves of form, corrected for trim up to 2 % of her length; at a trim of 1 % KM may be out "
    "by 1 %. They are read between their first draft and their last, and no further."
)
BETTER = (
    "it needs vessel/offsets.yaml, vessel/curves.yaml or vessel/sections.yaml: an estimate from main dimensions does "
    "not bear it"
)
ESTIMATE_CAUTION = (
    "A first answer only, no basis for a docking: she is floated on hydrostatics estimated from her main dimensions. "
    "Her lines, curves of form or sections take their place."
)


class Buoyancy(Struct, frozen=True):
    """What floats her, where it comes from, and how well it is known."""

    hull: Buoyant
    source: str
    """In words that go on from "hydrostatics "."""
    words: str
    here: Place
    known: Mapping[str, Given]
    """How well it is known: what the uncertainty of how she floats takes of it."""
    value: str = ""
    """The value that it is, where it is calculated itself."""
    caution: str = ""
    """What a reader of any figure that rests on it is told; nothing where her form is known."""
    estimated: Lacking | None = None
    """What it takes where it is an estimate, which bears no trim and no stability; else None."""

    @property
    def given(self) -> dict[str, Given]:
        """Give it as an input of a calculation."""
        name = "curves" if isinstance(self.hull, HullCurves) else "offsets"
        return {name: Given(self.hull, self.words, self.value or self.here)}

    @property
    def known_by_form(self) -> bool:
        """Tell whether her form is known, so that she can be followed to any trim and until she is dry."""
        return not isinstance(self.hull, HullCurves)


class Curves(Struct, frozen=True):
    """Her curves of form as a hull, and where they come from."""

    hull: HullCurves
    source: str
    """In words that go on from "hydrostatics "."""
    words: str
    here: Place
    known: Mapping[str, Given]
    """How well it is known: what the uncertainty of how she floats takes of it."""


@step()
def curves_hull(curves: CurvesOfForm, particulars: Particulars) -> Curves | Absent:
    """Make a hull of the curves of form, or say why they cannot be one."""
    table: list[AtDraft] = list(curves.rows)
    falling = _not_rising(table)
    if falling is not None:
        return falling
    try:
        columns = _columns(table)
        length = particulars.dimensions.length_between_perpendiculars.si
        density = curves.density.si if curves.density else SALT_WATER
        drafts_up = curves.draft_zero.si if curves.draft_zero else 0.0
        heights_up = curves.height_zero.si if curves.height_zero else drafts_up
        hull = HullCurves(
            length=length,
            density=density,
            drafts=columns["draft"] + drafts_up,
            displacement=columns["displacement"] if "displacement" in columns else columns["volume"] * density,
            lcb=_forward_of_ap(columns["lcb"], curves, length),
            km=columns["km"] + heights_up if "km" in columns else columns["kb"] + columns["bm"] + heights_up,
            kb=columns["kb"] + heights_up if "kb" in columns else None,
            lcf=_forward_of_ap(columns["lcf"], curves, length) if "lcf" in columns else None,
            immersion=columns.get("immersion"),
            bm_longitudinal=columns.get("bm_longitudinal"),
            moment=columns.get("moment"),
            moment_kg=curves.moment_kg.si + heights_up if curves.moment_kg else None,
            wetted_surface=columns.get("wetted_surface"),
        )
    except OutOfRange as error:
        why = f"the curves of form are not a hull: {error}"
        return Failed(why, Notice("bad-table", curves.here, why))
    si = curves.uncertainty.si if curves.uncertainty else TABLE
    origin = curves.uncertainty.at if curves.uncertainty else "a table of hydrostatics: common practice, no source"
    source = "; ".join((f"from the curves of form ({curves.source})", *hull.derived))
    words = "; ".join((f"{len(table)} drafts, {table[0].draft} to {table[-1].draft} ({curves.source})", *hull.derived))
    return Curves(hull, source, words, curves.here, {"breadth_uncertainty": Given(si, f"{si:.1%}", origin)})


def _not_rising(rows: list[AtDraft]) -> Failed | None:
    """Tell of the first draft, displacement or volume that is not more than the one before."""
    for before, after in pairwise(rows):
        columns = (
            ("draft", before.draft, after.draft),
            ("displacement", before.displacement, after.displacement),
            ("volume", before.volume, after.volume),
        )
        for name, low, high in columns:
            if low is not None and high is not None and high.si <= low.si:
                why = f"the {name} {high} must rise above {low}, that of the row before"
                return Failed(why, Notice("bad-table", high.at, why))
    return None


_NEEDED = (("displacement", "volume"), ("lcb",), ("km", "bm"), ("moment", "bm_longitudinal"))


def _columns(rows: list[AtDraft]) -> Mapping[str, np.ndarray]:
    """Give the columns of the table in SI. Raises OutOfRange where one is given at some drafts only, or is missing."""
    table: dict[str, list[Quantity | None]] = {
        "draft": [row.draft for row in rows],
        "displacement": [row.displacement for row in rows],
        "volume": [row.volume for row in rows],
        "lcb": [row.lcb for row in rows],
        "lcf": [row.lcf for row in rows],
        "km": [row.km for row in rows],
        "kb": [row.kb for row in rows],
        "bm": [row.bm for row in rows],
        "immersion": [row.immersion for row in rows],
        "moment": [row.moment for row in rows],
        "bm_longitudinal": [row.bm_longitudinal for row in rows],
        "wetted_surface": [row.wetted_surface for row in rows],
    }
    found = {}
    for name, column in table.items():
        given = [one for one in column if one is not None]
        if given and len(given) != len(rows):
            raise OutOfRange(f"`{name}` is given at {len(given)} of {len(rows)} drafts; give it at each or at none")
        if given:
            found[name] = np.array([one.si for one in given], dtype=np.float64)
    for names in _NEEDED:
        if not any(name in found for name in names):
            raise OutOfRange(f"they need {' or '.join(f'`{name}`' for name in names)} at each draft")
    if "km" not in found and "kb" not in found:
        raise OutOfRange("they need `km`, or `kb` with `bm`, at each draft")
    return found


def _forward_of_ap(column: np.ndarray, curves: CurvesOfForm, length: float) -> np.ndarray:
    zero = {"after perpendicular": 0.0, "amidships": length / 2, "forward perpendicular": length}[curves.centres.from_]
    return zero + column if curves.centres.plus == "forward" else zero - column


@step_of(FROM_DIMENSIONS, "hydrostatics.estimate")
def estimated_hull(
    offsets: Offsets | None, curves: CurvesOfForm | None, sections: Sections | None, particulars: Particulars
) -> Uses | Absent:
    """Estimate her hydrostatics from main dimensions, where there is no better evidence."""
    if offsets is not None or curves is not None or sections is not None:
        return NotAsked("her lines, curves of form or sections are known")
    size, displacement = particulars.dimensions, particulars.displacement
    if displacement is None:
        return Lacking("it needs `displacement` in vessel/particulars.yaml")
    inputs = {
        "length": given(size.length_between_perpendiculars),
        "beam": given(size.beam),
        "draft": given(size.draft),
        "displacement": given(displacement),
        "depth": given(size.depth),
        "density": Given(SALT_WATER, show(SALT_WATER, "density"), "salt water"),
    }
    return Uses("from main dimensions and the displacement stated", inputs, displacement.at)


@step()
def buoyancy(
    hull: Hull | Absent,
    offsets: Offsets | None,
    curves_hull: Curves | Absent,
    estimated_hull: Estimate | Absent,
    particulars: Particulars,
) -> Buoyancy | Absent:
    """Give what floats her by the best evidence: offsets, then curves of form, then sections, then an estimate.

    Where the best there is has a mistake, nothing worse takes its place; a mistake in what is worse takes nothing away.
    """
    evidence = (hull,) if offsets is not None else (curves_hull, hull, estimated_hull)
    best = next((one for one in evidence if not isinstance(one, (Lacking, NotAsked))), None)
    if isinstance(best, Absent):
        return best.passed_on()
    if isinstance(best, Curves):
        return Buoyancy(best.hull, best.source, best.words, best.here, best.known, caution=CURVES_CAUTION)
    if isinstance(best, Hull):
        return Buoyancy(
            best.form, f"from {best.drawn_from} ({best.source})", best.words, best.here, best.known, best.value
        )
    if isinstance(best, Estimate):
        return _estimated(best, particulars)
    return Lacking(
        "it needs the hull: vessel/offsets.yaml, vessel/curves.yaml or vessel/sections.yaml, or for a first answer "
        "`displacement` in vessel/particulars.yaml"
    )


def _estimated(found: Estimate, particulars: Particulars) -> Buoyancy:
    off = ESTIMATED_CENTRE * particulars.dimensions.length_between_perpendiculars.si
    words, origin = "estimated from main dimensions by published formulas", "an estimate: judged, no source"
    return Buoyancy(
        found.hull,
        words,
        f"{words}, block coefficient {found.block_coefficient:.3f}",
        particulars.here,
        {
            "breadth_uncertainty": Given(ESTIMATED, f"{ESTIMATED:.1%}", origin),
            "centre_uncertainty": Given(off, show(off, "centre"), origin),
        },
        caution=ESTIMATE_CAUTION,
        estimated=Lacking(BETTER),
    )
