"""The lines of the tender as bids are compared on them: quantity, its spread, and the owner's own rate."""

from __future__ import annotations

from decimal import Decimal

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.steps.runner import Calculated
from tenderwright.model.choices import dearer
from tenderwright.model.item import Item, Line
from tenderwright.model.package import Package, sound
from tenderwright.pricing.amount import PERCENT, PERCENTS, amount
from tenderwright.pricing.bids.spread import Spread, spread_of
from tenderwright.pricing.percents import percents
from tenderwright.pricing.price import Estimate, PricedLine
from tenderwright.pricing.quantity import line_quantity
from tenderwright.pricing.sections import SECTIONS, Section, form_of, section_of


class TenderLine(Struct, frozen=True):
    """One line of the price form."""

    number: str
    section: Section
    title: str
    """Title of its item."""
    text: str
    form: str
    """lump, rate, day, hours, markup, credit, percent, discount, or fixed: the owner's own sum, which nobody prices."""
    spread: Spread
    unit: str = ""
    estimate: Decimal | None = None
    """The owner's likely rate."""
    fixed: Decimal | None = None
    of: tuple[str, ...] = ()
    """For a percentage, the lines that it is of."""
    instead_of: tuple[str, ...] = ()
    """For an alternative, the lines in whose place it counts where it is the dearer."""

    @property
    def quantity(self) -> Decimal:
        """Give the quantity tendered; for a mark-up, the allowance; for a percentage, what its lines make in a bid."""
        return self.spread.tendered

    def amount(self, rate: Decimal) -> Decimal:
        """Give its signed amount at a rate, for the quantity tendered."""
        return amount(self.form, self.quantity, rate)

    def slope(self, rate: Decimal) -> Decimal:
        """Give what one more unit of it adds at a rate; nothing for a lump sum."""
        if self.form in ("lump", "fixed"):
            return Decimal(0)
        if self.form == "markup":
            return 1 + rate / 100
        if self.form in PERCENTS:
            return rate / 100 if self.form == PERCENT else -rate / 100
        return -rate if self.form == "credit" else rate


def tender_lines(package: Package, calculated: Calculated, estimate: Estimate | None) -> tuple[TenderLine, ...]:
    """List the lines in the order of the price form; withdrawn items have none. The package must be sound."""
    tender = sound(package.tender)
    priced = {line.number: line for line in estimate.lines} if estimate is not None else {}
    found: list[TenderLine] = []
    for item in package.items:
        for line in item.lines if not item.withdrawn else ():
            section = section_of(item, line, tender)
            made = _line(item, line, section, priced.get(f"{item.number}.{line.line}"), calculated)
            found += [made] if made is not None else []
    of, instead = percents(package), dearer(package)
    found = [replace(line, of=of[line.number]) if line.number in of else line for line in found]
    found = [replace(line, instead_of=instead.get(line.number, ())) for line in found]
    order = {section.code: place for place, section in enumerate(SECTIONS)}
    return tuple(sorted(found, key=lambda one: order[one.section.code]))


def _line(
    item: Item, line: Line, section: Section, priced: PricedLine | None, calculated: Calculated
) -> TenderLine | None:
    quantity = line_quantity(line, calculated.record)
    if quantity is None:
        return None
    least, most = (priced.least, priced.most) if priced is not None else (quantity.number, quantity.number)
    return TenderLine(
        number=f"{item.number}.{line.line}",
        section=section,
        title=item.title,
        text=line.text,
        form=form_of(line, section),
        spread=spread_of(line, quantity, least, most, calculated),
        unit=quantity.unit,
        estimate=priced.rate if priced is not None and line.price != "fixed" else None,
        fixed=line.amount if line.price == "fixed" else None,
    )
