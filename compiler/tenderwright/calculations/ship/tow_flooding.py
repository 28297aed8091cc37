"""What happens where a closure fails under tow: water into each compartment, and whether somebody is there in time."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import sqrt
from typing import Any

from msgspec import Struct

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.ship.shafts import fitted, tube_of
from tenderwright.calculations.steps.outcome import Absent, Each, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tanks.capacity import METHOD as CAPACITY
from tenderwright.calculations.tanks.sounding import Tank as Space
from tenderwright.calculations.tow.flooding import METHOD as FLOODING
from tenderwright.calculations.uncertainty.judged import METHOD as JUDGED
from tenderwright.calculations.value import Given, given
from tenderwright.calculations.verdict import Limit
from tenderwright.model.particulars import Particulars
from tenderwright.model.tow import Compartment, Tow
from tenderwright.model.vessel import Opening
from tenderwright.quantities.display import show

PERMEABILITY = 0.85
"""Share of a machinery space that water can take, where none is stated (common practice, no source)."""
CALCULATED = 1.0
"""The whole of the moulded space, as the capacity is worked out before its permeability is taken off."""


class Hole(Struct, frozen=True):
    """The largest hole under water in a compartment, were its closure to fail."""

    name: str
    bore: float
    """Of a round hole as large, m."""
    head: float
    """Depth of its centre under the waterline, m."""
    opening: Opening


@step()
def tow_spaces(tow_plan: Tow) -> dict[str, Compartment] | Absent:
    """Give the compartments by name."""
    if not tow_plan.compartments:
        return NotAsked("tow.yaml lists no compartments")
    return {one.compartment: one for one in tow_plan.compartments}


def bounds_of(one: Compartment) -> tuple[float, float]:
    """Give the after and the forward end of a compartment, m forward of AP."""
    aft, forward = sorted((one.from_.x, one.to.x))
    return aft, forward


def within_space(one: Compartment, x: float) -> bool:
    """Tell whether a place along the ship lies in a compartment; a bulkhead belongs to the space before it."""
    aft, forward = bounds_of(one)
    return bool(aft <= x < forward)


def largest_hole(
    one: Compartment, openings: Sequence[Opening], position: FloatingPosition, particulars: Particulars | None
) -> Hole | None:
    """Give the largest opening under water in a compartment; of a stern tube what its shaft leaves open."""
    shafts = {}
    for shaft in fitted(particulars):
        tube = tube_of(shaft, openings)
        if tube is not None and shaft.diameter is not None:
            shafts[tube.opening] = shaft.diameter.si
    holes = []
    for opening in openings:
        head = position.waterline_at(opening.at.x) - opening.height.si
        if opening.bore is None or head <= 0 or not within_space(one, opening.at.x):
            continue
        bore = sqrt(max(opening.bore.si**2 - shafts.get(opening.opening, 0.0) ** 2, 0.0))
        holes.append(Hole(opening.name, bore, head, opening))
    return max(holes, key=lambda hole: hole.bore**2 * sqrt(hole.head), default=None)


@step_of(CAPACITY, "tow.space.{}", each="tow_spaces")
def tow_space(space: Compartment, hull: Hull | None) -> Uses | Absent:
    """Find the volume of a compartment up to the height to which it may fill."""
    if space.volume is not None:
        return NotAsked("its volume is stated")
    if space.top is None:
        return Lacking(f"it needs `top` or `volume` of compartment `{space.compartment}` in tow.yaml")
    if hull is None:
        return Lacking(f"it needs `volume` of compartment `{space.compartment}` in tow.yaml: her form is not known")
    aft, forward = bounds_of(space)
    shape = {
        "hull": {
            "offsets": hull.form,
            "x_aft": aft,
            "x_forward": forward,
            "top": space.top.si,
            "inboard": 0.0,
            "side": "both",
        }
    }
    inputs = {
        "shape": Given(shape, f"{space.from_} to {space.to}, shell to {space.top}; hull {hull.words}", space.here),
        "permeability": Given(CALCULATED, "100 %", "nothing taken off yet"),
    }
    return Uses(space.name, inputs, space.here, of=space.name)


@step_of(FLOODING, "tow.flooding.{}", each="tow_spaces")
def tow_flooding(
    space: Compartment,
    tow_space: Space | None,
    towed: FloatingPosition,
    openings: tuple[Opening, ...],
    particulars: Particulars,
) -> Uses | Absent:
    """Find how fast a compartment fills were its largest opening under water to fail, against its pump."""
    hole = largest_hole(space, openings, towed, particulars)
    if hole is None:
        return NotAsked("no opening under water is listed there")
    if space.volume is not None:
        volume = given(space.volume)
    elif tow_space is not None:
        volume = Given(
            tow_space.capacity, show(tow_space.capacity, "capacity"), f"tow.space.{space.compartment}.capacity"
        )
    else:
        return Lacking(f"it needs `volume` of compartment `{space.compartment}` in tow.yaml, or its `top` and her form")
    share = space.permeability
    inputs = {
        "bore": Given(hole.bore, show(hole.bore, "size"), hole.opening.here),
        "head": Given(hole.head, show(hole.head, "centre"), "condition.tow.draft, condition.tow.trim"),
        "volume": volume,
        "permeability": given(share)
        if share
        else Given(PERMEABILITY, f"{PERMEABILITY:.0%}", "common practice, no source"),
    }
    if space.pump_flow is not None:
        inputs["pump"] = given(space.pump_flow)
    return Uses(f"{space.name}, by {hole.name}", inputs, space.here, of=space.name)


@step_of(JUDGED, "tow.boarding", names={"result": "result", "deciding": "deciding", "use": "use"})
def tow_boarding(
    tow_plan: Tow, tow_spaces: dict[str, Compartment], tow_flooding: Each[Mapping[str, Any]]
) -> Uses | Absent:
    """Judge whether somebody can be aboard before a compartment is full."""
    boarding = tow_plan.boarding_time
    if boarding is None:
        return Lacking("it needs `boarding_time` in tow.yaml: how long until somebody can be aboard")
    limits = []
    for name, found in tow_flooding.items():
        if found["time"] is not None:
            limits.append(Limit(tow_spaces[name].name, "time", boarding.si, found["time"], source="time to fill"))
    if not limits:
        return NotAsked("no compartment fills faster than its pump takes out")
    words = "; ".join(one.name for one in limits)
    return Uses("time to be aboard against time to fill", {"limits": Given(limits, words, boarding.at)}, boarding.at)
