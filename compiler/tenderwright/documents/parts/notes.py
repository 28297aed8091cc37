"""What else is known of things, listed under a table of them."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Bullets, Span
from tenderwright.model.build import Prose


def notes_on(desk: Desk, noted: Sequence[tuple[str, Prose | None]]) -> list[Block]:
    """List the notes by the name of what they are of; no list where there are none."""
    told = [(Span(f"{name}. ", strong=True), *desk.words(notes)) for name, notes in noted if notes is not None]
    return [Bullets(tuple(told))] if told else []
