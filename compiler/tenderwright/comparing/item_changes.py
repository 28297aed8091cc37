"""Tell what changed in a work item: come, withdrawn, or changed in one of its parts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from tenderwright.comparing.change import Change, Subject
from tenderwright.comparing.operation import At, Operation
from tenderwright.comparing.wording import label, renumbered

OneTold = Callable[[Subject, int, Operation, dict[At, int]], Change]

_ORDER = (
    "title",
    "withdrawn",
    "revision",
    "kind",
    "phase",
    "where",
    "depends_on",
    "option_until",
    "scope",
    "references",
    "requirements",
    "decision",
    "access",
    "schemes",
    "owner_furnished",
    "yard_furnished",
    "hazards",
    "precautions",
    "heritage",
    "tests",
    "holds",
    "reports",
    "tables",
    "lines",
)
"""The parts of an item in the order in which its pages give them; the rest follow."""


def item_changes(subject: Subject, found: list[tuple[int, Operation]], one: OneTold) -> list[Change]:
    """Tell the operations on one item in the order of its pages."""
    numbers = renumbered(operation for _, operation in found)
    changes = []
    for number, operation in sorted(found, key=lambda entry: (_place(entry[1]), entry[0])):
        change = one(subject, number, operation, numbers)
        changes.append(_withdrawn(change, operation) if _withdraws(operation) else change)
    return changes


def _place(operation: Operation) -> int:
    key = operation.at[0] if operation.at else ""
    return _ORDER.index(str(key)) if key in _ORDER else len(_ORDER) if operation.at else -1


def _withdraws(operation: Operation) -> bool:
    """Tell whether an item is withdrawn, or one of its lines."""
    there = operation.at[-1:] == ("withdrawn",) and operation.at[:1] in (("withdrawn",), ("lines",))
    return there and operation.does in ("added", "set") and operation.new is True


def _withdrawn(change: Change, operation: Operation) -> Change:
    return replace(change, manner="withdrawn", what=label(operation.at[:-1]), old=None, new=None)
