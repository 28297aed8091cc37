"""A comparison as plain data, for JSON: enough to make TO from FROM, and to see that nothing else changed."""

from __future__ import annotations

from typing import Any

from tenderwright.comparing.change import Change
from tenderwright.comparing.compare import Comparison
from tenderwright.comparing.form_changes import FormChange, PricedLine
from tenderwright.comparing.operation import as_json
from tenderwright.comparing.value_changes import ValueChange

_MEANING = (
    "Each operation is applied to what those before it made. Keys, and places in lists counted from 0, lead to where "
    "it stands; {key: name} is the entry of a list whose key has that name."
)


def statement(comparison: Comparison) -> dict[str, Any]:
    """Give the proof, the changes as told, and every operation."""
    proof = comparison.proof
    return {
        "can_affect_price": comparison.bears_on_price,
        "proof": {
            "from_data_sha256": proof.before,
            "to_data_sha256": proof.after,
            "from_and_operations_sha256": proof.after,
            "operations": proof.operations,
            "changes_told": proof.told,
        },
        "changes": [_change(change) for change in comparison.changes],
        "figures": [_value(value) for value in comparison.values],
        "lines": [_line(line) for line in comparison.lines],
        "how_to_apply": _MEANING,
        "operations": as_json(comparison.operations),
    }


def _change(change: Change) -> dict[str, Any]:
    return {
        "of": change.subject.group,
        "name": change.subject.name,
        "title": change.subject.title,
        "manner": change.manner,
        "what": change.what,
        "old": change.old.text if change.old else None,
        "new": change.new.text if change.new else None,
        "can_affect_price": change.price,
        "operations": list(change.operations),
    }


def _value(value: ValueChange) -> dict[str, Any]:
    one = value.new or value.old
    return {
        "name": value.name,
        "dimension": one.dimension if one else "",
        "old_si": value.old.si if value.old else None,
        "new_si": value.new.si if value.new else None,
        "files": list(value.files),
        "operations": list(value.causes),
        "lines": list(value.lines),
    }


def _line(line: FormChange) -> dict[str, Any]:
    return {
        "line": line.number,
        "manner": line.manner,
        "old": _priced(line.old),
        "new": _priced(line.new),
        "differs": list(line.differs),
        "can_affect_price": line.price,
    }


def _priced(line: PricedLine | None) -> dict[str, Any] | None:
    if line is None:
        return None
    return {
        "words": line.words,
        "section": line.section,
        "kind": line.kind,
        "price": line.price,
        "quantity": line.quantity,
        "unit": line.unit,
        "amount": line.amount,
    }
