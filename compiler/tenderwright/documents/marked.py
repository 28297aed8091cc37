"""Mark what words an addendum puts in and takes out."""

from __future__ import annotations

import re
from datetime import date

from tenderwright.comparing.change import Said
from tenderwright.comparing.redline import redline
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Inline, Span
from tenderwright.model.build import Prose
from tenderwright.notices import Place
from tenderwright.quantities.customs import day
from tenderwright.reading.source import Source

_PARAGRAPH = " ¶ "
_LEFT_OUT = "…"
_SHORT = 4
"""Words up to which a value is replaced whole, as `120 m²` by `160 m²`."""
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_MOST = 1800
"""Letters of data that is not prose after which it is cut, as of a table of offsets; addendum.json holds it whole."""


def spoken(desk: Desk, said: Said | None) -> str:
    """Give one side of a change as its edition prints it, every reference in its words."""
    if said is None:
        return ""
    if said.prose:
        nowhere = Source("", said.text)
        return desk.plain(Prose(said.text, Place(""), nowhere, ()))
    if _DATE.fullmatch(said.text):
        return day(date.fromisoformat(said.text))
    return said.text if len(said.text) <= _MOST else f"{said.text[:_MOST]} … (whole in addendum.json)"


def marked(old: str, new: str) -> Inline:
    """Give two texts as one, with what is taken out struck through and what is put in underlined.

    A few words are replaced whole; of paragraphs in which nothing changed, only a sign is left.
    """
    if old and new and old != new and max(len(old.split()), len(new.split())) <= _SHORT:
        return (Span(old, deleted=True), Span(" "), Span(new, inserted=True))
    runs = redline(old, new)
    spans: list[Span] = []
    for number, run in enumerate(runs):
        text = run.text
        if run.state == "kept" and len(runs) > 1:
            text = _near(text, first=number == 0, last=number == len(runs) - 1)
        text = text.strip("\n").replace("\n", _PARAGRAPH)
        if text:
            spans += [Span(" ")] if spans else []
            spans.append(Span(text, inserted=run.state == "inserted", deleted=run.state == "deleted"))
    return tuple(spans)


def _near(text: str, *, first: bool, last: bool) -> str:
    """Keep of a text the paragraphs that stand in one with a change before it, after it, or both."""
    paragraphs = text.split("\n")
    before, after = ([] if first else paragraphs[:1]), ([] if last else paragraphs[-1:])
    if len(paragraphs) <= len(before) + len(after):
        return text
    return "\n".join([*before, _LEFT_OUT, *after])
