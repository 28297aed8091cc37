"""The desk at which the docking report is composed: the package, the findings, and what was made of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from tenderwright.calculations.ship.bare_places import BarePlace
from tenderwright.calculations.ship.docking_totals import DockingTotals
from tenderwright.documents.desk import Desk
from tenderwright.model.findings import Findings
from tenderwright.model.owner import OwnerPapers
from tenderwright.planning.inspection.results import Inspected
from tenderwright.pricing.final_account import FinalAccount


@dataclass(frozen=True)
class ClosedDocking:
    """The findings of one docking with what was calculated from them."""

    findings: Findings
    totals: DockingTotals
    places: Sequence[BarePlace]
    account: FinalAccount | None = None
    """Only where the report may show it."""
    missing: Sequence[str] = field(default=())
    """What the findings do not say, in words."""
    inspected: Inspected | None = None
    """The inspection plan and the register of openings, where anything is recorded of them."""
    papers: OwnerPapers | None = None
    """Whose photographs the confidential report shows."""


@dataclass(frozen=True)
class ReportDesk(Desk):
    """A desk for a report that holds none of the parts of the specification, so that nothing is linked to them."""

    def anchor(self, kind: str, name: str) -> str:
        """Give no anchor."""
        return ""
