"""The hull form of the ship from her table of offsets."""

from __future__ import annotations

from tenderwright.calculations.hydrostatics.hull_form import HullForm, hull_form
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.value import Given, Record
from tenderwright.model.package import Package
from tenderwright.notices import Notice


def form_of(package: Package, record: Record) -> HullForm | None:
    """Make the hull form, or keep a notice that says why the table cannot be one."""
    offsets, particulars = package.offsets, package.particulars
    if offsets is None or particulars is None:
        return None
    for station in offsets.stations:
        if len(station.half_breadths) != len(offsets.waterlines):
            message = f"{len(station.half_breadths)} half-breadths for {len(offsets.waterlines)} waterlines"
            record.notices.append(
                Notice("bad-table", station.here, message, hints=("give one half-breadth for each waterline",))
            )
            return None
    try:
        return hull_form(
            length=particulars.dimensions.length_between_perpendiculars.si,
            stations=[s.at.si for s in offsets.stations],
            waterlines=[w.si for w in offsets.waterlines],
            half_breadths=[[y.si for y in s.half_breadths] for s in offsets.stations],
            keel_heights=[s.keel.si for s in offsets.stations],
            deck_heights=[s.deck.height.si for s in offsets.stations],
            deck_half_breadths=[s.deck.half_breadth.si for s in offsets.stations],
        )
    except OutOfRange as error:
        record.notices.append(Notice("bad-table", offsets.here, f"the offsets are not a hull: {error}"))
        return None


def given_form(package: Package) -> Given:
    """Give the table of offsets as an input of a calculation."""
    offsets = package.offsets
    assert offsets is not None
    text = f"{len(offsets.stations)} stations by {len(offsets.waterlines)} waterlines ({offsets.source})"
    return Given(None, text, offsets.here)
