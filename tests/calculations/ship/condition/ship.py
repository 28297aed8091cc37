"""The demonstration ship, and changes to her surveys and papers."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.value import Record
from tenderwright.model.build import Builder
from tenderwright.model.history import EarlierDocking
from tenderwright.model.package import Package
from tenderwright.model.survey import Survey
from tenderwright.notices import Place
from tenderwright.pipeline import compile_package, read
from tenderwright.reading.yaml_file import read_yaml
from tests.replacing import replace

ROOT = Path(__file__).parents[4] / "package_src"
HEAD = "strake,frame,side,tank,member,kind,as_built_mm,measured_mm,date,instrument,stage"


@cache
def marram() -> tuple[Package, Record, Calculated]:
    """Give the ship as she is."""
    compiled = compile_package(read(ROOT))
    return compiled.package, compiled.record, compiled.calculated


def survey(*rows: str, name: str = "thickness-2025", head: str = HEAD) -> Survey:
    """Make a survey of some rows."""
    return Survey(name, "\n".join([head, *rows]) + "\n", Place(f"surveys/{name}.csv"))


def shot(strake: str, frame: float | str, side: str, built: float, measured: float, day: str = "2025-10-06") -> str:
    """Write a row of plate."""
    return f"{strake},{frame},{side},,,plate,{built},{measured},{day},gauge,afloat"


def docked(package: Package, *renewed: str, key: str = "renewed") -> EarlierDocking:
    """Give a docking of 2027 at which steel was renewed, or another thing, each written as in a history entry."""
    rows = "".join(f"  - {{ {one} }}\n" for one in renewed)
    days = "docking: docking-2027\nyard: Corve\ndock_type: graving dock\ndocked: 2027-05-05\nundocked: 2027-06-02\n"
    source, notices = read_yaml("history/docking-2027.yaml", f"{days}{key}:\n{rows}")
    assert notices == []
    return Builder(source, package.frames).build(EarlierDocking, source.data)


def surveyed(
    *surveys: Survey, history: tuple[EarlierDocking, ...] | None = None, **condition: Any
) -> tuple[Package, Record, Calculated]:
    """Give the ship with other surveys, and with parts of her condition and history changed."""
    package, _, _ = marram()
    assert package.condition is not None
    changed = replace(package, surveys=surveys, condition=replace(package.condition, **condition))
    changed = replace(changed, history=(*package.history, *(history or ())))
    calculated = calculate(changed)
    return changed, calculated.record, calculated
