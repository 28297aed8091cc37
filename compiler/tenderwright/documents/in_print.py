"""Names and units as print has them, in every text of an edition, whoever wrote it and wherever it stands."""

from __future__ import annotations

import copy
import re
from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass, replace
from functools import cached_property
from typing import Any

from markdown_it.token import Token

from tenderwright.documents.desk import Desk, capital, set_units
from tenderwright.documents.edition import Edition, Figure, Prose, Span
from tenderwright.documents.links_within import anchors_in

_READ = ("text", "title", "caption", "alternative", "subtitle")
"""Fields that hold words to read; the others hold anchors, kinds and names of files."""
_NUMBERED = re.compile(r"[a-z]{1,3}-?\d+[a-z]?")
"""An identifier that is a number of the owner's, such as that of a drawing, and no word."""
_ALWAYS = ("clause", "scheme")
_PLACES = ("zone", "tank", "opening")
"""Kinds of which an identifier of one word is a word of its own, as in `the tank forepeak`."""
_DRAWN = re.compile(r"(<(?:text|tspan|title|desc)\b[^<>]*>)([^<]+)")


def in_print(desk: Desk, edition: Edition) -> Edition:
    """Give an edition with all its texts, and those of the sheets beside it, as print has them."""
    names = Names(desk, frozenset(anchors_in(edition.parts)))
    sheets = {stem: in_print(desk, sheet) for stem, sheet in edition.sheets.items()}
    forms = {stem: in_print(desk, form) for stem, form in edition.forms.items()}
    return replace(edition, parts=names.of(edition.parts), facts=names.of(edition.facts), sheets=sheets, forms=forms)


@dataclass(frozen=True)
class Names:
    """What names a thing of the package in a text, and how print has it."""

    desk: Desk
    anchors: frozenset[str] = frozenset()
    """Where a name may be linked to."""

    def of(self, thing: Any) -> Any:
        """Give a part of an edition with every text in it as print has it; the very same where nothing changes."""
        if isinstance(thing, str):
            return self.words(thing)
        if isinstance(thing, Prose):
            tokens = [self._token(token) for token in thing.tokens]
            return thing if all(a is b for a, b in zip(tokens, thing.tokens, strict=True)) else Prose(tokens)
        if isinstance(thing, tuple):
            return self._tuple(thing)
        if is_dataclass(thing) and not isinstance(thing, type):
            changed = {name: new for name, old in _inside(thing) if (new := self._field(thing, name, old)) is not old}
            return replace(thing, **changed) if changed else thing
        return thing

    def words(self, text: str) -> str:
        """Give a text with names and units as print has them."""
        text = set_units(text)
        return self._pattern.sub(lambda found: self._said(found)[0], text) if self._pattern.search(text) else text

    def _field(self, thing: Any, name: str, old: Any) -> Any:
        if name == "svg" and isinstance(thing, Figure):
            return _same(old, _DRAWN.sub(lambda found: found[1] + self.words(found[2]), old))
        return self.of(old) if not isinstance(old, str) or name in _READ else old

    def _tuple(self, things: tuple[Any, ...]) -> tuple[Any, ...]:
        made: list[Any] = []
        for one in things:
            if isinstance(one, Span) and not one.target and not one.code:
                made += self._spans(one)
            elif isinstance(one, Span):
                made.append(one if one.code else self.of(one))
            else:
                made.append(self.of(one))
        return things if len(made) == len(things) and all(map(_is, made, things)) else tuple(made)

    def _spans(self, span: Span) -> Iterator[Span]:
        """Give a run of text in pieces, each name linked to where its thing stands."""
        text, at = set_units(span.text), 0
        for found in self._pattern.finditer(text):
            said, anchor = self._said(found)
            if anchor in self.anchors:
                yield from [replace(span, text=text[at : found.start()])] if found.start() > at else []
                yield replace(span, text=said, target=anchor)
            else:
                yield replace(span, text=text[at : found.start()] + said)
            at = found.end()
        if not at:
            yield span if text == span.text else replace(span, text=text)
        elif at < len(text):
            yield replace(span, text=text[at:])

    def _token(self, token: Token) -> Token:
        if token.type == "text":
            words = self.words(token.content)
            return token if words == token.content else _with(token, content=words)
        children = [self._token(child) for child in token.children or ()]
        if all(map(_is, children, token.children or ())):
            return token
        return _with(token, children=children)

    def _said(self, found: re.Match[str]) -> tuple[str, str]:
        """Give the words for a name that was found, and the anchor of its thing."""
        if found["number"]:
            return found["number"].upper(), self.desk.anchor("drawing", found["number"])
        kind, name = found["kind"].lower(), found["name"]
        if (kind, name) not in self.desk.links.symbols:
            return found[0], ""
        label = self.desk.label(kind, name)
        words = f"scheme “{label}”" if kind == "scheme" else label
        return capital(words) if found["kind"][0].isupper() else words, self.desk.anchor(kind, name)

    @cached_property
    def _pattern(self) -> re.Pattern[str]:
        """Match the numbers of drawings, and the identifiers of other things after the kind of thing that they name."""
        known = self.desk.links.symbols
        numbers = [name for kind, name in known if kind == "drawing" and _NUMBERED.fullmatch(name)]
        names = [name for kind, name in known if kind in _ALWAYS or (kind in _PLACES and "-" in name)]
        kinds = "|".join(f"[{kind[0].upper()}{kind[0]}]{kind[1:]}" for kind in (*_ALWAYS, *_PLACES))
        either = f"(?P<number>{_any(numbers)})|(?P<kind>{kinds}) (?P<name>{_any(names)})"
        return re.compile(rf"(?<![\w/.-])(?:{either})(?![\w-]|\.\w)")


def _any(names: list[str]) -> str:
    return "|".join(re.escape(name) for name in sorted(names, key=len, reverse=True)) or "(?!)"


def _inside(thing: Any) -> Iterator[tuple[str, Any]]:
    return ((field.name, getattr(thing, field.name)) for field in fields(thing))


def _same(old: str, new: str) -> str:
    return old if new == old else new


def _is(one: object, other: object) -> bool:
    return one is other


def _with(token: Token, **changed: Any) -> Token:
    made = copy.copy(token)
    for name, value in changed.items():
        setattr(made, name, value)
    return made
