"""The owner's risks as the trials count them: chance, cost and days if they happen, and what they cost on average."""

from __future__ import annotations

from tenderwright.documents.desk import capital
from tenderwright.documents.edition import Block, Column, Heading, Row, Span, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.model.owner import OwnerPapers, Risk
from tenderwright.planning.durations import DAY
from tenderwright.planning.foresight import Foresight
from tenderwright.pricing.money import ZERO, total, written


def all_risks(papers: OwnerPapers) -> tuple[Risk, ...]:
    """Give the risks of the owner's papers."""
    return papers.risks.risks if papers.risks else ()


def counted(papers: OwnerPapers) -> list[Risk]:
    """Give the risks that the trials count: those that bear on the cost."""
    return [risk for risk in all_risks(papers) if risk.bears_on == "cost"]


def risk_name(risk: Risk) -> str:
    """Name a risk in words."""
    return risk.risk.replace("-", " ")


def risks_counted(desk: OwnerDesk, seen: Foresight) -> list[Block]:
    """List the risks that the trials count, and what they cost on average; nothing without any."""
    means = {driver.part: driver.mean for driver in seen.outlook.cost.drivers if driver.is_risk}
    risks = [risk for risk in counted(seen.papers) if risk.risk in means]
    if not risks:
        return []
    rows = []
    for risk in risks:
        words = [Span(capital(risk_name(risk)) + ". ", strong=True), *desk.words(risk.what)]
        words += [Span(" Answer: ", strong=True), *desk.words(risk.answer)] if risk.answer else []
        cells = (
            tuple(words),
            inline(desk.item_ref(risk.item.name)) if risk.item else inline("–"),
            inline(desk.quantity(risk.likelihood, "certain")),
            inline(_cost(risk)),
            inline(_days(risk)),
            inline(written(means[risk.risk])),
        )
        rows.append(Row(cells))
    whole = inline(written(total([means[risk.risk] for risk in risks])))
    rows.append(Row((inline("All risks"), (), (), (), (), whole), "total"))
    columns = (
        Column("Risk", width=4.6),
        Column("Item", width=0.6),
        Column("Chance", "right", 0.9),
        Column("Cost if it happens", width=2.2),
        Column("Days", width=0.9),
        Column("On average", "decimal", 1.2),
    )
    return [Heading("Risks counted"), Table(columns, tuple(rows), small=True)]


def _cost(risk: Risk) -> str:
    low, high = risk.low or ZERO, risk.high or risk.low or ZERO
    return written(low) if low == high else f"{written(low)} to {written(high)}"


def _days(risk: Risk) -> str:
    if risk.days_high is None:
        return "–"
    low, high = (risk.days_low.si if risk.days_low is not None else 0.0) / DAY, risk.days_high.si / DAY
    return f"{high:g}" if low == high else f"{low:g} to {high:g}"
