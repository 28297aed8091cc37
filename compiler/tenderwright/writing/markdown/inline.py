"""Writes runs of text as inline CommonMark.

A marker of stress opens or closes only beside the right characters (CommonMark Spec 0.31.2, section 6.2). Where the
text beside it would hinder it, one neighbour is written as a character reference, which reads the same.
"""

from __future__ import annotations

import re
import string
import unicodedata
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Literal

from tenderwright.writing.markdown.escaping import (
    code_span,
    escaped,
    escaped_heading_end,
    escaped_pipes,
    escaped_start,
    reference,
)
from tenderwright.writing.runs import Run, Runs, merged

_STRONG, _EMPHASIS = "**", "_"


@dataclass(frozen=True)
class _Piece:
    text: str
    marker: Literal["", "opens", "closes"] = ""


def paragraph(runs: Runs, slugs: Mapping[str, str]) -> str:
    """Write runs as the lines of one paragraph; `slugs` gives the place of every anchor that can be linked to."""
    lines = _written(runs, slugs).split("\n")
    return "\\\n".join(escaped_start(_kept_edges(line)) for line in lines)


def heading(runs: Runs, slugs: Mapping[str, str]) -> str:
    """Write runs as the text of a heading, which is one line."""
    return escaped_heading_end(_one_line(runs, slugs))


def cell(runs: Runs, slugs: Mapping[str, str]) -> str:
    """Write runs as a cell of a table, which is one line."""
    return escaped_pipes(_one_line(runs, slugs))


def _one_line(runs: Runs, slugs: Mapping[str, str]) -> str:
    return _kept_edges(_written(merged(replace(run, text=run.text.replace("\n", " ")) for run in runs), slugs))


def _written(runs: Runs, slugs: Mapping[str, str]) -> str:
    known = merged(replace(run, target=slugs.get(run.target, ""), faint=False) for run in runs)
    return _assembled(list(_linked(known))).strip("\n")


def _kept_edges(line: str) -> str:
    """Trim plain spaces, and keep others at the ends of a line, which a reader would trim too."""
    line = line.strip(" ")
    if line[:1].isspace():
        line = reference(line[0]) + line[1:]
    if line[-1:].isspace():
        line = line[:-1] + reference(line[-1])
    return line


def _linked(runs: Runs) -> Iterable[_Piece]:
    for (target, address), group in groupby(runs, lambda run: (run.target, run.address)):
        inside = list(group)
        place = f"#{target}" if target else address
        if not place:
            yield from _stressed(inside)
        elif address and "".join(run.text for run in inside) == address and not set(address) & set(" <>"):
            yield _Piece(f"<{address}>")
        else:
            yield _Piece("[")
            yield from _stressed(inside)
            yield _Piece(f"]({_destination(place)})")


def _destination(place: str) -> str:
    """Write where a link leads, in angle brackets where it holds what would end it."""
    safe = re.sub(r"[\\<>&]", r"\\\g<0>", place)
    return f"<{safe}>" if set(place) & set(" ()<>") else safe


def _stressed(runs: Sequence[Run]) -> Iterable[_Piece]:
    yield from _marked(runs, _STRONG, lambda run: run.strong, _emphasised)


def _emphasised(runs: Sequence[Run]) -> Iterable[_Piece]:
    yield from _marked(runs, _EMPHASIS, lambda run: run.emphasis, _leaves)


def _leaves(runs: Sequence[Run]) -> Iterable[_Piece]:
    """Write text and code; code in a link that holds a bracket is text, or it might make the line a definition."""
    for run in runs:
        as_code = run.code and not ((run.target or run.address) and "]" in run.text)
        yield _Piece(code_span(run.text) if as_code else escaped(run.text))


def _marked(
    runs: Sequence[Run],
    marker: str,
    has_it: Callable[[Run], bool],
    inner: Callable[[Sequence[Run]], Iterable[_Piece]],
) -> Iterable[_Piece]:
    """Put a marker about every stretch of runs that has the stress, and blanks at its ends outside."""
    for marked, group in groupby(runs, has_it):
        inside = list(group)
        if not marked:
            yield from inner(inside)
            continue
        start, inside, end = _trimmed(inside)
        yield _Piece(start)
        if inside:
            yield _Piece(marker, "opens")
            yield from inner(inside)
            yield _Piece(marker, "closes")
        yield _Piece(end)


def _trimmed(runs: list[Run]) -> tuple[str, list[Run], str]:
    start = end = ""
    while runs and not runs[0].code and runs[0].text[:1] in (" ", "\n"):
        start += runs[0].text[0]
        runs = [replace(runs[0], text=runs[0].text[1:]), *runs[1:]] if runs[0].text[1:] else runs[1:]
    while runs and not runs[-1].code and runs[-1].text[-1:] in (" ", "\n"):
        end = runs[-1].text[-1] + end
        runs = [*runs[:-1], replace(runs[-1], text=runs[-1].text[:-1])] if runs[-1].text[:-1] else runs[:-1]
    return start, runs, end


def _assembled(pieces: list[_Piece]) -> str:
    pieces = [piece for piece in pieces if piece.text]
    written = ""
    for index, piece in enumerate(pieces):
        following = pieces[index + 1].text if index + 1 < len(pieces) else ""
        text = piece.text
        if piece.text == "[" and written.endswith("!"):
            written = written[:-1] + r"\!"
        elif piece.marker == "opens":
            written, pieces[index + 1] = _beside(written, text, following, pieces[index + 1])
        elif piece.marker == "closes" and following:
            inner, outer = _flanked(written[-1], following[0], text)
            written = written[:-1] + inner
            pieces[index + 1] = replace(pieces[index + 1], text=outer + following[1:])
        elif piece.marker == "closes":
            written = written[:-1] + _flanked(written[-1], "", text)[0]
        written += text
    return written


def _beside(written: str, marker: str, following: str, piece: _Piece) -> tuple[str, _Piece]:
    inner, outer = _flanked(following[0], written[-1:], marker)
    return written[:-1] + outer, replace(piece, text=inner + following[1:])


def _flanked(inner: str, outer: str, marker: str) -> tuple[str, str]:
    """Write the characters inside and outside a marker so that the marker counts."""
    if inner.isspace():
        inner = reference(inner)
    word = unicodedata.category(inner[0])[0] in "LN"
    if outer and not _parts(outer) and not (word and marker == _STRONG):
        outer = reference(outer)
    return inner, outer


def _parts(letter: str) -> bool:
    return letter.isspace() or letter in string.punctuation or unicodedata.category(letter)[0] == "P"
