"""What the owner alone keeps of a dock: what is to be said of it, and why it stays in the list."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.kinds import FacilityRef
from tenderwright.model.marks import Key
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class FacilityKept(Noun, frozen=True, kw_only=True):
    """What the owner alone keeps of a dock."""

    facility: Annotated[FacilityRef, Key("The facility, as in its file under facilities/.", "north-shiplift")]
    kept_because: Annotated[
        str,
        Key(
            "Why it stays in the list though she does not fit it, or its limits are not known; it is then not warned of.",
            "asked again each year: its rails are to be relaid",
        ),
    ] = ""
    notes: Annotated[
        Prose | None, Key("What else bears on the choice.", "The approach dries two hours either side of low water.")
    ] = None
    here: Place
