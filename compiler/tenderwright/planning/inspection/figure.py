"""A figure that was read, held against the figure of the item where its words state one that measures the same."""

from __future__ import annotations

import re
from collections.abc import Iterator

from msgspec import Struct

from tenderwright.calculations.verdict import within
from tenderwright.quantities.quantity import Quantity, QuantityError, parse_quantity
from tenderwright.quantities.spellings import AmbiguousUnit, spelled
from tenderwright.quantities.units import is_plain

_FIGURE = r"(-?\d+(?:\.\d+)? ?(?:[A-Za-z%](?:[A-Za-z0-9/%.]*[A-Za-z0-9%])?)(?: (?:in|per)\b)?)"
_NO_MORE = r"\bwithin|\bat most|\bno more than|\bnot more than|\bup to|\bno \w+ above"
_MOST = re.compile(rf"(?i)(?:{_NO_MORE}) {_FIGURE}|{_FIGURE} or (?:less|fewer|under|below)\b")
_UNDER = re.compile(rf"(?i)(?:\bunder|\bbelow|\bless than) {_FIGURE}")
_NO_LESS = r"\bat least|\bno less than|\bnot less than"
_LEAST = re.compile(rf"(?i)(?:{_NO_LESS}) {_FIGURE}|{_FIGURE} or (?:more|above|over)\b")
_BAND = re.compile(rf"{_FIGURE} to {_FIGURE}")


class Asked(Struct, frozen=True):
    """A figure that passes, as the words of an item state it."""

    words: str
    least: float | None = None
    most: float | None = None
    strict: bool = False

    def passes(self, figure: float) -> bool:
        """Tell whether a figure in SI units passes."""
        if self.least is not None and not within(figure, self.least, at_least=True):
            return False
        return self.most is None or within(figure, self.most, strict=self.strict)


def asked_of(accept: str, value: Quantity) -> Asked | None:
    """Give the one figure in the words that measures the same as a value; None where there is none, or several."""
    found = list(_figures(accept, value.dimension))
    if len(found) != 1:
        return None
    others = re.finditer(_FIGURE, accept.replace(found[0].words, " "))
    return found[0] if all(_read(one[1], value.dimension) is None for one in others) else None


def _figures(accept: str, dimension: str) -> Iterator[Asked]:
    text = accept
    for match in _BAND.finditer(text):
        low, high = (_read(one, dimension) for one in match.groups())
        if low is not None and high is not None:
            yield Asked(match[0], low, high)
    text = _BAND.sub(" ", text)
    for pattern, side in ((_MOST, "most"), (_UNDER, "under"), (_LEAST, "least")):
        for match in pattern.finditer(text):
            figure = _read(next(one for one in match.groups() if one), dimension)
            if figure is not None:
                least = figure if side == "least" else None
                yield Asked(match[0], least, None if side == "least" else figure, side == "under")


def _read(text: str, dimension: str) -> float | None:
    """Give a figure in SI units; None where its word is no unit in everyday use, as in `6 panels`."""
    try:
        return parse_quantity(text, dimension).si if is_plain(spelled(text.lstrip("-0123456789. "))) else None
    except (QuantityError, AmbiguousUnit):
        return None
