"""Words for the comparison of bids: quantities, chances, and the sentence on a quantity that changes the ranking."""

from __future__ import annotations

import math
from decimal import Decimal

from tenderwright.documents.desk import capital
from tenderwright.pricing.bids.break_even import BreakEven
from tenderwright.pricing.bids.compare import BidComparison
from tenderwright.pricing.bids.tendered import TenderLine
from tenderwright.pricing.money import written
from tenderwright.quantities.customs import apart
from tenderwright.quantities.display import shown_unit

GROUP = "Comparison of bids"
DASH = "–"
_CHANCES = (
    (0.0005, "next to no chance"),
    (0.015, "less than one chance in sixty"),
    (0.035, "about one chance in forty"),
    (0.08, "about one chance in twenty"),
    (0.106, "about one chance in ten"),
    (0.118, "about one chance in nine"),
    (0.134, "about one chance in eight"),
    (0.155, "about one chance in seven"),
    (0.183, "about one chance in six"),
    (0.225, "about one chance in five"),
    (0.29, "about one chance in four"),
    (0.365, "about one chance in three"),
    (0.45, "about two chances in five"),
    (0.55, "about an even chance"),
    (0.63, "about three chances in five"),
    (0.705, "about two chances in three"),
    (0.775, "about three chances in four"),
    (0.85, "about four chances in five"),
    (0.95, "about nine chances in ten"),
    (0.995, "more than nineteen chances in twenty"),
)
"""Below which probability each is said."""


def chance(probability: float) -> str:
    """Say a probability as a trustee would."""
    return next((words for limit, words in _CHANCES if probability < limit), "hardly a doubt")


def percent(share: float | Decimal | None) -> str:
    """Write a share in whole percent, with words for what is less than half of one."""
    if share is None:
        return DASH
    number = 100 * float(share)
    return "< 1 %" if 0 < number < 0.5 else f"{number:.0f} %"


def quantity(number: float | Decimal, unit: str) -> str:
    """Write a quantity with thousands apart, to figures that make sense for its size."""
    size = abs(float(number))
    text = f"{float(number):,.{0 if size >= 100 else 1 if size >= 10 else 2}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return f"{text.replace(',', ' ').replace('-', '−')} {shown_unit(unit)}".strip()


def line_words(line: TenderLine) -> str:
    """Name a line in running text."""
    return f"line {line.number} ({running(line.text)})"


def running(text: str) -> str:
    """Begin a text in lower case, to stand within a sentence; names inside it keep their capitals."""
    return f"{text[:1].lower()}{text[1:]}"


def break_even_sentence(one: BreakEven, comparison: BidComparison) -> str:
    """Say at which quantity the ranking of two bids changes, and how likely that is."""
    line, ahead, behind = one.line, comparison.bid(one.ahead).label, comparison.bid(one.behind).label
    side = "more" if one.more else "less"
    amount = passed_quantity(one, comparison.currency)
    passed = f"{line_words(line)} comes to {side} than {amount}"
    if _plate(line):
        passed = f"{side} than {amount} of plate is renewed under {line_words(line)}"
    basis = {"survey": "by the survey", "owner": "by the owner's least and most"}[line.spread.source]
    return (
        f"If {passed}, {ahead} becomes dearer than {behind}; {basis} there is {chance(one.chance)} of that. "
        f"{capital(_tendered(line, comparison.currency))}."
    )


def passed_quantity(one: BreakEven, currency: str) -> str:
    """Write the quantity that is passed; of what is counted in pieces, the last whole one before."""
    number = one.quantity
    if one.line.unit == "each":
        number = math.floor(number) if one.more else math.ceil(number)
    return quantity(number, one.line.unit or currency)


def _plate(line: TenderLine) -> bool:
    return line.spread.source == "survey" and line.unit in ("kg", "t", "m2")


def _tendered(line: TenderLine, currency: str) -> str:
    return f"{quantity(line.quantity, line.unit or currency)} were tendered"


def money(amount: Decimal | None) -> str:
    """Write an amount, or a dash for none."""
    return DASH if amount is None else written(amount)


def rate(number: Decimal | None) -> str:
    """Write a rate with the decimals that it has, two at least."""
    if number is None:
        return DASH
    places = max(2, -int(number.normalize().as_tuple().exponent))
    return apart(f"{number:,.{places}f}", " ")
