"""Reads an amount of money as people type it into a cell: `EUR 1 234,50`, `1.234,50`, `£1,234.50`, `950,-`.

How the separators are read:

1. Blanks and apostrophes part thousands, and must do so in groups of three.
2. Where both a comma and a point stand, the later is the decimal sign and the earlier parts thousands.
3. Where only one of the two stands: more than once, it parts thousands; once, it is the decimal sign, unless exactly
   three figures follow it and one to three stand before it. `1,234` can then mean two things.
4. What can mean two things is read as the other amounts of the same workbook are written. Where they do not tell, it
   parts thousands, since money has two decimals. Either way the reader is told that a person must look.
"""

from __future__ import annotations

import re
import unicodedata
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from tenderwright.pricing.bids.words import plain
from tenderwright.pricing.money import BEYOND

DecimalSign = Literal[",", ".", ""]

_SYMBOLS = {
    "€": ("EUR",),
    "£": ("GBP",),
    "$": ("USD", "CAD", "AUD", "NZD", "SGD", "HKD"),
    "¥": ("JPY", "CNY"),
    "kr": ("DKK", "NOK", "SEK", "ISK"),
    "zł": ("PLN",),
    "fr": ("CHF",),
    "euro": ("EUR",),
    "euros": ("EUR",),
}
_MARK = r"[A-Z]{3}|eur|gbp|usd|chf|€|£|\$|¥|kr\.?|zł|[Ff]r\.|[Ee]uros?"
_AMOUNT = re.compile(
    rf"(?P<minus>[-(])?\s*(?P<before>{_MARK})?\s*(?P<inner>-)?\s*(?P<digits>\d[\d.,' ]*?)"
    rf"(?P<even>[.,]\s?-{{1,2}})?\s*(?P<after>{_MARK}|%)?\s*(?P<close>\))?"
)
_LONGEST = 60


@dataclass(frozen=True)
class Amount:
    """An amount as read from text."""

    number: Decimal
    other: Decimal | None = None
    """What it may also mean."""
    currencies: tuple[str, ...] = ()
    """The currencies that its sign may stand for; none where it has no sign."""
    percent: bool = False


def read_amount(text: str, habit: DecimalSign = "") -> Amount | None:
    """Read an amount from text; `habit` is the decimal sign of the other amounts. None where it is no amount."""
    match = _match(text)
    if match is None or (match["minus"] == "(") != bool(match["close"]):
        return None
    if match["before"] and match["after"] and match["after"] != "%":
        return None
    found = _number(match["digits"].strip(), habit, whole=bool(match["even"]))
    if found is None or max(found) >= BEYOND:
        return None
    number, *other = found
    sign = -1 if match["minus"] or match["inner"] else 1
    mark = match["before"] or (match["after"] if match["after"] != "%" else "") or ""
    return Amount(sign * number, sign * other[0] if other else None, _currencies(mark), match["after"] == "%")


def decimal_sign(texts: Iterable[str]) -> DecimalSign:
    """Find the decimal sign that the amounts of a workbook use; empty where they do not agree or do not tell."""
    counts: Counter[str] = Counter()
    for text in texts:
        match = _match(text)
        if match is not None:
            digits = match["digits"].strip()
            parted_by_points, parted_by_commas = digits.count(".") > 1, digits.count(",") > 1
            counts["," if parted_by_points else "." if parted_by_commas else _sign_of(digits)] += 1
    if counts[","] and not counts["."]:
        return ","
    return "." if counts["."] and not counts[","] else ""


def _match(text: str) -> re.Match[str] | None:
    """Match an amount; one with raised figures is none, since `950¹` is not 9501, nor are two on a line or apart."""
    if re.search(r"\d\s*(?:[\n\t\r]|\s{2})\s*\d", text):
        return None
    if len(text) > _LONGEST or any(unicodedata.category(letter) == "No" for letter in text):
        return None
    return _AMOUNT.fullmatch(plain(text))


def _currencies(mark: str) -> tuple[str, ...]:
    if not mark:
        return ()
    return _SYMBOLS.get(mark.casefold().rstrip("."), (mark.upper(),))


def _number(digits: str, habit: DecimalSign, *, whole: bool) -> list[Decimal] | None:
    """Give what figures with separators mean: one number, or the likelier of two first."""
    sign = _sign_of(digits)
    if sign and sign != "?":
        number = _with_sign(digits, sign)
        return None if number is None or (whole and number % 1) else [number]
    thousands = _grouped(digits)
    if sign == "":
        return None if thousands is None else [thousands]
    if whole:  # `1.234,-` has its decimals already
        return None if thousands is None else [thousands]
    mark = "," if "," in digits else "."
    decimals = _with_sign(digits, mark)
    readings = [decimals, thousands] if habit == mark else [thousands, decimals]
    return [one for one in readings if one is not None] or None


def _sign_of(digits: str) -> str:
    """Name the decimal sign of figures: a comma, a point, none, or `?` where it cannot be told."""
    commas, points = digits.count(","), digits.count(".")
    if commas and points:
        return "," if digits.rindex(",") > digits.rindex(".") else "."
    if commas + points != 1:
        return ""
    mark = "," if commas else "."
    before, _, after = digits.partition(mark)
    could_part = before.isdigit() and len(before) <= 3 and not before.startswith("0") and len(after) == 3
    return "?" if could_part and after.isdigit() else mark


def _with_sign(digits: str, sign: str) -> Decimal | None:
    before, mark, after = digits.rpartition(sign)
    if not mark or not after.isdigit():
        return None
    whole = _grouped(before)
    return None if whole is None else whole + Decimal(f"0.{after}")


def _grouped(digits: str) -> Decimal | None:
    """Read a whole number that is not parted, or is in groups of three by one kind of sign."""
    if digits.isdigit():
        return Decimal(digits)
    match = re.fullmatch(r"\d{1,3}(?:([ ',.])\d{3})(?:\1\d{3})*", digits)
    return Decimal(re.sub(r"\D", "", digits)) if match else None
