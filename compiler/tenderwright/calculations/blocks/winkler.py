"""Closed forms of a beam on a continuous elastic foundation, and what a length says about a rigid hull."""

from __future__ import annotations

from collections.abc import Mapping
from math import cos, cosh, pi, sin, sinh
from typing import Any, Literal

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import GRAVITY, quantity

Class = Literal["short", "medium", "long"]
LONGEST = 300.0
"""Greatest lambda l for which the finite forms are worked out; far beyond, the ends are independent."""


class Deflection(Struct, frozen=True):
    """Deflection at an end and at the middle [m, down], and moment at the middle [N m, sagging]."""

    end: float
    middle: float
    moment_middle: float


def characteristic(modulus: float, bending_stiffness: float) -> float:
    """Give lambda = (k/(4 EI))^(1/4), 1/m; k in N/m2, EI in N m2. Source: Hetényi 1946. Raises OutOfRange."""
    if modulus <= 0 or bending_stiffness <= 0:
        raise OutOfRange("the foundation modulus and EI must be more than nothing")
    return float((modulus / (4.0 * bending_stiffness)) ** 0.25)


def keel_class(slenderness: float) -> Class:
    """Class a beam by lambda L: short below pi/4 (rigid hull is right), medium to pi, long beyond (ends independent).

    Source: Hetényi, Beams on Elastic Foundation, 1946 (limits from memory). Raises OutOfRange.
    """
    if slenderness <= 0:
        raise OutOfRange("lambda L must be more than nothing")
    return "short" if slenderness < pi / 4 else "medium" if slenderness <= pi else "long"


def infinite_beam(force: float, modulus: float, lam: float, x: ArrayLike) -> tuple[Floats, Floats]:
    """Give deflection [m] and moment [N m] at x [m] from a force P [N] on an endless beam.

    Formula: y = P lam/(2k) e^(-lam x)(cos lam x + sin lam x); M = P/(4 lam) e^(-lam x)(cos lam x - sin lam x).
    Source: Hetényi 1946 (from memory).
    """
    u = lam * np.abs(np.asarray(x, dtype=np.float64))
    fade = np.exp(-u)
    deflection: Floats = force * lam / (2 * modulus) * fade * (np.cos(u) + np.sin(u))
    moment: Floats = force / (4 * lam) * fade * (np.cos(u) - np.sin(u))
    return deflection, moment


def end_of_half_endless(force: float, modulus: float, lam: float) -> float:
    """Give the deflection [m] at the free end of a half-endless beam with a force P [N] there, 2 P lam/k.

    Source: Hetényi 1946 (from memory); the limit of `forces_at_ends`.
    """
    return 2 * force * lam / modulus


def forces_at_ends(force: float, modulus: float, lam: float, length: float) -> Deflection:
    """Find the deflections of a free beam with a force P [N] at each end.

    Formula: with u = lam l, N = sinh u + sin u: y_end = (2P lam/k)(cosh u + cos u)/N, y_mid = (4P lam/k) cosh(u/2)
        cos(u/2)/N, M_mid = -(2P/lam) sinh(u/2) sin(u/2)/N.
    Source: Hetényi, Beams on Elastic Foundation, 1946, ch. IV art. 19a eq. 37. Raises OutOfRange.
    """
    u = _argument(lam, length)
    below = sinh(u) + sin(u)
    return Deflection(
        2 * force * lam / modulus * (cosh(u) + cos(u)) / below,
        4 * force * lam / modulus * cosh(u / 2) * cos(u / 2) / below,
        -2 * force / lam * sinh(u / 2) * sin(u / 2) / below,
    )


def force_at_middle(force: float, modulus: float, lam: float, length: float) -> Deflection:
    """Find the deflections of a free beam with a force P [N] at its middle.

    Formula: y_mid = (P lam/2k)(cosh u + cos u + 2)/N; M_mid = (P/4 lam)(cosh u - cos u)/N; y_end = (2P lam/k) cosh(u/2)
        cos(u/2)/N, with u = lam l and N = sinh u + sin u.
    Source: Hetényi 1946 (from memory; reciprocal to `forces_at_ends`). Raises OutOfRange.
    """
    u = _argument(lam, length)
    below = sinh(u) + sin(u)
    return Deflection(
        2 * force * lam / modulus * cosh(u / 2) * cos(u / 2) / below,
        force * lam / (2 * modulus) * (cosh(u) + cos(u) + 2) / below,
        force / (4 * lam) * (cosh(u) - cos(u)) / below,
    )


def _argument(lam: float, length: float) -> float:
    if not 0 < lam * length <= LONGEST:
        raise OutOfRange(f"lambda l must be more than nothing and at most {LONGEST:.0f}, got {lam * length:g}")
    return lam * length


def _kernel(modulus: float, elasticity: float, second_moment: float, length: float, load: float) -> Mapping[str, Any]:
    lam = characteristic(modulus, elasticity * second_moment)
    force, slenderness = load * GRAVITY, lam * length
    ends, middle = forces_at_ends(force, modulus, lam, length), force_at_middle(force, modulus, lam, length)
    kind = keel_class(slenderness)
    return {
        "slenderness": slenderness,
        "class": kind,
        "rigid_justified": kind == "short",
        "end_loads_end": ends.end,
        "end_loads_middle": ends.middle,
        "middle_load_end": middle.end,
        "middle_load_middle": middle.middle,
        "end_peak": modulus * end_of_half_endless(force, modulus, lam) / GRAVITY,
        "interior_peak": modulus * float(infinite_beam(force, modulus, lam, 0.0)[0]) / GRAVITY,
    }


METHOD = Method(
    name="blocks.winkler",
    title="Beam on an elastic foundation: closed forms and the class of a keel line",
    formula="λ = (k/4EI)^¼; ends loaded: y_end = (2Pλ/k)(cosh λl + cos λl)/(sinh λl + sin λl); short below π/4, "
    "long above π",
    source=Citation("M. Hetényi, Beams on Elastic Foundation, 1946", "ch. IV art. 19a eq. 37; classes from memory"),
    valid="uniform EI and foundation that can push and pull; λl up to 300",
    inputs={
        "modulus": quantity("pressure", "Foundation modulus: force per length and sinkage."),
        "elasticity": quantity("pressure", "Modulus of elasticity of the hull."),
        "second_moment": quantity("second_moment", "Second moment of the hull girder."),
        "length": quantity("length", "Length on the blocks."),
        "load": quantity("mass", "Load at each end, or at the middle."),
    },
    outputs=(
        Symbol("slenderness", "lambda L", "fraction", ""),
        Symbol("class", "short, medium or long", "text", ""),
        Symbol("rigid_justified", "whether a rigid hull is right", "truth", ""),
        Symbol("end_loads_end", "sinkage of the ends, a load at each end", "length", "mm"),
        Symbol("end_loads_middle", "sinkage of the middle, a load at each end", "length", "mm"),
        Symbol("middle_load_end", "sinkage of the ends, one load at the middle", "length", "mm"),
        Symbol("middle_load_middle", "sinkage of the middle, one load at the middle", "length", "mm"),
        Symbol("end_peak", "peak of line load under the load at the end of a long keel", "line_load", "t/m"),
        Symbol("interior_peak", "the same far from the ends", "line_load", "t/m"),
    ),
    kernel=_kernel,
    example={
        "modulus": "5 MPa",
        "elasticity": "206000 MPa",
        "second_moment": "0.3 m4",
        "length": "41.6 m",
        "load": "40 t",
    },
)
