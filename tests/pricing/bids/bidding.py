"""Tenders and bids made in a few words, for what is done with bids once they are read."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from decimal import Decimal

from hypothesis import strategies as st

from tenderwright.calculations.cost.three_point import ThreePoint
from tenderwright.model.bid import NOWHERE, Bid, BidLine
from tenderwright.model.tender import CONTINGENT, OPTIONS, POOL
from tenderwright.pricing.bids.arithmetic import correct
from tenderwright.pricing.bids.corrected import CorrectedBid
from tenderwright.pricing.bids.spread import Spread
from tenderwright.pricing.bids.tendered import TenderLine
from tenderwright.pricing.sections import BY_CODE

USUAL = (CONTINGENT, POOL, OPTIONS)
"""What a tender counts beside the base price."""
UNIT, ABSOLUTE = "unit price governs", "total absolute"
RECEIVED = date(2027, 2, 12)


def money(text: str | int | float) -> Decimal:
    """Give an amount."""
    return Decimal(str(text))


def tender_line(
    number: str,
    quantity: str | int,
    form: str = "rate",
    section: str = "C",
    estimate: str | int | None = None,
    reach: tuple[float, float] | None = None,
    fixed: str | None = None,
) -> TenderLine:
    """Make a line of a tender; `reach` is the least and the most that its quantity may be."""
    amount = Decimal(str(quantity))
    spread = Spread(amount)
    if reach is not None:
        spread = Spread(amount, "owner", ThreePoint(reach[0], float(amount), reach[1]))
    return TenderLine(
        number,
        BY_CODE[section],
        "Hull",
        f"Work of line {number}",
        form,
        spread,
        "kg" if form == "rate" else "",
        Decimal(str(estimate)) if estimate is not None else None,
        Decimal(fixed) if fixed is not None else None,
    )


def priced(rate: str | int | float | Decimal | None, extension: str | int | Decimal | None = None) -> BidLine:
    """Make a priced line of a bid."""
    return BidLine(
        rate=None if rate is None else Decimal(str(rate)),
        status="priced",
        extension=None if extension is None else Decimal(str(extension)),
    )


def a_bid(lines: Mapping[str, BidLine], **more: object) -> Bid:
    """Make a bid."""
    return Bid(yard=str(more.pop("yard", "Corve")), received=RECEIVED, lines=lines, here=NOWHERE, **more)  # type: ignore[arg-type]


def corrected(bid: Bid, *lines: TenderLine, rule: str = UNIT, **usual: tuple[Decimal, ...]) -> CorrectedBid:
    """Correct a bid without anything confirmed; `usual` by line is given as `l420_a`."""
    by_line = {name.removeprefix("l").replace("_", "."): amounts for name, amounts in usual.items()}
    return correct(bid, lines, rule, usual=by_line)


LINES = (
    tender_line("110.a", 1, "lump", "A", 20000),
    tender_line("110.b", 6, "day", "D", 700, (0, 12)),
    tender_line("210.a", 1, "lump", "B", 3000),
    tender_line("310.a", 1000, "rate", "C", 20, (500, 2500)),
    tender_line("310.b", 400, "rate", "D", 30, (0, 1500)),
    tender_line("165.a", 300, "hours", "E", 60, (100, 800)),
    tender_line("165.b", 20000, "markup", "E", 12),
    tender_line("810.a", 1, "lump", "F", 5000),
    tender_line("940.a", 3, "credit", "G", 150),
    tender_line("930.a", 1, "fixed", "H", fixed="9000"),
)
"""A small tender with a line of every form, in a section of every kind."""
PRICED = tuple(line for line in LINES if line.form != "fixed")
CENTS = st.integers(0, 10_000_000).map(lambda cents: Decimal(cents) / 100)
RATES = {
    "lump": CENTS,
    "markup": st.integers(0, 10_000).map(lambda hundredths: Decimal(hundredths) / 100),
    "other": st.integers(0, 1_000_000).map(lambda units: Decimal(units) / 10_000),
}


def rates_of(line: TenderLine) -> st.SearchStrategy[Decimal]:
    """Draw a rate that a yard may ask for a line."""
    return RATES.get(line.form, RATES["other"])


@st.composite
def answers(draw: st.DrawFn, line: TenderLine) -> BidLine:
    """Draw what a yard may write for a line: a rate with a right, wrong or no amount, or a word."""
    how = draw(
        st.sampled_from(("right", "right", "right", "wrong", "none", "alone", "included", "no bid", "empty", "zero"))
    )
    if how in ("included", "no bid", "empty"):
        return BidLine(status=how)
    if how == "zero":
        return BidLine(rate=Decimal(0), status="zero")
    rate = draw(rates_of(line))
    right = line.amount(rate)
    amount = {"right": right, "wrong": draw(CENTS), "none": None, "alone": draw(CENTS)}[how]
    return BidLine(rate=None if how == "alone" else rate, status="priced", extension=amount)


@st.composite
def bids(draw: st.DrawFn, yard: str = "Corve") -> Bid:
    """Draw a bid for the small tender, its sums right or wrong or left out."""
    lines = {line.number: draw(answers(line)) for line in PRICED}
    sections = draw(st.dictionaries(st.sampled_from("ABCDEFGH"), CENTS))
    return a_bid(
        lines,
        yard=yard,
        section_totals=sections,
        base_total=draw(st.none() | CENTS),
        total=draw(st.none() | CENTS),
        days=draw(st.none() | st.integers(10, 60)),
    )
