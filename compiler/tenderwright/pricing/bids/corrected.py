"""A bid after its arithmetic was looked at: every line as read and as it counts, and each correction by itself."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from typing import Literal

from msgspec import Struct

from tenderwright.pricing.bids.tendered import TenderLine
from tenderwright.pricing.money import cents

Kind = Literal["rate governs", "decimal slip", "confirmed", "amount alone", "allowance", "sub-total", "total"]


class Correction(Struct, frozen=True):
    """One thing about the figures of a bid that does not follow, and what is made of it."""

    kind: Kind
    what: str
    """Such as `Line 420.a` or `Sub-total of section C`."""
    rule: str
    before: Decimal
    """The amount as it was written."""
    after: Decimal
    """The amount by the rule; that of a slip is not used before the bidder has confirmed it."""
    line: str = ""
    note: str = ""
    own: bool = True
    """Whether it is a mistake of its own, and does not only follow from another correction."""

    @property
    def used(self) -> bool:
        """Tell whether the amount by the rule counts; that of a slip is for a person to settle."""
        return self.kind != "decimal slip"

    @property
    def difference(self) -> Decimal:
        """Give what the rule adds to the amount as written; less than nothing where it takes away."""
        return self.after - self.before

    @property
    def asks(self) -> bool:
        """Tell whether the bidder is to be asked to confirm it."""
        return self.own and self.kind not in ("confirmed", "allowance")


class CorrectedLine(Struct, frozen=True):
    """A line of a bid as read and as it counts."""

    line: TenderLine
    status: str
    """priced, zero, included, no bid or empty; `fixed` where it is the owner's own sum."""
    rate_read: Decimal | None
    amount_read: Decimal
    """As it stood in the row; where none did, that of the rate."""
    rate: Decimal | None
    """By which another quantity would be paid; None where the line is not answered."""
    amount: Decimal
    correction: Correction | None = None

    @property
    def answered(self) -> bool:
        """Tell whether the yard answered the line."""
        return self.status not in ("empty", "no bid")

    @property
    def slope(self) -> Decimal:
        """Give what one more unit adds."""
        return self.line.slope(self.rate) if self.rate is not None else Decimal(0)

    def at(self, quantity: Decimal) -> Decimal:
        """Give its amount for another quantity."""
        return cents(self.amount + self.slope * (quantity - self.line.quantity))


class CorrectedBid(Struct, frozen=True):
    """A bid with its lines and sums as the rule of the tender makes them."""

    lines: Mapping[str, CorrectedLine]
    sections: Mapping[str, Decimal]
    base: Decimal
    total: Decimal
    """Of the sections counted in the evaluated price, without the owner's days."""
    base_read: Decimal
    total_read: Decimal
    """As it stood on the form; where none did, the sum of the amounts as they stood."""
    total_written: bool
    """Whether a total stood on the form."""
    corrections: tuple[Correction, ...] = ()
    disqualifying: tuple[Correction, ...] = ()
    """Under `total absolute`, what is wrong with the sums; nothing of it is corrected."""
    beyond_lines: Decimal = Decimal("0.00")
    """Under `total absolute`, what the total as written is more than its lines."""
