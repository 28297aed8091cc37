"""The proof of an addendum: FROM and its operations give TO exactly, and every operation is told, once."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.comparing.apply import CannotApply, apply
from tenderwright.comparing.change import Change
from tenderwright.comparing.data import PackageData, digest
from tenderwright.comparing.operation import Operation, as_json, from_json


@dataclass(frozen=True)
class Proof:
    """What was proved: the digests of the data on both sides, and how much was applied and told."""

    before: str
    """SHA-256 of the data of FROM."""
    after: str
    """SHA-256 of the data of TO, and of FROM with the operations applied."""
    operations: int
    told: int


def prove(before: PackageData, after: PackageData, operations: Sequence[Operation], changes: Sequence[Change]) -> Proof:
    """Apply the operations, as they are read back from JSON, to FROM and hold the outcome against TO.

    Raises RuntimeError where it is not TO to the last digit and key, or where an operation is not told by exactly one
    change: that is a mistake of ours, and no addendum may be written.
    """
    read_back = from_json(json.loads(json.dumps(as_json(operations))))
    try:
        made = digest(apply(before, read_back))
    except CannotApply as error:
        raise RuntimeError(f"the operations cannot be applied: {error}") from error
    wanted = digest(after)
    if made != wanted:
        raise RuntimeError(f"FROM and the operations give {made}, and TO is {wanted}")
    told = Counter(number for change in changes for number in change.operations)
    wrong = [operations[number] for number in range(len(operations)) if told[number] != 1]
    if wrong or len(told) != len(operations):
        raise RuntimeError(f"not told by exactly one change: {wrong}")
    return Proof(digest(before), wanted, len(operations), len(changes))
