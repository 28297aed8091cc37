"""Points and rows of the inspection plan named in words, for notices and short lists."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.model.package import Package
from tenderwright.planning.inspection.register import RegisterRow
from tenderwright.planning.inspection.results import PointResult, RowResult

_MOST = 12
"""How many are named; the rest are counted."""


def listed(package: Package, found: Sequence[PointResult | RowResult], most: int = _MOST) -> str:
    """Name points and rows with how they stand, the first dozen of them."""
    words = [words_for(package, one) for one in found[:most]]
    if len(found) > most:
        words.append(f"and {len(found) - most} more")
    return "; ".join(words)


def words_for(package: Package, one: PointResult | RowResult) -> str:
    """Name a point or row, and how it stands."""
    if isinstance(one, PointResult):
        return f"item {one.point.name}, {one.state}"
    hole = f", no. {one.hole}" if one.hole else ""
    return f"{row_name(package, one.row)}{hole}, {one.state}"


def row_name(package: Package, row: RegisterRow) -> str:
    """Name a row of the register in running text."""
    if row.kind == "opening":
        name = next(one.name for one in package.openings if one.opening == row.name)
        return name[:1].lower() + name[1:]
    if row.kind == "tank":
        name = next(one.name for one in package.tanks if one.tank == row.name)
        return f"manhole of {name[:1].lower()}{name[1:]}"
    if row.kind == "block":
        return f"keel block at {row.name}"
    return f"{'anodes' if row.kind == 'anodes' else 'shell'} of item {row.name}"
