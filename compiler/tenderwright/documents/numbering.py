"""Number the parts of a document as they are composed, and put the numbers where its text refers to a part."""

from __future__ import annotations

import copy
import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeVar

from markdown_it.token import Token

from tenderwright.documents.edition import Heading, Paragraph, Part, Prose, Span
from tenderwright.linking.parts import PARTS

GROUPS: Mapping[str, str] = {
    "Rules and prices": "1.",
    "General requirements": "2",
    "The ship": "3.",
    "Docking data": "4.",
    "Annexes": "A",
}
"""By the group of a part, how its number begins. A group that ends in no point and is one part bears that alone; items
and drawings have numbers of their own, and what stands before the rules has none."""

_UNNUMBERED = ("cover", "contents")
_MARK = re.compile("\ue000([a-z0-9-]+)(,?)\ue001")
_Thing = TypeVar("_Thing")


def mark(anchor: str, *, titled: bool = False) -> str:
    """Give what stands for `part 4.2`, or `part 4.2 (Blocks and their loads)`, until the parts are numbered."""
    return f"\ue000{anchor}{',' if titled else ''}\ue001"


def part_words(anchor: str) -> str:
    """Give the words for a part of the specification in another document, which does not know its number."""
    return f"the part “{PARTS[anchor]}” of the specification"


def numbered(parts: tuple[Part, ...], groups: Mapping[str, str] = GROUPS) -> tuple[Part, ...]:
    """Number the parts within their groups, and tell each reference to one by its number."""
    seen: Counter[str] = Counter()
    given = []
    for part in parts:
        if not part.number and part.group in groups and part.kind not in _UNNUMBERED:
            seen[part.group] += 1
            begins = groups[part.group]
            part = replace(part, number=begins if begins.isdigit() else f"{begins}{seen[part.group]}")
        given.append(part)
    return tuple(told(part, tuple(given)) for part in given)


def told(thing: _Thing, parts: tuple[Part, ...]) -> _Thing:
    """Put the numbers of the parts where a part, block or text refers to one; one that is not there is only named.

    A chapter that is gathered into a part bears that part's number and its own title.
    """
    sections = {
        block.anchor: replace(part, title=block.text if isinstance(block, Heading) else PARTS[block.anchor])
        for part in parts
        for block in part.blocks
        if isinstance(block, Heading | Paragraph) and block.anchor in PARTS
    }
    found: _Thing = _told(thing, sections | {part.anchor: part for part in parts})
    return found


def _told(thing: Any, parts: Mapping[str, Part]) -> Any:
    if isinstance(thing, str):
        return _MARK.sub(lambda found: _words(found[1], bool(found[2]), parts), thing) if "\ue000" in thing else thing
    if isinstance(thing, Span):
        dead = thing.target in PARTS and thing.target not in parts
        text = _told(thing.text, parts)
        return replace(thing, text=text, target="" if dead else thing.target) if dead or text != thing.text else thing
    if isinstance(thing, Prose):
        return Prose([_token(token, parts) for token in thing.tokens])
    if isinstance(thing, tuple):
        made = tuple(_told(one, parts) for one in thing)
        return made if any(new is not old for new, old in zip(made, thing, strict=True)) else thing
    if is_dataclass(thing) and not isinstance(thing, type):
        values = {field.name: getattr(thing, field.name) for field in fields(thing)}
        new = {name: _told(value, parts) for name, value in values.items()}
        changed = {name: value for name, value in new.items() if value is not values[name]}
        return replace(thing, **changed) if changed else thing
    return thing


def _words(anchor: str, titled: bool, parts: Mapping[str, Part]) -> str:
    part = parts.get(anchor)
    if part is None:
        return f"the part “{PARTS[anchor]}”, which this tender does not have"
    if not part.number:
        return f"“{part.title}”"
    return f"part {part.number} ({part.title})" if titled else f"part {part.number}"


def _token(token: Token, parts: Mapping[str, Part]) -> Token:
    if not token.children:
        return token
    made = copy.copy(token)
    made.children = []
    dropped = False
    for child in token.children:
        if child.type == "link_open":
            target = str(child.attrs.get("href", "")).removeprefix("#")
            dropped = target in PARTS and target not in parts
        if child.type == "text" and "\ue000" in child.content:
            child = copy.copy(child)
            child.content = _told(child.content, parts)
        if not (dropped and child.type in ("link_open", "link_close")):
            made.children.append(child)
        if child.type == "link_close":
            dropped = False
    return made
