"""Tell every operation in words that a yard reads: each is told by one change, and none is left over."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import groupby
from typing import Any

from tenderwright.comparing.bearing import bears_on_price
from tenderwright.comparing.change import Change, Manner, Said, Subject
from tenderwright.comparing.data import PackageData
from tenderwright.comparing.item_changes import item_changes
from tenderwright.comparing.operation import At, Operation
from tenderwright.comparing.redline import editorial
from tenderwright.comparing.subject import subject_of
from tenderwright.comparing.wording import label, renumbered, said, shape_at

Numbered = tuple[int, Operation]
"""An operation and which it is, counted from 0."""


def tell(operations: Sequence[Operation], before: PackageData, after: PackageData) -> tuple[Change, ...]:
    """Tell the operations that make one package into another, subject by subject."""
    told: list[Change] = []
    for file, group in groupby(sorted(enumerate(operations), key=_by_file), key=_by_file):
        found = list(group)
        subject = subject_of(file, before, after)
        if any(operation.does == "text" for _, operation in found):
            told += _text(subject, found, before, after)
        elif subject.group == "item":
            told += item_changes(subject, found, _one)
        else:
            numbers = renumbered(operation for _, operation in found)
            told += [_one(subject, number, operation, numbers) for number, operation in found]
    return tuple(told)


def _by_file(numbered: Numbered) -> str:
    operation = numbered[1]
    return str(operation.new) if operation.does == "file-moved" else operation.file


_REFERENCE = re.compile(r"<[a-z]+:|\]\([a-z]+:")

_MANNERS: dict[str, Manner] = {
    "file-added": "added",
    "added": "added",
    "file-removed": "removed",
    "removed": "removed",
}


def _one(subject: Subject, number: int, operation: Operation, numbers: dict[At, int]) -> Change:
    """Tell one operation."""
    manner = _MANNERS.get(operation.does, "changed")
    price = bears_on_price(operation)
    if operation.does == "file-moved":
        return Change(subject, manner, "Name of its file", Said(operation.file), Said(operation.new), price, (number,))
    if operation.does in ("file-added", "file-removed"):
        return Change(subject, manner, "", None, None, price, (number,))
    what = label(operation.at, numbers if operation.does != "added" else None)
    if operation.does == "order":
        what = f"{what}, order".removeprefix(", ")
    prose = bool(shape_at(operation.file, operation.at).get("prose"))
    old = None if manner == "added" else _said(operation.old, prose)
    new = None if manner == "removed" else _said(operation.new, prose)
    return Change(subject, manner, what or "All of it", old, new, price, (number,))


def _said(data: Any, prose: bool) -> Said:
    text = said(data)
    return Said(text, prose or _REFERENCE.search(text) is not None)


def _text(subject: Subject, found: list[Numbered], before: PackageData, after: PackageData) -> list[Change]:
    """Tell all that changed in a text at once: a clause whole, of readings only the lines concerned."""
    file = found[0][1].file if found[0][1].does == "text" else str(found[0][1].new)
    moved = [operation for _, operation in found if operation.does == "file-moved"]
    earlier = moved[0].file if moved else file
    numbers = tuple(number for number, operation in found if operation.does == "text")
    changes = [_one(subject, number, operation, {}) for number, operation in found if operation.does != "text"]
    if subject.group == "clause":
        whole, anew = Said(before[earlier], True), Said(after[file], True)
        price = not editorial(whole.text, anew.text)
        return [*changes, Change(subject, "changed", "Text", whole, anew, price, numbers)]
    hunks = [operation for _, operation in reversed(found) if operation.does == "text"]
    what = "Lines " + ", ".join(_lines(operation) for operation in hunks)
    old = Said("\n".join(line for operation in hunks for line in operation.old))
    new = Said("\n".join(line for operation in hunks for line in operation.new))
    return [*changes, Change(subject, "changed", what, old, new, True, numbers)]


def _lines(operation: Operation) -> str:
    first = (operation.position or 0) + 1
    last = first + len(operation.old) - 1
    return f"{first} to {last}" if last > first else str(first)
