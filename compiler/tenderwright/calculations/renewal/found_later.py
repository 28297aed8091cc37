"""Plate that a denser survey would likely add to the plate named for renewal, with its mass and joints."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.calculations.renewal.contingent import METHOD as CONTINGENT
from tenderwright.calculations.renewal.contingent import Contingent, Gauged, contingent_renewal, gauged_from_input
from tenderwright.calculations.renewal.shell_plan import SHELL, ShellPlan, shell_from_input
from tenderwright.calculations.schema import length, listed, quantity, record, text
from tenderwright.calculations.steel.plate_mass import STEEL_DENSITY


class FoundLater(Struct, frozen=True, eq=False):
    """What a denser survey would likely add."""

    gauged: Gauged
    later: Contingent
    mass_of_area: float
    """kg/m2."""
    joint_of_area: float
    """m for each m2."""


def found_later(
    strakes: Sequence[Mapping[str, Any]],
    shell: Mapping[str, Any] | ShellPlan,
    renewed_area: float = 0.0,
    renewed_mass: float = 0.0,
    renewed_joint: float = 0.0,
) -> FoundLater:
    """Expect the plate to be found besides, with mass and joints in proportion to the plate named.

    Formula: as `contingent_renewal`, with the plate for one bad space that of a mean space of its strake, grown as
    the inserts named grew over the spaces that they renew; m = A M/A0 and l = A L/A0, or m = A t rho where no plate is
    named. Symbols: strakes, their frame spaces gauged, of those bad, renewed (bad or with pits) and not gauged; shell,
    the plan; plate named, its area A0, mass M and joint L; mean thickness as built t in m. Source: as
    `contingent_renewal`; the proportion is derived. Raises OutOfRange.
    """
    plan = shell_from_input(shell)
    if renewed_area < 0.0:
        raise OutOfRange("the plate named cannot be less than nothing")
    counts = [next((one for one in strakes if one["strake"] == name), None) for name in plan.strakes]
    if len(strakes) != len(plan.strakes) or None in counts:
        raise OutOfRange("give the frame spaces of every strake of the shell once")
    gauged = gauged_from_input([{**one, "area": 0.0} for one in counts if one])
    thickness = float(plan.thickness[plan.exists].mean())
    space, renewed = plan.mean_space, np.array([one["renewed"] for one in counts if one], np.float64)
    grown = renewed_area / float(renewed @ space) if renewed.any() else 1.0
    gauged = replace(gauged, area=space * grown)
    mass = renewed_mass / renewed_area if renewed_area else thickness * STEEL_DENSITY
    joint = renewed_joint / renewed_area if renewed_area else 0.0
    return FoundLater(gauged, contingent_renewal(gauged), mass, joint)


def outputs_of(found: FoundLater) -> dict[str, float]:
    """Give what a denser survey would likely add as the outputs of the method."""
    gauged, later = found.gauged, found.later
    return {
        "gauged": float(gauged.sampled.sum()),
        "bad": float(gauged.bad.sum()),
        "not_gauged": float(gauged.unsampled.sum()),
        "spaces": later.plates,
        "spaces_p50": float(later.plates_p50),
        "spaces_p80": float(later.plates_p80),
        "area": later.area,
        "area_p80": later.area_p80,
        "mass": later.area * found.mass_of_area,
        "mass_p80": later.area_p80 * found.mass_of_area,
        "joint": later.area * found.joint_of_area,
    }


def _spaces(description: str) -> dict[str, Any]:
    return {"type": "integer", "minimum": 0, "description": description}


METHOD = Method(
    name="shell.contingent",
    title="Plate that a denser survey would likely add",
    formula=CONTINGENT.formula + "; mass = expected plate x mean mass of a square metre",
    source=CONTINGENT.source,
    valid="frame spaces of strakes that nobody gauged, judged from those gauged",
    inputs={
        "strakes": listed(
            record(
                "One strake, both sides.",
                ("strake", "sampled", "bad", "renewed", "unsampled"),
                strake=text("Its name."),
                sampled=_spaces("Frame spaces gauged."),
                bad=_spaces("Of those, spaces with plate too thin."),
                renewed=_spaces("Spaces renewed, those with pits besides."),
                unsampled=_spaces("Frame spaces not gauged."),
            ),
            "The strakes.",
        ),
        "shell": SHELL,
        "renewed_area": quantity("area", "Plate named for renewal; none unless given."),
        "renewed_mass": quantity("mass", "Its mass."),
        "renewed_joint": length("Its seams and butts."),
    },
    outputs=(
        Symbol("gauged", "frame spaces gauged", "each", "each"),
        Symbol("bad", "of those, to be renewed", "each", "each"),
        Symbol("not_gauged", "frame spaces not gauged", "each", "each"),
        Symbol("spaces", "bad frame spaces expected among them", "fraction", ""),
        Symbol("spaces_p50", "not exceeded in half of the draws", "each", "each"),
        Symbol("spaces_p80", "not exceeded in four draws of five", "each", "each"),
        Symbol("area", "plate expected", "area", "m2"),
        Symbol("area_p80", "plate not exceeded in four draws of five", "area", "m2"),
        Symbol("mass", "mass of plate expected", "mass", "kg"),
        Symbol("mass_p80", "mass not exceeded in four draws of five", "mass", "kg"),
        Symbol("joint", "seam and butt that go with it, to be tested", "length", "m"),
    ),
    kernel=found_later,
    figures=outputs_of,
    example={
        "strakes": [
            {"strake": "B", "sampled": 24, "bad": 2, "renewed": 3, "unsampled": 60},
            {"strake": "C", "sampled": 30, "bad": 6, "renewed": 6, "unsampled": 54},
        ],
        "shell": {
            "frames": ["12.0 m", "12.6 m", "13.2 m"],
            "seams": [["0.10 m"] * 2, ["1.12 m"] * 2, ["2.22 m"] * 2],
            "strakes": [{"strake": name, "thickness": ["9.5 mm"] * 2, "butts": []} for name in ("B", "C")],
        },
        "renewed_area": "5.2 m2",
        "renewed_mass": "420 kg",
        "renewed_joint": "21 m",
    },
    optional=frozenset({"renewed_area", "renewed_mass", "renewed_joint"}),
    cautions=CONTINGENT.cautions,
)
