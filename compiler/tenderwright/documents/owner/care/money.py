"""What is set aside each year for the docking after the one planned."""

from __future__ import annotations

from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Row, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.planning.care.once import next_planned
from tenderwright.planning.care.reserve import LEVELS, Reserved, reserved
from tenderwright.pricing.money import ZERO, written
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals

TITLE = "What is set aside for the docking after this one"


def set_aside_table(desk: OwnerDesk) -> list[Block]:
    """Compose the money to set aside by each year, at P50 and P80."""
    found = _reserved(desk)
    if isinstance(found, str):
        return [Heading(TITLE), Paragraph(inline(f"Not calculated: {found}."))]
    currency, low, high = desk.tender.currency, *(found.levels[level] for level in LEVELS)
    rows = [
        Row(
            (inline("Its cost at the prices of this docking"), inline(written(low.today)), inline(written(high.today)))
        ),
        Row((inline(f"The same in {found.due:%B %Y}"), inline(written(low.then)), inline(written(high.then)))),
        Row((inline("Set aside each year"), inline(written(low.yearly)), inline(written(high.yearly))), "total"),
    ]
    rows += [
        Row((inline(f"In hand by the end of {year}"), inline(written(sum_)), inline(written(upper))))
        for (year, sum_), (_, upper) in zip(low.years, high.years, strict=True)
    ]
    columns = (
        Column(currency, width=4),
        Column("P50, as likely as not", "decimal", 1.6),
        Column("P80, in four cases of five", "decimal", 1.6),
    )
    saved = f" {currency} {written(found.saved)} is set aside already." if found.saved > ZERO else ""
    interest = (
        f" Interest {decimals(100 * found.interest, 1)} % a year." if found.interest else " No interest is counted."
    )
    note = (
        f"Due {day(found.due)}. {decimals(100 * found.share, 0)} % of this docking: {found.share_source}. "
        f"Prices rise by {decimals(100 * found.rise, 1)} % a year: {found.rise_source}.{interest}{saved} "
        "What steel, anodes and coating do meanwhile may move both day and cost."
    )
    return [Heading(TITLE), Table(columns, tuple(rows), small=True, note=inline(note))]


def _reserved(desk: OwnerDesk) -> Reserved | str:
    programme, due = desk.tender.programme, next_planned(desk.package)
    if desk.foresight is None:
        return "it needs owner/rates.yaml"
    if programme is None or due is None:
        return "it needs `programme` in package.yaml and `next_docking` in vessel/condition.yaml"
    costs = {level: desk.foresight.outlook.cost.at(level) for level in LEVELS}
    return reserved(desk.foresight.papers, costs, programme.docking, due)
