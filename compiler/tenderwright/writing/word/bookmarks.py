"""Names the bookmarks of a Word document after the anchors of an edition, and sets them."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from tenderwright.documents.edition import Block, Edition, Steps, Table
from tenderwright.writing.errors import WritingError
from tenderwright.writing.word.elements import node

if TYPE_CHECKING:
    from tenderwright.writing.word.elements import Node

_LONGEST = 40
"""Characters that a bookmark's name may have."""


class Bookmarks:
    """The bookmarks of one document: a name for every anchor that it holds."""

    def __init__(self, anchors: Iterable[str]) -> None:
        """Name the anchors, raising `WritingError` where one stands twice."""
        self._names: dict[str, str] = {}
        self._numbers: dict[str, int] = {}
        taken: set[str] = set()
        for number, anchor in enumerate(anchors, start=1):
            if anchor in self._names:
                raise WritingError(f"anchors given twice: {anchor}")
            name = _plain_name(anchor)
            if len(name) > _LONGEST or name.lower() in taken:
                name = f"{name[: _LONGEST - 9]}_{hashlib.sha256(anchor.encode()).hexdigest()[:8]}"
            taken.add(name.lower())
            self._names[anchor] = name
            self._numbers[anchor] = number

    def name(self, anchor: str) -> str:
        """Give the name of an anchor's bookmark, empty where the document does not hold the anchor."""
        return self._names.get(anchor, "")

    def about(self, anchor: str, *inside: Node) -> tuple[Node, ...]:
        """Set the bookmark of an anchor, if there is one, about what stands in a paragraph."""
        if not anchor:
            return inside
        number = self._numbers[anchor]
        return node("bookmarkStart", id=number, name=self._names[anchor]), *inside, node("bookmarkEnd", id=number)


def edition_anchors(edition: Edition) -> Iterator[str]:
    """Yield every anchor of an edition, in order."""
    for part in edition.parts:
        yield part.anchor
        for block in part.blocks:
            yield from (anchor for anchor in _block_anchors(block) if anchor)


def _block_anchors(block: Block) -> Iterator[str]:
    yield str(getattr(block, "anchor", ""))
    if isinstance(block, Steps):
        yield from (step.anchor for step in block.steps)
    if isinstance(block, Table):
        yield from (row.anchor for row in block.rows)


def _plain_name(anchor: str) -> str:
    name = re.sub(r"\W", "_", anchor)
    return name if name[:1].isalpha() else f"a_{name}"
