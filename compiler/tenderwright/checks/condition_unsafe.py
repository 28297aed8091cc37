"""The condition on arrival keeps the limits of stability, list and trim that the package itself sets for docking.

Ground: she touches blocks first at one end, and loses stability until she is down (Derrett, Ship Stability for Masters
and Mates, on dry-docking); the limits are the owner's and the naval architect's. 0.1 m of trim is common practice, no
source.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import degrees

from tenderwright.calculations.ship.buoyancy import buoyancy
from tenderwright.calculations.ship.wanted import trim_tolerance
from tenderwright.calculations.verdict import within
from tenderwright.checks.context import Context
from tenderwright.model.lightship import DockingCondition
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "condition-unsafe"
_ASK = "ask your naval architect to judge the docking"


def check(context: Context) -> Iterator[Notice]:
    """Warn where metacentric height, list, or a trim that no tank may mend is outside the limits for docking."""
    lightship = context.package.lightship
    if lightship is None or lightship.docking is None:
        return
    floats = context.found(buoyancy)
    if floats is not None and floats.estimated:
        context.lacks(floats.estimated.why)
        return
    values = {name: context.value(f"condition.arrival.{name}") for name in ("gm-fluid", "list", "trim")}
    found = {name: float(value.si) for name, value in values.items() if value is not None}
    if any(tank.movable for tank in context.package.tanks):
        found.pop("trim", None)  # the movement of liquid that reaches the trim is worked out and printed
    yield from _limits(lightship.docking, trim_tolerance(lightship).si, found)


def _limits(wanted: DockingCondition, tolerance: float, found: dict[str, float]) -> Iterator[Notice]:
    least, most = wanted.least_gm, wanted.most_list
    if least is not None and "gm-fluid" in found and not within(found["gm-fluid"], least.si, at_least=True):
        gm = show(found["gm-fluid"], "metacentric height")
        message = (
            f"she would arrive with a metacentric height of {gm}, free surfaces counted; you ask for {least} or more"
        )
        hint = f"fill slack tanks to the top or take weight off high up, and {_ASK}"
        yield Notice(CODE, least.at, message, hints=(hint,))
    if most is not None and "list" in found and not within(abs(found["list"]), most.si):
        side = "starboard" if found["list"] > 0 else "port"
        message = (
            f"she would arrive with a list of {degrees(abs(found['list'])):.2f} deg to {side}; you allow {most} at most"
        )
        hint = f"move liquid or weight away from {side}, and {_ASK}"
        yield Notice(CODE, most.at, message, hints=(hint,))
    if "trim" in found and not within(abs(found["trim"] - wanted.trim.si), tolerance):
        message = (
            f"she would arrive with a trim of {show(found['trim'], 'trim')} by the stern; you ask for {wanted.trim}"
        )
        hint = f"move liquid or weight along the ship, and {_ASK}"
        yield Notice(CODE, wanted.trim.at, message, hints=(hint,))
