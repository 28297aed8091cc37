"""The cradle: coupled cars under the keel, for every facility that carries ships on cars."""

from __future__ import annotations

from typing import Any

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.cradle.cars import METHOD as CARS
from tenderwright.calculations.cradle.line_load import METHOD as LINE_LOAD
from tenderwright.calculations.cradle.line_load import LineLoad
from tenderwright.calculations.ship.keel import given_straight
from tenderwright.calculations.ship.weight import Weighed
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given
from tenderwright.model.facility import Cars, Facility
from tenderwright.model.particulars import Particulars
from tenderwright.quantities.display import show
from tenderwright.quantities.position import FrameTable

BAY = 0.6
"""Frame space of a ship without frames, m."""
_KEPT = {
    name: name.replace("_", "-")
    for name in (
        *("fits", "deciding", "cars_to_cover", "cars_to_carry", "cars", "train_aft", "train_forward"),
        *("coupled_length", "unsupported_aft", "unsupported_forward", "car_load", "car_peak", "axle_load"),
    )
}


@step_of(LINE_LOAD, "keel.line-load")
def keel_line_load(arrival: FloatingPosition, particulars: Particulars) -> Uses:
    """Find the load per length under the keel on a full line of blocks."""
    inputs = _on_arrival(arrival).given(more=1) | given_straight(particulars)
    return Uses("rigid hull on a full line of blocks", inputs, particulars.keel.straight.here)


@step_of(LINE_LOAD, "keel.docking-line-load")
def docking_line_load(docked_weight: Weighed, particulars: Particulars) -> Uses:
    """Find the same in the docking condition."""
    inputs = docked_weight.given() | given_straight(particulars)
    return Uses("rigid hull on a full line of blocks, as docked", inputs, particulars.keel.straight.here)


@step()
def with_cars(facilities: tuple[Facility, ...]) -> dict[str, Facility]:
    """Give the facilities that carry ships on cars."""
    return {one.facility: one for one in facilities if one.cars is not None}


@step_of(CARS, "cradle.{}", names=_KEPT, each="with_cars")
def cradles(
    facility: Facility,
    arrival: FloatingPosition | Absent,
    docked_weight: Weighed,
    docking_line_load: LineLoad,
    particulars: Particulars,
    frames: FrameTable | None,
) -> Uses:
    """Find the cars under her, their loads, and whether they take her, on arrival; as docked where that is lacking."""
    cars = facility.cars
    assert cars is not None
    bay = _frame_bay(frames)
    words = f"{cars.number} cars of {cars.length}, gap {cars.gap}, {cars.capacity} each"
    weight = docked_weight if isinstance(arrival, Absent) else _on_arrival(arrival)
    inputs = weight.given(more=1) | given_straight(particulars)
    inputs |= {
        "car": Given(_car(cars) | {"source": given_source(facility).si}, words, cars.here),
        "unsupported_limit": Given(
            bay, show(bay, "centre"), "one frame bay beyond the cars: common practice, no source"
        ),
    }
    return Uses(facility.name, inputs, cars.here)


def _on_arrival(arrival: FloatingPosition) -> Weighed:
    return Weighed(arrival.loading, "condition.arrival", "displacement")


def _car(cars: Cars) -> dict[str, Any]:
    figures = {
        "length": cars.length,
        "gap": cars.gap,
        "capacity": cars.capacity,
        "line_limit": cars.line_limit,
        "axle_limit": cars.axle_limit,
        "own_mass": cars.own_mass,
    }
    counts: dict[str, Any] = {"axles": cars.axles, "available": cars.number, "coupled_limit": cars.most_coupled}
    found: dict[str, Any] = {name: figure.si for name, figure in figures.items() if figure is not None}
    return found | {name: count for name, count in counts.items() if count is not None}


def given_source(facility: Facility) -> Given:
    """Give where the limits of a facility come from: its owner's word, and the certificate where there is one."""
    one = facility.certificate
    certificate = f"certificate {one.number} ({one.by})".replace("  ", " ") if one is not None else "no certificate"
    words = f"as its owner gave it; {certificate}"
    return Given(words, words, one.here if one is not None else facility.here)


def _frame_bay(frames: FrameTable | None) -> float:
    """Give the greatest frame space of the ship, which limits the keel left beyond the cars."""
    if frames is None or len(frames.distances) < 2:
        return BAY
    return max(b - a for a, b in zip(frames.distances, frames.distances[1:], strict=False))
