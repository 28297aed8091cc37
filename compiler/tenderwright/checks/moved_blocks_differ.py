"""The keel blocks that the texts name as moved are those that the docking plan takes out.

Ground: loads are worked out with each of the plan's blocks out in turn, and another block moved is one that nobody
worked out (common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Note, Notice

_FRAME = re.compile(r"<frame:(-?\d+)>|\bFr (-?\d+)\b")
_BLOCKS = re.compile(r"\bkeel\s+blocks\b")
_NOT = re.compile(r"\b(?:[Nn]o|[Nn]one|[Ll]eave|[Bb]uild|from|between)\b")
LEAST = 3
"""So many frames in one sentence with the words `keel blocks` are a list of blocks."""


def check(context: Context) -> Iterator[Notice]:
    """Warn of sentences that list other keel blocks than `taken_out`."""
    plan = context.package.docking_plan
    planned = {match[1] for one in plan.taken_out if (match := re.match(r"Fr\s*(-?\d+)", one.text))} if plan else set()
    if plan is None or not planned:
        return
    for text in context.texts:
        if "blocks" not in text.source.text or not _BLOCKS.search(text.source.text, text.start, text.end):
            continue
        for sentence in text.sentences():
            named = {match[1] or match[2] for match in _FRAME.finditer(sentence.words)}
            blocks = _BLOCKS.search(sentence.source.text, sentence.start, sentence.end)
            if blocks is None or len(named) < LEAST or _NOT.search(sentence.words) or named == planned:
                continue
            other = ", ".join(f"Fr {frame}" for frame in sorted(named ^ planned, key=int))
            message = f"{text.whose} and the docking plan name different keel blocks to be moved: {other}"
            hint = "name the same frames in both, those whose loads were worked out"
            note = Note("the plan takes them out here", plan.taken_out[0].at)
            yield Notice("moved-blocks-differ", sentence.place(blocks), message, (note,), (hint,))
