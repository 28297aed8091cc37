"""Replacement pages: the parts of an edition that are not what they were, with bars beside what changed in them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any, Literal

from markdown_it.token import Token

from tenderwright.comparing.alignment import trimmed_opcodes
from tenderwright.documents.drawings import pen
from tenderwright.documents.edition import Beside, Block, Edition, Facts, Figure, Part, Steps, Table

_MARKS = ("changed", "revision", "group", "on_screen")
"""Fields that are no content of a page."""

_OF_THE_EDITION = re.compile(rf'<text [^<>]*class="{pen.PREFIX}(?:revision|sheet)"[^<>]*>[^<]*</text>')

_NOT_REPLACED = ("cover", "contents")


@dataclass(frozen=True)
class Replacement:
    """A part to put in, take out, or both."""

    part: Part
    """As it now is; where it is taken out, as it was."""
    does: Literal["replaced", "added", "removed"]


def replacements(before: Edition, after: Edition) -> tuple[Replacement, ...]:
    """Find the parts that came, went or changed, in the order of the edition, with bars beside what changed."""
    old = {part.anchor: part for part in before.parts if part.kind not in _NOT_REPLACED}
    new = {part.anchor: part for part in after.parts if part.kind not in _NOT_REPLACED}
    found = []
    for anchor, part in new.items():
        if anchor not in old:
            found.append(Replacement(part, "added"))
        elif essence(part) != essence(old[anchor]):
            found.append(Replacement(barred(old[anchor], part), "replaced"))
    found += [Replacement(part, "removed") for anchor, part in old.items() if anchor not in new]
    return tuple(found)


def essence(thing: Any) -> str:
    """Give all that a part, block or piece of one says, as text that is equal where nothing a reader sees changed."""
    return repr(_essence(thing))


def _essence(thing: Any) -> Any:
    if isinstance(thing, Token):
        return (thing.type, thing.tag, sorted(thing.attrs.items()), thing.content, thing.info, _essence(thing.children))
    if isinstance(thing, (tuple, list)):
        return tuple(_essence(one) for one in thing)
    if isinstance(thing, Figure):
        return ("Figure", thing.name, drawn(thing), thing.caption, thing.alternative, thing.title)
    if is_dataclass(thing) and not isinstance(thing, type):
        names = [field.name for field in fields(thing) if field.name not in _MARKS]
        return (type(thing).__name__, *(_essence(getattr(thing, name)) for name in names))
    return thing


def drawn(figure: Figure) -> str:
    """Give a drawing without the revision and number in its title block, which are those of the edition."""
    return _OF_THE_EDITION.sub("", figure.svg)


def barred(old: Part, new: Part) -> Part:
    """Mark what changed in a part: whole blocks, or only the steps, rows and facts in which something did."""
    blocks = list(new.blocks)
    changed = {-1} if (old.number, old.title) != (new.number, new.title) else set()
    for tag, i1, i2, j1, j2 in trimmed_opcodes(_each(old.blocks), _each(new.blocks)):
        if tag == "equal":
            continue
        if j1 == j2:
            changed.add(min(j1, len(blocks) - 1))
        for step, index in enumerate(range(j1, j2)):
            earlier = old.blocks[i1 + step] if i1 + step < i2 else None
            inside = _inside(earlier, blocks[index])
            if inside is None:
                changed.add(index)
            else:
                blocks[index] = inside
    return replace(new, blocks=tuple(blocks), changed=tuple(sorted(changed)))


def _each(things: Sequence[Any]) -> list[str]:
    return [essence(one) for one in things]


def _inside(old: Block | None, new: Block) -> Block | None:
    """Mark what changed inside a block, or give None where the block is marked as a whole."""
    if isinstance(old, Steps) and isinstance(new, Steps):
        marked = _changed(*([(step.body, step.hold) for step in steps] for steps in (old.steps, new.steps)))
        return replace(new, steps=tuple(replace(s, changed=i in marked) for i, s in enumerate(new.steps)))
    if isinstance(old, Facts) and isinstance(new, Facts):
        return replace(new, changed=tuple(sorted(_changed(old.pairs, new.pairs))))
    if isinstance(old, Table) and isinstance(new, Table) and _head(old) == _head(new):
        marked = _changed(old.rows, new.rows)
        return replace(new, rows=tuple(replace(r, changed=i in marked) for i, r in enumerate(new.rows)))
    if isinstance(old, Beside) and isinstance(new, Beside):
        return _within(old, new)
    return None


def _within(old: Beside, new: Beside) -> Beside | None:
    """Mark what changed in stacks that are as many and as high as before; None where they are not."""
    if [len(stack) for stack in old.stacks] != [len(stack) for stack in new.stacks]:
        return None
    stacks = []
    for before, after in zip(old.stacks, new.stacks, strict=True):
        pairs = zip(before, after, strict=True)
        marked = [now if essence(was) == essence(now) else _inside(was, now) for was, now in pairs]
        stacks.append(tuple(one for one in marked if one is not None))
    return replace(new, stacks=tuple(stacks)) if [len(s) for s in stacks] == [len(s) for s in new.stacks] else None


def _head(table: Table) -> str:
    return essence((table.columns, table.caption, table.note))


def _changed(old: Sequence[Any], new: Sequence[Any]) -> set[int]:
    """Find the entries that are new or changed, and those before which something is gone."""
    marked: set[int] = set()
    for tag, _, _, j1, j2 in trimmed_opcodes(_each(old), _each(new)):
        if tag != "equal":
            marked |= set(range(j1, j2)) or {min(j1, len(new) - 1)}
    return marked
