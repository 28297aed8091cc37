"""Where the docking stands: the sum of it in words, then days and work."""

from __future__ import annotations

import math

from tenderwright.documents.desk import joined
from tenderwright.documents.edition import Block, Facts, Heading, Inline, Paragraph, Span, inline
from tenderwright.documents.statement_desk import StatementDesk, sum_of
from tenderwright.model.approvals import DEPARTURE_HOME, FLOODING
from tenderwright.planning.approval_words import open_words
from tenderwright.pricing.in_dock.dock_days import DockDays
from tenderwright.quantities.customs import day, day_of_year


def where(desk: StatementDesk) -> list[Block]:
    """Compose the page's opening words and the facts on days and work."""
    facts = [("Days on blocks", _days(desk.standing.days)), *_critical(desk), ("Work", _work(desk))]
    facts += [("Inspections", _inspections(desk)), ("Approvals", _approvals(desk))]
    return [
        Paragraph((Span(opening(desk), strong=True),)),
        Heading("Where she is"),
        Facts(tuple((name, inline(text)) for name, text in facts if text)),
    ]


def opening(desk: StatementDesk) -> str:
    """Say in three sentences what trustees want to know first: time, money, and what they have to decide."""
    standing, made = desk.standing, desk.standing.account
    wanted = len(made.waiting) + len(made.unsigned)
    first = next((one.due for one in made.waiting if one.due is not None), None)
    told = [_time(standing.days), _money(desk)]
    if wanted:
        by = f", the first by {day(first.date())}" if first is not None else ""
        late = sum(1 for one in made.waiting if one.overdue(made.on))
        over = f" {late} of them {'is' if late == 1 else 'are'} overdue." if late else ""
        told.append(f"{count(wanted, 'decision')} {'is' if wanted == 1 else 'are'} needed{by}.{over}")
    else:
        told.append("No decision is needed.")
    if made.ledger.last is not None and made.ledger.last < made.on:
        told.append(f"The papers from the dock reach to {day(made.ledger.last)}.")
    return " ".join(told)


def count(number: int, noun: str) -> str:
    """Write a number with its noun: `1 day`, `2 days`."""
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"


def _time(days: DockDays) -> str:
    if days.undocked is not None:
        return f"She was undocked on {day(days.undocked)}, after {count(days.used, 'day')} on blocks."
    if not days.has_docked:
        return f"She is to be docked on {day(days.docked)}, for {count(days.whole, 'day')}."
    if days.left < 0:
        return f"Day {days.used} on blocks, {count(-days.left, 'day')} more than the {days.whole} of the contract."
    return f"Day {days.used} of {days.whole} on blocks; {count(days.left, 'day')} left."


def _money(desk: StatementDesk) -> str:
    made, contract = desk.standing.account, desk.standing.account.ledger.contract
    whole = f"{desk.currency}\N{NO-BREAK SPACE}{sum_of(made.forecast)}"
    short = (
        f" and {count(int(made.short.days), 'day')} short {'is' if made.short.days == 1 else 'are'} paid"
        if made.short
        else ""
    )
    told = f"The docking will come to {whole} if all that waits is accepted{short}"
    if contract.award.contingency is None:
        beyond = made.forecast - made.contract
        return f"{told}, {sum_of(abs(beyond))} {'above' if beyond >= 0 else 'below'} the contract."
    if made.contingency_left < 0:
        return f"{told}, {sum_of(-made.contingency_left)} beyond the contract and its contingency."
    return f"{told}; {sum_of(made.contingency_left)} of the contingency would be left."


def _days(days: DockDays) -> str:
    added = f" and {days.added} added by changes, {days.whole} in all" if days.added else ""
    used = f"; {days.used} used, {days.left} left" if days.has_docked else ""
    asked = f" What waits would add {days.asked}." if days.asked else ""
    when = "" if days.undocked is not None else f" Undocking by contract {day_of_year(days.undocking)}."
    return f"{days.tendered} tendered{added}{used}.{asked}{when}"


def _critical(desk: StatementDesk) -> list[tuple[str, str]]:
    standing, days = desk.standing, desk.standing.days
    if standing.needed is None:
        return []
    needed = math.ceil(standing.needed - 1e-6)
    spare = days.left - needed
    against = f"{count(spare, 'day')} in hand" if spare > 0 else "just as many as are left"
    if standing.short:
        against = f"{count(standing.short, 'day')} too few, which the forecast prices"
    path = f"The work left needs {count(needed, 'day')} on blocks, by the owner's programme: {against}."
    return [("Critical path", path)]


def _work(desk: StatementDesk) -> str:
    work = desk.standing.work
    share = f"; {100 * work.share:.0f} % of their value is done" if work.share is not None else ""
    groups = (("finished", work.finished), ("under way", work.under_way), ("not begun", work.not_begun))
    told = [f"{len(items)} {word}" for word, items in groups]
    return f"Of the items ordered, {joined(told)}{share}."


def _inspections(desk: StatementDesk) -> str:
    """Say what is released, what keeps her from floating, and which holds of work claimed for payment are open."""
    found = desk.standing.inspected
    if not found.in_use:
        return "None is recorded under `inspections:` in owner/in-dock/, so that open hold points are not told."
    holds = [one for one in found.points if one.point.code == "H"]
    told = [f"{sum(not one.open for one in holds)} of {count(len(holds), 'hold point')} released"]
    if failed := [one.point.name for one in found.points if one.state == "failed"]:
        told.append(f"failed: {joined(failed)}")
    if desk.standing.days.undocked is None:
        told.append(
            f"{len(found.keeping_from('docking', 'flooding'))} holds and rows of the register open before she floats"
        )
    claimed = claimed_for_payment(desk)
    unreleased = [one.point.name for one in holds if one.open and one.point.item.number in claimed]
    paid = f"Open holds of work claimed for payment: {joined(unreleased)}" if unreleased else ""
    return ". ".join(filter(None, ("; ".join(told), paid))) + "."


def _approvals(desk: StatementDesk) -> str:
    """Say which approvals and conditions are open before she floats and before she leaves; empty without a register."""
    kept = desk.standing.approvals
    if kept is None:
        return ""
    days = desk.standing.days
    afloat = f"before she floats, {open_words(kept, FLOODING)}; " if days.undocked is None else ""
    late = [one.approval.title for one in kept.standings if one.late]
    told = f" Late: {joined(late)}." if late else " None is late."
    return f"Open {afloat}before she leaves for home, {open_words(kept, DEPARTURE_HOME)}.{told}"


def claimed_for_payment(desk: StatementDesk) -> frozenset[str]:
    """Give the items of which something is measured, or that are told of as done."""
    made = desk.standing.account
    measured = {row.line.item.number for row in made.lines if row.measured}
    return frozenset(measured | {number for number, share in made.ledger.done(made.on).items() if share >= 1.0})


def facts_of(pairs: list[tuple[str, str]]) -> tuple[tuple[str, Inline], ...]:
    """Make facts of words, leaving out those without any."""
    return tuple((name, inline(text)) for name, text in pairs if text)
