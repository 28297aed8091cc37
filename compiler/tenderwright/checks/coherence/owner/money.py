"""Sources, risks, grants and the award are of the size of the docking they belong to.

Ground: the owner's own estimate; how many times it one figure may be: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.grant import Grant
from tenderwright.notices import Notice
from tenderwright.pricing.money import written

CODE = "price-unlikely"
_DAY = 86400.0
_SOURCE, _RESTRICTED, _LEAST = 4, 2, 1000
"""How many times the docking a source may be, a restricted one, and what part of it one is at the least."""
_HOURS = 20_000
"""Of volunteers for one docking: ten people for a year."""
_ANSWER = (1800.0, 14 * _DAY)
"""The least and the most time in which a report is answered [s]."""


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report sums that dwarf the docking, or are dwarfed by it, and times beyond it."""
    whole = context.estimate.everything if context.estimate is not None else None
    if whole is not None and whole > 0:
        yield from _sources(context, whole)
        yield from _day_cost(context, whole)
        for path, grant in context.papers.grants.items():
            yield from _costs(context, path, grant, whole)
    yield from _risks(context, whole)
    for path, grant in context.papers.grants.items():
        yield from _in_kind(context, path, grant)
    yield from _award(context)


def _sources(context: OwnerContext, whole: Decimal) -> Iterator[Notice]:
    for index, source in enumerate(context.papers.funding.sources if context.papers.funding is not None else ()):
        at = context.at("owner/funding.yaml", "sources", index, "amount")
        most = _SOURCE if not source.only else _RESTRICTED
        if source.amount > most * whole or source.amount < whole / _LEAST:
            message = f"`{source.source}` gives {written(source.amount)}, and the docking is {written(whole)} in all"
            yield Notice(CODE, at, message)
        if source.kept_back > source.amount:
            at = context.at("owner/funding.yaml", "sources", index, "kept_back")
            message = (
                f"{written(source.kept_back)} is kept back of `{source.source}`, which is {written(source.amount)}"
            )
            yield Notice(CODE, at, message)


def _day_cost(context: OwnerContext, whole: Decimal) -> Iterator[Notice]:
    tender = context.package.tender
    cost = tender.award.day_cost if tender is not None else None
    stay = tender.stay if tender is not None else None
    if stay is None or cost is None:
        return
    if cost * stay > whole:
        message = f"{stay} days at {written(cost)} are {written(cost * stay)}, and the docking is {written(whole)}"
        yield Notice(CODE, context.at("package.yaml", "award", "day_cost"), message)


def _risks(context: OwnerContext, whole: Decimal | None) -> Iterator[Notice]:
    tender = context.package.tender
    on_blocks = tender.dock_days if tender is not None else None
    for index, risk in enumerate(context.papers.risks.risks if context.papers.risks is not None else ()):
        at = ("owner/risks.yaml", "risks", index)
        if risk.low is not None and risk.high is not None and risk.low > risk.high:
            message = f"risk `{risk.risk}` costs {written(risk.low)} at least and {written(risk.high)} at most"
            yield Notice("range-order", context.at(*at, "low"), message)
        if whole is not None and risk.high is not None and risk.high > whole:
            message = f"risk `{risk.risk}` costs {written(risk.high)} at most, and the docking is {written(whole)}"
            yield Notice(CODE, context.at(*at, "high"), message)
        low, high = risk.days_low, risk.days_high
        if low is not None and high is not None and low.si > high.si:
            yield Notice("range-order", low.at, f"risk `{risk.risk}` takes {low} at least and {high} at most")
        if high is not None and on_blocks is not None and high.si > 4 * on_blocks * _DAY:
            message = f"risk `{risk.risk}` takes {high} at most, and {on_blocks} days on blocks are planned"
            yield Notice("days-differ", high.at, message)


def _costs(context: OwnerContext, path: str, grant: Grant, whole: Decimal) -> Iterator[Notice]:
    for index, cost in enumerate(grant.costs):
        if cost.amount > 3 * whole:
            message = f"`{cost.what}` costs {written(cost.amount)}, and the docking is {written(whole)}"
            yield Notice(CODE, context.at(path, "costs", index, "amount"), message)


def _in_kind(context: OwnerContext, path: str, grant: Grant) -> Iterator[Notice]:
    rates = context.papers.rates
    dearest = max((one.rate for one in rates.labour.values()), default=None) if rates is not None else None
    for index, given in enumerate(grant.in_kind):
        if dearest is not None and given.rate > 5 * dearest:
            message = f"an hour of `{given.what}` counts {written(given.rate)}, and the dearest labour is {dearest}"
            yield Notice(CODE, context.at(path, "in_kind", index, "rate"), message)
        if given.hours.si > _HOURS * 3600:
            yield Notice("quantity-unlikely", given.hours.at, f"{given.hours} of `{given.what}` are years of work")


def _award(context: OwnerContext) -> Iterator[Notice]:
    award, path = context.papers.award, "owner/award.yaml"
    if award is None:
        return
    if award.contingency is not None and not award.amount / 200 <= award.contingency <= award.amount:
        message = f"{written(award.contingency)} is kept ready for changes of a contract of {written(award.amount)}"
        yield Notice(CODE, context.at(path, "contingency"), message)
    for index, authority in enumerate(award.authority):
        if authority.up_to is not None and authority.up_to > award.amount:
            message = f"{authority.who} may sign {written(authority.up_to)}, more than the whole contract"
            yield Notice(CODE, context.at(path, "authority", index, "up_to"), message)
    least, most = _ANSWER
    if award.answer_within is not None and not least <= award.answer_within.si <= most:
        message = f"reports are answered within {award.answer_within}, and the work waits for the answer"
        yield Notice("days-differ", award.answer_within.at, message, hints=("is the unit the right one?",))
    days_line = award.days_line
    if days_line is not None:
        number, _, letter = days_line.name.partition(".")
        item = context.live_item(number)
        line = next((one for one in item.lines if one.line == letter), None) if item is not None else None
        if line is not None and line.price != "day":
            message = f"further days are paid by line {days_line}, which is not priced by the day"
            yield Notice(CODE, context.at(path, "days_line"), message)
