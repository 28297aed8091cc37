"""Compose the statement for trustees: where the docking stands, what it costs, what is to be decided, on one page."""

from __future__ import annotations

from tenderwright.documents.desk import CAUTION, in_its_units
from tenderwright.documents.edition import Block, Edition, Part, Stamp
from tenderwright.documents.in_print import in_print
from tenderwright.documents.parts.report_photographs import in_dock
from tenderwright.documents.parts.statement_choices import choices, decisions
from tenderwright.documents.parts.statement_money import money
from tenderwright.documents.parts.statement_where import where
from tenderwright.documents.statement_desk import LINES, StatementDesk
from tenderwright.documents.statement_tables import statement_lines
from tenderwright.quantities.customs import day


@in_its_units
def statement(desk: StatementDesk, stamp: Stamp) -> Edition:
    """Compose the statement of a day."""
    tender, contract = desk.tender, desk.standing.account.ledger.contract
    blocks: list[Block] = [*where(desk), *money(desk), *decisions(desk), *choices(desk)]
    on = day(desk.standing.on)
    title = f"{tender.ship} in dock, {on}"
    part = Part("statement", "", title, "statement", "Statement for trustees", tuple(blocks), caution=True)
    edition = Edition(
        name="statement",
        title=tender.tender.title,
        subtitle=f"Statement for trustees, {on}",
        tender=tender.tender.number,
        owner=tender.owner.name,
        stamp=stamp,
        issued=desk.standing.on,
        page_size="Letter" if tender.page_size == "Letter" else "A4",
        parts=(part, *_photographs(desk)),
        caution=CAUTION,
        confidential=True,
        facts=(("Ship", tender.ship), ("Yard", contract.bid.yard), ("Day", on)),
        tables={LINES: statement_lines(desk)},
    )
    return in_print(desk, edition)


def _photographs(desk: StatementDesk) -> tuple[Part, ...]:
    """Give a page behind the statement with the latest photographs from the work, where there are any."""
    blocks = in_dock(desk, desk.papers, desk.standing.on) if desk.papers is not None else []
    title = "The latest photographs from the work"
    page = Part("statement-photographs", "", title, "data", "Statement for trustees", tuple(blocks), caution=True)
    return (page,) if blocks else ()
