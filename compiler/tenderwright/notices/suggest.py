"""Suggest what was probably meant, for keys, choices, identifiers and units."""

from __future__ import annotations

import re
from bisect import bisect
from collections.abc import Iterable


def did_you_mean(written: str, known: Iterable[str], cutoff: float = 0.6) -> tuple[str, ...]:
    """Give a hint naming the closest known word, or nothing where none is as like as the cutoff, from 0 to 1.

    Of a number it names those beside it, since one number is no misspelling of another.
    """
    from difflib import get_close_matches  # only where something is amiss

    words = {word.lower(): word for word in known}
    if _is_number(written):
        return _beside(written, [word for word in words.values() if _is_number(word)])
    close = get_close_matches(written.lower(), [word for word in words if not _is_number(word)], n=1, cutoff=cutoff)
    return (f"did you mean `{words[close[0]]}`?",) if close else ()


def one_of(written: str, known: Iterable[str]) -> tuple[str, ...]:
    """Give a hint naming the closest known word, or all of them where none is close."""
    words = list(known)
    return did_you_mean(written, words) or ((f"one of {', '.join(words)}",) if words else ())


def _is_number(word: str) -> bool:
    return word.lstrip("-")[:1].isdigit()


def _beside(written: str, numbers: list[str]) -> tuple[str, ...]:
    """Name the numbers just below and just above one that is not there."""
    numbers.sort(key=_in_order)
    place = bisect(numbers, _in_order(written), key=_in_order)
    nearest = ", ".join(f"`{number}`" for number in numbers[max(0, place - 1) : place + 1])
    return (f"nearest: {nearest}",) if nearest else ()


def _in_order(number: str) -> tuple[tuple[int, str], ...]:
    """Give the order in which numbers such as `310.b` stand in a list."""
    return tuple(
        (int(part), "") if part[-1].isdigit() else (-1, part) for part in re.findall(r"^-?\d+|\d+|\D+", number)
    )
