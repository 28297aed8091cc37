"""The price form as it was issued, in the plain rows that a returned one is held against."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from functools import cached_property

from tenderwright.pricing.described import in_full
from tenderwright.reading.workbook.cells import Workbook


@dataclass(frozen=True)
class ExpectedLine:
    """One line of the form as issued."""

    number: str
    """Such as `420.a`."""
    section: str
    title: str
    """That of its item."""
    text: str
    """Its words as the form prints them."""
    written: str
    """Its words as the owner typed them."""
    kind: str
    """lump, rate, fixed, credit, day, hours or markup."""
    quantity: Decimal
    unit: str
    fixed_amount: Decimal | None = None

    @property
    def descriptions(self) -> tuple[str, ...]:
        """Give its words as they may stand: printed or typed, below its item's title or after it, as on older forms."""
        return tuple(one for words in (self.text, self.written) for one in (words, in_full(self.title, words)))


@dataclass(frozen=True)
class ExpectedTable:
    """A table of the form of which the yard fills cells."""

    name: str
    """Such as `520.valves`."""
    columns: tuple[tuple[str, bool, str], ...]
    """Headings, whether the yard fills the column, and in which unit."""
    rows: tuple[str, ...]
    """Their names, such as `520.valves.suction-fire`."""


@dataclass(frozen=True)
class ExpectedForm:
    """What the form said when it was issued."""

    tender: str
    currency: str
    edition_hash: str
    closing: date
    issued: Workbook
    """The form itself as it was issued."""
    lines: tuple[ExpectedLine, ...]
    addenda: tuple[tuple[int, str], ...] = ()
    """Number and wording of the addenda listed for acknowledgement."""
    questions: tuple[str, ...] = ()
    """What the yard is asked of itself."""
    day_cost: Decimal | None = None
    """The owner's published cost of each day."""
    tables: tuple[ExpectedTable, ...] = ()
    dock_units: Mapping[str, str] = field(default_factory=dict)
    """The unit in which each figure of the dock is asked, by its path in the bid."""

    facilities: Mapping[str, str] = field(default_factory=dict)
    """The docks of the list: by the name that is printed, what bids call them."""

    @cached_property
    def by_number(self) -> dict[str, ExpectedLine]:
        """Give the lines by number."""
        return {line.number: line for line in self.lines}
