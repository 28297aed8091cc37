"""A ship standing on her keel blocks as an elastic girder: loads, peaks, and whether a rigid hull would have done."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.blocks.elastic_line import Girder, KeelLine, checked, elastic_keel_line
from tenderwright.calculations.blocks.weight_curve import Segment, weight_curve
from tenderwright.calculations.blocks.winkler import Class, characteristic, keel_class
from tenderwright.calculations.distinct import distinct
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import GRAVITY, listed, number, quantity, record
from tenderwright.quantities.display import plainly

NEAR = 1e-9


class KeelBlock(Struct, frozen=True):
    """A keel block as a spring: place [m forward of AP], stiffness [N/m], and how much it stands low [m]."""

    x: float
    stiffness: float
    gap: float = 0.0


class Bay(Struct, frozen=True):
    """A stretch of the girder with one bending stiffness EI [N m2]."""

    aft: float
    forward: float
    bending_stiffness: float


class Standing(Struct, frozen=True, eq=False):
    """How she stands: loads in kg, by block from aft; the line itself by node."""

    line: KeelLine
    places: Floats
    """Of the blocks, m, rising."""
    loads: Floats
    line_loads: Floats
    """Load of each block over the length from mid-gap to mid-gap, kg/m."""
    slenderness: float
    """Lambda L of the line, with the mean modulus and the mean EI over it."""

    @property
    def kind(self) -> Class:
        """Class the line as a beam."""
        return keel_class(self.slenderness)

    @property
    def rigid_justified(self) -> bool:
        """Tell whether the rigid hull gives the loads well enough."""
        return self.kind == "short"

    @property
    def lifted(self) -> list[float]:
        """Give the places of blocks that carry nothing, m."""
        return [float(x) for x, bears in zip(self.places, self.line.bears, strict=True) if not bears]


def stand_on_blocks(
    blocks: Sequence[KeelBlock],
    bays: Sequence[Bay],
    weights: Sequence[Segment],
    points: Sequence[tuple[float, float]] = (),
    can_pull: bool = False,
) -> Standing:
    """Find the load of each block under an elastic hull girder; see `elastic_keel_line` for the equations.

    Symbols: blocks; bays of EI, end to end, which are the girder; weights as stretches of line load [kg/m]; points as
        (x [m], mass [kg]); can_pull, whether blocks hold her down too.
    Raises OutOfRange where a load or a block lies off the girder, or she does not stand.
    """
    ordered = sorted(blocks, key=lambda one: one.x)
    line = sorted(bays, key=lambda one: one.aft)
    if not line or any(abs(a.forward - b.aft) > NEAR for a, b in pairwise(line)):
        raise OutOfRange("the bays of the girder must lie end to end")
    ends = [one.aft for one in line] + [line[-1].forward]
    marks = [b.x for b in ordered] + [x for x, _ in points] + [x for s in weights for x in (s.aft, s.forward)]
    if not marks or min(marks) < ends[0] - NEAR or max(marks) > ends[-1] + NEAR:
        raise OutOfRange(
            f"the loads and blocks must lie on the girder, {plainly(ends[0], 'centre')} to "
            f"{plainly(ends[-1], 'centre')}"
        )
    nodes = _distinct(np.clip(np.array(ends + marks), ends[0], ends[-1]))
    middles = 0.5 * (nodes[:-1] + nodes[1:])
    ei = np.array([b.bending_stiffness for b in line])[np.searchsorted(ends[1:-1], middles)]
    forces = np.zeros(nodes.size)
    for node, (_, mass) in zip(_at(nodes, [x for x, _ in points]), points, strict=True):
        forces[node] += mass * GRAVITY
    hull = checked(Girder(nodes, ei, *_bay_loads(nodes, weights), forces))
    at = _at(nodes, [b.x for b in ordered])
    k = np.array([b.stiffness for b in ordered])
    found = elastic_keel_line(hull, at, k, np.array([b.gap for b in ordered]), can_pull)
    places, loads = nodes[at], found.reactions / GRAVITY
    share = tributary_lengths(places)
    over = (nodes[:-1] >= places[0] - NEAR) & (nodes[1:] <= places[-1] + NEAR)
    mean_ei = float(np.average(ei[over], weights=np.diff(nodes)[over]))
    lam = characteristic(float(k.sum() / share.sum()), mean_ei)
    return Standing(found, places, loads, loads / share, lam * float(share.sum()))


def tributary_lengths(places: Floats) -> Floats:
    """Give the length that each block holds up, from mid-gap to mid-gap, the end ones as much beyond as within, m."""
    gaps = np.diff(places)
    share: Floats = 0.5 * (np.append(gaps[0], gaps) + np.append(gaps, gaps[-1]))
    return share


def _distinct(x: Floats) -> Floats:
    ordered = distinct(x)
    kept: Floats = ordered[np.append(True, np.diff(ordered) > NEAR)]
    return kept


def _at(nodes: Floats, places: Sequence[float]) -> NDArray[np.intp]:
    """Give the node nearest to each place."""
    found: NDArray[np.intp] = np.abs(nodes - np.reshape(places, (-1, 1))).argmin(axis=1)
    return found


def _bay_loads(nodes: Floats, weights: Sequence[Segment]) -> tuple[Floats, Floats]:
    """Add up the stretches of load in each bay, in N/m at its two ends."""
    if any(not one.forward > one.aft for one in weights):
        raise OutOfRange("a stretch of load must end forward of where it starts")
    columns = [(one.aft, one.forward, one.load_aft, one.load_forward) for one in weights]
    aft, forward, load_aft, load_forward = np.reshape(columns, (-1, 4, 1)).swapaxes(0, 1)
    middles = 0.5 * (nodes[:-1] + nodes[1:])
    within = (middles > aft) & (middles < forward)
    slope = (load_forward - load_aft) / (forward - aft)
    at_aft, at_forward = (GRAVITY * (load_aft + slope * (x - aft)) for x in (nodes[:-1], nodes[1:]))
    return np.where(within, at_aft, 0.0).sum(axis=0), np.where(within, at_forward, 0.0).sum(axis=0)


def _kernel(
    blocks: Sequence[Mapping[str, float]],
    elasticity: float,
    bays: Sequence[Mapping[str, float]],
    weight: float,
    weight_aft: float,
    weight_forward: float,
    lcg: float | None = None,
    points: Sequence[Mapping[str, float]] = (),
    stretches: Sequence[Mapping[str, float]] = (),
    can_pull: bool = False,
) -> Standing:
    curve = weight_curve(weight, weight_aft, weight_forward - weight_aft, lcg)
    springs = [KeelBlock(b["x"], _stiffness(b), b.get("gap", 0.0)) for b in blocks]
    girders = [Bay(b["aft"], b["forward"], elasticity * b["second_moment"]) for b in bays]
    even = [Segment(s["aft"], s["forward"], s["load"], s["load"]) for s in stretches]
    return stand_on_blocks(
        springs, girders, [*curve.segments(), *even], [(p["x"], p["mass"]) for p in points], can_pull
    )


def _stiffness(block: Mapping[str, float]) -> float:
    """Give the stiffness of a block, N/m: as given, or of its timber."""
    if "stiffness" in block:
        return block["stiffness"]
    if not {"modulus", "area", "height"} <= set(block):
        raise OutOfRange("a block needs its stiffness, or height, area and modulus")
    if block["height"] <= 0:
        raise OutOfRange("the height of every block must be more than nothing")
    return block["modulus"] * block["area"] / block["height"]


def outputs_of(found: Standing) -> dict[str, Any]:
    """Give how she stands as the outputs of the method."""
    most = int(np.argmax(found.loads))
    return {
        "loads": found.loads.tolist(),
        "line_loads": found.line_loads.tolist(),
        "greatest": float(found.loads[most]),
        "at": float(found.places[most]),
        "greatest_line_load": float(found.line_loads.max()),
        "lifted": found.lifted,
        "sinkage": float(found.line.deflection.max()),
        "greatest_moment": float(np.abs(found.line.moment).max()) / GRAVITY,
        "slenderness": found.slenderness,
        "class": found.kind,
        "rigid_justified": found.rigid_justified,
    }


METHOD = Method(
    name="blocks.elastic-line",
    title="Loads of keel blocks under an elastic hull girder",
    formula="EI y'''' = q between blocks; R = k(y − gap) ≥ 0 at each; blocks that would pull are dropped, and again",
    source=Citation("Clapeyron's three moments on elastic supports; M. Hetényi, 1946, for the limit", "", "derived"),
    valid="small deflections, no shear deflection; elastic blocks. λL below π/4: a rigid hull gives the same",
    inputs={
        "blocks": listed(
            record(
                "One keel block.",
                ("x",),
                x=quantity("length", "Middle, forward of AP."),
                height=quantity("length", "Height of its timber."),
                area=quantity("area", "Bearing area."),
                modulus=quantity("pressure", "Modulus of elasticity in the direction of the load."),
                stiffness=number(
                    "In place of height, area and modulus: stiffness of the whole block, N/m.", exclusiveMinimum=0
                ),
                gap=quantity("length", "How much it stands low.", "5 mm"),
            ),
            "The keel blocks.",
            2,
        ),
        "elasticity": quantity("pressure", "Modulus of elasticity of the hull.", "206000 MPa"),
        "bays": listed(
            record(
                "A stretch of the hull girder.",
                ("aft", "forward", "second_moment"),
                aft=quantity("length", "After end, forward of AP.", "-2 m"),
                forward=quantity("length", "Fore end, forward of AP.", "48 m"),
                second_moment=quantity("second_moment", "Second moment of the hull girder.", "0.3 m4"),
            ),
            "The girder, end to end.",
        ),
        "weight": quantity("mass", "Weight of the ship.", "600 t"),
        "weight_aft": quantity("length", "After end of the weight, forward of AP.", "-2 m"),
        "weight_forward": quantity("length", "Fore end of the weight, forward of AP.", "48 m"),
        "lcg": quantity("length", "Centre of gravity, forward of AP; the middle where left out.", "22.5 m"),
        "points": listed(
            record(
                "A weight at one place.",
                ("x", "mass"),
                x=quantity("length", "Forward of AP.", "14 m"),
                mass=quantity("mass", "Mass, over and above the weight of the ship.", "12 t"),
            ),
            "Weights at one place.",
            0,
        ),
        "stretches": listed(
            record(
                "An even load over a stretch.",
                ("aft", "forward", "load"),
                aft=quantity("length", "After end, forward of AP.", "10 m"),
                forward=quantity("length", "Fore end, forward of AP.", "14 m"),
                load=quantity("line_load", "Mass per length, over and above the weight of the ship.", "5 t/m"),
            ),
            "Even loads, such as liquids in tanks.",
            0,
        ),
        "can_pull": {
            "type": "boolean",
            "description": "Whether supports hold her down too, as those of a bolted cradle; blocks do not.",
        },
    },
    outputs=(
        Symbol("loads", "load on each block, from aft", "mass", "t"),
        Symbol("line_loads", "the same over the length that the block holds up", "line_load", "t/m"),
        Symbol("greatest", "greatest load on a block", "mass", "t"),
        Symbol("at", "place of that block", "length", "m"),
        Symbol("greatest_line_load", "greatest line load", "line_load", "t/m"),
        Symbol("lifted", "places of blocks that carry nothing", "length", "m"),
        Symbol("sinkage", "greatest sinkage into the blocks", "length", "mm"),
        Symbol("greatest_moment", "greatest bending moment of the girder, of either sign", "moment", "t*m"),
        Symbol("slenderness", "lambda L", "fraction", ""),
        Symbol("class", "short, medium or long", "text", ""),
        Symbol("rigid_justified", "whether a rigid hull would have done", "truth", ""),
    ),
    kernel=_kernel,
    figures=outputs_of,
    example={
        "blocks": [
            {"x": f"{x} m", "height": "0.6 m", "area": "0.06 m2", "modulus": "300 MPa"} for x in range(2, 43, 2)
        ],
        "elasticity": "206000 MPa",
        "bays": [{"aft": "-2 m", "forward": "48 m", "second_moment": "0.3 m4"}],
        "weight": "600 t",
        "weight_aft": "-2 m",
        "weight_forward": "48 m",
        "lcg": "22.5 m",
    },
    optional=frozenset({"lcg", "points", "stretches", "can_pull"}),
    cautions=("hull strength on the blocks is for a naval architect",),
)
