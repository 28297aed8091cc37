"""Parts of a work item that stand by themselves: access, what is significant, a decision gate."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.kinds import Time
from tenderwright.model.marks import Key, OneOf
from tenderwright.model.noun import Noun


class Access(Noun, frozen=True, kw_only=True):
    """Access, and what is in the way."""

    staging: Annotated[Prose | None, Key("Staging, and in which item it is priced.")] = None
    interference: Annotated[Prose | None, Key("What is in the way: who removes it, who refits it.")] = None


class Heritage(Noun, frozen=True, kw_only=True):
    """What is significant, and how it is treated."""

    significance: Annotated[Prose, Key("What is significant.")]
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
    on: Annotated[Prose, Key("On what it is decided, and what follows.")]
