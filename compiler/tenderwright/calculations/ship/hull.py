"""The hull form of the ship: from her table of offsets, or lofted from a few sections."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from tenderwright.calculations.hydrostatics.hull_form import HullForm, hull_form
from tenderwright.calculations.hydrostatics.lofting import Lofted
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steps.outcome import Absent, Failed, Lacking
from tenderwright.calculations.steps.step import step
from tenderwright.calculations.uncertainty.lofted import LoftedSure
from tenderwright.calculations.value import Given
from tenderwright.model.particulars import Particulars
from tenderwright.model.sections import Sections
from tenderwright.model.vessel import Offsets
from tenderwright.notices import Notice, Place
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

LINES = 0.003
"""Standard uncertainty of all breadths of old lines together, as a share (common practice, no source)."""


SHELL = Given(0.01, "1 %", "half-breadths of old lines, plating and landings: common practice, no source")
"""Standard uncertainty of areas of shell found from a table of offsets, as a share."""


class Hull(Struct, frozen=True):
    """The hull of the ship, and where it comes from."""

    form: HullForm
    words: str
    here: Place
    drawn_from: str
    """The evidence that it is of, such as "the table of offsets"."""
    source: str
    """Where that comes from, as the package says."""
    known: Mapping[str, Given]
    """How well it is known: what the uncertainty of how she floats takes of it."""
    area: Given
    """Standard uncertainty of areas of shell found from it, as a share."""
    value: str = ""
    """The value that it is, where it is calculated itself."""

    @property
    def given(self) -> Given:
        """Give the hull as an input of a calculation."""
        return Given(self.form, self.words, self.value or self.here)


@step()
def hull(
    offsets: Offsets | None,
    lofted: Lofted | None,
    lofted_sure: LoftedSure | None,
    sections: Sections | None,
    particulars: Particulars,
) -> Hull | Absent:
    """Make the hull form of the best evidence there is, or say why there is none."""
    if offsets is not None:
        return _of_offsets(offsets, particulars)
    if lofted is not None and sections is not None:
        drawn_from = f"{len(lofted.sections)} sections"
        words = f"lofted from {drawn_from} ({sections.source})"
        known = _breadths(sections.uncertainty) | (_between(lofted_sure) if lofted_sure is not None else {})
        return Hull(
            lofted.form,
            words,
            sections.here,
            drawn_from,
            sections.source,
            known,
            _area(lofted_sure),
            "hull.lofted.residual",
        )
    return Lacking("it needs vessel/offsets.yaml or vessel/sections.yaml")


def _breadths(stated: Quantity | None) -> dict[str, Given]:
    si = stated.si if stated else LINES
    origin = stated.at if stated else "old lines: common practice, no source"
    return {"breadth_uncertainty": Given(si, f"{si:.1%}", origin)}


def _area(sure: LoftedSure | None) -> Given:
    if sure is None:
        return Given(0.02, "2 %", "few sections: common practice, no source")
    return Given(sure.area, f"{sure.area:.1%}", "uncertainty.lofted.area")


def _between(sure: LoftedSure) -> dict[str, Given]:
    centre, metacentre = (show(u, "centre", more=1) for u in (sure.centre, sure.metacentre))
    return {
        "volume_uncertainty": Given(sure.volume, f"{sure.volume:.1%}", "uncertainty.lofted.volume"),
        "centre_uncertainty": Given(sure.centre, centre, "uncertainty.lofted.centre"),
        "metacentre_uncertainty": Given(sure.metacentre, metacentre, "uncertainty.lofted.metacentre"),
    }


def _of_offsets(offsets: Offsets, particulars: Particulars) -> Hull | Absent:
    for station in offsets.stations:
        if len(station.half_breadths) != len(offsets.waterlines):
            why = f"{len(station.half_breadths)} half-breadths for {len(offsets.waterlines)} waterlines"
            hints = ("give one half-breadth for each waterline",)
            return Failed(why, Notice("bad-table", station.here, why, hints=hints))
    try:
        form = hull_form(
            length=particulars.dimensions.length_between_perpendiculars.si,
            stations=[s.at.si for s in offsets.stations],
            waterlines=[w.si for w in offsets.waterlines],
            half_breadths=[[y.si for y in s.half_breadths] for s in offsets.stations],
            keel_heights=[s.keel.si for s in offsets.stations],
            deck_heights=[s.deck.height.si for s in offsets.stations],
            deck_half_breadths=[s.deck.half_breadth.si for s in offsets.stations],
        )
    except OutOfRange as error:
        why = f"the offsets are not a hull: {error}"
        return Failed(why, Notice("bad-table", offsets.here, why))
    words = f"{len(offsets.stations)} stations by {len(offsets.waterlines)} waterlines ({offsets.source})"
    known = _breadths(offsets.uncertainty)
    return Hull(form, words, offsets.here, "the table of offsets", offsets.source, known, SHELL)
