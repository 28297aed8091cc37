"""The contract: the lines of the awarded bid as its arithmetic makes them, with those that were awarded."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.steps.runner import Calculated
from tenderwright.linking.evaluation import bid_name, bid_path
from tenderwright.model.award import Award
from tenderwright.model.bid import Bid
from tenderwright.model.choices import choices
from tenderwright.model.item import Item
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.pricing.amount import SHARES, amount
from tenderwright.pricing.money import ZERO, cents, total
from tenderwright.pricing.price import Estimate

if TYPE_CHECKING:
    from tenderwright.pricing.bids.corrected import CorrectedLine

POOL = "E"
"""Section of the price form that holds the hours pool."""


class ContractLine(Struct, frozen=True):
    """A line of the contract."""

    corrected: CorrectedLine
    item: Item
    kind: str
    inside: bool
    """Whether its amount stands in the contract from the award; a contingent line counts only as it is ordered."""
    taken: bool = True
    """Whether it is no part of an option, or of one that was taken up."""

    @property
    def number(self) -> str:
        """Give the line number, such as `420.a`."""
        return self.corrected.line.number

    @property
    def text(self) -> str:
        """Give the words of the line."""
        return self.corrected.line.text

    @property
    def form(self) -> str:
        """Give the form of its price."""
        return self.corrected.line.form

    @property
    def unit(self) -> str:
        """Give the unit in which it is measured; empty for a lump sum."""
        return "" if self.form in ("lump", "fixed", *SHARES) else self.corrected.line.unit

    @property
    def tendered(self) -> Decimal:
        """Give the quantity tendered; for a mark-up, the allowance for materials."""
        return self.corrected.line.quantity

    @property
    def rate(self) -> Decimal | None:
        """Give the rate in the bid; None where the yard gave none, and where the sum is the owner's own."""
        return self.corrected.rate if self.corrected.answered else None

    @property
    def has_rate(self) -> bool:
        """Tell whether it is a unit rate, by which more or less of the same work is paid."""
        return self.form == "rate" and bool(self.unit) and self.rate is not None

    @property
    def by_the_day(self) -> bool:
        """Tell whether a day of it has a rate, by which more days are paid."""
        return self.form == "day" and self.rate is not None

    @property
    def follows(self) -> bool:
        """Tell whether it is a percentage of what other lines come to in the end: in the contract, or contingent."""
        if not self.corrected.line.of or self.rate is None:
            return False
        return self.inside or (self.taken and self.kind == "contingent")

    @property
    def amount(self) -> Decimal:
        """Give what it comes to in the contract as awarded."""
        return self.corrected.amount if self.inside else ZERO

    def at(self, quantity: Decimal) -> Decimal:
        """Give what all that was done by it comes to: amount = rate x quantity, to the cent."""
        if self.inside:
            return self.corrected.at(quantity)
        return self.more(quantity)

    def more(self, quantity: Decimal) -> Decimal:
        """Give what so much more of it comes to; raises ValueError where the bid has no rate for it."""
        if self.rate is None:
            raise ValueError(f"line {self.number} has no rate")
        return amount(self.form, quantity, self.rate)


class Contract(Struct, frozen=True):
    """The contract as it was awarded."""

    award: Award
    bid: Bid
    currency: str
    lines: Mapping[str, ContractLine]
    beyond: Decimal
    """Where the tender takes the total of a bid as absolute, what it is more than its lines."""
    pool: tuple[str, ...]
    """Lines of hours in the pool."""
    markup: str
    """The line that gives the mark-up on materials; empty where there is none."""
    days_line: str
    """The line by which a further day in dock is paid; empty where none is named."""
    day_lines: tuple[str, ...] = ()
    """Other lines whose days run on with her stay, by the owner's programme."""

    @property
    def amount(self) -> Decimal:
        """Give the contract amount by the bid."""
        return total([self.beyond, *(line.amount for line in self.lines.values())])

    @property
    def contingency(self) -> Decimal:
        """Give what the owner keeps ready beyond it."""
        return cents(self.award.contingency or ZERO)

    def lines_of(self, work: str) -> list[ContractLine]:
        """Give the lines that the number of an item or of a line stands for."""
        return [line for number, line in self.lines.items() if work in (number, line.item.number)]


