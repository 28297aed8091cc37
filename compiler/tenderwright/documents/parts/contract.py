"""The contract as bidders read it: what is paid when, what secures it, and what is settled beside the clauses."""

from __future__ import annotations

from tenderwright.documents.desk import Desk, capital, joined
from tenderwright.documents.edition import Block, Column, Facts, Heading, Inline, Paragraph, Row, Span, Table, inline
from tenderwright.model.contract import BID_SECURITY, Contract, Release, Security, Stage
from tenderwright.model.day import Day
from tenderwright.model.matters import LEFT_OUT, MATTERS, SETTLED
from tenderwright.pricing.money import in_currency
from tenderwright.quantities.customs import day


def contract_terms(desk: Desk) -> list[Block]:
    """Compose what a bidder must know of the contract; in one line where the package does not tell it."""
    contract, late = desk.package.contract, _late_redelivery(desk)
    if contract is None:
        words = "Payment and security: not described beyond the general requirements; they need contract.yaml."
        return [*late, Paragraph(inline(words))]
    facts = [
        *([("Agreement", inline(f"{contract.agreement}."))] if contract.agreement else []),
        *((capital(one.kind), inline(security_in_words(desk, one))) for one in contract.securities),
        *([("Held back", inline(held_back(desk, contract)))] if contract.retention is not None else []),
        *_settled(desk, contract),
        *([("To sign", inline(f"{', '.join(f'{stem}.docx' for stem in to_sign(desk))}."))] if contract.to_sign else []),
    ]
    return [
        Heading("Contract and payment"),
        *([_stages(desk, contract)] if contract.payments else []),
        *late,
        *([Facts(tuple(facts))] if facts else []),
    ]


def to_sign(desk: Desk) -> dict[str, str]:
    """Give the forms that bidders sign, by the stem of their file."""
    contract = desk.package.contract
    return {f"forms/{one}": one for one in contract.to_sign} if contract is not None else {}


def _stages(desk: Desk, contract: Contract) -> Table:
    rows = [
        Row((inline(one.stage), waits_for(desk, one), inline(desk.quantity(one.share)))) for one in contract.payments
    ]
    columns = (
        Column("Falls due when", width=4.6),
        Column("Waits for", width=4),
        Column("Of the contract price", "decimal", 1.8),
    )
    return Table(columns, tuple(rows))


def waits_for(desk: Desk, stage: Stage) -> Inline:
    """Say what a payment waits for: an item, an event with its planned day, or a day of the calendar."""
    waits: list[str | Span] = []
    if stage.item is not None:
        item = desk.package.item_by_name.get(stage.item.name)
        waits.append(desk.item_ref(stage.item.name, f"{stage.item.name} {item.title}" if item else stage.item.name))
    if stage.event:
        planned = desk.tender.events.get(stage.event)
        waits.append(f"{stage.event}, planned for {day(planned)}" if planned else stage.event)
    if stage.on is not None:
        waits.append(f"{'not before ' if waits else ''}{when(desk, stage.on)}")
    told = [part for one in waits for part in ("; ", one)][1:]
    return inline(*told) if told else inline("–")


def when(desk: Desk, one: Day) -> str:
    """Give a day as written, with the date that it comes to by the programme."""
    on = one.on(desk.tender.events)
    if one.date is not None or on is None:
        return day(on) if on is not None else one.text
    return f"{one.text} ({day(on)})"


def _late_redelivery(desk: Desk) -> list[Block]:
    """Say what lateness costs the yard, and from when; nothing where the tender asks for none."""
    damages = desk.tender.damages
    if damages is None:
        return []
    begins = f"from {damages.after} d after the contract day" if damages.after else "after the contract day"
    most = f", at most {damages.most} of the contract price" if damages.most is not None else ""
    a_day = in_currency(desk.tender.currency, damages.a_day)
    return [Paragraph(inline(f"Late redelivery {begins}: {a_day} for each day{most}."))]


def security_in_words(desk: Desk, one: Security) -> str:
    """Say the sum, form, issuer and time of a security."""
    of = "bid" if one.kind == BID_SECURITY else "contract price"
    return (
        f"{one.issuer}: {desk.quantity(one.share)} of the {of}, {one.form}; valid until "
        f"{when(desk, one.valid_to)}, given back at {when(desk, one.released)}."
    )


def held_back(desk: Desk, contract: Contract) -> str:
    """Say what is held back, and when it is paid."""
    if contract.retention is None:
        return "nothing"
    parts = [f"{desk.quantity(one.share)} {_paid(desk, one)}" for one in contract.retention.releases]
    return f"{desk.quantity(contract.retention.share)} of each payment; of that, {joined(parts)}."


def _paid(desk: Desk, one: Release) -> str:
    if one.item is not None:
        return f"when item {one.item.name} is accepted"
    return f"at {when(desk, one.at)}" if one.at is not None else "at no event"


def _settled(desk: Desk, contract: Contract) -> list[tuple[str, Inline]]:
    """Give what is settled in words of its own; what a clause holds stands there."""
    facts = [
        (one.title, desk.words(answer.words))
        for one in MATTERS
        if (answer := contract.matters.get(one.key)) is not None and answer.answer == SETTLED and answer.clause is None
    ]
    if contract.floatable is not None:
        hours = f"Where the contract ends early, she is made fit to float within {desk.quantity(contract.floatable)}."
        facts.append(("Fit to float", inline(hours)))
    left_out = [one.title for one in MATTERS if _answer(contract, one.key) == LEFT_OUT]
    if left_out:
        facts.append(("Not asked", inline(f"{capital(', '.join(one[:1].lower() + one[1:] for one in left_out))}.")))
    return facts


def _answer(contract: Contract, key: str) -> str:
    found = contract.matters.get(key)
    return found.answer if found is not None else ""
