"""Loads of a ship on a shiplift: what each hoist pair carries, and the load per length over any bay."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike

from tenderwright.calculations.blocks.weight_curve import Segment
from tenderwright.calculations.cradle.line_load import line_load
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity, text
from tenderwright.calculations.verdict import VERDICT_SYMBOLS, Limit, Verdict, verdict, verdict_outputs

MOST_PAIRS = 200
"""More than any shiplift has."""
STEPS_IN_A_BAY = 40
"""Positions of the ship on the platform that are tried within one bay."""
NEAR = 1e-9


class Platform(Struct, frozen=True):
    """A platform hung from hoist pairs at even spacing; lengths in m, masses in kg."""

    pairs: int
    spacing: float
    pair_capacity: float
    bay_mass: float | None = None
    """Dead weight of the platform that belongs to one pair; None where not known."""
    nominal_capacity: float | None = None
    """As certified for a ship."""

    def __post_init__(self) -> None:
        """Check the figures. Raises OutOfRange."""
        if not 2 <= self.pairs <= MOST_PAIRS or min(self.spacing, self.pair_capacity) <= 0:
            raise OutOfRange(
                f"a platform has 2 to {MOST_PAIRS} hoist pairs, and spacing and capacity more than nothing"
            )
        if self.bay_mass is not None and not 0 <= self.bay_mass < self.pair_capacity:
            raise OutOfRange("the platform's own weight on a pair must be less than the pair's capacity")

    @property
    def length(self) -> float:
        """Give the length that the pairs hold up, half a bay beyond the end ones, m."""
        return self.pairs * self.spacing

    @property
    def distributed_load(self) -> float | None:
        """Give MDL = (capacity of a pair - weight of its bay)/spacing, kg/m; None where that weight is not known."""
        return None if self.bay_mass is None else (self.pair_capacity - self.bay_mass) / self.spacing


class Lifted(Struct, frozen=True, eq=False):
    """A ship on the platform."""

    first_pair: float
    """Aftermost pair, m forward of AP."""
    reactions: Floats
    """Of each pair from aft, kg, the platform included where its weight is known."""
    greatest_average: float
    """Greatest load per length averaged over a bay anywhere, kg/m."""
    beyond: float
    """Load that stands beyond the platform, kg."""


def lifting_capacity(distributed_load: float, effective_length: float) -> float:
    """Give MLC = MDL x greatest effective docking length, kg: a limit in theory, not a working capacity.

    Source: Lloyd's Register, Code for Lifting Appliances in a Marine Environment, July 2022, Ch 5 s.2.1.1.
    """
    return distributed_load * effective_length


def carried_up_to(loads: Sequence[Segment], x: ArrayLike) -> Floats:
    """Give the load aft of each x, kg, from stretches of linear load."""
    places = np.asarray(x, dtype=np.float64)
    total = np.zeros(places.shape)
    for one in loads:
        span = one.forward - one.aft
        u = np.clip(places - one.aft, 0.0, span)
        total += u * (one.load_aft + 0.5 * (one.load_forward - one.load_aft) * u / span)
    return total


def greatest_average(loads: Sequence[Segment], spacing: float) -> float:
    """Find the greatest load over any length of one bay, by that length, kg/m.

    Formula: max over x of (1/s) integral of q from x - s/2 to x + s/2. Symbols: s [m].
    Source: Lloyd's Register, Code for Lifting Appliances, Ch 5 s.2.1.1 (MDL); search derived.
    """
    ends = np.array([x for one in loads for x in (one.aft, one.forward)])
    places = np.concatenate([ends, ends - spacing, np.linspace(ends.min() - spacing, ends.max(), 2001)])
    return float((carried_up_to(loads, places + spacing) - carried_up_to(loads, places)).max() / spacing)


def lift(platform: Platform, loads: Sequence[Segment], first_pair: float | None = None) -> Lifted:
    """Find what each hoist pair carries.

    Formula: the load from mid-bay to mid-bay about the pair, with the platform's own. Without a place for the first
        pair, that which makes the greatest reaction least, searched over the places that bear the whole load.
    Symbols: loads, stretches of ship, cradle and blocks [kg/m].
    Source: statics, platform articulated at the pairs (derived). Raises OutOfRange.
    """
    if not loads or any(one.forward <= one.aft for one in loads):
        raise OutOfRange("there must be loads, each ending forward of where it starts")
    average = greatest_average(loads, platform.spacing)
    at = _best_place(platform, loads) if first_pair is None else first_pair
    own = platform.bay_mass or 0.0
    reactions = _pair_loads(platform, loads, at)
    beyond = sum(one.total for one in loads) - float(reactions.sum())
    return Lifted(at, reactions + own, average, beyond if beyond > NEAR * float(reactions.sum()) else 0.0)


def _pair_loads(platform: Platform, loads: Sequence[Segment], first_pair: float) -> Floats:
    edges = first_pair + platform.spacing * (np.arange(platform.pairs + 1) - 0.5)
    found: Floats = np.diff(carried_up_to(loads, edges))
    return found


def _best_place(platform: Platform, loads: Sequence[Segment]) -> float:
    aft, forward = min(one.aft for one in loads), max(one.forward for one in loads)
    low, high = forward - (platform.pairs - 0.5) * platform.spacing, aft + 0.5 * platform.spacing
    if high <= low:
        return 0.5 * (low + high)
    count = max(2, int((high - low) / platform.spacing * STEPS_IN_A_BAY) + 1)
    places = np.linspace(low, high, count)
    # Of places that load the pairs alike, that nearest the middle.
    worst = [(round(float(_pair_loads(platform, loads, x).max()), 3), abs(x - 0.5 * (low + high))) for x in places]
    return float(places[min(range(count), key=lambda i: worst[i])])


CODE = "Lloyd's Register, Code for Lifting Appliances in a Marine Environment, July 2022"
MDL_SOURCE = Citation(CODE, "Ch 5 s.2.1.1")


def shiplift_limits(platform: Platform, lifted: Lifted, load: float, source: str = "") -> tuple[Limit, ...]:
    """Set the loads beside MDL, the pairs' capacity, the certified capacity and MLC; `load` with cradle and blocks, kg.

    `source` says where the figures of the hoists come from.
    Source: Lloyd's Register, Code for Lifting Appliances in a Marine Environment, July 2022, Ch 5 s.2.1.1.
    """
    mdl = platform.distributed_load
    most = None if platform.bay_mass is None else float(lifted.reactions.max())
    by_rule = f"{MDL_SOURCE}; pairs and bay: {source}" if source else str(MDL_SOURCE)
    carried = None if mdl is None else lifting_capacity(mdl, platform.length)
    return (
        Limit("line load averaged over a hoist bay", "line_load", lifted.greatest_average, mdl, source=by_rule),
        Limit("load on a hoist pair", "mass", most, platform.pair_capacity, source=source),
        Limit("load beyond the platform", "mass", lifted.beyond, 0.0, source="nothing bears there (derived)"),
        Limit("lift with cradle", "mass", load, carried, source=by_rule),
    )


class OnPlatform(Struct, frozen=True):
    """A ship on a platform, judged."""

    platform: Platform
    lifted: Lifted
    limits: tuple[Limit, ...]
    verdict: Verdict


def _kernel(
    pairs: int,
    spacing: float,
    pair_capacity: float,
    weight: float,
    lcg: float,
    keel_aft: float,
    keel_forward: float,
    bay_mass: float | None = None,
    cradle_line: float = 0.0,
    cradle_aft: float | None = None,
    cradle_forward: float | None = None,
    first_pair: float | None = None,
    source: str = "",
) -> OnPlatform:
    platform = Platform(pairs, spacing, pair_capacity, bay_mass)
    q = line_load(weight, lcg, keel_aft, keel_forward)
    loads = [Segment(q.contact_aft, q.contact_forward, q.load_aft, q.load_forward)]
    if cradle_line > 0:
        aft = keel_aft if cradle_aft is None else cradle_aft
        forward = keel_forward if cradle_forward is None else cradle_forward
        loads.append(Segment(aft, forward, cradle_line, cradle_line))
    lifted = lift(platform, loads, first_pair)
    limits = shiplift_limits(platform, lifted, sum(one.total for one in loads), source)
    return OnPlatform(platform, lifted, limits, verdict(limits))


def outputs_of(found: OnPlatform) -> Mapping[str, Any]:
    """Give the ship on the platform as outputs."""
    platform, lifted, mdl = found.platform, found.lifted, found.platform.distributed_load
    return {
        **verdict_outputs(found.verdict),
        "distributed_load": mdl,
        "lifting_capacity": None if mdl is None else lifting_capacity(mdl, platform.length),
        "greatest_average": lifted.greatest_average,
        "first_pair": lifted.first_pair,
        "reactions": lifted.reactions.tolist(),
    }


METHOD = Method(
    name="facility.shiplift",
    title="Hoist-pair loads and line load on a shiplift",
    formula="MDL = (pair capacity − bay)/spacing; MLC = MDL·L; pair load = ∫q over bay + bay; mean q over a bay ≤ MDL",
    source=Citation(
        CODE,
        "Ch 5 s.2.1.1; pair loads derived",
    ),
    valid="platform articulated at the pairs, rigid hull on a straight keel; no dynamic load",
    inputs={
        "pairs": {"type": "integer", "minimum": 2, "description": "Hoist pairs."},
        "spacing": quantity("length", "From pair to pair."),
        "pair_capacity": quantity("mass", "Capacity of one pair."),
        "weight": quantity("mass", "Weight of the ship."),
        "lcg": quantity("length", "Centre of gravity, forward of AP."),
        "keel_aft": quantity("length", "After end of the keel on the blocks, forward of AP."),
        "keel_forward": quantity("length", "Fore end of the keel on the blocks, forward of AP."),
        "bay_mass": quantity("mass", "Platform's own weight on one pair."),
        "cradle_line": quantity("line_load", "Cradle, cars and blocks under the keel."),
        "cradle_aft": quantity("length", "After end of the cradle, forward of AP; of the keel if left out.", "0 m"),
        "cradle_forward": quantity("length", "Fore end of the cradle; of the keel where left out.", "44 m"),
        "first_pair": quantity("length", "Aftermost pair, forward of AP; the best place where left out.", "-10 m"),
        "source": text("Where the figures of the hoists come from, such as the certificate."),
    },
    outputs=(
        *VERDICT_SYMBOLS,
        Symbol("distributed_load", "maximum distributed load MDL", "line_load", "t/m"),
        Symbol("lifting_capacity", "maximum lifting capacity MLC, in theory", "mass", "t"),
        Symbol("greatest_average", "greatest line load averaged over a bay", "line_load", "t/m"),
        Symbol("first_pair", "aftermost pair, forward of AP", "length", "m"),
        Symbol("reactions", "load on each pair from aft", "mass", "t"),
    ),
    kernel=_kernel,
    figures=outputs_of,
    example={
        "pairs": 11,
        "spacing": "7 m",
        "pair_capacity": "280 t",
        "weight": "600 t",
        "lcg": "22.5 m",
        "keel_aft": "1 m",
        "keel_forward": "42.6 m",
        "bay_mass": "46 t",
        "cradle_line": "2.2 t/m",
    },
    optional=frozenset({"bay_mass", "cradle_line", "cradle_aft", "cradle_forward", "first_pair", "source"}),
    cautions=(
        "MDL may be stated with or without cradle, trestles and blocks: ask which",
        "MLC is a figure of theory; the certificate states the capacity for a ship",
    ),
)