def contract(
    papers: OwnerPapers, package: Package, calculated: Calculated, estimate: Estimate | None
) -> Contract | None:
    """Make the contract from the award and its bid; None where either is missing or broken.

    The lines are those of the bid as the tender's rule of arithmetic makes them. In the contract stand the lines of the
    sections that make the base price, and options that were taken up, but for what was dropped. Contingent lines and
    the hours pool stand in it with nothing until they are ordered.
    """
    award, tender = papers.award, package.tender
    bid = papers.bids.get(bid_path(award.bid.name)) if award is not None else None
    if award is None or bid is None or tender is None:
        return None
    from tenderwright.pricing.bids.corrected_bids import corrected_bids
    from tenderwright.pricing.bids.settled import as_settled
    from tenderwright.pricing.bids.tendered import tender_lines

    named = {bid_name(path): one for path, one in papers.bids.items()}
    bids = {name: as_settled(name, one, papers.evaluation) for name, one in named.items()}
    corrected = corrected_bids(bids, tender_lines(package, calculated, estimate), tender, papers.evaluation)
    own = corrected[award.bid.name]
    items, options = package.item_by_name, {one.name for one in award.options}
    dropped = {one.name for one in award.dropped}
    picked = {one.name for one in award.alternatives}
    instead = choices(package)
    replaced = {other for number in picked for other in instead.get(number, ())}
    replaced |= {number for number, others in instead.items() if set(others) & picked}
    lines: dict[str, ContractLine] = {}
    for number, line in own.lines.items():
        name, _, letter = number.partition(".")
        item = items[name]
        section = line.line.section
        kind = next(item.kind_of(one) for one in item.lines if one.line == letter)
        taken = section.code != "F" or name in options
        inside = section.in_base or (section.code == "F" and taken and kind != "contingent")
        inside = (inside or number in picked) and number not in replaced
        lines[number] = ContractLine(line, item, kind, inside and not {number, name} & dropped, taken)
    for number, one in lines.items():
        if one.corrected.line.of and one.inside:
            lines[number] = _of_what_is_in(one, lines)
    pool = [one.name for one in award.pool if one.name in lines]
    pool = pool or [number for number, line in lines.items() if line.corrected.line.section.code == POOL]
    return Contract(
        award=award,
        bid=bid,
        currency=tender.currency,
        lines=lines,
        beyond=own.beyond_lines,
        pool=tuple(number for number in pool if lines[number].form == "hours"),
        markup=next((number for number in pool if lines[number].form == "markup"), ""),
        days_line=_days_line(award, papers),
        day_lines=_day_lines(award, papers, lines),
    )


def _of_what_is_in(line: ContractLine, lines: Mapping[str, ContractLine]) -> ContractLine:
    """Take a percentage of the lines that stand in the contract alone, where some of its lines were dropped."""
    from tenderwright.pricing.bids.spread import Spread

    corrected = line.corrected
    whole = total([lines[number].amount for number in corrected.line.of])
    if whole == corrected.line.quantity or line.rate is None:
        return line
    base = replace(corrected.line, spread=Spread(whole))
    return replace(line, corrected=replace(corrected, line=base, amount=base.amount(line.rate)))


def _days_line(award: Award, papers: OwnerPapers) -> str:
    if award.days_line is not None:
        return award.days_line.name
    lines = papers.programme.day_lines if papers.programme is not None else ()
    return next((one.line for one in lines if one.days == "further dock days"), "")


def _day_lines(award: Award, papers: OwnerPapers, lines: Mapping[str, ContractLine]) -> tuple[str, ...]:
    """Give the lines awarded whose days grow with each further day on blocks: those of the dock and of the yard."""
    told = papers.programme.day_lines if papers.programme is not None else ()
    growing = [one.line for one in told if one.days in ("dock days", "yard days")]
    return tuple(one for one in growing if one in lines and lines[one].inside and one != _days_line(award, papers))
