"""A ship on keel and side blocks under wind or earthquake: side-block loads, tipping and sliding."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.blocks.plane import on_springs
from tenderwright.calculations.blocks.pressure import contact_pressure, judge_pressure
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import GRAVITY, listed, number, quantity, record, text
from tenderwright.calculations.verdict import VERDICT_SYMBOLS, Limit, Verdict, verdict, verdict_outputs


class SideBlock(Struct, frozen=True):
    """A side block: off the centreline [m, to port], stiffness [N/m] and what it carries in calm [kg]."""

    y: float
    stiffness: float
    preload: float
    cap: float | None = None
    """Area in contact with the hull, m2; None where not known."""


class Shared(Struct, frozen=True):
    """Loads under a moment to one side, kg."""

    side_blocks: tuple[float, ...]
    """In their order; 0 where the hull has lifted off."""
    keel: float
    lifted: tuple[int, ...]


def overturning_moment(
    weight: float, kg: float, wind: float, wind_height: float, lateral: float, combine: bool = False
) -> tuple[float, float, float]:
    """Give the moments of wind and of earthquake about the block tops, and the one that governs, N m.

    Formula: wind F z_w; earthquake a_h W g KG; the greater, or the sum with `combine`.
    Symbols: W [kg]; KG and z_w above the tops of the keel blocks [m]; F [N]; a_h lateral coefficient [-].
    Source: statics (derived); the two are added only where the code in force says so. Raises OutOfRange.
    """
    if weight <= 0 or min(kg, wind, wind_height, lateral) < 0:
        raise OutOfRange("the weight must be more than nothing, and heights, wind and coefficient not less")
    by_wind, by_earthquake = wind * wind_height, lateral * weight * GRAVITY * kg
    return by_wind, by_earthquake, by_wind + by_earthquake if combine else max(by_wind, by_earthquake)


def share_moment(
    weight: float,
    moment: float,
    blocks: Sequence[SideBlock],
    keel_stiffness: float,
    keel_width: float = 0.0,
) -> Shared:
    """Share a moment between side blocks and keel line, all elastic, dropping blocks that would pull.

    Formula: R_i = R0_i + k_i (w + phi b_i) >= 0, sum R = W, sum R b + k_keel B^2/12 phi = M; while all bear this gives
        R0 +/- M k b/K_phi, K_phi = sum(k b^2) + k_keel B^2/12.
    Symbols: W [kg]; M [N m], positive loads the port side; keel line: k_keel [N/m] in all, B its width in contact [m].
    Source: statics of elastic supports (derived). Raises OutOfRange where she would go over.
    """
    carried = sum(b.preload for b in blocks)
    if not blocks or min(b.stiffness for b in blocks) <= 0 or keel_stiffness <= 0 or keel_width < 0:
        raise OutOfRange("she needs side blocks, and every stiffness must be more than nothing")
    if min(b.preload for b in blocks) < 0 or carried > weight:
        raise OutOfRange("what the side blocks carry must be neither negative nor more than her weight")
    at = np.array([0.0] + [b.y for b in blocks])
    k = np.array([keel_stiffness] + [b.stiffness for b in blocks])
    preload = np.array([weight - carried] + [b.preload for b in blocks])
    rocking = np.zeros((at.size, 1))
    rocking[0, 0] = keel_stiffness * keel_width**2 / 12
    found = on_springs(weight, (moment / (weight * GRAVITY),), at, k / GRAVITY, preload, rocking / GRAVITY)
    sides = found.reaction[1:]
    return Shared(tuple(sides.tolist()), float(found.reaction[0]), tuple(np.flatnonzero(~found.bears[1:]).tolist()))


TIPPING = "overturning about the outer side blocks"


def rigid_limit(weight: float, moment: float, outer: float, factor: float = 1.0) -> Limit:
    """Set the moment [N m] beside W b/SF, both as kg m: a rigid ship tipping about her outer side blocks at b [m].

    Source: statics (derived); the factor SF is an input. Raises OutOfRange.
    """
    if weight <= 0 or outer <= 0 or factor <= 0:
        raise OutOfRange("weight, breadth of the side blocks and factor must be more than nothing")
    most = weight * outer / factor
    return Limit(TIPPING, "moment", moment / GRAVITY, most, source="a rigid ship about the outer blocks (derived)")


def sliding_limit(weight: float, force: float, friction: float, source: str = "") -> Limit:
    """Set the lateral force beside mu W g, N; the coefficient of friction mu is an input. Raises OutOfRange."""
    if weight <= 0 or force < 0 or friction < 0:
        raise OutOfRange("the weight must be more than nothing, and force and friction not less")
    return Limit("sliding on the blocks", "force", force, friction * weight * GRAVITY, source=source)


class Effect(Struct, frozen=True):
    """What wind or earthquake does by itself: its force [N], its moment about the block tops [N m], and the loads."""

    force: float
    moment: float
    shared: Shared


class Overturning(Struct, frozen=True):
    """How she stands against wind and earthquake."""

    blocks: tuple[SideBlock, ...]
    wind: Effect | None
    """None where no wind is given."""
    earthquake: Effect | None
    governing: Effect
    tipping: Limit
    sliding: Limit | None
    """None without a coefficient of friction."""
    crushing: Limit | None
    """Of the side block that bears hardest by either effect; None where no cap is known."""
    hull: Limit
    """Shell and frame over the side block that carries most by either effect."""
    coefficient_source: str

    @property
    def limits(self) -> tuple[Limit, ...]:
        """Give the limits that are judged."""
        return tuple(one for one in (self.crushing, self.hull, self.tipping, self.sliding) if one is not None)

    @property
    def verdict(self) -> Verdict:
        """Judge them all."""
        return verdict(self.limits)

    def lee(self, effect: Effect) -> list[float]:
        """Give the loads of the blocks on the side that the moment loads, in their order, kg."""
        return [load for b, load in zip(self.blocks, effect.shared.side_blocks, strict=True) if b.y > 0]


def overturning(
    weight: float,
    kg: float,
    blocks: Sequence[Mapping[str, float]],
    coefficient_source: str,
    keel_modulus: float | None = None,
    keel_length: float | None = None,
    keel_stiffness: float | None = None,
    keel_width: float = 0.0,
    wind: float | None = None,
    wind_height: float = 0.0,
    lateral: float | None = None,
    combine: bool = False,
    factor: float = 1.0,
    friction: float | None = None,
    allowable: float | None = None,
    allowable_source: str = "",
    hull_limit: float | None = None,
    hull_limit_source: str = "",
) -> Overturning:
    """Set her on keel and side blocks against wind and earthquake, and hold the lee side against each limit.

    Symbols: allowable pressure of the caps [Pa]; hull_limit, what shell and frame take at a side block [kg].
    Raises OutOfRange.
    """
    for figure, source in ((allowable, allowable_source), (hull_limit, hull_limit_source)):
        if (figure is None) != (not source.strip()):
            raise OutOfRange("an allowable needs its source, and a source its allowable")
    keel = _keel_stiffness(keel_modulus, keel_length, keel_stiffness)
    springs = [SideBlock(b["y"], _stiffness(b), b.get("preload", 0.0), b.get("cap")) for b in blocks]
    by_wind, by_quake, moment = overturning_moment(weight, kg, wind or 0.0, wind_height, lateral or 0.0, combine)

    def effect(force: float, moment: float) -> Effect:
        return Effect(force, moment, share_moment(weight, moment, springs, keel, keel_width))

    quake = (lateral or 0.0) * weight * GRAVITY
    force = (wind or 0.0) + quake if combine else max(wind or 0.0, quake)
    by_each = [effect(force, moment), *([effect(wind, by_wind)] if wind is not None else [])]
    loads = [max(one) for one in zip(*(each.shared.side_blocks for each in by_each), strict=True)]
    pressures = [
        contact_pressure(load, b.cap, 1.0, 1.0) for load, b in zip(loads, springs, strict=True) if b.cap is not None
    ]
    least_outer = min(max((b.y for b in springs), default=0.0), max((-b.y for b in springs), default=0.0))
    return Overturning(
        tuple(springs),
        None if wind is None else effect(wind, by_wind),
        None if lateral is None else effect(quake, by_quake),
        effect(force, moment),
        rigid_limit(weight, moment, least_outer, factor),
        None if friction is None else sliding_limit(weight, force, friction, coefficient_source),
        judge_pressure("crushing of the lee side block", max(pressures), allowable, allowable_source)
        if pressures
        else None,
        Limit("shell and frame at the lee side block", "mass", max(loads), hull_limit, source=hull_limit_source),
        coefficient_source,
    )


def _keel_stiffness(modulus: float | None, length: float | None, stiffness: float | None) -> float:
    if stiffness is not None:
        return stiffness
    if modulus is None or length is None:
        raise OutOfRange("the keel line needs its stiffness, or modulus and length")
    return modulus * length


def _stiffness(block: Mapping[str, float]) -> float:
    if "stiffness" in block:
        return block["stiffness"]
    if not {"modulus", "area", "height"} <= set(block):
        raise OutOfRange("a side block needs its stiffness, or height, area and modulus")
    if block["height"] <= 0:
        raise OutOfRange("the height of every side block must be more than nothing")
    return block["modulus"] * block["area"] / block["height"]


def outputs_of(found: Overturning) -> Mapping[str, Any]:
    """Give how she stands as outputs."""
    governing, tipping, sliding = found.governing, found.tipping, found.sliding
    return {
        "moment_wind": None if found.wind is None else found.wind.moment / GRAVITY,
        "moment_earthquake": None if found.earthquake is None else found.earthquake.moment / GRAVITY,
        "moment": governing.moment / GRAVITY,
        "side_blocks": list(governing.shared.side_blocks),
        "lee": found.lee(governing),
        "keel": governing.shared.keel,
        "lifted": [found.blocks[i].y for i in governing.shared.lifted],
        "tipping_use": tipping.use,
        "tipping_met": tipping.met,
        "lateral_force": governing.force,
        "sliding_use": None if sliding is None else sliding.use,
        "sliding_met": None if sliding is None else sliding.met,
        "coefficient_source": found.coefficient_source,
        "lee_greatest": found.hull.demand,
        "lee_pressure": None if found.crushing is None else found.crushing.demand,
        "crushing_met": None if found.crushing is None else found.crushing.met,
        "hull_met": found.hull.met,
        **verdict_outputs(found.verdict),
    }


METHOD = Method(
    name="blocks.overturning",
    title="Overturning and sliding on the blocks under wind or earthquake",
    formula="M = max(F z_w, a_h W KG); R = R₀ ± M k b/K_φ ≥ 0, K_φ = Σkb² + k_keel B²/12; R g/A ≤ p; R ≤ what shell "
    "and frame take; M ≤ W b/SF; F ≤ μW",
    source=Citation("Statics of elastic supports", standing="derived"),
    valid="moment positive to port (blocks of both sides alike give the same to starboard); small angles",
    inputs={
        "weight": quantity("mass", "Weight on the blocks."),
        "kg": quantity("length", "Centre of gravity above the tops of the keel blocks."),
        "blocks": listed(
            record(
                "A side block.",
                ("y",),
                y=quantity("length", "Middle, to port."),
                height=quantity("length", "Height of its timber."),
                area=quantity("area", "Bearing area."),
                modulus=quantity("pressure", "Modulus of elasticity in the direction of the load."),
                stiffness=number(
                    "In place of height, area and modulus: stiffness of the whole block, N/m.", exclusiveMinimum=0
                ),
                preload=quantity("mass", "What it carries in calm."),
                cap=quantity("area", "Area of its cap on the hull."),
            ),
            "The side blocks.",
        ),
        "keel_modulus": quantity("pressure", "Foundation modulus of the keel blocks."),
        "keel_length": quantity("length", "Length of the keel line."),
        "keel_stiffness": number("In place of modulus and length: stiffness of all keel blocks, N/m."),
        "coefficient_source": text("Where wind, lateral coefficient and friction come from."),
        "keel_width": quantity("length", "Width of the keel in contact; nothing where left out.", "0.2 m"),
        "wind": quantity("force", "Wind force across the ship."),
        "wind_height": quantity("length", "Its centre above the tops of the keel blocks."),
        "lateral": number("Lateral coefficient for earthquake, by the code of the place.", minimum=0),
        "combine": {"type": "boolean", "description": "Whether the code adds wind and earthquake."},
        "factor": number("Factor of safety against tipping.", exclusiveMinimum=0),
        "friction": number("Coefficient of friction on the caps.", minimum=0),
        "allowable": quantity("pressure", "Allowable pressure of the caps.", "3.1 MPa"),
        "allowable_source": text("Where it comes from; needed with it."),
        "hull_limit": quantity("mass", "What shell and frame take at a side block.", "25 t"),
        "hull_limit_source": text("Where it comes from; needed with it."),
    },
    outputs=(
        Symbol("moment_wind", "moment of the wind", "moment", "t*m"),
        Symbol("moment_earthquake", "moment of the earthquake", "moment", "t*m"),
        Symbol("moment", "moment that governs", "moment", "t*m"),
        Symbol("side_blocks", "load on each side block, in their order", "mass", "t"),
        Symbol("lee", "load on each side block of the side that the moment loads, in their order", "mass", "t"),
        Symbol("keel", "load left on the keel line", "mass", "t"),
        Symbol("lifted", "places to port of side blocks that carry nothing", "length", "m"),
        Symbol("tipping_use", "moment by that at which a rigid ship tips, with the factor", "fraction", "%"),
        Symbol("tipping_met", "whether it is within", "truth", ""),
        Symbol("lateral_force", "lateral force that governs", "force", "kN"),
        Symbol("sliding_use", "lateral force by friction", "fraction", "%"),
        Symbol("sliding_met", "whether it is within; not known without friction", "truth", ""),
        Symbol("coefficient_source", "where the coefficients come from", "text", ""),
        Symbol("lee_greatest", "greatest load on a side block, wind or earthquake", "mass", "t"),
        Symbol("lee_pressure", "greatest pressure on a side block; not known without caps", "pressure", "MPa"),
        Symbol("crushing_met", "whether that is within the allowable; not known without one", "truth", ""),
        Symbol("hull_met", "whether shell and frame take the greatest load; not known without a limit", "truth", ""),
        *VERDICT_SYMBOLS,
    ),
    kernel=overturning,
    figures=outputs_of,
    example={
        "weight": "600 t",
        "kg": "3.4 m",
        "blocks": [
            {"y": y, "height": "0.9 m", "area": "0.24 m2", "modulus": "300 MPa", "preload": "6 t"}
            for y in ("2.4 m", "-2.4 m", "2.6 m", "-2.6 m", "2.4 m", "-2.4 m", "2.2 m", "-2.2 m")
        ],
        "keel_modulus": "15 MPa",
        "keel_length": "41 m",
        "coefficient_source": "wind by EN 1991-1-4 for the place; friction assumed",
        "wind": "130 kN",
        "wind_height": "4.2 m",
        "friction": 0.3,
    },
    optional=frozenset(
        {
            *("keel_modulus", "keel_length", "keel_stiffness", "keel_width", "wind", "wind_height", "lateral"),
            *("combine", "factor", "friction", "allowable", "allowable_source", "hull_limit", "hull_limit_source"),
        }
    ),
    cautions=(
        "a lateral coefficient of 0.2 is quoted for navies (from memory, not verified): take the code of the place",
        "10 to 20 % of her weight on side blocks built to the hull is common practice, no source",
    ),
)
