"""Peak load of the blocks at the end of the keel line under an overhanging stern or bow."""

from __future__ import annotations

from collections.abc import Mapping
from math import pi
from typing import Any

from tenderwright.calculations.blocks.winkler import characteristic
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity


def overhang_peak(load: float, modulus: float, bending_stiffness: float, moment: float = 0.0) -> dict[str, float]:
    """Find the peak line load that an overhang adds at the end of a long keel line.

    Formula: k y_end = 2 P lam + 2 M lam^2; the same P far from the ends gives P lam/2, a quarter.
    Symbols: P load of the overhang [kg], M its moment about the last block [kg m], k [N/m2], EI [N m2]; peak [kg/m].
    Source: Hetényi, Beams on Elastic Foundation, 1946, half-endless beam (from memory; the limit of ch. IV eq. 37).
    Range: lambda L above pi, uniform blocks. Raises OutOfRange.
    """
    if load < 0 or moment < 0:
        raise OutOfRange("the overhang's load and moment must not be less than nothing")
    lam = characteristic(modulus, bending_stiffness)
    return {
        "characteristic": lam,
        "peak": 2 * load * lam + 2 * moment * lam**2,
        "interior_peak": load * lam / 2,
    }


def _kernel(
    load: float,
    modulus: float,
    elasticity: float,
    second_moment: float,
    arm: float = 0.0,
    keel_line: float | None = None,
) -> Mapping[str, Any]:
    found = overhang_peak(load, modulus, elasticity * second_moment, load * arm)
    if keel_line is not None and (slenderness := found["characteristic"] * keel_line) <= pi:
        raise OutOfRange(f"the keel line is not long: lambda L is {slenderness:.2f}, no more than pi")
    return {"peak": found["peak"], "interior_peak": found["interior_peak"], "reach": 1 / found["characteristic"]}


METHOD = Method(
    name="blocks.overhang",
    title="Peak of the last blocks under an overhang",
    formula="peak = 2Pλ + 2Mλ², M = P a; far from the ends Pλ/2",
    source=Citation("M. Hetényi, Beams on Elastic Foundation, 1946", "half-endless beam", "from memory"),
    valid="uniform blocks and EI; a long keel line, λL above π, which is checked where its length is given",
    inputs={
        "load": quantity("mass", "Weight that overhangs the last block."),
        "arm": quantity("length", "Its centre beyond the last block."),
        "keel_line": quantity("length", "Length of the keel line on blocks, to check that it is long.", "60 m"),
        "modulus": quantity("pressure", "Foundation modulus of the block line."),
        "elasticity": quantity("pressure", "Modulus of elasticity of the hull."),
        "second_moment": quantity("second_moment", "Second moment of the hull girder at the end."),
    },
    outputs=(
        Symbol("peak", "line load added at the last block", "line_load", "t/m"),
        Symbol("interior_peak", "line load the same weight would add far from the ends", "line_load", "t/m"),
        Symbol("reach", "length 1/lambda over which the peak falls off", "length", "m"),
    ),
    kernel=_kernel,
    example={
        "load": "40 t",
        "arm": "1.8 m",
        "modulus": "15 MPa",
        "elasticity": "206000 MPa",
        "second_moment": "0.1 m4",
    },
    optional=frozenset({"arm", "keel_line"}),
)
