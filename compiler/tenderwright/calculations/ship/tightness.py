"""The tightness test of every boundary that the items open, weld on or rivet."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Literal

from tenderwright.calculations.condition_results import BoundaryTest
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.results import Results
from tenderwright.calculations.tightness.choice import METHOD as CHOICE
from tenderwright.calculations.tightness.choice import Boundary, Choice, Structure, tightness_test
from tenderwright.calculations.tightness.figures import TestFigure
from tenderwright.calculations.value import Given, Record
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.model.ship_condition import TightnessDefaults

_NAMES = {"test": "test", "pressure": "pressure", "head": "head"}
_WORK = ("opens hull", "hot work", "closes hull", "blanks opening")

HOSED: Method[Any] = Method(
    name="tightness.hosed",
    title="Seam and butt to be tested by hose",
    formula="L = joints of the inserts named + joints of those that a denser survey would likely add",
    source=Citation("Sum of lengths", standing="derived"),
    valid="joints opened by renewal of shell plate; joints caulked or riveted besides are the item's own",
    inputs={},
    outputs=(Symbol("hose", "length of joint to be tested", "length", "m"),),
    kernel=lambda: {},
    example={},
)


def tightness_values(package: Package, results: Results, record: Record) -> None:
    """Keep the test of every tank and opening that an item opens or works on."""
    _hosed(record)
    condition = package.condition
    if condition is None or condition.tightness is None:
        return
    defaults = condition.tightness
    structure: Structure = "welded" if defaults.structure == "welded" else "riveted"
    made = []
    for kind, name, items in _opened(package):
        boundary, hose = _boundary(kind), not any(one.name == name for one in defaults.no_hose)
        try:
            choice = _choice(boundary, structure, hose, defaults)
        except OutOfRange as error:
            record.fail(CHOICE, f"tightness.{name}", str(error), defaults.here, _NAMES)
            continue
        made.append(BoundaryTest(kind, name, boundary, tuple(item.number for item in items), choice))
        inputs = {
            "boundary": Given(None, boundary, items[0].here),
            "structure": Given(None, structure, defaults.here),
            "figure": Given(
                choice.head if choice.head is not None else choice.pressure, choice.figure, str(choice.source)
            ),
        }
        outputs = {"test": choice.test, "pressure": choice.pressure, "head": choice.head}
        given_out = {key: value for key, value in outputs.items() if value is not None}
        record.keep(CHOICE, f"tightness.{name}", f"{kind} {name}", inputs, given_out, _NAMES)
    results.condition.tests = tuple(made)


def _hosed(record: Record) -> None:
    joints = [record.values.get(name) for name in ("shell.renewal.joint", "shell.contingent.joint")]
    if None in joints:
        kept = record.failed if "shell.renewal.joint" in record.failed else record.missing
        kept["tightness.hose"] = "the renewal of shell plate could not be calculated"
        return
    inputs = {value.name: Given(value.si, f"{value.si:.1f} m", value.name) for value in joints if value is not None}
    total = sum(entry.si for entry in inputs.values())
    record.keep(HOSED, "tightness", "joints of renewed shell plate", inputs, {"hose": total})


def _opened(package: Package) -> Iterator[tuple[Literal["tank", "opening"], str, list[Item]]]:
    """Yield each tank whose boundary is worked on and each opening that is opened, with the items that do it."""
    live = [item for item in package.items if not item.withdrawn]
    for tank in package.tanks:
        items = [
            item
            for item in live
            if any(word in item.does for word in _WORK)
            and any(ref.name == tank.tank for ref in (*item.where.boundary_of, *item.where.tanks))
        ]
        if items and tank.use != "void":
            yield "tank", tank.tank, items
    for opening in package.openings:
        items = [
            item
            for item in live
            if any(word in item.does for word in ("opens hull", "blanks opening", "removes plug"))
            and any(ref.name == opening.opening for ref in item.where.openings)
        ]
        if items:
            yield "opening", opening.opening, items


def _boundary(kind: str) -> Boundary:
    return "tank" if kind == "tank" else "weathertight closure"


def _choice(boundary: Boundary, structure: Structure, hose: bool, defaults: TightnessDefaults) -> Choice:
    agreed = None
    if boundary == "tank" and defaults.tank_head is not None:
        source = Citation(defaults.tank_head_source or defaults.source)
        agreed = TestFigure("above the tank top, as agreed", source, head=defaults.tank_head.si)
    return tightness_test(boundary, structure, hose_possible=hose, agreed=agreed)
