"""Parts of a work item that stand by themselves: access, what is significant, a decision gate."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.kinds import SHA256, Date, Side, StrakeRef, Time
from tenderwright.model.marks import Key, OneOf
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class Access(Noun, frozen=True, kw_only=True):
    """Access, and what is in the way."""

    staging: Annotated[
        Prose | None, Key("Staging, and in which item it is priced.", "Staging both sides, priced in <item:130>.")
    ] = None
    interference: Annotated[
        Prose | None,
        Key("What is in the way: who removes it, who refits it.", "The yard removes the ceiling and refits it."),
    ] = None


class Heritage(Noun, frozen=True, kw_only=True):
    """What is significant, and how it is treated."""

    significance: Annotated[Prose, Key("What of the work is significant.", "The riveted seams of 1934.")]
    treatment: Annotated[
        str,
        Key("How the fabric is to be treated.", "preserve"),
        OneOf("stabilise", "preserve", "rehabilitate", "restore", "replace in kind"),
    ]
    keep_fabric: Annotated[bool, Key("Whether removed fabric is tagged and returned.")] = False
    photographs: Annotated[str, Key("At which stages photographs are wanted.", "before, opened, after")] = ""


class Decision(Noun, frozen=True, kw_only=True):
    """A decision gate."""

    who: Annotated[str, Key("Who decides, by office.", "Ship manager")]
    within: Annotated[Time, Key("Time the owner takes.", "48 h")]
    on: Annotated[
        Prose,
        Key(
            "On what it is decided, and what follows.",
            "On the readings after blasting: below 7 mm the plate is renewed.",
        ),
    ]


class PlacePicture(Noun, frozen=True, kw_only=True):
    """A picture of a place, printed with the item and sent along."""

    file: Annotated[str, Key("PNG or JPEG under references/.", "references/315-strake-c.jpg")]
    sha256: Annotated[str, Key("Checksum of the file; a notice proposes it.", "0f3c" * 16), SHA256] = ""
    shows: Annotated[str, Key("What it shows, for who looks and for who cannot see it.", "Doubler with a weeping seam")]
    frame: Annotated[Position | None, Key("Where it was taken.", "Fr 40")] = None
    strake: Annotated[StrakeRef | None, Key("Strake that it shows.", "C")] = None
    side: Annotated[Side, Key("Side of the ship.", "port")] = ""
    taken: Annotated[Date | None, Key("Day on which it was taken.", "2026-05-20")] = None
    looking: Annotated[str, Key("Which way it looks.", "from outboard, looking forward")] = ""
    here: Place
