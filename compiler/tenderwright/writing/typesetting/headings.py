"""Puts the tags of headings in order, by which a screen reader steps through a part."""

from __future__ import annotations

from typing import Any


def level_headings(pdf: Any, *, alike: bool) -> None:
    """Let no level be left out on the way down, and no heading stand within another.

    Where all that stands under the title is alike, as in an item, it is all of the second level. A heading that is set
    beside its number comes as one within the other.
    """
    from pydyf import Dictionary

    tagged = [one for one in pdf.objects if isinstance(one, Dictionary) and str(one.get("S", "")) in _LEVELS]
    outer = {one.reference: one for one in tagged}
    before = 0
    for one in tagged:
        if one["P"] in outer:
            one["S"] = "/Span"
            continue
        level = min(_LEVELS[one["S"]], before + 1, 2 if alike else len(_LEVELS))
        one["S"], before = f"/H{level}", level


_LEVELS = {f"/H{level}": level for level in range(1, 7)}
