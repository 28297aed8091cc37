"""What an owner stands to lose where the yard fails: the worst moment of a contract."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, record


class Moment(Struct, frozen=True):
    """What stands against what on one day."""

    day: float
    paid: float
    aboard: float
    secured: float
    leaving: float

    @property
    def exposure(self) -> float:
        """Give what would be lost on that day."""
        return self.paid - self.aboard - self.secured + self.leaving


def moments(
    paid: Sequence[Mapping[str, float]],
    aboard: Sequence[Mapping[str, float]] = (),
    secured: Sequence[Mapping[str, float]] = (),
    leaving: float = 0.0,
    arrival: float = 0.0,
    redelivery: float | None = None,
) -> tuple[Moment, ...]:
    """Give what would be lost on each day on which anything changes, in order.

    Formula: E(t) = paid(t) − aboard(t) − secured(t) + leaving, where paid and aboard are the sums of all amounts up to
    day t, secured the sum of the securities in force on it, and leaving what it costs to refloat her, tow her away and
    pay the dock meanwhile, counted from her arrival up to her redelivery. Days are numbers from any beginning, amounts
    of one currency. Source: derived. Raises OutOfRange without a payment, or for amounts below nothing.
    """
    amounts = [one["amount"] for one in (*paid, *aboard, *secured)]
    if not paid:
        raise OutOfRange("nothing is paid")
    if min([*amounts, leaving]) < 0.0:
        raise OutOfRange("an amount is below nothing")
    over = [one["until"] + 1.0 for one in secured]
    ends = [] if redelivery is None else [redelivery]
    days = {one["day"] for one in (*paid, *aboard)} | {one["from"] for one in secured} | {*over, *ends, arrival}
    return tuple(
        Moment(
            day,
            math.fsum(one["amount"] for one in paid if one["day"] <= day),
            math.fsum(one["amount"] for one in aboard if one["day"] <= day),
            math.fsum(one["amount"] for one in secured if one["from"] <= day <= one["until"]),
            leaving if arrival <= day and (redelivery is None or day < redelivery) else 0.0,
        )
        for day in sorted(days)
    )


def worst(found: Sequence[Moment]) -> Moment:
    """Give the first moment at which most would be lost."""
    return max(found, key=lambda one: (one.exposure, -one.day))


def _figures(found: tuple[Moment, ...]) -> Mapping[str, float]:
    most = worst(found)
    names = ("exposure", "day", "paid", "aboard", "secured", "leaving")
    return {name: getattr(most, name) for name in names}


_AMOUNT = number("The amount.", minimum=0)

METHOD = Method(
    name="cost.exposure",
    title="The worst moment of a contract",
    formula="E(t) = paid(t) − aboard(t) − secured(t) + leaving; the greatest over all days",
    source=Citation("what is paid and not to be had, with what it costs to take her away", standing="derived"),
    valid="amounts of one currency, none below nothing; one payment or more",
    inputs={
        "paid": listed(
            record("A payment.", ("day", "amount"), day=number("The day."), amount=_AMOUNT), "What is paid, and when."
        ),
        "aboard": listed(
            record("Work that is done and tested.", ("day", "amount"), day=number("The day."), amount=_AMOUNT),
            "What of the price is aboard and tested, and from when.",
            least=0,
        ),
        "secured": listed(
            record(
                "A security.",
                ("from", "until", "amount"),
                **{"from": number("First day."), "until": number("Last day."), "amount": _AMOUNT},
            ),
            "What others promise to pay, and from when until when.",
            least=0,
        ),
        "leaving": number("What it costs to refloat her, tow her away and pay the dock meanwhile.", minimum=0),
        "arrival": number("The day from which that is counted."),
        "redelivery": number("The day from which it no longer is."),
    },
    outputs=(
        Symbol("exposure", "what would be lost at the worst moment", "", ""),
        Symbol("day", "the day of that moment", "", ""),
        Symbol("paid", "paid by then", "", ""),
        Symbol("aboard", "aboard and tested by then", "", ""),
        Symbol("secured", "secured on that day", "", ""),
        Symbol("leaving", "what it costs to take her away", "", ""),
    ),
    kernel=moments,
    example={"paid": [{"day": 0, "amount": 200000}], "leaving": 75000},
    optional=frozenset({"aboard", "secured", "leaving", "arrival", "redelivery"}),
    cautions=(
        "work that is done is worth to another yard what is left of it, not what was paid",
        "a security pays only while its issuer does, and one on condition only once the default is shown",
    ),
    figures=_figures,
)
