"""The cradle: coupled cars under the keel, for every facility that carries ships on cars."""

from __future__ import annotations

from tenderwright.calculations.cradle.cars import METHOD as CARS
from tenderwright.calculations.cradle.cars import judge
from tenderwright.calculations.cradle.line_load import METHOD as LINE_LOAD
from tenderwright.calculations.cradle.line_load import line_load
from tenderwright.calculations.cradle.train import Car, arrange, cars_to_carry, cars_to_cover
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.facility import Cars, Facility
from tenderwright.model.package import Package
from tenderwright.quantities.quantity import Quantity


def cradle_values(package: Package, results: Results, record: Record) -> None:
    """Keep the line load under the keel, and the cars, their loads and whether they take her, for each facility."""
    particulars, arrival = package.particulars, results.arrival
    if particulars is None or arrival is None:
        keep = record.spoil if "condition.arrival.displacement" in record.failed else record.lack
        for prefix in (f"cradle.{f.facility}" for f in package.facilities if f.cars is not None):
            keep(CARS, prefix, "it needs the condition on arrival")
        return
    straight = particulars.keel.straight
    weight, lcg = record.values["condition.arrival.displacement"], record.values["condition.arrival.lcg"]
    inputs = {
        "weight": given(weight, f"{weight.si / 1000:.1f} t"),
        "lcg": given(lcg, f"{lcg.si:.3f} m"),
        "keel_aft": given(straight.from_),
        "keel_forward": given(straight.to),
    }
    try:
        load = line_load(weight.si, lcg.si, straight.from_.x, straight.to.x)
    except OutOfRange as error:
        record.fail(LINE_LOAD, "keel.line-load", str(error), straight.here)
        return
    outputs = {
        "load_at_keel_aft": load.ordinate(straight.from_.x),
        "load_at_keel_forward": load.ordinate(straight.to.x),
        "peak": load.peak,
        "contact_aft": load.contact_aft,
        "contact_forward": load.contact_forward,
        "lift_off": load.lift_off,
    }
    record.keep(LINE_LOAD, "keel.line-load", "rigid hull on a full line of blocks", inputs, outputs)
    for facility in package.facilities:
        if facility.cars is not None:
            _one_facility(package, facility, facility.cars, inputs, results, record)


def _car(cars: Cars) -> Car:
    def si(quantity: Quantity | None) -> float | None:
        return quantity.si if quantity else None

    return Car(
        length=cars.length.si,
        gap=cars.gap.si,
        capacity=cars.capacity.si,
        line_limit=si(cars.line_limit),
        axles=cars.axles,
        axle_limit=si(cars.axle_limit),
        own_mass=si(cars.own_mass) or 0.0,
        available=cars.number,
        coupled_limit=cars.most_coupled,
    )


def _one_facility(
    package: Package,
    facility: Facility,
    cars: Cars,
    inputs: dict[str, Given],
    results: Results,
    record: Record,
) -> None:
    assert package.particulars is not None
    straight = package.particulars.keel.straight
    car = _car(cars)
    bay = _frame_bay(package)
    words = f"{cars.number} cars of {cars.length}, gap {cars.gap}, {cars.capacity} each"
    given_inputs = inputs | {
        "car": Given(None, words, cars.here),
        "unsupported_limit": Given(bay, f"{bay:.2f} m", "one frame bay beyond the cars: common practice, no source"),
    }
    prefix = f"cradle.{facility.facility}"
    try:
        train = arrange(inputs["weight"].si, inputs["lcg"].si, straight.from_.x, straight.to.x, car, unsupported=bay)
        fit = judge(train, car, bay)
    except OutOfRange as error:
        record.fail(CARS, prefix, str(error), cars.here)
        return
    results.cradles[facility.facility] = fit
    outputs = {
        "fits": fit.fits,
        "deciding": fit.deciding.name,
        "cars_to_cover": float(cars_to_cover(straight.to.x - straight.from_.x, car, bay)),
        "cars_to_carry": float(cars_to_carry(inputs["weight"].si, car)),
        "cars": float(len(train.cars)),
        "train_aft": train.start,
        "train_forward": train.end,
        "coupled_length": train.coupled_length,
        "unsupported_aft": train.unsupported_aft,
        "unsupported_forward": train.unsupported_forward,
        "car_load": [one.load for one in train.cars] if train.load else [],
        "car_peak": [one.peak for one in train.cars] if train.load else [],
        "axle_load": [one.axle_load for one in train.cars if one.axle_load is not None] if train.load else [],
    }
    record.keep(CARS, prefix, facility.name, given_inputs, outputs)


def _frame_bay(package: Package) -> float:
    """Give the greatest frame space of the ship, which limits the keel left beyond the cars."""
    frames = package.frames
    if frames is None or len(frames.distances) < 2:
        return 0.6
    return max(b - a for a, b in zip(frames.distances, frames.distances[1:], strict=False))
