"""Compare two compiled packages: the whole difference, told and proved."""

from __future__ import annotations

from dataclasses import dataclass

from tenderwright.comparing.change import Change
from tenderwright.comparing.changes import differences
from tenderwright.comparing.data import package_data
from tenderwright.comparing.form_changes import FormChange, form_changes
from tenderwright.comparing.operation import Operation
from tenderwright.comparing.proof import Proof, prove
from tenderwright.comparing.side import Side
from tenderwright.comparing.telling import tell
from tenderwright.comparing.value_changes import ValueChange, value_changes


@dataclass(frozen=True)
class Comparison:
    """All that changed between two packages."""

    before: Side
    after: Side
    operations: tuple[Operation, ...]
    changes: tuple[Change, ...]
    values: tuple[ValueChange, ...]
    lines: tuple[FormChange, ...]
    proof: Proof

    @property
    def bears_on_price(self) -> bool:
        """Tell whether anything that changed can affect price."""
        return any(change.price for change in self.changes) or any(line.price for line in self.lines)


def compare(before: Side, after: Side) -> Comparison:
    """Find and tell what changed; raises RuntimeError where that cannot be proved to be all."""
    one, other = package_data(before.files), package_data(after.files)
    operations = differences(one, other)
    changes = tell(operations, one, other)
    proof = prove(one, other, operations, changes)
    values = value_changes(before, after, operations)
    return Comparison(before, after, operations, changes, values, form_changes(before, after), proof)
