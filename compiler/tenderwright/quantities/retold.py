"""Texts of our own that state figures in metric units, told in the system asked for."""

from __future__ import annotations

import re

from tenderwright.quantities.customs import system
from tenderwright.quantities.display import written_as
from tenderwright.quantities.quantity import QuantityError, parse_quantity

_FIGURE = re.compile(
    r"(?<![\w.,])(?:(\d+(?:\.\d+)?) (to) )?(\d+(?:\.\d+)?) ([A-Za-zµ]+(?:/[A-Za-z]+)?[23]?)(?![\w/]| \([\d−-])"
)


def retold(text: str) -> str:
    """Tell each metric figure of a text such as `from 8 mm to 40 mm` or `from 3 to 300 t/m` as its readers read it.

    One told in both systems already stays as it is.
    """
    return text if system() == "metric" else _FIGURE.sub(_told, text)


def _told(match: re.Match[str]) -> str:
    first, word, second, unit = match.groups()
    try:
        read = [written_as(parse_quantity(f"{number} {unit}", "any")) for number in (first, second) if number]
    except QuantityError:
        return match[0]
    return f" {word} ".join(read)
