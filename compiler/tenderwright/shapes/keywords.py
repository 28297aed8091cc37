"""Our own keywords of the schema vocabulary: `quantity` (with `or`, `signed`), `money`; `refers` and `prose` only inform."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from functools import cache
from typing import Any

from jsonschema import Draft202012Validator, FormatChecker, ValidationError, validators

from tenderwright.quantities.position import check_position
from tenderwright.quantities.quantity import QuantityError, parse_quantity

_DATE = re.compile(r"\d{4}-\d{2}-\d{2}")


def _quantity(_: Any, dimension: str, instance: Any, schema: Any) -> Iterator[ValidationError]:
    if not isinstance(instance, str) or instance in schema.get("or", ()):
        return
    try:
        if dimension == "position":
            check_position(instance)
            return
        read = parse_quantity(instance, dimension)
    except QuantityError as error:
        yield ValidationError(error.message, cause=error)
        return
    if read.si < 0 and dimension != "temperature" and not schema.get("signed"):
        message = f"`{instance}` is negative, and this cannot be"
        yield ValidationError(message, cause=QuantityError("bad-quantity", message))


def _money(_: Any, wanted: bool, instance: Any, __: Any) -> Iterator[ValidationError]:
    if not wanted or isinstance(instance, bool) or not isinstance(instance, (int, float)):
        return
    if round(instance, 2) != instance or not 0 <= instance < 1e12:
        yield ValidationError(f"`{instance}` is not an amount of money with at most two decimals")


def _is_date(text: object) -> bool:
    if not isinstance(text, str):
        return True
    if not _DATE.fullmatch(text):
        return False
    try:
        date.fromisoformat(text)
    except ValueError:
        return False
    return True


@cache
def validator_class() -> Any:
    """Extend the 2020-12 validator by our keywords."""
    extend: Any = validators.extend
    return extend(Draft202012Validator, {"quantity": _quantity, "money": _money})


@cache
def format_checker() -> FormatChecker:
    """Make a format checker that knows only real dates."""
    checker = FormatChecker(formats=())
    checker.checks("date")(_is_date)
    return checker
