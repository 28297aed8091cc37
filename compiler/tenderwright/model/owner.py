"""The owner's confidential papers: rates, funding, risks, bids."""

from collections.abc import Mapping
from typing import Annotated

from msgspec import Struct, field

from tenderwright.model.approvals import Approvals
from tenderwright.model.award import Award
from tenderwright.model.bid import Bid, BidLine
from tenderwright.model.build import Prose
from tenderwright.model.closing import Closing
from tenderwright.model.contract import TakenAway
from tenderwright.model.evaluation import Evaluation
from tenderwright.model.facility_kept import FacilityKept
from tenderwright.model.funding import Funding, Scope
from tenderwright.model.grant import Grant
from tenderwright.model.in_dock import InDock
from tenderwright.model.kinds import Fraction, Identifier, ItemRef, Money, OfTender, Time
from tenderwright.model.marks import Key, OneOf
from tenderwright.model.noun import Noun
from tenderwright.model.package import Broken
from tenderwright.model.photograph import Photograph
from tenderwright.model.profile import Profile
from tenderwright.model.programme import Programme
from tenderwright.model.question import AskedBy
from tenderwright.model.rates import PriceIndices, Rates
from tenderwright.model.reserve import Reserve
from tenderwright.notices import Place
from tenderwright.reading.photograph_files import PhotographFile
from tenderwright.shapes.todos import Todo

__all__ = ["Bid", "BidLine"]


class Risk(Noun, frozen=True, kw_only=True):
    """Something that may go wrong."""

    risk: Annotated[Identifier, Key("Identifier, by which applications name the risk.", "thin-plate")]
    what: Annotated[
        Prose,
        Key(
            "What may go wrong, and what would follow.", "More plate of strake B is found thin than the survey showed."
        ),
    ]
    item: Annotated[
        ItemRef | None, Key("The item that it bears on; left out where it bears on the docking as a whole.", "310")
    ] = None
    likelihood: Annotated[Fraction | None, Key("How likely it is.", "30 %")] = None
    low: Annotated[Money | None, Key("The least that it would cost.", 10000)] = None
    high: Annotated[Money | None, Key("The most that it would cost.", 45000)] = None
    answer: Annotated[Prose | None, Key("What is done about it.", "Plate is ordered before she is docked.")] = None
    bears_on: Annotated[
        str,
        Key("What it bears on: cost (the default), or the money to come, which is not counted as a cost."),
        OneOf("cost", "money"),
    ] = "cost"
    days_low: Annotated[Time | None, Key("Least further days on blocks.", "1 d")] = None
    days_high: Annotated[Time | None, Key("Most further days on blocks.", "6 d")] = None
    here: Place


class Risks(Noun, frozen=True, kw_only=True):
    """What may go wrong, with its likelihood, its cost and what is done about it."""

    tender: OfTender = ""
    risks: Annotated[tuple[Risk, ...], Key("The risks, the greatest first.")]


class OwnerPapers(Struct, frozen=True):
    """All that lies under owner/."""

    rates: Rates | None = None
    funding: Funding | None = None
    risks: Risks | None = None
    indices: PriceIndices | None = None
    reserve: Reserve | None = None
    programme: Programme | None = None
    scope: Scope | None = None
    approvals: Approvals | None = None
    taken_away: TakenAway | None = None
    questions: AskedBy | None = None
    bids: Mapping[str, Bid] = field(default_factory=dict)
    evaluation: Evaluation | None = None
    award: Award | None = None
    in_dock: Mapping[str, InDock] = field(default_factory=dict)
    """What was found, changed and done in dock, by file."""
    closings: Mapping[str, Closing] = field(default_factory=dict)
    """What earlier dockings cost, by file."""
    facilities: Mapping[str, FacilityKept] = field(default_factory=dict)
    """What the owner alone keeps of docks, by file."""
    grants: Mapping[str, Grant] = field(default_factory=dict)
    """Applications for grants, by file."""
    profiles: Mapping[str, Profile] = field(default_factory=dict)
    """Profiles of funders' forms by name, where there is an application: the owner's own, and those shipped."""
    photographs: tuple[Photograph, ...] = ()
    """Photographs that only the owner may see."""
    photograph_files: Mapping[str, PhotographFile] = field(default_factory=dict)
    """The files that lie in owner/photographs/, by path."""
    broken: Broken = field(default_factory=Broken)
    """What has mistakes and is left out, in the package and under owner/."""
    todos: tuple[Todo, ...] = ()
    """What is still `todo` under owner/."""

    def kept_of(self, facility: str) -> FacilityKept | None:
        """Give what the owner alone keeps of a dock."""
        return next((one for one in self.facilities.values() if one.facility.name == facility), None)

    def closing_of(self, docking: str) -> Closing | None:
        """Give what an earlier docking cost."""
        return next((one for one in self.closings.values() if one.docking.name == docking), None)
