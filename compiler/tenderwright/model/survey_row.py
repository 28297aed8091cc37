"""A row of a survey: what each column of the CSV files means."""

from typing import Annotated

from tenderwright.model.kinds import Date, Side, StrakeRef, TankRef
from tenderwright.model.marks import Key, OneOf, Within
from tenderwright.model.noun import Noun, keys_of


class SurveyRow(Noun, frozen=True, kw_only=True):
    """Thickness readings, a row for each; the first row of the file names the columns. A row names a strake and a frame, or a tank. Thicknesses may be in inches or mils, by columns named `as_built_in` or `measured_mil`, and a cell may have its own unit (`3/8 in`). A file of other columns stays as delivered, with what its columns hold in a YAML file of the same name beside it."""

    strake: Annotated[StrakeRef | None, Key("Letter of the strake; empty for a reading inside a tank.", "B")] = None
    frame: Annotated[
        float | None,
        Key("Frame, with decimals between two frames; needed with a strake.", 33.2),
        Within(least=-200, most=2000),
    ] = None
    side: Annotated[Side, Key("Side of the ship; empty on the centreline or inside a tank.", "port")] = ""
    tank: Annotated[TankRef | None, Key("The tank, for a reading inside it.", "forepeak")] = None
    member: Annotated[str, Key("The member inside the tank.", "floor at Fr 80")] = ""
    kind: Annotated[
        str, Key("Reading of the plate, or of what a pit leaves of it.", "plate"), OneOf("plate", "pit")
    ] = "plate"
    as_built_mm: Annotated[
        float,
        Key("Thickness as built, in mm without the unit; or `as_built_in`, `as_built_mil`.", 11.1),
        Within(above=0, most=500),
    ]
    measured_mm: Annotated[
        float,
        Key("Thickness measured, in mm without the unit; or `measured_in`, `measured_mil`.", 8.9),
        Within(above=0, most=500),
    ]
    date: Annotated[Date, Key("Day of the reading.", "2025-10-08")]
    instrument: Annotated[str, Key("Instrument and method of the reading.", "ultrasonic gauge")] = ""
    stage: Annotated[
        str, Key("Where and when she was: afloat, or in dock before or after blast.", "in dock before blast")
    ] = ""


COLUMNS = tuple(key for _, key in keys_of(SurveyRow))
"""The columns of a survey, in their order."""
