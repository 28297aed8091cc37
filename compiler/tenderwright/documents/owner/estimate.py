"""The owner's estimate: items by class and range, growth of earlier dockings, contingency in sight."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import Literal

from tenderwright.documents.desk import capital
from tenderwright.documents.edition import Block, Column, Heading, Inline, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.owner.brief_money import BRIDGE, bridge
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.prices_by_item import OWNER
from tenderwright.documents.owner.sums import Sum, sums
from tenderwright.documents.parts.by_section import by_section
from tenderwright.documents.parts.condition import percent
from tenderwright.documents.parts.front import desk_item
from tenderwright.planning.outlook import CostOutlook
from tenderwright.pricing.bundle import Bundle, bundle_of, without_options
from tenderwright.pricing.growth import ALL
from tenderwright.pricing.growth_again import GrowthAgain, growth_again
from tenderwright.pricing.money import written
from tenderwright.pricing.price import Estimate, PricedItem
from tenderwright.quantities.customs import month


def owner_estimate(desk: OwnerDesk) -> Part:
    """Compose the estimate by item, with what earlier dockings and the trials say of what is beyond it."""
    estimate = desk.estimate
    opening = (
        f"Prices of {month(estimate.base_month)} in {desk.tender.currency}. Low, likely and high of an item are the "
        "sums of those of its lines; the low of a credit is the least money back. Not every line is low at once, nor "
        "every one high, so the sums at the foot are no forecast: how likely a total is, the trials show."
    )
    blocks: list[Block] = [
        Heading(BRIDGE),
        bridge(desk),
        Heading("By item"),
        Paragraph(inline(opening)),
        _by_item(desk, estimate),
        Heading("Contingency"),
        _contingency(desk, estimate),
        *_growth(desk, estimate),
    ]
    return Part("estimate", "", "Estimate", "schedule", OWNER, tuple(blocks))


def _by_item(desk: OwnerDesk, estimate: Estimate) -> Table:
    rows: list[Row] = []
    for title, inside in by_section(desk, estimate.items, lambda one: one.item.item):
        rows += [Row((inline(title),), "group")] if title else []
        rows += [_row(desk_item(desk, one.item), bundle_of(estimate, one.item.number)) for one in inside]
        rows += [_row(inline("Section"), _together(estimate, inside), "subtotal")] if title else []
    rows.append(_row(inline("All items"), Bundle(estimate.lines), "total"))
    columns = (
        Column("Item", width=4.2),
        Column("Class", "centre", 0.7),
        Column("Assumed", "right", 1),
        Column("Low", "decimal", 1.5),
        Column("Likely", "decimal", 1.5),
        Column("High", "decimal", 1.5),
    )
    note = inline(
        "Class: mean of the classes of the lines, weighted by amount; the classes are explained under the prices by "
        "line, and the owner's fixed sums have none. Assumed: share of the amounts whose quantity is assumed, not "
        "measured or surveyed. Options are counted, as in the prices by item."
    )
    return Table(columns, tuple(rows), note=note)


def _together(estimate: Estimate, items: Sequence[PricedItem]) -> Bundle:
    numbers = {one.item.number for one in items}
    return Bundle(tuple(line for line in estimate.lines if line.item.number in numbers))


def _row(title: Inline, bundle: Bundle, weight: Literal["normal", "subtotal", "total"] = "normal") -> Row:
    cells = (
        title,
        inline(str(bundle.estimate_class or "–")),
        inline(percent(float(bundle.assumed)) if bundle.assumed else "–"),
        inline(written(bundle.low)),
        inline(written(bundle.likely)),
        inline(written(bundle.high)),
    )
    return Row(cells, weight)


def _contingency(desk: OwnerDesk, estimate: Estimate) -> Table:
    """Set what the owner holds beside what the trials ask for."""
    counted = without_options(estimate.lines).likely
    papers = desk.foresight.papers if desk.foresight else None
    rates = papers.rates if papers else None
    share = f"{desk.quantity(rates.contingency.share)} of that base" if rates and rates.contingency else ""
    held = ". ".join(words for words in (share, estimate.contingency_why) if words) or "none"
    rows: list[Sum] = [
        ("Base: all that is contracted for at award", estimate.base, "normal"),
        ("Contingent lines and hours pool at their likely amounts", counted - estimate.base, "normal"),
        ("Sum of the likely amounts, options left out", counted, "subtotal"),
        (f"Contingency held by the owner: {held}", estimate.contingency, "normal"),
        ("Sum of likely with the contingency held", counted + estimate.contingency, "subtotal"),
    ]
    note = "Contingency is in no line and in no item."
    if desk.foresight is not None:
        cost = desk.foresight.outlook.cost
        rows.append(("P80 of the trials, enough in four of five", cost.at(0.80), "normal"))
        rows.append(("To be set aside beyond the likely sum: P80 less that sum", cost.contingency, "normal"))
        over = estimate.contingency - cost.contingency
        words = (
            "The contingency held goes beyond that by" if over >= 0 else "The contingency held falls short of that by"
        )
        rows.append((words, abs(over), "total"))
        note += f" The sum of likely with the contingency held {_enough(cost, counted + estimate.contingency)}."
    return sums(desk.tender.currency, rows, note)


def _enough(cost: CostOutlook, amount: Decimal) -> str:
    """Say between which levels of the trials an amount lies."""
    below = [level for level, cost_then in cost.levels.items() if cost_then <= amount]
    above = [level for level, cost_then in cost.levels.items() if cost_then > amount]
    if not below:
        return f"lies below P{100 * min(above):.0f} of the trials"
    if not above:
        return f"lies above P{100 * max(below):.0f} of the trials"
    return f"lies between P{100 * max(below):.0f} and P{100 * min(above):.0f} of the trials"


def _growth(desk: OwnerDesk, estimate: Estimate) -> list[Block]:
    found = desk.foresight.growth if desk.foresight else ()
    if not found:
        return []
    rows = [_growth_row(desk, growth_again(one, estimate)) for one in found]
    columns = (
        Column("Kind of item", width=2),
        Column("Ordered then", "decimal", 1.5),
        Column("Came to", "decimal", 1.5),
        Column("Growth", "decimal", 1),
        Column("Likely today", "decimal", 1.6),
        Column("Growing as much", "decimal", 1.7),
        Column("Dockings", width=1.3),
    )
    note = inline(
        "Work of earlier dockings by the kind of the item that it is now; Other is work that no item asks for today. "
        "Sums of dockings far apart are added in the money of their day, for the share alone. Each row applies its "
        "own share to today's likely amounts, so the rows do not add up to the last; contingent work is ordered as it "
        "is found, so no share is applied to it. Few dockings, and a share of little work, are a poor guide. "
        "Contingent lines and risks include a part of this growth already: it is shown beside the contingency, not "
        "added to it."
    )
    return [Heading("Growth at earlier dockings"), Table(columns, tuple(rows), note=note)]


def _growth_row(desk: OwnerDesk, again: GrowthAgain) -> Row:
    one = again.growth
    dockings: list[str | Span] = []
    for name in one.dockings:
        dockings += [", "] if dockings else []
        dockings.append(Span(_year(desk, name), desk.anchor("docking", name)))
    whole = one.kind == ALL
    cells = (
        inline("All kinds together" if whole else capital(one.kind)),
        inline(written(one.ordered)),
        inline(written(one.final)),
        inline(percent(one.share, 1) if one.share is not None else "–"),
        inline(written(again.today) if again.today else "–"),
        inline(written(again.more) if again.more is not None else "–"),
        inline(*dockings),
    )
    return Row(cells, "subtotal" if whole else "normal")


def _year(desk: OwnerDesk, docking: str) -> str:
    return next((str(one.docked.year) for one in desk.package.history if one.docking == docking), docking)
