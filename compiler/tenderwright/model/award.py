"""The award: which bid, for which work and amount, and who may sign changes to it."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from tenderwright.model.build import Name
from tenderwright.model.kinds import ItemRef, Time
from tenderwright.notices import Place


@dataclass(frozen=True)
class Authority:
    """Who may sign changes."""

    who: str
    here: Place = field(compare=False)
    up_to: Decimal | None = None
    """Greatest amount of one change; None where there is no limit."""


@dataclass(frozen=True)
class Award:
    """The award of the tender; its bid is named by its file in owner/bids/, without `.yaml`."""

    bid: Name
    awarded: date
    amount: Decimal
    here: Place = field(compare=False)
    options: tuple[ItemRef, ...] = ()
    dropped: tuple[Name, ...] = ()
    """Items and lines that were not awarded."""
    contingency: Decimal | None = None
    answer_within: Time | None = None
    authority: tuple[Authority, ...] = ()
    pool: tuple[Name, ...] = ()
    """Lines of the hours pool; empty for those of that section of the price form."""
    days_line: Name | None = None

    def may_sign(self, who: str) -> Authority | None:
        """Find who may sign by name of the office; None where nobody of that name may."""
        return next((one for one in self.authority if one.who == who), None)
