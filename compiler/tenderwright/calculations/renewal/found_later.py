"""Plate that a denser survey would likely add to the plate named for renewal, with its mass and joints."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.calculations.renewal.contingent import METHOD as CONTINGENT
from tenderwright.calculations.renewal.contingent import Contingent, Gauged, contingent_renewal, gauged_from_input
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
    thickness: float,
    renewed_area: float = 0.0,
    renewed_mass: float = 0.0,
    renewed_joint: float = 0.0,
) -> FoundLater:
    """Expect the plate to be found besides, with mass and joints in proportion to the plate named.

    Formula: as `contingent_renewal`; m = A M/A0 and l = A L/A0, or m = A t rho where no plate is named. Symbols: plate
    named, its area A0, mass M and joint L; mean thickness as built t in m. Source: as `contingent_renewal`; the
    proportion is derived. Raises OutOfRange.
    """
    if renewed_area < 0.0 or thickness <= 0.0:
        raise OutOfRange("the plate named cannot be less than nothing, and plate is thicker than nothing")
    gauged = gauged_from_input(strakes)
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
                ("sampled", "bad", "unsampled", "area"),
                strake=text("Its name."),
                sampled=_spaces("Frame spaces gauged."),
                bad=_spaces("Of those, spaces to be renewed."),
                unsampled=_spaces("Frame spaces not gauged."),
                area=quantity("area", "Plate renewed for one bad space.", "0.65 m2"),
            ),
            "The strakes.",
        ),
        "thickness": length("Mean thickness of the shell as built, for its mass where no plate is named.", "10 mm"),
        "renewed_area": quantity("area", "Plate named for renewal; none unless given.", "8.4 m2"),
        "renewed_mass": quantity("mass", "Its mass.", "690 kg"),
        "renewed_joint": length("Its seams and butts.", "20 m"),
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
        "strakes": CONTINGENT.example["strakes"],
        "thickness": "9.8 mm",
        "renewed_area": "5.2 m2",
        "renewed_mass": "420 kg",
        "renewed_joint": "21 m",
    },
    optional=frozenset({"renewed_area", "renewed_mass", "renewed_joint"}),
    cautions=CONTINGENT.cautions,
)
