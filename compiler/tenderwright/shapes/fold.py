"""One slip in a mapping gives one notice: a key misspelt is not missing too, and a lost line loses many keys."""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec.structs import replace

from tenderwright.notices import Note, Notice
from tenderwright.reading.source import Path, Source

Found = tuple[Path, Notice]
"""A mistake with the path of what it is about: for an unknown or a missing key, the mapping that holds it."""

_KEY = re.compile("key `(.*?)`")
_MEANT = re.compile("did you mean `(.*?)`")


def fold(source: Source, found: Sequence[Found]) -> list[Found]:
    """Fold the unknown and missing keys of each mapping, and those of mappings in one list that have the same."""
    kept = [one for one in found if one[1].code not in ("unknown-key", "missing-key")]
    kept = _of_lists(source, kept, ("wrong-type",))
    mappings: dict[Path, list[Notice]] = {}
    for at, notice in found:
        if notice.code in ("unknown-key", "missing-key"):
            mappings.setdefault(at, []).append(notice)
    folded = [(at, notice) for at, notices in mappings.items() for notice in _of_mapping(notices)]
    return _lost_heads([*kept, *_of_lists(source, folded, ("unknown-key", "missing-key"))])


def _of_mapping(notices: Sequence[Notice]) -> list[Notice]:
    """Fold the mistakes of one mapping: each key misspelt for one that is missing by itself, the rest together."""
    missing = {_name(one): one for one in notices if one.code == "missing-key"}
    misspelt: list[Notice] = []
    strange: list[Notice] = []
    for one in notices:
        if one.code != "unknown-key":
            continue
        meant = next((match[1] for hint in one.hints if (match := _MEANT.match(hint))), None)
        if meant in missing:
            misspelt.append(one)
            del missing[meant]
        else:
            strange.append(one)
    rest = [one for group in (strange, list(missing.values())) if group for one in [_together(group)]]
    if len(rest) == 2:
        rest = [replace(rest[0], notes=(*rest[0].notes, Note(f"{rest[1].message} there")))]
    return misspelt + rest


def _together(group: Sequence[Notice]) -> Notice:
    """Make one notice of keys that are all unknown, or all missing, in one mapping."""
    first = group[0]
    if len(group) == 1:
        return first
    names = ", ".join(f"`{_name(one)}`" for one in group)
    message = f"keys {names} are {'missing' if first.code == 'missing-key' else 'not known here'}"
    hints = tuple(dict.fromkeys(hint for one in group for hint in one.hints))
    return replace(first, message=message, hints=hints, cause=str(first.place), also=tuple(o.place for o in group[1:]))


def _lost_heads(found: Sequence[Found]) -> list[Found]:
    """Fold a missing key into the mistakes of a list beside it: with its line lost, its entries went to that list."""
    lists = {at[:-2] for at, _ in found if len(at) > 1 and isinstance(at[-1], int)}
    lost = {at: notice for at, notice in found if notice.code == "missing-key" and at in lists}
    out: list[Found] = []
    for at, notice in found:
        if lost.get(at) is notice:
            continue
        if len(at) > 1 and isinstance(at[-1], int) and at[:-2] in lost:
            notice = replace(notice, notes=(*notice.notes, Note(f"{lost[at[:-2]].message} in what holds the list")))
        out.append((at, notice))
    return out


def _of_lists(source: Source, found: Sequence[Found], codes: tuple[str, ...]) -> list[Found]:
    """Give like mistakes in several entries of a list one cause: the line above some of them may be lost."""
    times: dict[tuple[str, Path], int] = {}
    for at, notice in found:
        times[notice.code, at[:-1]] = times.get((notice.code, at[:-1]), 0) + 1
    out: list[Found] = []
    for at, notice in found:
        in_list = bool(at) and isinstance(at[-1], int)
        if in_list and notice.code in codes and times[notice.code, at[:-1]] > 1:
            notice = replace(notice, cause=f"{source.path} {'.'.join(map(str, at[:-1]))}")
        out.append((at, notice))
    return out


def _name(notice: Notice) -> str:
    match = _KEY.match(notice.message)
    assert match is not None
    return match[1]
