"""Line by line: the rate of every bid against the median and the estimate, with marks."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Inline, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.numbering import mark
from tenderwright.documents.parts.bids_words import DASH, GROUP, quantity, rate
from tenderwright.pricing.amount import PERCENTS
from tenderwright.pricing.bids.compare import BidComparison
from tenderwright.pricing.bids.corrected import CorrectedLine
from tenderwright.pricing.bids.tendered import TenderLine
from tenderwright.pricing.money import written
from tenderwright.pricing.sections import SECTIONS

MARKS = {"low": " ↓", "high": " ↑", "": ""}


def bids_lines(desk: Desk, comparison: BidComparison) -> Part:
    """Compose the table of rates, section by section."""
    rows: list[Row] = []
    for section in SECTIONS:
        inside = [line for line in comparison.lines if line.section.code == section.code]
        if inside:
            rows.append(Row((inline(f"{section.code} {section.title}"),), "group"))
            rows += [_row(line, comparison) for line in inside]
            sums = [inline(written(bid.corrected.sections[section.code])) for bid in comparison.bids]
            label = (inline(""), inline(f"Section {section.code}, amounts"), *[inline("")] * 3)
            rows.append(Row((*label, *sums), "subtotal"))
    columns = (
        Column("Line", width=0.8),
        Column("What", width=4.0),
        Column("Quantity", "right", 1.5),
        Column("Estimate", "right", 1.4),
        Column("Median", "right", 1.4),
        *(Column(bid.label, "right", 1.5) for bid in comparison.bids),
    )
    blocks: list[Block] = [Paragraph(inline(_words(comparison))), Table(columns, tuple(rows), small=True)]
    return Part("bids-lines", "", "Line by line", "schedule", GROUP, tuple(blocks), landscape=True)


def _words(comparison: BidComparison) -> str:
    against = "the median of the bids and the estimate" if comparison.estimated else "the median of the bids"
    return (
        f"Rates in {comparison.currency}, percentages of mark-ups and of other lines. ↓ less than half of {against}, "
        "↑ more than twice (common practice, no source); * corrected or to be confirmed, see "
        f"{mark('bids-corrections')}. A line that is included, not bid or left empty says so; how the last two are "
        f"priced stands in {mark('bids-exclusions')}. A median is given where two bids or more price the line."
    )


def _row(line: TenderLine, comparison: BidComparison) -> Row:
    count = DASH if line.form in ("lump", "fixed", *PERCENTS) else quantity(line.quantity, line.unit)
    cells = [
        inline(line.number),
        inline(f"{line.title}: {line.text}"),
        inline(count),
        inline(rate(line.estimate)),
        inline(rate(comparison.medians.get(line.number))),
        *(_cell(bid.corrected.lines[line.number], bid.name, comparison) for bid in comparison.bids),
    ]
    return Row(tuple(cells))


def _cell(one: CorrectedLine, name: str, comparison: BidComparison) -> Inline:
    if one.status == "fixed":
        return inline(written(one.amount))
    if one.status not in ("priced", "zero"):
        return inline(one.status)
    ratio = comparison.unbalance[name].ratios.get(one.line.number)
    mark = ratio.mark if ratio is not None else ""
    star = "*" if one.correction is not None else ""
    return inline(Span(f"{rate(one.rate)}{star}{MARKS[mark]}", strong=bool(mark)))


def estimate_off(comparison: BidComparison) -> list[Block]:
    """List the lines where the bids together lie far from the estimate."""
    rows = [
        Row(
            (
                inline(one.line.number),
                inline(f"{one.line.title}: {one.line.text}"),
                inline(rate(one.line.estimate)),
                inline(rate(one.rate)),
                inline(f"{one.to_estimate:.2f}" if one.to_estimate is not None else DASH),
            )
        )
        for one in comparison.estimate_off
    ]
    if not rows:
        return []
    columns = (
        Column("Line", width=0.8),
        Column("What", width=4),
        Column("Estimate", "right", 1.4),
        Column("Median", "right", 1.4),
        Column("Ratio", "right", 0.9),
    )
    words = (
        "Here the bids agree with each other more than with the owner's estimate. Look at the quantity and at the "
        "owner's own rate before you conclude anything about a bidder."
    )
    title = "Where the estimate itself is in doubt"
    return [Heading(title), Paragraph(inline(words)), Table(columns, tuple(rows), small=True)]
