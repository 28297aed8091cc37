"""Keep in a document only the links that lead somewhere in it, for parts taken out of a larger one."""

from __future__ import annotations

import copy
from dataclasses import fields, is_dataclass, replace
from typing import Any

from markdown_it.token import Token

from tenderwright.documents.edition import Part, Prose, Span


def links_within(parts: tuple[Part, ...]) -> tuple[Part, ...]:
    """Give the same parts with every link that leads out of them turned into plain words."""
    anchors = anchors_in(parts)
    return tuple(_kept(part, anchors) for part in parts)


def anchors_in(thing: Any) -> set[str]:
    """Give every anchor inside a part or a block."""
    found: set[str] = set()
    left = [thing]
    while left:
        one = left.pop()
        if isinstance(one, tuple):
            left += one
        elif is_dataclass(one) and not isinstance(one, Prose | Span):
            found.add(getattr(one, "anchor", ""))
            left += [getattr(one, field.name) for field in fields(one)]
    return found - {""}


def _kept(thing: Any, anchors: set[str]) -> Any:
    if isinstance(thing, Span):
        return thing if not thing.target or thing.target in anchors else replace(thing, target="")
    if isinstance(thing, Prose):
        return Prose([_token(token, anchors) for token in thing.tokens])
    if isinstance(thing, tuple):
        return tuple(_kept(one, anchors) for one in thing)
    if is_dataclass(thing) and not isinstance(thing, type):
        return replace(thing, **{field.name: _kept(getattr(thing, field.name), anchors) for field in fields(thing)})
    return thing


def _token(token: Token, anchors: set[str]) -> Token:
    if not token.children:
        return token
    made = copy.copy(token)
    made.children = []
    dropped = False
    for child in token.children:
        if child.type == "link_open":
            href = str(child.attrs.get("href", ""))
            dropped = href.startswith("#") and href[1:] not in anchors
        if not (dropped and child.type in ("link_open", "link_close")):
            made.children.append(child)
        if child.type == "link_close":
            dropped = False
    return made
