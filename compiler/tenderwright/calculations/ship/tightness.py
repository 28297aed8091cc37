"""The tightness test of every boundary that the items open, weld on or rivet."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from msgspec import Struct

from tenderwright.calculations.renewal.found_later import FoundLater
from tenderwright.calculations.renewal.found_later import outputs_of as found_later_outputs
from tenderwright.calculations.renewal.shell_renewal import RenewalPlan
from tenderwright.calculations.renewal.shell_renewal import outputs_of as renewal_outputs
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tightness.choice import METHOD as CHOICE
from tenderwright.calculations.tightness.choice import Boundary
from tenderwright.calculations.tightness.hosed import METHOD as HOSED
from tenderwright.calculations.value import Given, given
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.notices import Place
from tenderwright.quantities.display import show

_NAMES = {"test": "test", "pressure": "pressure", "head": "head", "figure": "figure", "source": "source"}
_WORK = ("opens hull", "hot work", "closes hull", "blanks opening")


class OpenedBoundary(Struct, frozen=True):
    """A boundary that the items open or work on."""

    kind: Literal["tank", "opening"]
    name: str
    items: tuple[Item, ...]

    @property
    def boundary(self) -> Boundary:
        """Give what it is to the test."""
        return "tank" if self.kind == "tank" else "weathertight closure"


@step()
def opened_boundaries(package: Package) -> dict[str, OpenedBoundary]:
    """Give each tank whose boundary is worked on and each opening that is opened, with the items that do it."""
    found: dict[str, OpenedBoundary] = {}
    for one in _opened(package):
        found[f"opening-{one.name}" if one.name in found else one.name] = one
    return found


@step_of(CHOICE, "tightness.{}", names=_NAMES, each="opened_boundaries")
def boundary_test(opened: OpenedBoundary, condition: ShipCondition | None) -> Uses | Absent:
    """Choose the test of a boundary."""
    if condition is None or condition.tightness is None:
        return Lacking("it needs `tightness` in vessel/condition.yaml")
    defaults = condition.tightness
    hose = next((one for one in defaults.no_hose if one.name == opened.name), None)
    inputs = {
        "boundary": Given(opened.boundary, opened.boundary, opened.items[0].here),
        "structure": Given(defaults.structure, defaults.structure, defaults.here),
        "hose_possible": Given(hose is None, "no" if hose else "yes", hose.at if hose else defaults.here),
    }
    if opened.kind == "tank" and defaults.tank_head is not None:
        source = defaults.tank_head_source or defaults.source
        inputs |= {"head": given(defaults.tank_head), "source": Given(source, source, defaults.here)}
    return Uses(f"{opened.kind} {opened.name}", inputs, defaults.here, of=opened.name)


def _opened(package: Package) -> Iterator[OpenedBoundary]:
    live = [item for item in package.items if not item.withdrawn]
    for tank in package.tanks:
        items = tuple(
            item
            for item in live
            if any(word in item.does for word in _WORK)
            and any(ref.name == tank.tank for ref in (*item.where.boundary_of, *item.where.tanks))
        )
        if items and tank.use != "void":
            yield OpenedBoundary("tank", tank.tank, items)
    for opening in package.openings:
        items = tuple(
            item
            for item in live
            if any(word in item.does for word in ("opens hull", "blanks opening", "removes plug"))
            and any(ref.name == opening.opening for ref in item.where.openings)
        )
        if items:
            yield OpenedBoundary("opening", opening.opening, items)


@step_of(HOSED, "tightness")
def hosed_joints(shell_renewal: RenewalPlan, shell_contingent: FoundLater) -> Uses:
    """Find the length of seam and butt to be tested by hose."""
    renewed, contingent = renewal_outputs(shell_renewal)["joint"], found_later_outputs(shell_contingent)["joint"]
    inputs = {
        "renewed": Given(renewed, show(renewed, "run"), "shell.renewal.joint"),
        "contingent": Given(contingent, show(contingent, "centre", more=-1), "shell.contingent.joint"),
    }
    return Uses("joints of renewed shell plate", inputs, Place("vessel/condition.yaml"))
