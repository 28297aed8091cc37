"""Renewal of shell plate: inserts round the frame spaces that are beyond their limit, and what they come to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.renewal.insert import CORNER_THICKNESSES
from tenderwright.calculations.renewal.joints import JOINTS_INPUT, Joint, joints_from_input, joints_of, usual_joints
from tenderwright.calculations.renewal.outlines import LEAST_BAYS, LEAST_SIZE, Outline, OutlineRules, insert_outlines
from tenderwright.calculations.renewal.quantities import (
    Renewal,
    RenewalRules,
    RenewalTotal,
    renewal_of,
    renewal_total,
)
from tenderwright.calculations.renewal.rivets import ENDS, Ends, Fastening, ends_of
from tenderwright.calculations.renewal.shell_grid import Flags
from tenderwright.calculations.renewal.shell_plan import SHELL, ShellPlan, shell_from_input
from tenderwright.calculations.schema import length, listed, number, quantity, record, text
from tenderwright.calculations.steel.man_hours import CURVATURE_FACTORS, PLACE_FACTORS
from tenderwright.calculations.thickness.named_readings import SIDES, Side


class PlannedRenewal(Struct, frozen=True):
    """An insert of the plan with its place; lengths in m."""

    name: str
    """Such as `R3`."""
    side: Side
    strakes: tuple[str, ...]
    aft: float
    forward: float
    made: Renewal
    thickness: float
    why: tuple[str, ...] = ()
    """Why its frame spaces are renewed, each reason once."""
    apart: str = ""
    """The item that renews it, where it is one of its own; then it is in no total."""


class RenewalPlan(Struct, frozen=True):
    """The inserts of both sides, those of items of their own after the others, and what the others come to."""

    inserts: tuple[PlannedRenewal, ...]
    total: RenewalTotal


def plan_renewal(
    shell: Mapping[str, Any] | ShellPlan,
    bad: Sequence[Mapping[str, Any]],
    rivet: float,
    seam_rows: int,
    butt_rows: int,
    seam_pitch: float | None = None,
    frame_pitch: float | None = None,
    joints: Sequence[Mapping[str, Any]] = (),
    fastening: Fastening = "riveted",
    ends: Ends | None = None,
    items: Sequence[Mapping[str, Any]] = (),
    least_bays: int = LEAST_BAYS,
    least_size: float = LEAST_SIZE,
    corner: float = CORNER_THICKNESSES,
    mill_tolerance: float | None = None,
    hours_rate: float | None = None,
    work: Sequence[Mapping[str, Any]] = (),
) -> RenewalPlan:
    """Lay out inserts round bad frame spaces, and count what each takes.

    Symbols: bad, frame spaces by strake, side and a place in them, with the item that renews them where it is one of
    its own; rivet, rows and pitches in m of the ship's usual joints, and joints, those of strakes by kind; ends of the
    inserts, joined as their edges unless given, and of those of items of their own; sizes in m; corner in thicknesses;
    hours_rate in man-hours a tonne; work, strakes by place and curvature, whose greatest factor counts for an insert
    over several. An insert is as thick as the thickest plate that it takes. Source: as `insert_outlines` and
    `renewal_of`. Raises OutOfRange.
    """
    plan = shell_from_input(shell)
    riveted = joints_from_input(joints, usual_joints(rivet, seam_rows, butt_rows, seam_pitch, frame_pitch))
    rules = RenewalRules(
        fastening=fastening,
        ends=ends_of(fastening) if ends is None else ends,
        corner=corner,
        tolerance=mill_tolerance,
        rate=hours_rate,
        least=least_size,
    )
    outlines = OutlineRules(least_bays=least_bays, least_size=least_size)
    made = []
    for item in dict.fromkeys(["", *(one.get("item", "") for one in bad)]):
        made_by = next((one["ends"] for one in items if one["item"] == item), rules.ends)
        for side in SIDES:
            for outline in insert_outlines(plan.grid, _cells(plan, bad, item, side), outlines):
                factors = (_factor(plan, outline, work),)
                one = _insert(plan, outline, side, item, riveted, replace(rules, factors=factors, ends=made_by))
                made.append(replace(one, why=_why(bad, one)))
    inserts = tuple(replace(one, name=f"R{count}") for count, one in enumerate(made, start=1))
    return RenewalPlan(inserts, renewal_total([one.made for one in inserts if not one.apart]))


def _cells(plan: ShellPlan, bad: Sequence[Mapping[str, Any]], item: str, side: Side) -> Flags:
    """Mark the bad cells of one side that an item of their own renews, or none."""
    there = [one for one in bad if one.get("item", "") == item and one["side"] == side]
    if not {one["strake"] for one in there} <= set(plan.strakes):
        raise OutOfRange("a bad frame space names a strake that the shell has not")
    strake = np.array([plan.strakes.index(one["strake"]) for one in there], np.int64)
    return plan.grid.cells(strake, np.array([one["at"] for one in there], np.float64))


def _insert(
    plan: ShellPlan, outline: Outline, side: Side, item: str, joints: Sequence[Joint], rules: RenewalRules
) -> PlannedRenewal:
    thickness = float(plan.thickness[outline.lower : outline.upper, outline.aft : outline.forward].max())
    if thickness <= 0.0:
        raise OutOfRange("an insert lies where no strake has plate")
    aft, forward = float(plan.grid.frames[outline.aft]), float(plan.grid.frames[outline.forward])
    made = renewal_of(plan.grid, outline, thickness, joints_of(plan, outline, joints, rules.ends), rules)
    strakes = tuple(plan.strakes[strake] for strake in outline.strakes)
    return PlannedRenewal("", side, strakes, aft, forward, made, thickness, apart=item)


def _why(bad: Sequence[Mapping[str, Any]], one: PlannedRenewal) -> tuple[str, ...]:
    """Give why the frame spaces within an insert are renewed."""
    inside = [
        space
        for space in bad
        if space["side"] == one.side and space["strake"] in one.strakes and one.aft <= space["at"] <= one.forward
    ]
    mine = [space for space in inside if space.get("item", "") == one.apart]
    return tuple(dict.fromkeys(space["why"] for space in mine if "why" in space))


def _factor(plan: ShellPlan, outline: Outline, work: Sequence[Mapping[str, Any]]) -> float:
    factor = 1.0
    for strake in outline.strakes:
        for one in work:
            if plan.strakes[strake] in one["strakes"]:
                own = PLACE_FACTORS[one["place"]] * CURVATURE_FACTORS[one.get("curvature", "none")]
                factor = max(factor, own)
    return factor


def outputs_of(plan: RenewalPlan) -> dict[str, float]:
    """Give the totals as the outputs of the method."""
    total = plan.total
    return {
        "inserts": float(total.inserts),
        "area": total.area,
        "mass": total.mass,
        "rivets": float(total.rivets_removed),
        "rivets_renewed": float(total.rivets_renewed),
        "rivets_near_welds": float(total.rivets_near_welds),
        "seam": total.seam,
        "butt": total.butt,
        "end_weld": total.end_weld,
        "joint": total.joint,
        "weld": total.weld,
        "hours": total.man_hours,
    }


def _rows(description: str) -> dict[str, Any]:
    return {"type": "integer", "minimum": 0, "description": description}


METHOD = Method(
    name="shell.renewal",
    title="Plate to renew, as named by the survey",
    formula="inserts round frame spaces to renew; m = A t rho (1 + tol); rivets = rows x length / pitch",
    source=Citation(
        "IACS Recommendation 47, Part B", "least sizes and corners; NVIC 7-68, cuts on seams", "from memory"
    ),
    valid="outlines for pricing; the naval architect draws each plate",
    inputs={
        "shell": SHELL,
        "bad": listed(
            record(
                "One frame space.",
                ("strake", "side", "at"),
                strake=text("Its strake."),
                side={"type": "string", "enum": list(SIDES), "description": "Its side."},
                at=length("A place in it, forward of the after perpendicular."),
                item=text("The item that renews it, where it is one of its own."),
                why=text("Why it is renewed."),
            ),
            "Frame spaces in which plate is renewed, as `shell.bad-spaces` finds them.",
            0,
        ),
        "rivet": length("Diameter of the shell's rivets."),
        "seam_rows": _rows("Rows of rivets in a seam, where no joint says otherwise."),
        "butt_rows": _rows("Rows of rivets in a lapped butt, where no joint says otherwise."),
        "seam_pitch": length("Pitch at seams and butts; 4.5 diameters unless given.", "85 mm"),
        "frame_pitch": length("Pitch at frames; 7 diameters unless given.", "133 mm"),
        "joints": JOINTS_INPUT,
        "fastening": {
            "type": "string",
            "enum": ["riveted", "welded edges"],
            "description": "How edges of inserts along seams are fastened; riveted unless given.",
        },
        "ends": {
            "type": "string",
            "enum": list(ENDS),
            "description": "How their ends are joined to the old plate; as the edges are unless given.",
        },
        "items": listed(
            record(
                "An item of its own.",
                ("item", "ends"),
                item=text("Its number."),
                ends={"type": "string", "enum": list(ENDS), "description": "How it joins the ends of its plate."},
            ),
            "Items of their own whose ends are joined otherwise.",
            0,
        ),
        "least_bays": {
            "type": "integer",
            "minimum": 1,
            "description": "Frame spaces that an insert spans at least; 1 unless given.",
        },
        "least_size": length("Least length and breadth of an insert; 300 mm unless given.", "300 mm"),
        "corner": number("Radius of corners in thicknesses; 5 unless given.", minimum=0),
        "mill_tolerance": quantity(
            "fraction", "What plate weighs over its nominal mass; by thickness from a table unless given.", "5 %"
        ),
        "hours_rate": number("Man-hours a tonne; by the published tariff unless given.", exclusiveMinimum=0),
        "work": listed(
            record(
                "Strakes on which work is slower.",
                ("strakes", "place"),
                strakes=listed(text("Name of a strake."), "The strakes."),
                place={"type": "string", "enum": list(PLACE_FACTORS), "description": "Their place, by the tariff."},
                curvature={
                    "type": "string",
                    "enum": list(CURVATURE_FACTORS),
                    "description": "Their curvature; none unless given.",
                },
            ),
            "Strakes on which work is slower by the tariff.",
            0,
        ),
    },
    outputs=(
        Symbol("inserts", "inserts", "each", "each"),
        Symbol("area", "plate fitted", "area", "m2"),
        Symbol("mass", "mass of plate fitted, mill tolerance included", "mass", "kg"),
        Symbol("rivets", "rivets removed", "each", "each"),
        Symbol("rivets_renewed", "rivets driven anew", "each", "each"),
        Symbol("rivets_near_welds", "rivets that stay within 150 mm of a weld", "each", "each"),
        Symbol("seam", "seam opened and closed", "length", "m"),
        Symbol("butt", "riveted butt, opened and closed or new at ends", "length", "m"),
        Symbol("end_weld", "new butt welded at ends", "length", "m"),
        Symbol("joint", "seam, butt and welded ends together, to be tested", "length", "m"),
        Symbol("weld", "length round the inserts, as it would be welded", "length", "m"),
        Symbol("hours", "man-hours of steelwork by the tariff, riveting not in it", "person_hour", "person_hour"),
    ),
    kernel=plan_renewal,
    figures=outputs_of,
    example={
        "shell": {
            "frames": ["24.0 m", "24.6 m", "25.2 m", "25.8 m"],
            "seams": [["0.10 m"] * 3, ["1.12 m"] * 3, ["2.22 m"] * 3],
            "strakes": [
                {"strake": "A", "thickness": ["11.1 mm"] * 3, "butts": []},
                {"strake": "B", "thickness": ["9.5 mm"] * 3, "butts": ["25.2 m"]},
            ],
        },
        "bad": [
            {"strake": "B", "side": "port", "at": "24.3 m"},
            {"strake": "B", "side": "starboard", "at": "25.5 m", "item": "335"},
        ],
        "rivet": "19 mm",
        "seam_rows": 1,
        "butt_rows": 2,
        "joints": [{"joint": "seam", "strakes": ["A"], "kind": "lap", "rows": 2, "rivet": "19 mm"}],
        "ends": "riveted strap",
        "items": [{"item": "335", "ends": "weld"}],
        "work": [{"strakes": ["B"], "place": "bottom shell"}],
    },
    optional=frozenset(
        {
            "seam_pitch",
            "frame_pitch",
            "joints",
            "fastening",
            "ends",
            "items",
            "least_bays",
            "least_size",
            "corner",
            "mill_tolerance",
            "hours_rate",
            "work",
        }
    ),
    cautions=(
        "Man-hours by D. Butler, Guide to Ship Repair Estimates, 2000; that factors multiply is assumed.",
        "Inserts follow readings: a plate that nobody gauged is in the contingent quantity.",
    ),
)
