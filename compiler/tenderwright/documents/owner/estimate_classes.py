"""The classes of estimate: what they are, what they rest on, and where their bounds stand in for the owner's own."""

from __future__ import annotations

from tenderwright.calculations.cost.classes import CLASS_SOURCE, CLASSES, EVIDENCE_CLASSES
from tenderwright.documents.desk import joined
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Row, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.pricing.price import Estimate


def estimate_classes(desk: OwnerDesk, estimate: Estimate) -> list[Block]:
    """Compose the table of classes."""
    rows = []
    for number, one in CLASSES.items():
        low, high = one.factors
        rests = [evidence for evidence, found in EVIDENCE_CLASSES.items() if found == number]
        defined = f"{100 * one.defined_from:.0f} to {100 * one.defined_to:.0f} %"
        cells = (str(number), defined, f"× {low:.2f}", f"× {high:.2f}", joined(rests, "or"))
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("Class", "centre", 0.8),
        Column("Work defined", width=1.6),
        Column("Low", "centre", 1),
        Column("High", "centre", 1),
        Column("What the price rests on", width=5),
    )
    note = inline(
        f"Bounds: {CLASS_SOURCE}. They come from process plants and are not calibrated for ship repair. Which evidence "
        "makes which class is common practice, with no source."
    )
    words = "A class says how well a price is founded, 5 the least and 1 the best. Where a line names no evidence its "
    words += "class follows from how its quantity is known. "
    by_class = bounded(desk)
    if by_class:
        words += (
            f"Where the owner wrote no low or no high the bounds of the class stand in: at {len(by_class)} of the "
            f"{len(estimate.lines)} lines, marked with an asterisk."
        )
    table = Table(columns, tuple(rows), note=note, small=True)
    return [Heading("Classes of estimate"), Paragraph(inline(words.rstrip())), table]


def bounded(desk: OwnerDesk) -> frozenset[str]:
    """Give the lines whose low or high follows from the bounds of their class, since the owner wrote none."""
    rates = desk.foresight.papers.rates if desk.foresight else None
    if rates is None:
        return frozenset()
    lines = {line.number: rates.of(line.number) for line in desk.estimate.lines if line.form != "fixed"}
    return frozenset(number for number, rate in lines.items() if rate and (rate.low is None or rate.high is None))
