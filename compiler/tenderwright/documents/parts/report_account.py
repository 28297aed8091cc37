"""The final account in a docking report: estimate, bid, contract, changes, what was paid, growth and its causes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal

from tenderwright.documents.closing_desk import ClosedDocking
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Bullets, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.parts.found import DASH
from tenderwright.documents.parts.report_summary import GROUP, percent
from tenderwright.pricing.final_account import AccountRow, FinalAccount
from tenderwright.pricing.money import total, written
from tenderwright.quantities.customs import day


def account(desk: Desk, closed: ClosedDocking, *, confidential: bool) -> Part:
    """Compose the account; estimates and bids stand in the confidential report alone."""
    made = closed.account
    blocks: list[Block] = []
    if made is None:
        blocks.append(Paragraph(inline("What was paid is not published. It lies with the owner's papers.")))
    else:
        blocks += _tables(made, _notes(closed), confidential=confidential)
    blocks += [*_changes(closed), *_pool(desk, closed), *_scrap(desk, closed)]
    return Part(
        "account",
        "8",
        "Final account and changes",
        "schedule",
        GROUP,
        tuple(blocks),
        landscape=True,
        audience="owner" if confidential else "yard",
    )


def _notes(closed: ClosedDocking) -> Mapping[str, str]:
    return {one.line: one.note for one in closed.findings.prices if one.note}


def _tables(made: FinalAccount, notes: Mapping[str, str], *, confidential: bool) -> list[Block]:
    note = (
        f"{made.currency}. Growth is what was paid beyond the contract, as a share of the contract; a dash where the "
        "contract had nothing. Contingent lines stand in the contract with nothing until they are ordered. Estimate "
        "and bid are of the tendered quantities; a sum stands only where every line in it has one."
    )
    blocks: list[Block] = []
    for title, rows in (("By kind", made.kinds), ("By item", made.items), ("By line", made.lines)):
        table = _account(title, rows, made.whole, note if title == "By kind" else "", confidential=confidential)
        blocks += [Heading(title), table]
        if title == "By line" and notes:
            blocks.append(Bullets(tuple(inline(f"{line}: {told}") for line, told in notes.items())))
        if title == "By kind":
            blocks += _causes(made)
    return blocks


def _account(title: str, rows: Sequence[AccountRow], whole: AccountRow, note: str, *, confidential: bool) -> Table:
    names = [Column({"By kind": "Kind", "By item": "Item", "By line": "Line"}[title], width=4.2)]
    priced = [Column("Estimate", "decimal", 1.4), Column("Bid", "decimal", 1.4)] if confidential else []
    columns = (
        *names,
        *priced,
        Column("Awarded", "decimal", 1.4),
        Column("Changes", "decimal", 1.4),
        Column("Final", "decimal", 1.4),
        Column("Growth", "right", 1),
    )
    made = [_row(row, confidential=confidential) for row in rows]
    made.append(_row(whole, "total", confidential=confidential))
    return Table(columns, tuple(made), small=True, note=inline(note))


def _row(row: AccountRow, weight: str = "normal", *, confidential: bool) -> Row:
    name = row.title if row.title == row.name else f"{row.name} {row.title}".strip()
    priced = [_amount(row.estimate), _amount(row.bid)] if confidential else []
    growth = percent(row.growth) if row.growth is not None else DASH
    cells = [name, *priced, _amount(row.awarded), _amount(row.changes), _amount(row.final), growth]
    return Row(tuple(inline(cell) for cell in cells), "total" if weight == "total" else "normal")


def _amount(amount: Decimal | None) -> str:
    return DASH if amount is None else written(amount)


def _causes(made: FinalAccount) -> list[Block]:
    if not made.causes:
        return []
    rows = [
        Row((inline(one.cause), inline(str(one.changes)), inline(written(one.amount)), inline(str(one.days))))
        for one in made.causes
    ]
    amount = total([one.amount for one in made.causes])
    days = sum(one.days for one in made.causes)
    count = sum(one.changes for one in made.causes)
    sums = (inline("All causes"), inline(str(count)), inline(written(amount)), inline(str(days)))
    columns = (
        Column("Cause", width=3),
        Column("Changes", "right"),
        Column(f"Amount, {made.currency}", "decimal", 1.6),
        Column("Days", "right"),
    )
    return [Heading("Growth by cause"), Table(columns, (*rows, Row(sums, "total")), small=True)]


def _changes(closed: ClosedDocking) -> list[Block]:
    shown = closed.account is not None
    rows = []
    for one in closed.findings.changes:
        cells = [one.change, day(one.day), one.line, one.cause, one.what, one.condition or DASH, str(one.days or DASH)]
        cells += [written(one.amount)] if shown else []
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = [
        Column("Change", width=0.9),
        Column("Agreed", width=1.3),
        Column("Line", width=0.7),
        Column("Cause", width=1.6),
        Column("What", width=4),
        Column("Answers", width=0.9),
        Column("Days", "right", 0.6),
        *([Column("Amount", "decimal", 1.4)] if shown else []),
    ]
    return [Heading("Change log"), Table(tuple(columns), tuple(rows), small=True)] if rows else []


def _pool(desk: Desk, closed: ClosedDocking) -> list[Block]:
    lines = {f"{item.number}.{line.line}": line for item in desk.package.items for line in item.lines}
    rows = tuple(
        Row(
            (
                inline(f"{one.line} {lines[one.line].text}"),
                inline(desk.quantity(lines[one.line].quantity, DASH)),
                inline(desk.quantity(one.hours)),
            )
        )
        for one in closed.findings.hours_used
    )
    columns = (Column("Trade", width=4), Column("Tendered", "right"), Column("Used", "right"))
    return [Heading("Hours used of the pool"), Table(columns, rows, small=True)] if rows else []


def _scrap(desk: Desk, closed: ClosedDocking) -> list[Block]:
    rows = tuple(
        Row((inline(one.what), inline(desk.quantity(one.mass)), inline(one.credit or DASH)))
        for one in closed.findings.scrap
    )
    columns = (Column("Scrap", width=4), Column("Mass", "right"), Column("Credited in line"))
    return [Heading("Scrap landed"), Table(columns, rows, small=True)] if rows else []
