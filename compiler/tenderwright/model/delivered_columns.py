"""How a CSV file that somebody delivered is written: headings, separators, dates."""

from typing import Annotated

from tenderwright.model.marks import Key, OneOf, Within
from tenderwright.model.noun import Noun


class DeliveredColumns(Noun, frozen=True, kw_only=True):
    """How a CSV file is read that stays as it was delivered."""

    heading_row: Annotated[
        int,
        Key("Line of the file on which the headings stand; those above it are passed over.", 6),
        Within(least=1, most=1000),
    ] = 1
    separator: Annotated[
        str, Key("What stands between two cells.", "semicolon"), OneOf("comma", "semicolon", "tab")
    ] = "comma"
    decimal_comma: Annotated[bool, Key("Whether a comma stands for the point of decimals.")] = False
    dates: Annotated[
        str,
        Key("How its dates are written.", "month/day/year"),
        OneOf("year-month-day", "day/month/year", "month/day/year"),
    ] = "year-month-day"
    left_out: Annotated[
        tuple[str, ...], Key("Headings of columns that are known and not read.", ["Remarks", "Photo no."])
    ] = ()
