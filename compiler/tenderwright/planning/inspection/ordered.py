"""Of which items points and rows come up: what is to be done, and nothing that waits for an instruction nobody gave."""

from __future__ import annotations

from datetime import date

from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.planning.in_dock.live import begun, lines_by_item, live_items
from tenderwright.planning.inspection.results import Inspected, inspected
from tenderwright.pricing.in_dock.account import RunningAccount, account
from tenderwright.pricing.in_dock.ledger import Ledger


def come_up(made: RunningAccount | None, package: Package) -> tuple[str, ...]:
    """Give the numbers of the items whose points come up; without a contract, of all but those on instruction."""
    if made is None:
        on_order = ("contingent", "option")
        return tuple(one.number for one in package.items if not one.withdrawn and one.kind not in on_order)
    rows = lines_by_item(made)
    return tuple(
        item.number
        for item in live_items(made, package)
        if not rows.get(item.number)
        or begun(made, item.number)
        or any(row.line.inside or row.changes for row in rows[item.number])
    )


def inspected_in_dock(
    package: Package, papers: OwnerPapers, ledger: Ledger | None, on: date | None = None
) -> Inspected:
    """Give all that the papers from the dock tell, up to a day where one is given."""
    made = account(ledger, ledger.last) if ledger is not None and ledger.last is not None else None
    return inspected(package, papers.in_dock.values(), come_up(made, package), on)
