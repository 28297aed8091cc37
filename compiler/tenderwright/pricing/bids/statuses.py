"""Tells empty, 0, included and no bid apart, in the words that yards use for them."""

from __future__ import annotations

import re
from typing import Literal

from tenderwright.pricing.bids.words import folded

Status = Literal["priced", "zero", "included", "no bid", "empty"]

_NO_BID = re.compile(
    r"(?:no|not) ?(?:bid|quote|quoted|offer|offered|tendered|priced)|n\.? ?/ ?a|n\.a|na|nb|not applicable|"
    r"not available|none offered|declined|excluded|excl"
)
_INCLUDED = re.compile(r"(?:incl|inc|included)(?:[ :,;.(].*)?")
_ZERO = re.compile(r"nil|zero|free|free of charge|f\.?o\.?c|no charge|without charge|gratis")
_ELSEWHERE = re.compile(
    r"\b(?:in|with|under|see) (?:item |line |no\.? )?\d{1,4}(?: ?[.\-/]? ?[a-z]{1,2})?\b(?:\.[a-z0-9-]+)?"
)


def status_said(text: str) -> Status | None:
    """Read a word that stands for a price or beside one; None where it is none of those known.

    `incl. in 110.a` is included; a word with other figures, such as `incl. VAT 1200`, is not decided here.
    """
    word = folded(text).strip(" .!*")
    if not word:
        return None if text.strip(" ") else "empty"
    if word in ("priced", "price"):
        return "priced"
    if _ZERO.fullmatch(word):
        return "zero"
    if _NO_BID.fullmatch(word):
        return "no bid"
    if _INCLUDED.fullmatch(word) and not re.search(r"\d", _ELSEWHERE.sub("", word)):
        return "included"
    return None


def said_plainly(text: str) -> bool:
    """Tell whether a text is one of the words known and nothing more, but for the line in whose price it is."""
    word = " ".join(_ELSEWHERE.sub("", folded(text)).split()).strip(" .!*:,;()")
    known = (_NO_BID, _ZERO, re.compile(r"incl|inc|included|priced|price|"))
    return "*" not in text and "!" not in text and any(pattern.fullmatch(word) for pattern in known)


def is_dash(text: str) -> bool:
    """Tell whether a text is nothing but dashes, which may stand for nothing, for 0 or for no bid."""
    return bool(re.fullmatch(r"[-\s]+", folded(text)))
