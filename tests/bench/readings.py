"""A great many thickness readings of the demonstration ship: made, read, analysed and drawn."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np

from tenderwright.calculations.ship import condition_of_shell, members, pitting, renewals, shell_zones
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.steps.registry import steps
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.steps.step import Step
from tenderwright.documents.drawings.shell_expansion import shell_expansion
from tenderwright.model.package import Package
from tenderwright.model.survey import Survey
from tenderwright.notices import Place
from tenderwright.pipeline import compile_package, read
from tests.bench.generate import MARRAM
from tests.replacing import replace

HEAD = "strake,frame,side,tank,member,kind,as_built_mm,measured_mm,date,instrument,stage"
COLUMNS = [
    ("strake", "U2"), ("frame", "f8"), ("side", "U9"), ("tank", "U9"), ("member", "U9"), ("kind", "U5"),
    ("as_built_mm", "f8"), ("measured_mm", "f8"), ("date", "U10"), ("instrument", "U5"), ("stage", "U6"),
]  # fmt: skip
YEARS = (2007, 2025)


def write_surveys(folder: Path, count: int) -> list[Path]:
    """Write two surveys that hold so many readings together, spread evenly over the bottom of the ship."""
    rng = np.random.default_rng(count)
    files = []
    for year in YEARS:
        number = count // len(YEARS)
        strake, side = rng.integers(0, 6, number), rng.integers(0, 2, number)
        frame, loss = rng.uniform(5.0, 81.0, number), rng.gamma(2.0, 0.25 * (year - 1990) / 17.0, number)
        rows = [
            f"{'ABCDEF'[s]},{f:.2f},{('port', 'starboard')[p]},,,plate,9.5,{max(9.5 - gone, 1.0):.1f},"
            f"{year}-09-15,UT-2,afloat"
            for s, f, p, gone in zip(strake.tolist(), frame.tolist(), side.tolist(), loss.tolist(), strict=True)
        ]
        file = folder / f"thickness-{year}-{count}.csv"
        file.write_text("\n".join([HEAD, *rows]) + "\n", "utf-8")
        files.append(file)
    return files


WANTED: tuple[Step[Any], ...] = (
    condition_of_shell.shell_forecast,
    shell_zones.zone_rates,
    pitting.pits_judged,
    members.members_gauged,
    renewals.shell_renewal,
    renewals.shell_contingent,
)


def resting_on(wanted: tuple[Step[Any], ...]) -> tuple[Step[Any], ...]:
    """Give these steps and all that they rest on."""
    known = {step.name: step for step in steps()}
    found, ask = {}, list(wanted)
    for step in ask:
        found[step.name] = step
        below = [take.name for take in step.takes] + [step.each]
        ask += [known[name] for name in below if name in known and name not in found]
    return tuple(found.values())


def ship() -> Package:
    """Give the demonstration ship."""
    return compile_package(read(MARRAM)).package


def ours(package: Package, files: list[Path]) -> Callable[[], object]:
    """Make the work: read the surveys from disk, analyse them, lay out the renewals and draw the shell expansion."""

    def work() -> object:
        surveys = tuple(Survey(file.stem, file.read_text("utf-8"), Place(file.name)) for file in files)
        measured = replace(package, surveys=surveys)
        calculated = Calculated(measured, resting_on(WANTED))
        figure, notices = shell_expansion(measured, calculated), calculated.record.notices
        if isinstance(figure, Absent) or notices:
            raise RuntimeError(f"the readings could not be used: {notices[:3]}")
        return figure

    return work


def by_numpy(files: list[Path]) -> Callable[[], object]:
    """Make the other work: numpy's own reader takes the same files into arrays, and nothing else is done."""
    return lambda: [np.loadtxt(file, delimiter=",", skiprows=1, dtype=COLUMNS) for file in files]
