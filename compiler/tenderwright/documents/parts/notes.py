"""What else is known of things, listed under a table of them."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Bullets, Span
from tenderwright.documents.together import together
from tenderwright.model.build import Prose


def notes_on(desk: Desk, noted: Sequence[tuple[str, Prose | None]]) -> list[Block]:
    """List the notes by the names of what they are of, a note on several things once; no list without notes."""
    named: dict[str, list[str]] = {}
    written: dict[str, Prose] = {}
    for name, notes in noted:
        if notes is not None:
            named.setdefault(notes.text, []).append(name)
            written.setdefault(notes.text, notes)
    told = [(Span(f"{together(of)}. ", strong=True), *desk.words(written[text])) for text, of in named.items()]
    return [Bullets(tuple(told), abreast=len(told) > 1)] if told else []
