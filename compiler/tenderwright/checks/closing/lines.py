"""Lines that were paid are lines of the tender, and their quantities measure what the tender asked for."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.model.item import Item, Line
from tenderwright.notices import Notice, Place
from tenderwright.notices.suggest import did_you_mean
from tenderwright.quantities.units import unit


def check(context: ClosingContext) -> Iterator[Notice]:
    """Report lines, bids and quantities that do not fit the tender."""
    findings = context.findings
    lines = {f"{item.number}.{line.line}": (item, line) for item in context.package.items for line in item.lines}
    named: list[tuple[str, Place]] = []
    for key in ("prices", "changes", "hours_used"):
        named += [(one.line, context.at(key, n, "line")) for n, one in enumerate(getattr(findings, key))]
    named += [(one.credit, context.at("scrap", n, "credit")) for n, one in enumerate(findings.scrap) if one.credit]
    for number, at in named:
        if number not in lines:
            yield Notice("dead-reference", at, f"there is no line {number}", hints=did_you_mean(number, lines))
    for index, one in enumerate(findings.hours_used):
        if one.line in lines and lines[one.line][1].price != "hours":
            message = f"line {one.line} is not a line of the hours pool"
            yield Notice("dead-reference", context.at("hours_used", index, "line"), message)
    for index, paid in enumerate(findings.prices):
        if paid.line in lines:
            yield from _quantity(context, index, *lines[paid.line])
            yield from _credit(context, index, *lines[paid.line])
    bids = {path.rsplit("/", 1)[-1].removesuffix(".yaml") for path in context.papers.bids}
    if findings.bid and findings.bid not in bids:
        hints = did_you_mean(findings.bid, bids)
        yield Notice(
            "dead-reference", context.at("bid"), f"there is no bid `{findings.bid}` under owner/bids/", hints=hints
        )


def _quantity(context: ClosingContext, index: int, item: Item, line: Line) -> Iterator[Notice]:
    paid = context.findings.prices[index]
    wanted = _unit(context, line)
    if paid.quantity is None or not wanted or unit(wanted).signature == unit(paid.quantity.unit).signature:
        return
    message = f"line {item.number}.{line.line} is measured in {wanted}, got `{paid.quantity}`"
    yield Notice("wrong-dimension", context.at("prices", index, "quantity"), message)


def _unit(context: ClosingContext, line: Line) -> str:
    """Give the unit in which the tender measures a line; empty for a lump."""
    if line.quantity is not None:
        return line.quantity.unit
    if line.takes is None:
        return ""
    value = context.record.values.get(line.takes.name)
    return line.unit or (line.round_up.unit if line.round_up else value.unit if value else "")


def _credit(context: ClosingContext, index: int, item: Item, line: Line) -> Iterator[Notice]:
    paid = context.findings.prices[index]
    is_credit = item.kind_of(line) == "credit"
    for key in ("contract", "final"):
        amount = getattr(paid, key)
        if is_credit and amount > 0:
            message = f"line {paid.line} is a credit, so its amount is negative"
            yield Notice("bad-money", context.at("prices", index, key), message)
        if not is_credit and amount < 0:
            message = f"line {paid.line} is not a credit, so its amount is not negative"
            yield Notice("bad-money", context.at("prices", index, key), message)
