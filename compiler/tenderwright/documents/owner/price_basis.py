"""How every price of the owner's estimate is come by: a line for each line of the tender, step by step."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.documents.edition import Block, Bullets, Column, Heading, Inline, Part, Row, Span, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.estimate_classes import bounded, estimate_classes
from tenderwright.documents.owner.prices_by_item import OWNER
from tenderwright.documents.parts.by_section import by_section
from tenderwright.model.rates import Rate
from tenderwright.pricing.amount import PERCENTS, SHARES
from tenderwright.pricing.bundle import Bundle
from tenderwright.pricing.money import cents, written
from tenderwright.pricing.price import PricedLine
from tenderwright.quantities.display import shown_unit


def price_basis(desk: OwnerDesk) -> Part:
    """Compose the table of lines with every step to their price."""
    estimate = desk.estimate
    by_class = bounded(desk)
    rows: list[Row] = []
    for title, inside in by_section(desk, estimate.lines, lambda line: line.item.item):
        rows += [Row((inline(title),), "group")] if title else []
        rows += [_row(desk, line, line.number in by_class) for line in inside]
    whole = Bundle(estimate.lines)
    sums = (inline(written(amount)) for amount in (whole.low, whole.likely, whole.high))
    rows.append(Row((inline(""), inline("All lines"), inline(""), inline(""), inline(""), *sums), "total"))
    columns = (
        Column("Line", width=0.8),
        Column("What is priced", width=3),
        Column("How the rate was found, and what it rests on", width=5.6),
        Column("Class", "centre", 0.7),
        Column("Least – tendered – most", width=1.8),
        Column("Low", "decimal", 1.4),
        Column("Likely", "decimal", 1.4),
        Column("High", "decimal", 1.4),
    )
    table = Table(columns, tuple(rows), note=inline(_note(desk)), small=True)
    blocks = (*estimate_classes(desk, estimate), *_indices(desk), Heading("Line by line"), table)
    return Part("price-basis", "", "Prices by line", "schedule", OWNER, blocks, landscape=True)


def _note(desk: OwnerDesk) -> str:
    words = (
        "Low is the least quantity at the low rate, likely the tendered quantity at the likely rate, high the "
        "greatest at the high rate. Every step is carried on unrounded and shown to the cent; the rate at the end is "
        "rounded. Factors for access and place are taken as multiplying (common practice, no source). *: low or high "
        "from the bounds of the class."
    )
    programme = desk.foresight.papers.programme if desk.foresight else None
    counted = [one.line for one in programme.day_lines] if programme else []
    if counted:
        words += f" Lines {', '.join(counted)} count days of the programme: the trials give them days of their own."
    return words


def _row(desk: OwnerDesk, line: PricedLine, by_class: bool) -> Row:
    fixed = line.form == "fixed"
    cells = (
        inline(desk.item_ref(line.item.number, line.number)),
        inline(line.line.text),
        _come_by(line, _evidence(desk, line)),
        inline("–" if fixed else f"{line.unit_price.estimate_class}{'*' if by_class else ''}"),
        inline(quantity_range(line)),
        inline(written(line.low)),
        inline(written(line.amount)),
        inline(written(line.high)),
    )
    return Row(cells)


def steps_run(line: PricedLine) -> str:
    """Give the steps to a price as one run of text, the rate at its end."""
    begun, rate = _begun(line)
    return f"{begun} {rate}"


def _begun(line: PricedLine) -> tuple[str, str]:
    """Give the run of steps up to the rate, and the rate."""
    first, *others = line.unit_price.steps
    begun = first.what if first.what == "stated" else f"{first.what} →"
    gives = first.gives
    for step in others:
        begun += f" {written(cents(gives))} {step.what} →"
        gives = step.gives
    rate = f"{line.rate.normalize():f} %" if line.form in SHARES else written(line.rate)
    return begun, rate


def _come_by(line: PricedLine, rests_on: str) -> Inline:
    begun, rate = _begun(line)
    return inline(f"{begun} ", Span(rate, strong=True), Span(f"; {rests_on}", faint=True) if rests_on else "")


def _evidence(desk: OwnerDesk, line: PricedLine) -> str:
    rates = desk.foresight.papers.rates if desk.foresight else None
    rate = rates.of(line.number) if rates else None
    evidence = rate.evidence if rate else ""
    basis = line.basis if line.form != "fixed" else ""
    told = f"{evidence}: {basis}" if evidence and basis else evidence or basis
    return "; ".join(part for part in (told, _labour(desk, rate), rate.note if rate else "") if part)


def _labour(desk: OwnerDesk, rate: Rate | None) -> str:
    """Say what the rate of the labour rests on, where the price is built from hours."""
    rates = desk.foresight.papers.rates if desk.foresight else None
    labour = rates.labour.get(rate.labour) if rates is not None and rate is not None and rate.hours else None
    return f"labour: {labour.basis}" if labour is not None and labour.basis else ""


def _indices(desk: OwnerDesk) -> list[Block]:
    """Compose the indices by which prices of earlier dockings are escalated: where each is published, and its notes."""
    papers = desk.foresight.papers if desk.foresight else None
    told: list[Inline] = []
    for one in papers.indices.indices if papers is not None and papers.indices is not None else ():
        months = sorted(one.months)
        where = ", ".join(part for part in (one.publisher, one.code) if part)
        facts = f"{where}, " if where else ""
        facts += f"{'seasonally adjusted' if one.adjusted else 'not seasonally adjusted'}, {months[0]} to {months[-1]}."
        notes = (Span(" "), *desk.words(one.notes)) if one.notes else ()
        told.append((Span(f"{one.name}: ", strong=True), Span(facts), *notes))
    return [Heading("Indices of prices"), Bullets(tuple(told))] if told else []


def quantity_range(line: PricedLine) -> str:
    """Write the quantity of a line with its ends, such as `620 – 840 – 1150 kg`."""
    if line.form in ("lump", "fixed"):
        return "sum"
    if line.form in PERCENTS:
        return f"of {written(line.quantity.number)}"
    if line.form == "markup":
        return f"on {written(line.quantity.number)}"
    unit = shown_unit(line.quantity.unit)
    ends = [line.least, line.quantity.number, line.most]
    shown = [_plain(number) for number in ends]
    return (shown[1] if line.least == line.most else " – ".join(shown)) + (f" {unit}" if unit else "")


def _plain(number: Decimal) -> str:
    return f"{number.normalize():f}"
