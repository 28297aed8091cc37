"""Compose the comparison of bids: confidential, its first page for trustees, every figure behind it after."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.documents.desk import CAUTION, Desk, in_its_units
from tenderwright.documents.edition import DataTable, Edition, Part, Stamp
from tenderwright.documents.in_print import in_print
from tenderwright.documents.links_within import links_within
from tenderwright.documents.numbering import numbered
from tenderwright.documents.parts.bids_break_even import bids_break_even
from tenderwright.documents.parts.bids_corrections import bids_corrections
from tenderwright.documents.parts.bids_evaluated import bids_evaluated
from tenderwright.documents.parts.bids_exclusions import bids_exclusions
from tenderwright.documents.parts.bids_lines import bids_lines
from tenderwright.documents.parts.bids_responsive import bids_responsive
from tenderwright.documents.parts.bids_summary import bids_summary
from tenderwright.documents.parts.bids_unbalanced import bids_unbalanced
from tenderwright.documents.parts.bids_words import GROUP
from tenderwright.documents.parts.front import contents
from tenderwright.pricing.amount import units
from tenderwright.pricing.bids.compare import BidComparison
from tenderwright.quantities.customs import day

Cells = tuple[str | int | Decimal | None, ...]


@in_its_units
def bid_report(desk: Desk, comparison: BidComparison, stamp: Stamp) -> Edition:
    """Compose the report."""
    tender = desk.tender
    title = f"Comparison of bids, {tender.ship}"
    parts = (
        Part("cover", "", title, "cover", GROUP, ()),
        contents(),
        bids_summary(desk, comparison),
        bids_evaluated(desk, comparison),
        bids_corrections(desk, comparison),
        bids_lines(desk, comparison),
        bids_unbalanced(desk, comparison),
        bids_break_even(desk, comparison),
        bids_exclusions(desk, comparison),
        bids_responsive(desk, comparison),
    )
    edition = Edition(
        name="bids",
        title=title,
        subtitle="As read, corrected and evaluated",
        tender=tender.tender.number,
        owner=tender.owner.name,
        stamp=stamp,
        issued=max(bid.bid.received for bid in comparison.bids),
        page_size="Letter" if tender.page_size == "Letter" else "A4",
        parts=links_within(numbered(parts, {GROUP: ""})),
        caution=CAUTION,
        confidential=True,
        facts=_facts(desk, comparison),
        tables={"bids-lines": lines_table(comparison), "bids-evaluated": evaluated_table(comparison)},
    )
    return in_print(desk, edition)


def _facts(desk: Desk, comparison: BidComparison) -> tuple[tuple[str, str], ...]:
    tender = desk.tender
    named = "; ".join(
        f"{bid.label}, received {day(bid.bid.received)}" for bid in sorted(comparison.bids, key=lambda one: one.name)
    )
    return (
        ("Ship", tender.ship),
        ("Owner", tender.owner.name),
        ("Tender", f"{tender.tender.number}, {tender.tender.title}"),
        ("Bids closed", day(tender.dates.closing)),
        ("Bids", named),
        ("Arithmetic", tender.award.arithmetic),
    )


def lines_table(comparison: BidComparison) -> DataTable:
    """Give every line of every bid as read and as it counts, one row for each."""
    header = (
        "line",
        "section",
        "item",
        "text",
        "form",
        "quantity",
        "unit",
        "rates_in",
        "amounts_in",
        "estimate_rate",
        "median_rate",
        "bid",
        "yard",
        "status",
        "rate_read",
        "amount_read",
        "rate",
        "amount",
        "times_median",
        "times_estimate",
        "mark",
        "correction",
    )
    rows: list[Cells] = []
    for line in comparison.lines:
        unit, rates_in = units(line.form, line.unit, comparison.currency)
        for bid in comparison.bids:
            one = bid.corrected.lines[line.number]
            ratio = comparison.unbalance[bid.name].ratios.get(line.number)
            rows.append(
                (
                    line.number,
                    line.section.code,
                    line.title,
                    line.text,
                    line.form,
                    line.quantity,
                    unit,
                    rates_in,
                    comparison.currency,
                    line.estimate,
                    comparison.medians.get(line.number),
                    bid.name,
                    bid.bid.yard,
                    one.status,
                    one.rate_read,
                    one.amount_read,
                    one.rate,
                    one.amount,
                    _ratio(ratio.to_median if ratio else None),
                    _ratio(ratio.to_estimate if ratio else None),
                    ratio.mark if ratio else "",
                    one.correction.kind if one.correction else "",
                )
            )
    return DataTable(header, tuple(rows))


def _ratio(ratio: Decimal | None) -> str:
    return f"{ratio:.3f}" if ratio is not None else ""


def evaluated_table(comparison: BidComparison) -> DataTable:
    """Give the parts of every evaluated price, and what every bid comes to in every case with its rank."""
    rows: list[tuple[str, str, Decimal, int | None]]
    found: list[Cells] = []
    for bid in comparison.bids:
        rows = [("as read", "total", bid.corrected.total_read, None), ("corrected", "total", bid.corrected.total, None)]
        rows += [("component", one.title, one.amount, None) for one in bid.components]
        rows += [
            ("case", entry.case.title, entry.totals[bid.name], entry.ranks.get(bid.name)) for entry in comparison.cases
        ]
        found += [
            (bid.name, bid.bid.yard, kind, what, comparison.currency, amount, rank) for kind, what, amount, rank in rows
        ]
    return DataTable(("bid", "yard", "kind", "what", "currency", "amount", "rank"), tuple(found))
