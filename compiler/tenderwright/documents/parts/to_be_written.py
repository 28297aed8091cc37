"""What a draft still leaves open: the values that are `todo`, by file."""

from __future__ import annotations

from collections.abc import Iterable

from tenderwright.documents.edition import Block, Bullets, Heading, Paragraph, inline
from tenderwright.shapes.todos import Todo, by_file, by_holder


def to_be_written(todos: Iterable[Todo]) -> list[Block]:
    """List what is still to be written; nothing where all is."""
    files = by_file(todos)
    if not files:
        return []
    words = (
        "This is a draft: the following is still to be written. What rests on it is left out, or said not to be known."
    )
    rows = tuple(
        inline(f"{file}: {'; '.join(dict.fromkeys(map(str, by_holder(found))))}") for file, found in files.items()
    )
    return [Heading("Still to be written"), Paragraph(inline(words)), Bullets(rows)]
