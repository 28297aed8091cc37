"""The hull form of the ship from her table of offsets."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.hydrostatics.hull_form import HullForm, hull_form
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steps.outcome import Absent, Failed
from tenderwright.calculations.steps.step import step
from tenderwright.calculations.value import Given
from tenderwright.model.particulars import Particulars
from tenderwright.model.vessel import Offsets
from tenderwright.notices import Notice, Place


class Hull(Struct, frozen=True):
    """The hull of the ship, and where it comes from."""

    form: HullForm
    words: str
    here: Place

    @property
    def given(self) -> Given:
        """Give the hull as an input of a calculation."""
        return Given(self.form, self.words, self.here)


@step()
def hull(offsets: Offsets, particulars: Particulars) -> Hull | Absent:
    """Make the hull form, or say why the table cannot be one."""
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
    return Hull(form, words, offsets.here)
