"""Align two lists whose entries have no names: which entry of one is which of the other."""

from __future__ import annotations

from collections.abc import Sequence
from difflib import SequenceMatcher
from typing import Any

from tenderwright.comparing.data import written

_MOST_PAIRS = 4_000_000
"""Pairs of entries that are still looked at for equal ones; beyond, a stretch is taken as replaced whole."""
_MOST_ALIKE = 400
"""Pairs of unlike entries that are still compared word by word."""
_LIKE = 0.45
"""Share of words in common from which an entry is an earlier one written anew."""

Opcode = tuple[str, int, int, int, int]


def trimmed_opcodes(old: Sequence[str], new: Sequence[str]) -> list[Opcode]:
    """Give the opcodes of `difflib` for two lists of text, cutting off what is equal at both ends first."""
    least = min(len(old), len(new))
    head = next((i for i in range(least) if old[i] != new[i]), least)
    tail = next((i for i in range(least - head) if old[-1 - i] != new[-1 - i]), least - head)
    one, other = old[head : len(old) - tail], new[head : len(new) - tail]
    if len(one) * len(other) > _MOST_PAIRS:
        middle: list[Opcode] = [("replace", 0, len(one), 0, len(other))]
    else:
        middle = list(SequenceMatcher(None, one, other, autojunk=False).get_opcodes())
    found: list[Opcode] = [("equal", 0, head, 0, head)] if head else []
    found += [(tag, i1 + head, i2 + head, j1 + head, j2 + head) for tag, i1, i2, j1, j2 in middle]
    if tail:
        found.append(("equal", len(old) - tail, len(old), len(new) - tail, len(new)))
    return found


def paired(old: list[Any], new: list[Any]) -> tuple[list[tuple[int, int]], list[int], list[int]]:
    """Pair the unlike entries that are one another written anew; gives pairs, what is gone and what has come.

    Entries in neither are equal on both sides, and pairs never cross.
    """
    pairs: list[tuple[int, int]] = []
    gone: list[int] = []
    come: list[int] = []
    one, other = [written(entry) for entry in old], [written(entry) for entry in new]
    for tag, i1, i2, j1, j2 in trimmed_opcodes(one, other):
        if tag == "equal":
            continue
        found = _alike(one[i1:i2], other[j1:j2])
        pairs += [(i1 + i, j1 + j) for i, j in found]
        first, second = {i1 + i for i, _ in found}, {j1 + j for _, j in found}
        gone += [i for i in range(i1, i2) if i not in first]
        come += [j for j in range(j1, j2) if j not in second]
    return pairs, gone, come


def _alike(old: Sequence[str], new: Sequence[str]) -> list[tuple[int, int]]:
    """Pair entries in order: one by one where there are as many, else so that the most words are kept."""
    if len(old) == len(new):
        return [(i, i) for i in range(len(old))]
    if not old or not new:
        return []
    if len(old) * len(new) > _MOST_ALIKE:
        return [(i, i) for i in range(min(len(old), len(new)))]
    words = [[entry.split() for entry in entries] for entries in (old, new)]
    ratio = [[SequenceMatcher(None, a, b, autojunk=False).ratio() for b in words[1]] for a in words[0]]
    return _best(ratio)


def _best(ratio: list[list[float]]) -> list[tuple[int, int]]:
    """Choose pairs that never cross with the greatest sum of likeness."""
    rows, columns = len(ratio), len(ratio[0])
    sums = [[0.0] * (columns + 1) for _ in range(rows + 1)]
    for i in range(rows - 1, -1, -1):
        for j in range(columns - 1, -1, -1):
            both = sums[i + 1][j + 1] + ratio[i][j] if ratio[i][j] >= _LIKE else 0.0
            sums[i][j] = max(sums[i + 1][j], sums[i][j + 1], both)
    pairs, i, j = [], 0, 0
    while i < rows and j < columns:
        if ratio[i][j] >= _LIKE and sums[i][j] == sums[i + 1][j + 1] + ratio[i][j]:
            pairs.append((i, j))
            i, j = i + 1, j + 1
        elif sums[i][j] == sums[i + 1][j]:
            i += 1
        else:
            j += 1
    return pairs
