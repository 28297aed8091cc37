"""The days on blocks: tendered, used, added by changes, and left on a day."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from tenderwright.model.package import sound
from tenderwright.model.tender import Tender
from tenderwright.pricing.in_dock.account import RunningAccount


@dataclass(frozen=True)
class DockDays:
    """How the days on blocks stand; the day she is docked is day 1."""

    tendered: int
    added: int
    """By signed changes."""
    asked: int
    """By changes that wait for a signature and reports that wait."""
    used: int
    """Begun up to the day, or until she was undocked."""
    docked: date
    """As it came, or as planned where it has not come yet."""
    has_docked: bool
    undocked: date | None = None

    @property
    def whole(self) -> int:
        """Give the days of the contract as they are now."""
        return self.tendered + self.added

    @property
    def left(self) -> int:
        """Give the days that are left after the day; below nothing where she is late."""
        return self.whole - self.used

    @property
    def undocking(self) -> date:
        """Give the day on which she is undocked by the contract as it is now, or was."""
        return self.undocked or self.docked + timedelta(days=self.whole)


def dock_days(made: RunningAccount, tender: Tender) -> DockDays:
    """Count the days on blocks on the day of an account: day 1 is that on which she is docked.

    used = day - docked + 1; left = tendered + added - used. Those tendered are the `dock_days` of the tender, or the
    days from docking to undocking in its programme.
    """
    programme = sound(tender.programme)
    tendered = programme.dock_days or (programme.undocking - programme.docking).days
    actual = made.ledger.actual(made.on)
    docked = actual.docked or programme.docking
    used = (actual.undocked - docked).days if actual.undocked is not None else (made.on - docked).days + 1
    return DockDays(
        tendered=tendered,
        added=sum(row.days for row in made.causes),
        asked=sum(one.order.days for one in made.unsigned) + sum(one.report.days for one in made.waiting),
        used=max(used, 0) if actual.docked is not None else 0,
        docked=docked,
        has_docked=actual.docked is not None,
        undocked=actual.undocked,
    )
