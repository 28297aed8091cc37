"""Whether a train of cars can take a hull: each limit, its demand and margin, and the one that decides."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.cradle.train import Car, Centring, Train, arrange, cars_to_carry, cars_to_cover
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import quantity, record, text
from tenderwright.calculations.verdict import LIMITS, Limit, Verdict, limit_rows, verdict

UNSUPPORTED = "common practice, no source"
"""Of what may be left of the keel beyond the cars, usually one frame bay."""


def judge(train: Train, car: Car, unsupported_limit: float | None = None) -> Verdict:
    """Judge a train against the limits of its cars and of the keel beyond them.

    Formula: demand <= limit for each; axle load = (load + own mass)/axles, for axles that share equally.
    The local line load is the hull's, raised by (c + g)/c where the keel spans gaps.
    Symbols: unsupported_limit in m, straight keel allowed beyond the cars at each end; None if not known.
    Source: derived; limiting the unsupported keel to one frame bay is common practice, no source.
    """
    limits = _limits(train, car, unsupported_limit)
    found = verdict(limits)
    # A hull that cannot stand has no loads to judge.
    return found if train.load is not None else replace(found, governs=limits[0])


def _limits(train: Train, car: Car, unsupported_limit: float | None) -> tuple[Limit, ...]:
    """Set each demand of the train beside what is allowed."""
    number = float(len(train.cars))
    stands = train.load is not None
    middle = 0.5 * (train.supported_aft + train.supported_forward)
    half = 0.5 * (train.supported_forward - train.supported_aft)
    axle = max((one.axle_load for one in train.cars if one.axle_load is not None), default=None)
    load = max(c.load for c in train.cars) if stands else None
    peak = max(c.peak for c in train.cars) if stands else None
    return (
        Limit(
            "centre of gravity from the middle of the supported keel",
            "length",
            abs(train.lcg - middle),
            half,
            strict=True,
            source="beyond it she tips over the end cars (derived)",
        ),
        Limit("cars available", "each", number, _count(car.available), source=car.source),
        Limit("cars coupled", "each", number, _count(car.coupled_limit), source=car.source),
        Limit("load on a car", "mass", load, car.capacity, source=car.source),
        Limit("line load", "line_load", peak, car.line_limit, source=car.source),
        Limit("load on an axle", "mass", axle if stands else None, car.axle_limit, source=car.source),
        Limit("unsupported keel aft", "length", train.unsupported_aft, unsupported_limit, source=UNSUPPORTED),
        Limit("unsupported keel forward", "length", train.unsupported_forward, unsupported_limit, source=UNSUPPORTED),
    )


def _count(number: int | None) -> float | None:
    return None if number is None else float(number)


class Cradle(Struct, frozen=True):
    """The cars under a hull."""

    train: Train
    verdict: Verdict
    cars_to_cover: int
    """Cars that reach under the keel."""
    cars_to_carry: int
    """Cars whose capacities reach the weight, at least."""


def cradle(
    weight: float,
    lcg: float,
    keel_aft: float,
    keel_forward: float,
    car: Mapping[str, Any],
    centring: Centring = "keel",
    unsupported_limit: float | None = None,
    number: int | None = None,
) -> Cradle:
    """Arrange the cars and judge them; see `arrange` and `judge`. Raises OutOfRange."""
    one, free = Car(**car), unsupported_limit or 0.0
    train = arrange(weight, lcg, keel_aft, keel_forward, one, centring, free, number)
    cover = cars_to_cover(keel_forward - keel_aft, one, free)
    return Cradle(train, judge(train, one, unsupported_limit), cover, cars_to_carry(weight, one))


def outputs_of(found: Cradle) -> Mapping[str, Any]:
    """Give the cradle as outputs."""
    fit, train = found.verdict, found.train
    return {
        "fits": fit.met,
        "deciding": fit.governs.name,
        "cars_to_cover": float(found.cars_to_cover),
        "cars_to_carry": float(found.cars_to_carry),
        "cars": float(len(train.cars)),
        "train_aft": train.start,
        "train_forward": train.end,
        "coupled_length": train.coupled_length,
        "unsupported_aft": train.unsupported_aft,
        "unsupported_forward": train.unsupported_forward,
        "lift_off": None if train.load is None else train.load.lift_off,
        "car_aft": [c.start for c in train.cars],
        "car_load": [c.load for c in train.cars] if train.load is not None else [],
        "car_peak": [c.peak for c in train.cars] if train.load is not None else [],
        "axle_load": [c.axle_load for c in train.cars if c.axle_load is not None] if train.load else [],
        "limits": limit_rows(fit.limits),
    }


_CAR = record(
    "One rail car; leave out a limit that is not known.",
    ("length", "gap"),
    length=quantity("length", "Length of a car that carries keel blocks."),
    gap=quantity("length", "Between coupled cars."),
    capacity=quantity("mass", "Load that one car may carry."),
    line_limit=quantity("line_load", "Load per length that a car may carry on its blocks."),
    axles={"type": "integer", "minimum": 1, "description": "Axles of one car, sharing equally."},
    axle_limit=quantity("mass", "Load on one axle, the car's own mass included."),
    own_mass=quantity("mass", "Mass of one car with its blocks."),
    available={"type": "integer", "minimum": 0, "description": "Cars that the facility has."},
    coupled_limit={"type": "integer", "minimum": 0, "description": "Most cars that may be coupled together."},
    source=text("Where these figures come from, such as the certificate."),
)

METHOD = Method(
    name="cradle.cars",
    title="Rail cars under a hull: how many, where, the load on each, and whether they take her",
    formula="n = ceil((L_k − 2u + g)/(c + g)), or one more where that relieves the cars; "
    "car load = ∫q over its tributary length; local line load = q(c + g)/c; axle load = (car load + own mass)/axles",
    source=Citation("Statics of a rigid hull on a train of cars", standing="derived"),
    valid="rigid hull on a straight keel in one line of blocks, cars level and coupled, axles that share equally",
    inputs={
        "weight": quantity("mass", "Weight on the cars."),
        "lcg": quantity("length", "Centre of gravity, forward of the after perpendicular."),
        "keel_aft": quantity("length", "After end of the straight keel, forward of the after perpendicular."),
        "keel_forward": quantity("length", "Forward end of the straight keel, forward of the after perpendicular."),
        "car": _CAR,
        "centring": {
            "type": "string",
            "enum": ["keel", "centre of gravity"],
            "description": "What the middle of the train is put under; the keel unless said.",
        },
        "unsupported_limit": quantity("length", "Straight keel allowed beyond the cars at each end."),
        "number": {
            "type": "integer",
            "minimum": 1,
            "description": "Cars to use, in place of the number found.",
        },
    },
    outputs=(
        Symbol("fits", "yes, no, or not known", "truth", ""),
        Symbol("deciding", "the limit that decides", "text", ""),
        Symbol("cars_to_cover", "cars that reach under the keel", "each", "each"),
        Symbol("cars_to_carry", "cars whose capacities reach the weight, at least", "each", "each"),
        Symbol("cars", "number of cars in the train", "each", "each"),
        Symbol("train_aft", "after end of the train", "length", "m"),
        Symbol("train_forward", "forward end of the train", "length", "m"),
        Symbol("coupled_length", "length over the coupled cars", "length", "m"),
        Symbol("unsupported_aft", "straight keel beyond the cars, aft", "length", "m"),
        Symbol("unsupported_forward", "straight keel beyond the cars, forward", "length", "m"),
        Symbol("lift_off", "length of supported keel that carries nothing", "length", "m"),
        Symbol("car_aft", "after end of each car, from aft", "length", "m"),
        Symbol("car_load", "load on each car, from aft", "mass", "t"),
        Symbol("car_peak", "greatest line load on each car, from aft", "line_load", "t/m"),
        Symbol("axle_load", "load on an axle of each car, from aft", "mass", "t"),
        LIMITS,
    ),
    kernel=cradle,
    figures=outputs_of,
    example={
        "weight": "2000 t",
        "lcg": "47 m",
        "keel_aft": "8 m",
        "keel_forward": "83 m",
        "car": {
            "length": "12 m",
            "gap": "1 m",
            "capacity": "450 t",
            "line_limit": "45 t/m",
            "axles": 8,
            "axle_limit": "62 t",
            "own_mass": "25 t",
            "available": 7,
            "coupled_limit": 7,
        },
        "unsupported_limit": "0.6 m",
    },
    optional=frozenset({"centring", "unsupported_limit", "number"}),
    cautions=(
        "a plan to discuss, not a lifting plan: the facility's engineer and the dockmaster decide",
        "the load of an overhanging stern, of track out of level and of one car yielding comes on top",
        "leaving no more than one frame bay of keel unsupported is common practice, no source",
    ),
)
