"""The train: how many coupled cars the keel needs, where they stand, and the load on each."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Literal

from msgspec import Struct

from tenderwright.calculations.cradle.line_load import LineLoad, line_load
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.verdict import within
from tenderwright.quantities.display import plainly

Centring = Literal["keel", "centre of gravity"]

MOST_CARS = 500
"""More than any cradle has."""
_ROUND_OFF = 1e-9


class Car(Struct, frozen=True):
    """One rail car with keel blocks, and what it may carry; None where a limit is not known.

    Lengths in m, masses in kg, line loads in kg/m. The capacity and the line limit are for the load put on
    the car; the axle limit is for that load and the car's own mass together.
    """

    length: float
    gap: float
    """Between one car and the next when coupled."""
    capacity: float | None = None
    line_limit: float | None = None
    axles: int | None = None
    axle_limit: float | None = None
    own_mass: float = 0.0
    available: int | None = None
    coupled_limit: int | None = None
    """The most cars that may be coupled into one train."""
    source: str = ""
    """Where these figures come from."""

    def __post_init__(self) -> None:
        if not (self.length > 0.0 and math.isfinite(self.length)):
            raise OutOfRange(f"a car must have a length, got {plainly(self.length, 'centre')}")
        if not (self.gap >= 0.0 and math.isfinite(self.gap)):
            raise OutOfRange(f"the gap between cars cannot be less than nothing, got {plainly(self.gap, 'centre')}")
        if self.axles is not None and self.axles < 1:
            raise OutOfRange(f"a car must have at least one axle, got {self.axles}")
        if self.own_mass < 0.0:
            raise OutOfRange(
                f"the mass of a car cannot be less than nothing, got {plainly(self.own_mass, 'small part')}"
            )
        for name in ("capacity", "line_limit", "axle_limit", "available", "coupled_limit"):
            value = getattr(self, name)
            if value is not None and not value >= 0:
                raise OutOfRange(f"the {name.replace('_', ' ')} of a car cannot be less than nothing")

    @property
    def pitch(self) -> float:
        """Give the distance from one car to the next, m."""
        return self.length + self.gap


class CarLoad(Struct, frozen=True):
    """One car of the train and what it carries; x in m, load in kg, peak in kg/m, axle load in kg."""

    start: float
    end: float
    contact: float
    """Length of keel resting on this car, m."""
    load: float
    peak: float
    axle_load: float | None


class Train(Struct, frozen=True):
    """The coupled cars under a keel, counted from aft, and the line load over the keel that they hold up."""

    keel_aft: float
    keel_forward: float
    lcg: float
    supported_aft: float
    supported_forward: float
    load: LineLoad | None
    """None where the centre of gravity is not over the cars, so that the hull cannot stand."""
    cars: tuple[CarLoad, ...]

    @property
    def start(self) -> float:
        """Give the after end of the train, m."""
        return self.cars[0].start

    @property
    def end(self) -> float:
        """Give the forward end of the train, m."""
        return self.cars[-1].end

    @property
    def coupled_length(self) -> float:
        """Give the length of the train over its coupled cars, m."""
        return self.end - self.start

    @property
    def unsupported_aft(self) -> float:
        """Give the straight keel beyond the last support aft, m."""
        return self.supported_aft - self.keel_aft

    @property
    def unsupported_forward(self) -> float:
        """Give the straight keel beyond the last support forward, m."""
        return self.keel_forward - self.supported_forward


def cars_to_cover(keel_length: float, car: Car, unsupported: float = 0.0) -> int:
    """Count the cars that reach under the keel with no more than `unsupported` metres free at each end.

    Formula: n = max(1, ceil((L_k - 2u + g)/(c + g))), since n cars and n - 1 gaps are n(c + g) - g long.
    Source: derived.
    """
    covered = keel_length - 2.0 * unsupported
    return max(1, math.ceil((covered + car.gap) / car.pitch - _ROUND_OFF))


def cars_to_carry(weight: float, car: Car) -> int:
    """Count the cars whose capacities together reach the weight, ceil(W/Q); 1 if no capacity is known.

    Source: derived; it is a least number, since the cars do not share the weight equally.
    """
    if car.capacity is None or car.capacity <= 0.0:
        return 1
    return max(1, math.ceil(weight / car.capacity - _ROUND_OFF))


def arrange(
    weight: float,
    lcg: float,
    keel_aft: float,
    keel_forward: float,
    car: Car,
    centring: Centring = "keel",
    unsupported: float = 0.0,
    number: int | None = None,
) -> Train:
    """Arrange coupled cars under a straight keel and find what each carries.

    Without `number`, the number is that of `cars_to_cover`, or one more where only that keeps every car
    within its capacity. A further two would change nothing: they would stand beyond the keel and leave every
    joint where it was. The middle of the train is put under the middle of the keel (`centring="keel"`) or
    under the centre of gravity. The line load is that of the hull on the keel held up, from the first to the
    last contact with a car; each car takes its integral from mid-gap to mid-gap, and the local load is raised
    by (c + g)/c. x in m forward of AP, weight in kg, unsupported in m.

    Source: derived. Raises OutOfRange where the keel or the weight is nothing, or no car is under the keel.
    """
    if not all(map(math.isfinite, (weight, lcg, keel_aft, keel_forward))):
        raise OutOfRange("weight, centre of gravity and keel ends must be finite numbers")
    if weight <= 0.0:
        raise OutOfRange(f"the weight must be more than nothing, got {plainly(weight, 'small part')}")
    if keel_forward <= keel_aft:
        raise OutOfRange(
            f"the keel must end forward of where it starts, got {plainly(keel_aft, 'centre')} to "
            f"{plainly(keel_forward, 'centre')}"
        )
    if unsupported < 0.0:
        raise OutOfRange(
            f"the unsupported keel allowed cannot be less than nothing, got {plainly(unsupported, 'centre')}"
        )
    middle = 0.5 * (keel_aft + keel_forward) if centring == "keel" else lcg
    if number is not None:
        return _train(weight, lcg, keel_aft, keel_forward, car, middle, number)
    least = cars_to_cover(keel_forward - keel_aft, car, unsupported)
    first = _train(weight, lcg, keel_aft, keel_forward, car, middle, least)
    if _carries(first, car):
        return first
    second = _train(weight, lcg, keel_aft, keel_forward, car, middle, least + 1)
    return second if _carries(second, car) else first


def _carries(train: Train, car: Car) -> bool:
    """Tell whether every car is within its capacity, so far as that is known."""
    if train.load is None:
        return False
    return car.capacity is None or all(within(loaded.load, car.capacity) for loaded in train.cars)


def _train(
    weight: float, lcg: float, keel_aft: float, keel_forward: float, car: Car, middle: float, number: int
) -> Train:
    """Place `number` cars about `middle` and share the line load among those that the keel rests on."""
    if not 1 <= number <= MOST_CARS:
        raise OutOfRange(f"a train has from 1 to {MOST_CARS} cars, got {number}")
    start = middle - 0.5 * (number * car.pitch - car.gap)
    spans = [(start + i * car.pitch, start + i * car.pitch + car.length) for i in range(number)]
    contacts = [(max(a, keel_aft), min(b, keel_forward)) for a, b in spans]
    bearing = [i for i, (low, high) in enumerate(contacts) if high - low > _ROUND_OFF]
    if not bearing:
        raise OutOfRange("no car stands under the straight keel")
    aft, forward = contacts[bearing[0]][0], contacts[bearing[-1]][1]
    load = line_load(weight, lcg, aft, forward) if aft < lcg < forward else None
    cars: list[CarLoad] = []
    tributaries = dict(_tributaries(contacts, bearing))
    raised = car.pitch / car.length if len(bearing) > 1 else 1.0
    for i, (a, b) in enumerate(spans):
        held = peak = 0.0
        if load is not None and i in tributaries:
            held = load.between(*tributaries[i])
            peak = load.peak_between(*tributaries[i]) * raised
        axle = None if car.axles is None else (held + car.own_mass) / car.axles
        contact = contacts[i][1] - contacts[i][0] if i in tributaries else 0.0
        cars.append(CarLoad(start=a, end=b, contact=contact, load=held, peak=peak, axle_load=axle))
    return Train(keel_aft, keel_forward, lcg, aft, forward, load, tuple(cars))


def _tributaries(contacts: list[tuple[float, float]], bearing: list[int]) -> Iterator[tuple[int, tuple[float, float]]]:
    """Divide the supported keel among the bearing cars at the middle of each gap."""
    low = contacts[bearing[0]][0]
    for i in bearing:
        last = i == bearing[-1]
        high = contacts[i][1] if last else 0.5 * (contacts[i][1] + contacts[i + 1][0])
        yield i, (low, high)
        low = high
