"""What the clauses say of money adds up, and is what package.yaml and contract.yaml say.

Ground: stages of payment are shares of one price; damages for a day are the owner's forecast of what a day costs it
(FAR 11.501), which package.yaml publishes as the cost of a day in the award.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal

from tenderwright.checks.context import Context
from tenderwright.model.package import Clause
from tenderwright.notices import Note, Notice

CODE = "clause-contradicts"
_LEAD = re.compile(r"^\*\*([^*]+)\*\*", re.MULTILINE)
_SHARE = re.compile(r"\b([0-9]+(?:\.[0-9]+)?) %")
_STAGE = re.compile(r"\b([0-9]+(?:\.[0-9]+)?) % (?:at|when|on|upon|after|with|before)\b")
_MONEY = re.compile(r"\b([A-Z]{3}) ([0-9][0-9,]*(?:\.[0-9]+)?)\b")
_WORDS = {"euro": "EUR", "euros": "EUR", "dollars": "USD", "pounds sterling": "GBP", "kroner": "NOK", "kronor": "SEK"}
_CURRENCY = re.compile(r"\bprices are in (" + "|".join(_WORDS) + r")\b", re.IGNORECASE)
_CAP = 30
"""Damages that go beyond so many per cent of the price are no forecast; common practice, no source."""


def check(context: Context) -> Iterator[Notice]:
    """Report stages of payment that are not the whole price, and damages and currencies that differ."""
    for clause in context.package.clauses:
        for title, paragraph in _paragraphs(clause):
            if title.startswith("payment"):
                yield from _stages(context, clause, paragraph)
            if title.startswith(("late redelivery", "liquidated damages", "damages for delay")):
                yield from _damages(context, clause, paragraph)
        yield from _currency(context, clause)


def _paragraphs(clause: Clause) -> Iterator[tuple[str, str]]:
    for paragraph in clause.text.text.split("\n\n"):
        lead = _LEAD.match(paragraph.strip())
        if lead is not None:
            yield lead[1].lower().rstrip("."), paragraph.strip()


def _stages(context: Context, clause: Clause, paragraph: str) -> Iterator[Notice]:
    shares = [Decimal(share) for share in _STAGE.findall(paragraph)]
    contract, told = context.package.contract, " + ".join(f"{share} %" for share in shares)
    held = [round(100 * one.share.si, 6) for one in contract.payments] if contract is not None else []
    if len(shares) > 2 and held and [float(share) for share in shares] != held:
        message = f"the stages of payment are {told} in this clause, and others in contract.yaml"
        note = Note("the payments are here", context.at("contract.yaml", "payments"))
        hint = "let the clause refer to <part:revision-record>, where they are printed"
        yield Notice(CODE, clause.text.place_of(f"{shares[0]} %"), message, (note,), (hint,))
    elif len(shares) > 2 and sum(shares) != 100:
        message = f"the stages of payment are {told}, which is {sum(shares)} % and not the whole price"
        yield Notice(CODE, clause.text.place_of(f"{shares[0]} %"), message)


def _damages(context: Context, clause: Clause, paragraph: str) -> Iterator[Notice]:
    first = _MONEY.search(paragraph)
    if first is None:
        return
    amounts = [Decimal(number.replace(",", "")) for _, number in _MONEY.findall(paragraph)]
    code, day, at = first[1], amounts[0], clause.text.place_of(first[0])
    tender = context.package.tender
    if tender is not None and tender.award.day_cost and not day / 3 <= tender.award.day_cost <= day * 3:
        message = f"a day of lateness costs {code} {day:,}, and the award counts a day at {tender.award.day_cost:,}"
        note = Note("the cost of a day is here", context.at("package.yaml", "award", "day_cost"))
        yield Notice(CODE, at, message, (note,), ("both are what a day costs the owner",))
    parts = amounts[1:]
    if len(parts) > 1 and sum(parts) != day:
        yield Notice(CODE, at, f"a day of lateness costs {code} {day:,}, and its parts are {sum(parts):,} together")
    caps = [Decimal(share) for share in _SHARE.findall(paragraph)]
    if caps and max(caps) > _CAP:
        message = f"damages up to {max(caps)} % of the price are not a forecast of a loss"
        yield Notice(CODE, clause.text.place_of(f"{max(caps)} %"), message)


def _currency(context: Context, clause: Clause) -> Iterator[Notice]:
    match = _CURRENCY.search(clause.text.text)
    tender = context.package.tender
    if match is None or tender is None:
        return
    code = _WORDS[match[1].lower()]
    if code != tender.currency and not (code == "USD" and tender.currency.endswith("D")):
        message = f"the clause prices in {match[1]}, and the currency of the tender is {tender.currency}"
        note = Note("the currency is here", context.at("package.yaml", "currency"))
        yield Notice(CODE, clause.text.place_of(match[1]), message, (note,))
