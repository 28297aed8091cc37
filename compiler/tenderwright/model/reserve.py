"""What the owner sets aside for the docking after the one planned."""

from typing import Annotated

from tenderwright.model.kinds import Fraction, Money
from tenderwright.model.marks import Key, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class Reserve(Noun, frozen=True, kw_only=True):
    """What the owner sets aside for the docking after the one planned. Without this file it is taken to cost what this one does, options left out, and prices to rise as the first index in owner/indices.yaml did."""

    share: Annotated[
        Fraction | None,
        Key("What it is expected to cost, as a share of this docking at the same prices; all unless given.", "60 %"),
        Within(most="500 %"),
    ] = None
    because: Annotated[
        str, Key("Why it is that share of it.", "no steel for a decade: dock, wash, coats, valves and anodes remain")
    ] = ""
    rise: Annotated[
        Fraction | None,
        Key("Rise of prices in a year; that of the first index over all its years unless given.", "3 %"),
        Within(most="30 %"),
    ] = None
    rise_because: Annotated[
        str, Key("Who says how prices rise.", "the treasurer's budget of 2027, five years ahead")
    ] = ""
    interest: Annotated[
        Fraction | None,
        Key("Interest in a year on what is set aside; none unless given.", "1.5 %"),
        Within(most="30 %"),
    ] = None
    saved: Annotated[Money | None, Key("What is set aside for it already.", 40000)] = None
    here: Place
