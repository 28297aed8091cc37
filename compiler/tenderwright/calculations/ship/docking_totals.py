"""What a docking came to in all: steel, rivets, anodes and readings."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence

from msgspec import Struct

from tenderwright.model.findings import Findings
from tenderwright.model.package import Package
from tenderwright.model.reading_rows import ReadingRow


class PlateLoss(Struct, frozen=True):
    """The readings of one strake or tank."""

    place: str
    readings: int
    mean_loss: float
    """Share of the thickness as built."""
    greatest_loss: float
    where: str


class DockingTotals(Struct, frozen=True):
    """Sums over the findings of one docking; masses in kg."""

    steel: float
    rivets: Mapping[str, int]
    anodes_fitted: int
    anode_mass: float
    anode_share_left: float | None
    """Of all anodes whose rest was seen, by mass when new."""
    losses: tuple[PlateLoss, ...]


def docking_totals(findings: Findings, package: Package, readings: Sequence[ReadingRow]) -> DockingTotals:
    """Add up the findings."""
    rivets: dict[str, int] = defaultdict(int)
    for one in findings.rivets:
        rivets[one.how] += one.number
    fitted = [one for one in findings.anodes if one.fitted is not None]
    return DockingTotals(
        steel=sum(one.mass.si for one in findings.renewed if one.mass),
        rivets=dict(sorted(rivets.items())),
        anodes_fitted=len(fitted),
        anode_mass=sum(one.fitted.si for one in fitted if one.fitted),
        anode_share_left=_share_left(findings, package),
        losses=tuple(_losses(readings)),
    )


def _share_left(findings: Findings, package: Package) -> float | None:
    """Give mass left over mass when new; an anode's own mass left goes before its share."""
    new = {one.anode: one.mass.si for one in package.anodes}
    left = whole = 0.0
    for one in findings.anodes:
        mass = new.get(one.anode.name)
        if mass is None or (one.left is None and one.left_mass is None):
            continue
        whole += mass
        left += one.left_mass.si if one.left_mass else mass * (one.left.si if one.left else 0.0)
    return left / whole if whole else None


def _losses(readings: Sequence[ReadingRow]) -> list[PlateLoss]:
    groups: dict[str, list[ReadingRow]] = defaultdict(list)
    for row in readings:
        groups[f"strake {row.strake}" if row.strake else row.tank].append(row)
    found = []
    for place, rows in sorted(groups.items()):
        worst = max(rows, key=lambda row: row.loss)
        frame = f"Fr {worst.frame:g}" if worst.frame is not None else ""
        where = ", ".join(word for word in (frame, worst.side) if word)
        mean = sum(row.loss for row in rows) / len(rows)
        found.append(PlateLoss(place, len(rows), mean, worst.loss, where))
    return found
