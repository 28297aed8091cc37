"""The desk of the owner's papers, which knows what the docking may cost, take and be paid from."""

from __future__ import annotations

from dataclasses import dataclass

from tenderwright.documents.desk import Desk
from tenderwright.model.funding import FundingSource
from tenderwright.planning.foresight import Foresight
from tenderwright.planning.ladder import Rung
from tenderwright.pricing.in_dock.ledger import Ledger
from tenderwright.pricing.price import Estimate


@dataclass(frozen=True, kw_only=True)
class OwnerDesk(Desk):
    """The desk of the owner's papers, at which everything is priced."""

    estimate: Estimate
    foresight: Foresight | None = None
    ledger: Ledger | None = None
    """What the papers from the dock make of the awarded bid; None before an award."""

    def source_of(self, rung: Rung) -> FundingSource | None:
        """Give the source that makes a rung of the ladder; None for the money in hand, or a further amount."""
        funding = self.foresight.papers.funding if self.foresight else None
        return next((one for one in funding.sources if one.source == rung.source), None) if funding else None

    @property
    def yards(self) -> Desk:
        """Give the yard's desk over the same package, at which the parts of the specification are composed."""
        return Desk(self.package, self.links, self.calculated)

    def anchor(self, kind: str, name: str) -> str:
        """Give the anchor of a facility, or of an item among the prices by item; the papers hold nothing else."""
        if kind == "item":
            return f"item-{name}" if any(one.item.number == name for one in self.estimate.items) else ""
        return super().anchor(kind, name) if kind == "facility" else ""
