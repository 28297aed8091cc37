"""Run every method on its recorded inputs anew."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.plain import plain
from tenderwright.calculations.value import Record, Value, Working


def different(record: Record) -> Iterator[tuple[Value, Any]]:
    """Yield each value that does not come out the same, to the last bit, with what comes out.

    The inputs are taken as they stand in the record as JSON, so that nothing that was built on the way is used again.
    """
    results: dict[int, Any] = {}
    for value in record.values.values():
        key = id(value.working)
        if key not in results:
            results[key] = _run(value.working)
        found = results[key]
        figure = found.get(value.symbol.name) if isinstance(found, dict) else found
        if not _same(plain(value.si), figure):
            yield value, figure


def _run(working: Working) -> Any:
    inputs = json.loads(json.dumps({name: plain(given.si) for name, given in working.inputs.items()}))
    try:
        return plain(dict(working.method.run(**inputs)))
    except (OutOfRange, TypeError) as error:
        return str(error)


def _same(one: Any, other: Any) -> bool:
    """Compare figures by how they are written in full, so that nan is nan and 0.0 is not -0.0."""
    return repr(one) == repr(other)
