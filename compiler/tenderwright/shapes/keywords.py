"""Our own keywords of the schemas: `quantity` (with `or`, `signed`, `within`, `uncertainty`), `money` (with `signed`).

`refers` and `prose` only inform. The full validator is made only when it is asked for, since importing it takes longer
than reading a package.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from datetime import date
from functools import cache
from typing import Any

from tenderwright.quantities.bounds import out_of_bounds, position_out_of_bounds
from tenderwright.quantities.position import check_position
from tenderwright.quantities.quantity import QuantityError, parse_quantity

EARLIEST, LATEST = "1500-01-01", "2299-12-31"
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


def quantity_mistake(dimension: str, instance: Any, schema: Mapping[str, Any]) -> QuantityError | None:
    """Say what is wrong with a text as a quantity of a dimension, or None where nothing is."""
    if not isinstance(instance, str) or instance in schema.get("or", ()):
        return None
    try:
        if dimension == "position":
            return position_out_of_bounds(instance, check_position(instance))
        read = parse_quantity(instance, dimension)
        if read.within is not None and "uncertainty" not in schema:
            message = f"nothing is made of the ± of `{instance}` here"
            return QuantityError("bad-quantity", message, ("leave it out, or say it in words beside the figure",))
        return out_of_bounds(read, schema)
    except QuantityError as error:
        return error


def money_mistake(instance: Any, schema: Mapping[str, Any]) -> str:
    """Say what is wrong with a number as an amount of money; empty where nothing is."""
    if isinstance(instance, bool) or not isinstance(instance, (int, float)):
        return ""
    if round(instance, 2) == instance and (-1e12 if schema.get("signed") else 0) <= instance < 1e12:
        return ""
    return f"`{instance}` is not an amount of money with at most two decimals"


def is_date(text: object, ever: bool = False) -> bool:
    """Tell whether a text is a date, written year-month-day, of our own times or `ever`; anything but text passes."""
    if not isinstance(text, str):
        return True
    if not _DATE.fullmatch(text):
        return False
    try:
        date.fromisoformat(text)
    except ValueError:
        return False
    return ever or EARLIEST <= text <= LATEST


@cache
def validator_class() -> Any:
    """Extend the 2020-12 validator by our keywords."""
    from jsonschema import Draft202012Validator, ValidationError, validators

    def quantity(_: Any, dimension: str, instance: Any, schema: Any) -> Iterator[ValidationError]:
        error = quantity_mistake(dimension, instance, schema)
        if error is not None:
            yield ValidationError(error.message, cause=error)

    def money(_: Any, wanted: bool, instance: Any, schema: Any) -> Iterator[ValidationError]:
        message = money_mistake(instance, schema) if wanted else ""
        if message:
            yield ValidationError(message)

    extend: Any = validators.extend
    return extend(Draft202012Validator, {"quantity": quantity, "money": money})


@cache
def format_checker() -> Any:
    """Make a format checker that knows only real dates."""
    from jsonschema import FormatChecker

    checker = FormatChecker(formats=())
    checker.checks("date")(is_date)
    return checker
