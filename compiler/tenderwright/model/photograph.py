"""A photograph: a row of photographs.csv, with the file that it tells of."""

import datetime
from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.kinds import AnodeRef, DayOrUnknown, ItemRef, OpeningRef, Side, StrakeRef, TankRef
from tenderwright.model.marks import Key, OneOf
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position

STAGES = ("before", "opened", "prepared", "during", "after")


class Photograph(Noun, frozen=True, kw_only=True):
    """A photograph: when and where it was taken, what it shows, by whom, and who may see it."""

    file: Annotated[str, Key("Name of the file inside the folder photographs/.", "2026-05-20-strake-c-fr-40.jpg")]
    date: Annotated[DayOrUnknown, Key("Day on which it was taken, or `unknown`.", "2026-05-20")]
    caption: Annotated[
        Prose, Key("What it shows, for who looks and for who cannot see it.", "Doubler with a weeping seam")
    ]
    side: Annotated[Side, Key("Side of the ship that it shows.", "port")] = ""
    strake: Annotated[StrakeRef | None, Key("Letter of the strake that it shows.", "C")] = None
    frame: Annotated[Position | None, Key("Where along the ship it was taken.", "Fr 40", "12 m abaft FP")] = None
    tank: Annotated[TankRef | None, Key("Tank that it shows, from within or without.", "forepeak")] = None
    opening: Annotated[OpeningRef | None, Key("Opening in the hull that it shows.", "sea-chest-port")] = None
    anode: Annotated[AnodeRef | None, Key("Number of the anode that it shows.", "p3")] = None
    space: Annotated[str, Key("Compartment, deck or place that is none of these.", "engine room")] = ""
    looking: Annotated[str, Key("Which way it looks.", "forward", "up, from the dock floor")] = ""
    stage: Annotated[
        str, Key("Where in the work it was taken: before it, when opened, prepared, during or after."), OneOf(*STAGES)
    ] = "before"
    item: Annotated[ItemRef | None, Key("The item of the tender that it bears on.", "335")] = None
    finding: Annotated[
        str, Key("Number of the report or finding that it belongs to.", "CF-01", "survey of 2025, no. 14")
    ] = ""
    by: Annotated[str, Key("Who took it, by office or name.", "Ship manager")] = ""
    rights: Annotated[str, Key("Who holds the rights, and what was allowed.", "the trust's own")] = ""
    may_be_published: Annotated[
        str, Key("Whether anybody may be shown it, as in a paper for a funder."), OneOf("yes", "no")
    ] = "no"
    here: Place

    @property
    def day(self) -> datetime.date | None:
        """Give the day on which it was taken; None where nobody knows."""
        return None if self.date == "unknown" else datetime.date.fromisoformat(self.date)

    @property
    def published(self) -> bool:
        """Tell whether anybody may be shown it."""
        return self.may_be_published == "yes"


class Photographs(Noun, frozen=True, kw_only=True):
    """Photographs, a row for each, whose files lie in the folder photographs/ beside it; those that only the owner may see have the same file and folder under owner/. A row may name a strake and a frame, a tank, an opening, an anode, or another space in words. The files stay as they are: papers show them smaller, without place, camera and names that a camera writes into them."""

    photographs: Annotated[tuple[Photograph, ...], Key("The photographs, a row for each.")]
