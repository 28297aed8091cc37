"""Compare two texts word by word, as kept, deleted and inserted runs."""

from __future__ import annotations

import re
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Literal

from tenderwright.comparing.alignment import trimmed_opcodes

_WORDS = re.compile(r"\n|[^\s]+")
_MEANT = re.compile(r"[-−+±]?\d+(?:[.,:/]\d+)*|[^\W\d_]+|[<>≤≥=±×%°²³/*+−]")
"""What carries meaning: numbers with their sign and point, words, and signs of comparison and reckoning."""
_BROKEN = 0.25
"""Share of words kept below which a text is shown as replaced whole, since scattered words help no reader."""


@dataclass(frozen=True)
class Run:
    """A stretch of text that was kept, inserted or deleted; a line feed stands for the end of a paragraph."""

    text: str
    state: Literal["kept", "inserted", "deleted"]


def redline(old: str, new: str) -> tuple[Run, ...]:
    """Give the runs that make one text into another, deleted words before those that take their place."""
    one, other = _WORDS.findall(old), _WORDS.findall(new)
    if one and other and SequenceMatcher(None, one, other, autojunk=False).ratio() < _BROKEN:
        return (Run(_joined(one), "deleted"), Run(_joined(other), "inserted"))
    runs: list[Run] = []
    for tag, i1, i2, j1, j2 in trimmed_opcodes(one, other):
        if tag == "equal":
            runs.append(Run(_joined(one[i1:i2]), "kept"))
            continue
        if i2 > i1:
            runs.append(Run(_joined(one[i1:i2]), "deleted"))
        if j2 > j1:
            runs.append(Run(_joined(other[j1:j2]), "inserted"))
    return tuple(runs)


def _joined(words: list[str]) -> str:
    return " ".join(words).replace(" \n", "\n").replace("\n ", "\n")


def editorial(old: str, new: str) -> bool:
    """Tell whether two texts differ in spacing and punctuation only, every word and figure being the same."""
    return _MEANT.findall(old) == _MEANT.findall(new)
