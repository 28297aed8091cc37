"""What the owner expects the work to cost: rates by line and how each is come by, labour, price indices, simulation."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from tenderwright.model.build import Prose
from tenderwright.model.kinds import AnyQuantity, DockingRef, Fraction, ItemRef, Time
from tenderwright.notices import Place


@dataclass(frozen=True)
class EarlierPrice:
    """A price paid for a unit at an earlier docking, to be escalated by an index."""

    docking: DockingRef
    work: str
    here: Place = field(compare=False)
    index: str = ""


@dataclass(frozen=True)
class Factor:
    """A factor for access or location."""

    factor: float
    why: str


@dataclass(frozen=True)
class Rate:
    """The owner's rate for one line: stated, taken from an earlier docking, or built from man-hours."""

    here: Place = field(compare=False)
    rate: Decimal | None = None
    low: Decimal | None = None
    high: Decimal | None = None
    history: EarlierPrice | None = None
    hours: Time | None = None
    labour: str = ""
    materials: Decimal | None = None
    factors: tuple[Factor, ...] = ()
    quantity_low: AnyQuantity | None = None
    quantity_high: AnyQuantity | None = None
    evidence: str = ""
    basis: str = ""
    note: str = ""


@dataclass(frozen=True)
class Labour:
    """The rate of a labour for an hour."""

    rate: Decimal
    low: Decimal | None = None
    high: Decimal | None = None
    basis: str = ""


@dataclass(frozen=True)
class Shared:
    """How shared services are spread over the items."""

    items: tuple[ItemRef, ...]
    rule: str


@dataclass(frozen=True)
class Contingency:
    """Contingency, shown and never buried."""

    share: Fraction
    why: str


@dataclass(frozen=True)
class Simulation:
    """How the cost is simulated."""

    within: Fraction
    across: Fraction
    here: Place = field(compare=False)
    trials: int = 100_000
    seed: int = 1
    why: str = ""


@dataclass(frozen=True)
class Rates:
    """What the owner expects each line to cost."""

    base_month: str
    lines: Mapping[str, Rate]
    here: Place = field(compare=False)
    shared: Shared | None = None
    dock_days: Mapping[str, float] = field(default_factory=dict)
    contingency: Contingency | None = None
    labour: Mapping[str, Labour] = field(default_factory=dict)
    index: str = ""
    simulation: Simulation | None = None


@dataclass(frozen=True)
class PriceIndex:
    """A published index of prices by month."""

    index: str
    name: str
    months: Mapping[str, float]
    here: Place = field(compare=False)
    code: str = ""
    publisher: str = ""
    adjusted: bool = False
    carries: Time | None = None
    notes: Prose | None = None


@dataclass(frozen=True)
class PriceIndices:
    """The indices by which old prices are escalated."""

    indices: tuple[PriceIndex, ...]
