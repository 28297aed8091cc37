"""The customs of a place: in which units its people read figures, and how they write dates and money.

Whoever compiles or composes a package says them once, by `telling_in`, as one sets the precision of decimals; all
that is told inside is told by them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from datetime import date

_UNITS: ContextVar[str] = ContextVar("system of units", default="metric")
_AMERICAN: ContextVar[bool] = ContextVar("American dates and money", default=False)


@contextmanager
def telling_in(units: str, *, american: bool | None = None) -> Iterator[None]:
    """Tell figures in a system, `metric`, `us` or `both`, until the block ends; dates and money the American way."""
    before = _UNITS.set(units)
    way = _AMERICAN.set(_AMERICAN.get() if american is None else american)
    try:
        yield
    finally:
        _UNITS.reset(before)
        _AMERICAN.reset(way)


def system() -> str:
    """Name the system in which figures are told."""
    return _UNITS.get()


def day(when: date | None) -> str:
    """Write a date as `3 May 2027`, or `May 3, 2027` the American way; a dash where there is none."""
    if when is None:
        return "–"
    return f"{when:%B} {when.day}, {when.year}" if _AMERICAN.get() else f"{when.day} {when:%B %Y}"


def day_of_year(when: date | None, *, short: bool = False) -> str:
    """Write a date without its year, as `3 May` or `May 3`; a dash where there is none."""
    if when is None:
        return "–"
    month = f"{when:%b}" if short else f"{when:%B}"
    return f"{month} {when.day}" if _AMERICAN.get() else f"{when.day} {month}"


def month(written: str) -> str:
    """Write a month given as `2026-10` as `October 2026`; what is no such month stays as it is."""
    return f"{date.fromisoformat(f'{written}-01'):%B %Y}" if _MONTH.fullmatch(written) else written


_MONTH = re.compile(r"[1-9][0-9]{3}-(?:0[1-9]|1[0-2])")


def apart(text: str, space: str = "\N{NO-BREAK SPACE}") -> str:
    """Set the thousands of a number, written with commas, as is the custom: with a space, or with commas."""
    return text if _AMERICAN.get() else text.replace(",", space)


SIGNS = {"USD": "$"}
"""Signs that stand before an amount in place of the letters of its currency."""


def with_currency(currency: str, written: str) -> str:
    """Put the currency to an amount as written: `EUR 1 234.50`, or `$1,234.50` the American way."""
    if _AMERICAN.get() and currency in SIGNS:
        sign = "−" if written.startswith("−") else ""
        return f"{sign}{SIGNS[currency]}{written.removeprefix('−')}"
    return f"{currency} {written}"
