"""The final account of an earlier docking, kept among the owner's papers."""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal

from tenderwright.model.findings import Totals
from tenderwright.model.kinds import AnyQuantity, DockingRef
from tenderwright.notices import Place


@dataclass(frozen=True)
class AccountLine:
    """What one line of an earlier tender came to."""

    line: str
    work: str
    contract: Decimal
    changes: Decimal
    final: Decimal
    here: Place = field(compare=False)
    kind: str = ""
    quantity: AnyQuantity | None = None
    estimate: Decimal | None = None
    bid: Decimal | None = None
    rate: Decimal | None = None
    """What was paid for a unit in the end."""


@dataclass(frozen=True)
class AccountChange:
    """A change to the contract of an earlier docking."""

    change: str
    line: str
    cause: str
    amount: Decimal
    here: Place = field(compare=False)
    what: str = ""


@dataclass(frozen=True)
class Closing:
    """The final account of an earlier docking."""

    docking: DockingRef
    currency: str
    lines: tuple[AccountLine, ...]
    here: Place = field(compare=False)
    changes: tuple[AccountChange, ...] = ()
    totals: Totals | None = None
