"""Pits of the shell, judged stretch by stretch by rules of their own."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.condition_results import SIDES, PitStretch, ShellCondition
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.pitting import METHOD as PITTING
from tenderwright.calculations.thickness.pitting import PITS_TO_GAUGE, judge_pitting
from tenderwright.calculations.thickness.readings import Readings
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.package import Package
from tenderwright.model.ship_condition import Pitted, ShipCondition

NAMES = {"remaining": "remaining", "share_left": "share-left", "treatment": "treatment"}


def pitting_values(package: Package, condition: ShipCondition, results: Results, record: Record) -> None:
    """Judge every pitted stretch, each side by itself."""
    shell = results.condition.shell
    if shell is None:
        return
    made = []
    for pitted in condition.pitted:
        for side in SIDES if pitted.side not in SIDES else (pitted.side,):
            try:
                stretch = _stretch(shell, pitted, side)
            except OutOfRange as error:
                record.fail(PITTING, _name(pitted, side, package), str(error), pitted.here, NAMES)
                continue
            if stretch is not None:
                made.append(stretch)
                _keep(pitted, stretch, _name(pitted, side, package), record)
    results.condition.pits = tuple(made)


def _name(pitted: Pitted, side: str, package: Package) -> str:
    frame = package.frames.label(pitted.from_.x) if package.frames else pitted.from_.text
    place = frame.replace(" ", "").replace("+", "-").replace("mm", "").lower()
    return f"shell.pits.{pitted.strake.name.lower()}-{side}-{place}"


def _rows(readings: Readings, strake: int, side: str, pitted: Pitted) -> Ints:
    on = (readings.strake == strake) & (readings.side == SIDES.index(side))
    return np.flatnonzero(on & (readings.x >= pitted.from_.x) & (readings.x <= pitted.to.x))


def _stretch(shell: ShellCondition, pitted: Pitted, side: str) -> PitStretch | None:
    if pitted.strake.name not in shell.strakes:
        return None
    strake = shell.strakes.index(pitted.strake.name)
    pits = _rows(shell.pits, strake, side, pitted)
    if not pits.size:
        return None
    last = shell.pits.survey[pits].max()
    pits = pits[shell.pits.survey[pits] == last]
    plate = _rows(shell.readings, strake, side, pitted)
    plate = plate[shell.analysis.latest[plate]]
    built = float(shell.pits.as_built[pits].mean())
    thickness = float(shell.readings.measured[plate].mean()) if plate.size else built
    depths = np.sort(np.maximum(thickness - shell.pits.measured[pits], 0.0))[::-1][:PITS_TO_GAUGE]
    judged = judge_pitting(built, thickness, pitted.share.si, depths.tolist())
    return PitStretch(
        pitted.strake.name,
        side,
        pitted.from_.x,
        pitted.to.x,
        pitted.share.si,
        int(pits.size),
        float(depths[0]),
        thickness,
        judged,
        pitted.source,
    )


def _keep(pitted: Pitted, stretch: PitStretch, prefix: str, record: Record) -> None:
    inputs = {
        "intensity": Given(pitted.share.si, f"{pitted.share}: {pitted.source}", pitted.share.at),
        "pits": Given(None, f"{stretch.pits} gauged, the deepest {1e3 * stretch.deepest:.1f} mm", "from the surveys"),
        "thickness": Given(stretch.thickness, f"{1e3 * stretch.thickness:.1f} mm between pits", "from the surveys"),
        "place": given(pitted.from_),
    }
    judged = stretch.judged
    outputs = {"remaining": judged.remaining, "share_left": judged.share_left, "treatment": judged.treatment}
    about = f"pits of strake {stretch.strake}, {stretch.side}, {pitted.from_} to {pitted.to}"
    record.keep(PITTING, prefix, about, inputs, outputs, NAMES)
