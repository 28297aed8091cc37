"""What was found, changed, measured and done in dock: one file for each week or day."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from tenderwright.model.build import Name, Prose
from tenderwright.model.kinds import AnyQuantity, Fraction, ItemRef, Time
from tenderwright.notices import Place

WAITING = "waiting"


@dataclass(frozen=True)
class ConditionReport:
    """A condition-found report, with the price that goes with it and the owner's answer."""

    report: Name
    day: date
    where: str
    found: Prose
    here: Place = field(compare=False)
    hour: str = ""
    item: ItemRef | None = None
    line: Name | None = None
    quantity: AnyQuantity | None = None
    extent: str = ""
    cause: Prose | None = None
    repair: Prose | None = None
    hours: Time | None = None
    materials: Decimal | None = None
    amount: Decimal | None = None
    days: int = 0
    answer_by: str = ""
    """A day, or a day and a time; empty where the answering time of the award says."""
    decision: str = WAITING
    """accepted, rejected, deferred or waiting."""
    decided: date | None = None
    by: Name | None = None
    note: str = ""


@dataclass(frozen=True)
class ChangeOrder:
    """A change to one line of the contract."""

    change: Name
    day: date
    line: Name
    cause: str
    what: str
    here: Place = field(compare=False)
    item: ItemRef | None = None
    quantity: AnyQuantity | None = None
    hours: Time | None = None
    materials: Decimal | None = None
    negotiated: Decimal | None = None
    no_rate_fits: str = ""
    days: int = 0
    condition: Name | None = None
    by: Name | None = None
    signed: date | None = None
    """None while it waits for a signature."""


@dataclass(frozen=True)
class Measured:
    """All that was done by one line up to a day."""

    line: Name
    quantity: AnyQuantity
    here: Place = field(compare=False)
    day: date | None = None
    """None for the last day that its file tells of."""


@dataclass(frozen=True)
class LeftOut:
    """An item or a line taken out of the contract, or put off."""

    work: Name
    day: date
    why: str
    by: Name
    here: Place = field(compare=False)
    paid: Decimal | None = None
    """What is paid for it all the same."""
    until: str = ""


@dataclass(frozen=True)
class Restored:
    """An item or a line that is in the contract again."""

    work: Name
    day: date
    why: str
    by: Name
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Progress:
    """How far an item is."""

    item: ItemRef
    done: Fraction
    here: Place = field(compare=False)


@dataclass(frozen=True)
class ActualDays:
    """Days of the docking as they came."""

    arrived: date | None = None
    docked: date | None = None
    dry: date | None = None
    undocked: date | None = None
    departed: date | None = None


@dataclass(frozen=True)
class InDock:
    """What one file tells of the docking."""

    until: date
    here: Place = field(compare=False)
    days: ActualDays = field(default_factory=ActualDays)
    conditions: tuple[ConditionReport, ...] = ()
    changes: tuple[ChangeOrder, ...] = ()
    measured: tuple[Measured, ...] = ()
    deleted: tuple[LeftOut, ...] = ()
    deferred: tuple[LeftOut, ...] = ()
    restored: tuple[Restored, ...] = ()
    progress: tuple[Progress, ...] = ()
