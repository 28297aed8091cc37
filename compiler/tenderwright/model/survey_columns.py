"""How the file of a gauging firm is read: what each of its columns holds."""

from typing import Annotated

from tenderwright.model.delivered_columns import DeliveredColumns
from tenderwright.model.kinds import Date, Length, Side
from tenderwright.model.marks import Count, Key, OneOf
from tenderwright.model.noun import Noun
from tenderwright.notices import Place

Unit = Annotated[str, OneOf("mm", "in", "mil")]


class ColumnRead(Noun, frozen=True, kw_only=True):
    """One column of the firm's, and what is read from its cells."""

    column: Annotated[str, Key("Heading of the column, as delivered.", "LOCATION", "GAUGED (IN)")]
    reads: Annotated[
        tuple[str, ...],
        Key(
            "Forms of its cells, the first that fits. In braces stands what is read: `strake`, `frame`, `side`, `tank`, "
            "`member`, `kind`, `as_built`, `measured`, `date`, `instrument`, `stage`; `any` is passed over.",
            ["Frame {frame} {side}", "Fr. {frame} {side}"],
            ["{measured}"],
        ),
        Count(1),
    ]
    unit: Annotated[Unit, Key("Unit of thicknesses whose cells name none.", "in")] = "mm"
    side: Annotated[Side, Key("Side of what it holds, where each side has its column.", "port")] = ""
    down: Annotated[bool, Key("Whether an empty cell means the same as the one above it.")] = False
    here: Place


class WordRead(Noun, frozen=True, kw_only=True):
    """A word of the firm's, and what it means here."""

    of: Annotated[
        str,
        Key("What it is a word for.", "tank"),
        OneOf("strake", "frame", "side", "tank", "member", "kind", "instrument", "stage"),
    ]
    written: Annotated[str, Key("As delivered, in capitals or not.", "FPT")]
    means: Annotated[str, Key("As it is called here.", "forepeak")]


class SameOfAll(Noun, frozen=True, kw_only=True):
    """What holds for every row whose cells do not say otherwise."""

    strake: Annotated[str, Key("Letter of the strake.", "A")] = ""
    side: Annotated[Side, Key("Side of the ship.", "port")] = ""
    tank: Annotated[str, Key("Tank whose members are gauged.", "forepeak")] = ""
    member: Annotated[str, Key("The member inside the tank.", "floor at Fr 80")] = ""
    kind: Annotated[
        str, Key("Reading of the plate, or of what a pit leaves of it.", "plate"), OneOf("plate", "pit")
    ] = "plate"
    as_built: Annotated[Length | None, Key("Thickness when she was built.", "3/8 in", "9.5 mm")] = None
    date: Annotated[Date | None, Key("Day of the readings.", "2025-10-08")] = None
    instrument: Annotated[str, Key("Instrument and method of the reading.", "ultrasonic gauge")] = ""
    stage: Annotated[
        str, Key("Where and when she was: afloat, or in dock before or after blast.", "in dock before blast")
    ] = ""


class SurveyColumns(DeliveredColumns, frozen=True, kw_only=True):
    """How a survey that a firm delivered is read: the CSV file of the same name beside it, which stays as delivered."""

    columns: Annotated[tuple[ColumnRead, ...], Key("The columns that are read."), Count(1)]
    words: Annotated[
        tuple[WordRead, ...],
        Key("Words of the firm's for what has another name here; `P`, `S`, `STBD` and the like are known."),
    ] = ()
    same: Annotated[SameOfAll | None, Key("What is the same for every row.")] = None
    here: Place
