"""The words that bound nothing, and the search for them in a text."""

from __future__ import annotations

import re
from collections.abc import Iterator

from msgspec import Struct

from tenderwright.quantities.units import known_units

PHRASES = (
    "as required", "as necessary", "as needed", "as directed", "repair all", "etc.", "etc", "good condition",
    "to the satisfaction of", "to satisfaction of", "approximately", "similar", "if any", "and/or", "TBD",
    "to be determined",
)  # fmt: skip
"""Whole words, in any case."""

_TOLERANCE_ONLY = ("approximately",)
"""A quantity alone does not bound these: a tolerance does."""

_HINTS = {
    "approximately": "give a tolerance, as in `20 m2 ± 2 m2`",
    "similar": "say in which property it must be equal, or name the standard",
    "and/or": "write one of the two, and say who decides",
    "TBD": "say what is not known yet, and tender a quantity for it",
    "to be determined": "say what is not known yet, and tender a quantity for it",
    "good condition": "say what is measured and what passes, with a figure",
}
_HINT = "say how much and where, with a unit in the same sentence, or make it a contingent line"


_ASIDE = r"(?=\s*(?:[,.;:)]|$))"
"""Follows `if any` where it stands as an aside; before a verb it begins a condition."""


def _whole(phrase: str) -> str:
    """Make the pattern of a phrase up to its last word's end, across line ends."""
    words = r"\s+".join(re.escape(word) for word in phrase.split())
    return rf"{words}(?![\w/])" + (_ASIDE if phrase == "if any" else "")


_SEARCH = re.compile(rf"(?<![\w/])(?:{'|'.join(_whole(phrase) for phrase in PHRASES)})", re.IGNORECASE)
_LONGEST = tuple({max(phrase.casefold().split(), key=len) for phrase in PHRASES})
"""A word of each phrase; a text that has none of them needs no search."""
_NUMBER = r"\d+(?:\.\d+)?"
_NOT_UNITS = {"a", "no", "in", "off"}
"""Units that are everyday words too, and bound nothing after a number in a sentence."""
_UNITS = sorted((re.escape(name) for name in set(known_units()) - _NOT_UNITS), key=len, reverse=True)
_QUANTITY = re.compile(rf"{_NUMBER}\s*(?:{'|'.join(_UNITS)})(?![\w/])|\d/\d\s+in\b|\d{{4}}-\d\d-\d\d")
_TOLERANCE = re.compile(r"±|\+/-|\bplus or minus\b|\bwithin\b|\btolerance\b|\bat most\b|\bat least\b", re.IGNORECASE)
_SENTENCE_END = re.compile(r"[.!?](?=\s)|\n\s*\n|\n\s*[-*] ")
_REFERENCE = re.compile(r"\s+(?:by|in|under|to)\s+(?:<[a-z]+:|\[[^\]]*\]\([a-z]+:)")
_QUOTES = "\"'`“”‘’«»"


class Found(Struct, frozen=True):
    """Unbounded words in a text: where they begin, as written, and how to mend them."""

    start: int
    written: str
    hint: str

    @property
    def words(self) -> str:
        """Give the words on one line."""
        return " ".join(self.written.split())

    @property
    def on_first_line(self) -> str:
        """Give what stands of them on the line where they begin."""
        return self.written.splitlines()[0].rstrip()


def find_unbounded(text: str, start: int, end: int) -> Iterator[Found]:
    """Find unbounded words between two offsets of a text; words in quotes are spoken of, not used."""
    folded = text[start:end].casefold()
    if not any(word in folded for word in _LONGEST):
        return
    for match in _SEARCH.finditer(text, start, end):
        phrase = next(p for p in PHRASES if p.lower() == " ".join(match[0].split()).lower())
        if _quoted(text, match, start, end) or _REFERENCE.match(text, match.end(), end):
            continue
        sentence = _sentence(text, match, start, end)
        bounded = bool(_QUANTITY.search(sentence))
        if phrase in _TOLERANCE_ONLY:
            bounded = bounded and bool(_TOLERANCE.search(sentence))
        if not bounded:
            yield Found(match.start(), match[0], _HINTS.get(phrase, _HINT))


def _quoted(text: str, match: re.Match[str], start: int, end: int) -> bool:
    """Tell whether the words alone stand in quotes inside the text."""
    before, after = match.start() - 1, match.end()
    return start < before and after < end - 1 and text[before] in _QUOTES and text[after] in _QUOTES


def _sentence(text: str, match: re.Match[str], start: int, end: int) -> str:
    """Give the sentence around a match: from one full stop, paragraph or list entry to the next."""
    first = start
    for stop in _SENTENCE_END.finditer(text, start, match.start()):
        first = stop.end()
    stop_after = _SENTENCE_END.search(text, match.end(), end)
    return text[first : stop_after.start() if stop_after else end]
