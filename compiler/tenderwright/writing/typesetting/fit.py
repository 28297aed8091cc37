"""Fits a part to its pages, so that none ends on a page with only left-overs.

Where the last page would be under a third full, the part is set a little smaller if that saves the page; else the pages
before it end higher, and give it of theirs.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from tenderwright.writing.typesetting.sheets import Sheet

LEAST = 0.36
"""How full a last page should be: a third by its words, with what stands below the last of them."""
CLOSE = 0.955
"""The size of what is set smaller: text of 9.2 points becomes 8.8, the smallest tables' 7.5 become 7.2."""
_GAINED = 0.07
"""How much of a page is gained by it for each page, about; more is not worth a trial."""
_TRIALS = 4
_PIXELS = 96 / 25.4


def fit(sheet: Sheet, anchor: str, lay_out: Callable[[Sheet], Any], *, to_scale: bool) -> tuple[Any, float]:
    """Lay out a part on a sheet as it fits best, and give it with the size at which it is to be painted.

    What is drawn to scale keeps its size.
    """
    plain = lay_out(sheet)
    pages, last = len(plain.pages), _fill(plain, anchor, sheet)
    if pages < 2 or last >= LEAST:
        return plain, 1.0
    if not to_scale and last < _GAINED * pages:
        close = lay_out(sheet.scaled(1 / CLOSE))
        if len(close.pages) < pages:
            return close, CLOSE
    return _balanced(plain, sheet, anchor, lay_out), 1.0


def _balanced(plain: Any, sheet: Sheet, anchor: str, lay_out: Callable[[Sheet], Any]) -> Any:
    """Let the pages end higher until the last is as full as it should be, or none of the trials makes it so."""
    best, bottom = plain, sheet.bottom
    for _ in range(_TRIALS):
        short = (LEAST - _fill(best, anchor, sheet)) * _room(sheet)
        bottom += short / (len(plain.pages) - 1) + 3.0
        tried = lay_out(replace(sheet, bottom=bottom))
        if len(tried.pages) > len(plain.pages):
            break
        if _fill(tried, anchor, sheet) > _fill(best, anchor, sheet):
            best = tried
        if _fill(best, anchor, sheet) >= LEAST:
            break
    return best


def _fill(document: Any, anchor: str, sheet: Sheet) -> float:
    """Tell how much of the last page is filled, of the room that a sheet has."""
    _, top, _, bottom = document.pages[-1].anchors[anchor]
    return float((bottom - top) / _PIXELS / _room(sheet))


def _room(sheet: Sheet) -> float:
    """Give the height between the margins, mm."""
    return sheet.height - sheet.top - sheet.bottom
