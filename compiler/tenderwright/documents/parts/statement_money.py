"""What the docking costs now: contract, changes by cause, forecast, contingency, money and the hours pool."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.documents.desk import joined
from tenderwright.documents.drawings.money_bar import money_bar
from tenderwright.documents.edition import Block, Column, Facts, Figure, Heading, Inline, Paragraph, Row, Table, inline
from tenderwright.documents.parts.statement_where import count, facts_of
from tenderwright.documents.statement_desk import LINES, StatementDesk, sum_of
from tenderwright.pricing.in_dock.account import RunningAccount
from tenderwright.pricing.in_dock.days_beyond import DaysBeyond
from tenderwright.pricing.in_dock.pool import PoolBalance
from tenderwright.pricing.money import ZERO, written
from tenderwright.quantities.customs import day


def money(desk: StatementDesk) -> list[Block]:
    """Compose the account, its drawing, what stands against it, and under which conditions it holds."""
    conditions = Paragraph(inline(holds_if(desk)), as_note=True)
    return [Heading("What it costs now"), picture(desk), _account(desk), Facts(_against(desk)), conditions]


def picture(desk: StatementDesk) -> Figure:
    """Draw cost over money; what is ordered below the contract leaves the rest of the contract's bar away."""
    made, funds = desk.standing.account, desk.standing.funds
    ordered = max(made.ordered, ZERO)
    costs = [
        ("contract", min(made.contract, ordered)),
        ("ordered", max(ordered - made.contract, ZERO)),
        ("waiting", max(made.forecast - ordered, ZERO)),
    ]
    pieces = [("in hand", funds.by_hand), ("promised", funds.by_promise)] if funds is not None else []
    contract = made.ledger.contract
    limit = made.contract + contract.contingency if contract.award.contingency is not None else None
    return money_bar(desk.currency, costs, pieces, made.contract, limit)


def _account(desk: StatementDesk) -> Table:
    made = desk.standing.account
    rows = [_row("Contract as awarded", None, None, made.contract)]
    rows += [_row(f"Changes: {one.cause}", one.changes, one.days, one.amount) for one in made.causes]
    measured = sum(1 for one in made.lines if one.measured is not None)
    if measured:
        rows.append(_row("Quantities as measured", measured, None, made.remeasured))
    out = made.ledger.out(made.on)
    if out:
        rows.append(_row("Left out or put off", len({id(one) for one in out.values()}), None, made.left_out))
    rows.append(_row("Ordered so far", None, None, made.ordered, "subtotal"))
    if made.unsigned:
        days = sum(one.order.days for one in made.unsigned)
        rows.append(_row("Changes to be signed", len(made.unsigned), days, made.to_be_signed))
    if made.waiting:
        days = sum(one.report.days for one in made.waiting)
        no_price = f", {made.unpriced} without a price yet" if made.unpriced else ""
        rows.append(
            _row(f"Conditions found, to be answered or ordered{no_price}", len(made.waiting), days, made.to_be_answered)
        )
    if made.further is not None:
        rows.append(_beyond("Further days that changes bring", made.further))
    if made.short is not None:
        rows.append(_beyond("Days that the work is short of", made.short))
    rows.append(_row("Forecast of the final account", None, None, made.forecast, "total"))
    columns = (
        Column("", width=5),
        Column("No.", "right", 0.7),
        Column("Days", "right", 0.8),
        Column(desk.currency, "decimal", 1.6),
    )
    return Table(columns, tuple(rows), small=True)


def _beyond(name: str, one: DaysBeyond) -> Row:
    at = f", at {_lines(one)}" if one.lines else ""
    return _row(f"{name}{at}", None, int(one.days), one.amount)


def _lines(one: DaysBeyond) -> str:
    return f"line{'s' if len(one.lines) > 1 else ''} {joined(list(one.lines))}"


def _row(name: str, number: int | None, days: int | None, amount: Decimal, weight: str = "normal") -> Row:
    cells = (name, str(number or ""), str(days or ""), written(amount))
    made = tuple(inline(cell) for cell in cells)
    return Row(made, "subtotal" if weight == "subtotal" else "total" if weight == "total" else "normal")


def _against(desk: StatementDesk) -> tuple[tuple[str, Inline], ...]:
    facts = [("Contingency", _contingency(desk)), ("Money", _funds(desk)), ("Hours pool", _pool(desk))]
    facts += [("Quantities", _quantities(desk)), ("Signatures", _signatures(desk))]
    return facts_of([*facts, ("Basis", _basis(desk))])


def _contingency(desk: StatementDesk) -> str:
    made, contract = desk.standing.account, desk.standing.account.ledger.contract
    if contract.award.contingency is None:
        return "The award sets none."
    spent = made.ordered - made.contract
    beyond = f"{sum_of(abs(spent))} {'beyond' if spent >= 0 else 'below'} the contract is ordered"
    told = f"{sum_of(contract.contingency)} was set aside; {beyond}"
    if made.contingency_left < 0:
        return f"{told}; with what waits the contingency is overspent by {sum_of(-made.contingency_left)}."
    return f"{told}; {sum_of(made.contingency_left)} would be left with all that waits."


