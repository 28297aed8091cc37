"""Bands of a table, such as of plate weights: one begins where the one before ends, so that each plate is in one."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from tenderwright.model.item_table import ItemTable, WrittenRow
from tenderwright.notices import Notice
from tenderwright.quantities.units import unit


def band_of(row: WrittenRow) -> str:
    """Give the band of a row in words; nothing where it is none."""
    if row.from_ is not None and row.to is not None:
        return f"over {row.from_} to {row.to}"
    return f"over {row.from_}" if row.from_ is not None else f"to {row.to}" if row.to is not None else ""


def band_mistakes(table: ItemTable, about: str) -> Iterator[Notice]:
    """Report bands that measure different things, that are empty, and that leave a gap or overlap."""
    bands = [row for row in table.rows if row.from_ is not None or row.to is not None]
    ends = [end for row in bands for end in (row.from_, row.to) if end is not None]
    for end in ends:
        if unit(end.unit).signature != unit(ends[0].unit).signature:
            message = f"{about}: one band is in {ends[0].unit}, and another in {end.unit}"
            yield Notice("bad-table", end.at, message, hints=("measure all bands in the same way",))
            return
    for row in bands:
        if row.from_ is not None and row.to is not None and row.from_.si >= row.to.si:
            message = f"{about}: the band `{row.row}` begins above {row.from_}, and goes up to {row.to}"
            yield Notice("bad-table", row.here, message, hints=("put its ends in order",))
    for one, other in pairwise(bands):
        if one.to is None or other.from_ is None or one.to.si != other.from_.si:
            ends_at = f"goes up to {one.to}" if one.to is not None else "has no end"
            begins = f"begins above {other.from_}" if other.from_ is not None else "begins at nothing"
            message = f"{about}: the band `{one.row}` {ends_at}, and the next, `{other.row}`, {begins}"
            yield Notice("bad-table", other.here, message, hints=("let each begin where the one before ends",))
