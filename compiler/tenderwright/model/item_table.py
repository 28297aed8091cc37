"""A table of an item: what each of its rows is about, what its columns show, and which cells the yard fills."""

from collections.abc import Mapping
from typing import Annotated

from msgspec import field

from tenderwright.model.build import Name
from tenderwright.model.kinds import AnyQuantity, Identifier, IdentifierName
from tenderwright.model.marks import Count, Key, OneOf
from tenderwright.model.noun import Noun
from tenderwright.notices import Place

WITH_TENDER, IN_DOCK = "with the tender", "in dock"


class TableColumn(Noun, frozen=True, kw_only=True):
    """A column of a table: of what it shows, or to be filled by the yard."""

    column: Annotated[str, Key("Heading of the column, unlike that of any other.", "Bore", "Wear of the spindle")]
    shows: Annotated[
        str,
        Key(
            "What it shows of the thing that a row is drawn from; left out, it shows the `cells` of the rows, or is filled by the yard.",
            "bore",
        ),
        OneOf(
            "name",
            "band",
            "kind",
            "place",
            "side",
            "height",
            "off centre",
            "bore",
            "length",
            "valve",
            "state",
            "use",
            "capacity",
            "held oil",
            "alloy",
            "mass",
            "fixing",
            "left",
            "limit",
            "last found",
        ),
    ] = ""
    filled: Annotated[
        str,
        Key(
            "Where the yard fills it: with the tender, in the price form; or in dock, by hand on paper, to be handed over and kept with the findings.",
            IN_DOCK,
        ),
        OneOf(WITH_TENDER, IN_DOCK),
    ] = ""
    unit: Annotated[str, Key("Unit in which the yard fills it.", "mm")] = ""
    here: Place


class WrittenRow(Noun, frozen=True, kw_only=True):
    """A row of a table that is written in the item itself."""

    row: Annotated[Identifier, Key("Identifier of the row; never changed or used again after issue.", "port-aft", "12")]
    text: Annotated[str, Key("What the row is about.", "Port windlass brake")]
    from_: Annotated[
        AnyQuantity | None,
        Key(
            "Where the row is a band, such as of plate weights: what it begins above; left out, at nothing.", "50 kg/m2"
        ),
    ] = None
    to: Annotated[
        AnyQuantity | None, Key("What the band goes up to, and holds; left out, it has no end.", "80 kg/m2")
    ] = None
    quantity: Annotated[
        AnyQuantity | None,
        Key("Quantity of the lines that are priced for each row, where it is not that of the line.", "3 each"),
    ] = None
    cells: Annotated[
        Mapping[str, Annotated[str, Key("What stands in the cell.", "100 mm")]],
        Key("What stands in the columns, by heading."),
    ] = field(default_factory=dict)
    here: Place


class ItemTable(Noun, frozen=True, kw_only=True):
    """A table of an item, printed as a ruled form; lines may be priced for each of its rows."""

    table: Annotated[IdentifierName, Key("Identifier, unique in the item.", "valves")]
    title: Annotated[str, Key("Title as the tender prints it.", "Sea valves, as found")]
    rows_from: Annotated[
        str,
        Key("Draws a row for each of these, whose data are written once, in their own file.", "openings"),
        OneOf("openings", "anodes", "tanks", "clearances"),
    ] = ""
    of: Annotated[
        tuple[Annotated[Name, Key("A kind, or one identifier.", "sea chest", "suction-fire")], ...],
        Key(
            "Which of them: kinds of opening, alloys of anodes, uses of tanks, or identifiers; left out, those that `where` names, or else all."
        ),
    ] = ()
    rows: Annotated[tuple[WrittenRow, ...], Key("Rows written here, after those drawn.")] = ()
    columns: Annotated[tuple[TableColumn, ...], Key("The columns, from left to right."), Count(1)]
    note: Annotated[str, Key("How the yard fills it.", "One row for each valve; turns counted from open.")] = ""
    here: Place
