"""Read one figure of the record as a plain number."""

from __future__ import annotations

from tenderwright.calculations.value import Record


def number_of(record: Record, name: str) -> float | None:
    """Give a calculated figure in SI; None where it is not there, or is no single number."""
    value = record.values.get(name)
    return float(value.si) if value is not None and isinstance(value.si, int | float) else None
