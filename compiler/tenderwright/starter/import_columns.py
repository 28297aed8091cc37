"""What is said of a list that is imported: what each of its columns holds."""

from collections.abc import Mapping
from typing import Annotated

from msgspec import field

from tenderwright.model.delivered_columns import DeliveredColumns
from tenderwright.model.marks import Count, Key
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class ImportColumn(Noun, frozen=True, kw_only=True):
    """One column of the list, and what is read from its cells."""

    column: Annotated[str, Key("Heading of the column.", "Location")]
    reads: Annotated[
        tuple[str, ...],
        Key(
            "Forms of its cells, the first that fits; in braces stands a key of what is imported, with a point for one "
            "inside another, or `any` for what is passed over.",
            ["Fr {at} {side}"],
        ),
        Count(1),
    ]
    unit: Annotated[str, Key("Unit of figures whose cells name none; a place without one is a frame.", "in")] = ""
    down: Annotated[bool, Key("Whether an empty cell means the same as the one above it.")] = False
    here: Place


class ImportWord(Noun, frozen=True, kw_only=True):
    """A word of the list, and what it means here."""

    of: Annotated[str, Key("Key for whose value it stands.", "kind")]
    written: Annotated[str, Key("As the list has it, in capitals or not.", "Sea inlet")]
    means: Annotated[str, Key("As it is called here.", "sea chest")]
    here: Place


class ImportColumns(DeliveredColumns, frozen=True, kw_only=True):
    """How a list is read that becomes a file of the package."""

    columns: Annotated[tuple[ImportColumn, ...], Key("The columns that are read."), Count(1)]
    words: Annotated[tuple[ImportWord, ...], Key("Words of the list for what has another name here.")] = ()
    same: Annotated[
        Mapping[str, Annotated[str, Key("Its value.", "zinc")]], Key("What is the same for every row, by key.")
    ] = field(default_factory=dict)
    here: Place
