"""The outline on which drawings are made: her own lines, or a stand-in from her main dimensions."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.hydrostatics.drawn_outline import drawn_outline
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.steps.step import step
from tenderwright.model.particulars import Particulars


class Outline(Struct, frozen=True):
    """What the hull is drawn by."""

    form: HullForm
    drawn_from: str
    """In words that go on from "hull outline from "."""
    known: bool
    """Whether it is her form; else it is drawn from her dimensions, and only to show where things are."""

    @property
    def note(self) -> str:
        """Say, to follow a caption, that the outline is not her form; nothing where it is."""
        return "" if self.known else f" Hull outline from {self.drawn_from}."


@step(lazy=True)
def hull_outline(hull: Hull | None, particulars: Particulars) -> Outline:
    """Give the outline of the hull, for drawings alone."""
    if hull is not None:
        return Outline(hull.form, hull.drawn_from, known=True)
    size, straight = particulars.dimensions, particulars.keel.straight
    aft = -size.aft_overhang.si if size.aft_overhang else 0.0
    keel_aft, keel_forward = sorted((straight.from_.x, straight.to.x))
    form = drawn_outline(
        size.length_between_perpendiculars.si,
        (aft, aft + size.length_overall.si),
        size.beam.si,
        size.depth.si,
        (keel_aft, keel_forward),
    )
    return Outline(form, "her length, beam and depth alone: it is not her form", known=False)
