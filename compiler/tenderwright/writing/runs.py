"""Inline text as flat runs, from an edition's spans or from parsed prose, for writers that know no HTML."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from markdown_it.token import Token

from tenderwright.documents.edition import Inline
from tenderwright.writing.errors import WritingError
from tenderwright.writing.prose import link_target

_BLANKS = re.compile(r"[\t-\r\x1c-\x1f\x85 ]+")


@dataclass(frozen=True)
class Run:
    """A piece of text of one look; a line end in it is a line break, and other blanks are single spaces."""

    text: str
    strong: bool = False
    emphasis: bool = False
    faint: bool = False
    code: bool = False
    target: str = ""
    """An anchor of the edition, without the hash; empty for none."""
    address: str = ""
    """A web or mail address; empty for none."""


Runs = tuple[Run, ...]


def text_runs(text: str, *, strong: bool = False) -> Runs:
    """Give plain text as runs."""
    return merged([Run(_BLANKS.sub(" ", text), strong=strong)])


def span_runs(inline: Inline, *, strong: bool = False) -> Runs:
    """Give an edition's inline text as runs, all of it strong where asked."""
    return merged(
        Run(
            _BLANKS.sub(" ", span.text),
            strong=span.strong or strong,
            faint=span.faint,
            code=span.code,
            target=span.target,
        )
        for span in inline
    )


def token_runs(tokens: Sequence[Token]) -> Runs:
    """Give the children of an inline token as runs; a picture becomes its words and its address.

    Raises `WritingError` where a reference was left unresolved.
    """
    runs: list[Run] = []
    look = Run("")
    before: list[Run] = []
    for token in tokens:
        if token.nesting == 1:
            before.append(look)
            look = _opened(look, token)
        elif token.nesting == -1:
            look = before.pop()
        elif token.type == "image":
            runs += [
                replace(look, text=f"{_words(token)} ("),
                replace(look, text=str(token.attrs.get("src", "")), code=True),
            ]
            runs.append(replace(look, text=")"))
        elif token.type == "code_inline":
            runs.append(replace(look, text=token.content, code=True))
        else:
            runs.append(replace(look, text=_plain(token)))
    return merged(runs)


def merged(runs: Iterable[Run]) -> Runs:
    """Join neighbouring runs of one look, and leave empty ones out."""
    joined: list[Run] = []
    for run in runs:
        if joined and replace(joined[-1], text=run.text) == run:
            joined[-1] = replace(run, text=joined[-1].text + run.text)
        elif run.text:
            joined.append(run)
    return tuple(joined)


def plain_runs(runs: Runs) -> str:
    """Give the text of runs without their looks."""
    return "".join(run.text for run in runs)


def _opened(look: Run, token: Token) -> Run:
    if token.type == "strong_open":
        return replace(look, strong=True)
    if token.type == "em_open":
        return replace(look, emphasis=True)
    if token.type == "link_open":
        target = link_target(token)
        return replace(look, target=target[1:]) if target.startswith("#") else replace(look, address=target)
    raise WritingError(f"prose holds {token.type!r}, which this writer does not know")


def _plain(token: Token) -> str:
    if token.type == "softbreak":
        return " "
    if token.type == "hardbreak":
        return "\n"
    if token.type in ("text", "html_inline"):
        return _BLANKS.sub(" ", token.content)
    raise WritingError(f"prose holds {token.type!r}, which this writer does not know")


def _words(picture: Token) -> str:
    return "".join(" " if "break" in child.type else child.content for child in picture.children or ())