def _funds(desk: StatementDesk) -> str:
    funds = desk.standing.funds
    if funds is None:
        return "owner/funding.yaml does not say where it comes from."
    told = [f"{sum_of(funds.in_hand)} in hand pays {sum_of(funds.by_hand)} of the forecast"]
    if funds.promised:
        told.append(f"{sum_of(funds.promised)} promised pays {sum_of(funds.by_promise)}")
    sums = "; ".join(told)
    if funds.short:
        return f"{sums}; {sum_of(funds.short)} is missing."
    free = f", and {sum_of(funds.not_free)} is left over or may not pay for this" if funds.not_free else ""
    return f"{sums}. The forecast is paid for{free}."


def _pool(desk: StatementDesk) -> str:
    return "; ".join(_balance(one, desk.currency) for one in desk.standing.pool if one.ordered or one.asked)


def _quantities(desk: StatementDesk) -> str:
    """Say which measured quantities lie outside the range within which rates hold, and what was agreed of them."""
    made = desk.standing.account
    hold = made.ledger.contract.award.rates_hold
    if hold is None:
        measured = any(one.measured is not None for one in made.lines)
        words = "owner/award.yaml does not say how far they may go before rates are open (`rates_hold`)."
        return words if measured else ""
    told = [
        f"{one.line.number}: {one.measured.quantity:f} of {one.line.tendered:f} {one.line.unit}"
        f" ({one.measured.told.rate_agreed or 'rate not settled'})"
        for one in desk.standing.outside
    ]
    return f"Outside {hold.from_} to {hold.to} of those tendered: {'; '.join(told)}." if told else ""


def _signatures(desk: StatementDesk) -> str:
    """Say which changes were signed in parts that one office may not sign as one."""
    told = [
        f"{joined([change.name for change in one.changes])}, of {one.what}, come to {sum_of(one.amount)} together, "
        f"and {one.who} may sign up to {sum_of(one.up_to)}"
        for one in desk.standing.splits
    ]
    return f"{'; '.join(told)}." if told else ""


def _balance(one: PoolBalance, currency: str) -> str:
    """Say how a line of the pool stands; hours without needless noughts, materials as money."""
    if one.line.form == "markup":
        asked = f", {sum_of(one.asked)} more asked" if one.asked else ""
        return f"materials {currency} {sum_of(one.ordered)} of {sum_of(one.tendered)} ordered{asked}"
    asked = f", {one.asked:f} h more asked" if one.asked else ""
    name = f"{one.line.number}: {one.ordered:f} of {one.tendered:f} h ordered{asked}"
    return name if one.left >= 0 else f"{name}, {-one.left:f} h more than were tendered"


def holds_if(desk: StatementDesk) -> str:
    """Say under which conditions the forecast holds."""
    made, standing = desk.standing.account, desk.standing
    told = []
    if made.waiting or made.unsigned:
        told.append("all that waits is accepted as asked")
    if made.unpriced:
        told.append(
            f"{count(made.unpriced, 'report')} without a price {'costs' if made.unpriced == 1 else 'cost'} nothing"
        )
    if standing.days.undocked is None:
        told.append("no more is found or ordered, and what is not measured yet comes out as tendered")
        told.append(_work_left(desk))
    if made.short is not None:
        told.append("the yard is not itself the cause of the days short, for which nothing is paid then")
    conditions = f"The forecast holds if {'; '.join(told)}." if told else ""
    return f"{conditions}{_no_rate(made)}".strip()


def _work_left(desk: StatementDesk) -> str:
    if desk.standing.needed is None:
        return "the work left fits the days left, which nobody can say without owner/programme.yaml"
    brought = desk.standing.days.added + desk.standing.days.asked
    changes = ", with the days that changes bring for their own work" if brought else ""
    return f"the work left takes the likely days of the owner's programme{changes}"


def _no_rate(made: RunningAccount) -> str:
    """Say that days beyond the contract are not priced, and what it takes."""
    contract = made.ledger.contract
    days = [one for one in made.beyond if contract.days_line not in one.lines]
    if not days:
        return ""
    number = sum(int(one.days) for one in days)
    why = (
        f"the bid has no rate at line {contract.days_line}" if contract.days_line else "the award names no `days_line`"
    )
    return f" {count(number, 'further day')} {'is' if number == 1 else 'are'} not priced, since {why}."


def _basis(desk: StatementDesk) -> str:
    contract = desk.standing.account.ledger.contract
    return (
        f"The bid of {contract.bid.yard} as awarded on {day(contract.award.awarded)}. Every line stands in "
        f"{LINES}.csv. Owner's papers: sha256 {desk.papers_hash[:12]}."
    )
