"""A ship in a floating dock: bending of the dock, and its freeboard and stability where they are known."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity, text
from tenderwright.calculations.verdict import VERDICT_SYMBOLS, Limit, Verdict, verdict, verdict_outputs

CAPACITIES = (40e6, 50e6, 60e6, 70e6)
SHARES = (0.800, 0.850, 0.888, 0.920)
LEAST_GM = 1.0
TOP_DECK_FREEBOARD = 1.0
PONTOON_FREEBOARD = 0.3


class DockLoads(Struct, frozen=True):
    """A floating dock with the ship in it; moments in kg m."""

    limits: tuple[Limit, ...]
    """What a floating dock adds to the limits that every facility has."""
    verdict: Verdict
    moment: float
    design_moment: float
    length_share: float
    design_length_share: float


def bending_moment(weight: float, dock_length: float, ship_length: float) -> float:
    """Give the bending moment at the middle of the dock, M = W (L_D/8 - 11 L_s/96), kg m; sagging is positive.

    Symbols: W [kg]; L_D, L_s [m]. With L_s = 0.8 L_D it is W L_D/30.
    Source: Lloyd's Register, Rules for Floating Docks and Dock Gates, July 2022, Pt 2 Ch 1 s.3.2.1 and s.3.3.1 (weight
    curve and buoyancy); the sum is derived. Range: ship in the middle of the dock. Raises OutOfRange.
    """
    if weight <= 0 or not 0 < ship_length <= dock_length:
        raise OutOfRange("the weight must be more than nothing and the ship no longer than the dock")
    return weight * (dock_length / 8 - 11 * ship_length / 96)


def design_length_share(capacity: float) -> float:
    """Give the ship's length, by that of the dock, for which a dock of a capacity [kg] is in general designed.

    Source: Lloyd's Register, Rules for Floating Docks and Dock Gates, July 2022, Pt 2 Ch 1 s.2.1.7, linear between.
    Raises OutOfRange.
    """
    if capacity <= 0:
        raise OutOfRange("the capacity must be more than nothing")
    return float(np.interp(capacity, CAPACITIES, SHARES))


def floating_dock_limits(
    weight: float,
    dock_length: float,
    ship_length: float,
    greatest_moment: float | None = None,
    gm: float | None = None,
    top_deck_freeboard: float | None = None,
    pontoon_freeboard: float | None = None,
    source: str = "",
    moment_source: str = "",
) -> tuple[Limit, ...]:
    """Set the dock's bending moment, and its least GM and freeboards, beside what the dock's papers give.

    Formula: M of a ship of the length given, as `bending_moment`, greater for a short ship; GM >= 1.0 m; freeboard of
        the top deck fully submerged >= 1.0 m; of the pontoon deck on the centreline with the ship >= 0.3 m. One that
        is not given is left out, but for the moment.
    Symbols: W [kg]; lengths, GM, freeboards [m]; moments [kg m].
    Source: as `bending_moment`; Iranian Classification Society, Rules for Floating Docks, 2014, ch. 4. Raises
    OutOfRange.
    """
    limits = [
        Limit(
            "bending moment of the dock",
            "moment",
            abs(bending_moment(weight, dock_length, ship_length)),
            greatest_moment,
            source=moment_source,
        )
    ]
    least = (
        ("metacentric height of the dock", LEAST_GM, gm),
        ("freeboard of the top deck", TOP_DECK_FREEBOARD, top_deck_freeboard),
        ("freeboard of the pontoon deck", PONTOON_FREEBOARD, pontoon_freeboard),
    )
    limits += [
        Limit(name, "length", wanted, there, source=source) for name, wanted, there in least if there is not None
    ]
    return tuple(limits)


def _kernel(
    weight: float,
    dock_length: float,
    ship_length: float,
    capacity: float,
    greatest_moment: float | None = None,
    gm: float | None = None,
    top_deck_freeboard: float | None = None,
    pontoon_freeboard: float | None = None,
    source: str = "",
    moment_source: str = "",
) -> DockLoads:
    limits = floating_dock_limits(
        weight,
        dock_length,
        ship_length,
        greatest_moment,
        gm,
        top_deck_freeboard,
        pontoon_freeboard,
        source,
        moment_source,
    )
    share = design_length_share(capacity)
    return DockLoads(
        limits,
        verdict((Limit("lift", "mass", weight, capacity, source=source), *limits)),
        bending_moment(weight, dock_length, ship_length),
        bending_moment(capacity, dock_length, share * dock_length),
        ship_length / dock_length,
        share,
    )


def outputs_of(found: DockLoads) -> Mapping[str, Any]:
    """Give the dock as outputs."""
    return {
        **verdict_outputs(found.verdict),
        "moment": found.moment,
        "design_moment": found.design_moment,
        "length_share": found.length_share,
        "design_length_share": found.design_length_share,
    }


METHOD = Method(
    name="facility.floating-dock",
    title="Lift, bending and stability of a floating dock with a ship",
    formula="M = W(L_D/8 − 11 L_s/96); with L_s = 0.8 L_D, W L_D/30",
    source=Citation(
        "Lloyd's Register, Rules for Floating Docks and Dock Gates, July 2022",
        "Pt 2 Ch 1 s.2.1.7, 3.2.1, 3.3.1; the sum is derived",
    ),
    valid="ship in the middle of the dock; even ballast; rectangle and parabola as weight curve",
    inputs={
        "weight": quantity("mass", "Weight of the ship."),
        "dock_length": quantity("length", "Length of the dock's pontoon."),
        "ship_length": quantity("length", "Length over which the ship's weight lies."),
        "capacity": quantity("mass", "Lifting capacity of the dock."),
        "greatest_moment": quantity("moment", "Bending moment allowed by the dock's papers."),
        "gm": quantity("length", "Least metacentric height of dock and ship in any phase.", "1.6 m"),
        "top_deck_freeboard": quantity("length", "Freeboard of the top deck fully submerged.", "1.2 m"),
        "pontoon_freeboard": quantity(
            "length", "Freeboard of the pontoon deck on the centreline with the ship.", "0.5 m"
        ),
        "moment_source": text("Where that moment comes from."),
        "source": text("Where the dock's own figures come from, such as its certificate."),
    },
    outputs=(
        *VERDICT_SYMBOLS,
        Symbol("moment", "bending moment at the middle of the dock, sagging", "moment", "t*m"),
        Symbol("design_moment", "the same for the capacity over the length in general designed for", "moment", "t*m"),
        Symbol("length_share", "length of the ship by that of the dock", "fraction", "%"),
        Symbol("design_length_share", "the length in general designed for, by that of the dock", "fraction", "%"),
    ),
    kernel=_kernel,
    figures=outputs_of,
    example={
        "weight": "600 t",
        "dock_length": "88 m",
        "ship_length": "50 m",
        "capacity": "2400 t",
        "greatest_moment": "7000 t*m",
    },
    optional=frozenset({"greatest_moment", "gm", "top_deck_freeboard", "pontoon_freeboard", "source", "moment_source"}),
    cautions=("the dockmaster's pumping plan levels the dock: the moment here is with even ballast",),
)
