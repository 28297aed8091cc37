"""How a docking stands on a day: money, days, hours of the pool, work done, and what may still be put off."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package, sound
from tenderwright.planning.approvals import Register, register
from tenderwright.planning.in_dock.live import begun, live_items, work_rows
from tenderwright.planning.in_dock.money import Funds, funds
from tenderwright.planning.in_dock.put_off import PutOff, can_be_put_off
from tenderwright.planning.in_dock.short import account_on, days_short, needed_still
from tenderwright.planning.inspection.ordered import come_up
from tenderwright.planning.inspection.results import Inspected, inspected
from tenderwright.planning.schedule import Schedule
from tenderwright.pricing.in_dock.account import RunningAccount
from tenderwright.pricing.in_dock.dock_days import DockDays, dock_days
from tenderwright.pricing.in_dock.ledger import Ledger
from tenderwright.pricing.in_dock.outside_range import Outside, outside_range
from tenderwright.pricing.in_dock.pool import PoolBalance, pool_balances
from tenderwright.pricing.in_dock.split import Split, splits


@dataclass(frozen=True)
class WorkDone:
    """How far the ordered work is."""

    finished: tuple[str, ...]
    under_way: tuple[str, ...]
    not_begun: tuple[str, ...]
    share: Decimal | None
    """Of its value, by the share done of each item; None where nothing is ordered."""


@dataclass(frozen=True)
class Standing:
    """How a docking stands on a day."""

    account: RunningAccount
    days: DockDays
    needed: float | None
    """Days on blocks that the work left needs; None without a programme, and once she is undocked."""
    short: int
    """Days on blocks beyond the contract, used already or still needed."""
    work: WorkDone
    pool: tuple[PoolBalance, ...]
    outside: tuple[Outside, ...]
    """Measured quantities outside the range within which rates hold."""
    splits: tuple[Split, ...]
    """Changes signed in parts that one office may not sign as one."""
    funds: Funds | None
    put_off: tuple[PutOff, ...]
    inspected: Inspected
    """The inspection plan and the register of openings as they stood."""
    approvals: Register | None
    """The register of approvals as it is recorded; None where the owner keeps none."""
    scoped: bool
    """Whether owner/scope.yaml says what must be done; otherwise nothing is offered to be put off."""

    @property
    def on(self) -> date:
        """Give the day."""
        return self.account.on


def standing(ledger: Ledger, on: date, papers: OwnerPapers, package: Package, schedule: Schedule | None) -> Standing:
    """Work out how a docking stands on a day; the package must be sound."""
    made = account_on(ledger, on, package, schedule)
    days = dock_days(made, sound(package.tender))
    needed = needed_still(made, days, schedule)
    planned = schedule if days.undocked is None else None
    return Standing(
        account=made,
        days=days,
        needed=needed,
        short=days_short(days, needed),
        work=_work(made, package),
        pool=pool_balances(made),
        outside=outside_range(made),
        splits=splits(ledger, on),
        funds=funds(made, papers.funding, package),
        put_off=can_be_put_off(made, package, papers.scope, planned, docked=days.has_docked),
        inspected=inspected(package, papers.in_dock.values(), come_up(made, package), on),
        approvals=register(papers, package, schedule),
        scoped=papers.scope is not None,
    )


def _work(made: RunningAccount, package: Package) -> WorkDone:
    """Sort the items whose lines are ordered by how far they are, and weigh them by what they come to."""
    done, rows = made.ledger.done(made.on), work_rows(made)
    finished: list[str] = []
    under_way: list[str] = []
    not_begun: list[str] = []
    value, earned = Decimal(0), Decimal(0)
    for item in live_items(made, package):
        amounts = [row.final for row in rows.get(item.number, [])]
        if not any(amounts):
            continue
        share = Decimal(repr(done.get(item.number, 0.0)))
        worth = max(sum(amounts, Decimal(0)), Decimal(0))
        value, earned = value + worth, earned + worth * share
        to = finished if share >= 1 else under_way if begun(made, item.number) else not_begun
        to.append(item.number)
    return WorkDone(tuple(finished), tuple(under_way), tuple(not_begun), earned / value if value else None)
