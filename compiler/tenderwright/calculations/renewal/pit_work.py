"""Pits to weld and to fill, by area of their mouths, outside the plate that inserts renew."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from tenderwright.calculations.distinct import distinct
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.renewal.shell_plan import SHELL, ShellPlan, shell_from_input
from tenderwright.calculations.schema import length, listed, quantity, record, text
from tenderwright.calculations.thickness.named_readings import SIDES
from tenderwright.calculations.thickness.pitting import TREATMENTS
from tenderwright.quantities.display import plainly

MEASURE = 0.001
"""Area of pit mouth that one measure of welding covers, m2 (10 cm2; common practice, no source)."""
_ROUND_OFF = 1e-9


def pit_work(
    shell: Mapping[str, Any] | ShellPlan,
    stretches: Sequence[Mapping[str, Any]],
    inserts: Sequence[Mapping[str, Any]] = (),
    measure: float = MEASURE,
) -> dict[str, float]:
    """Find what of pitted plate is welded and filled.

    Formula: mouths = A s, of the area A of a stretch outside the inserts and the share s that is pits; of them the
    same shares are welded and filled as of the pits gauged there. Symbols: shell, the plan; stretches with their
    pits as judged; inserts, by strakes, side and ends; measure in m2. Source: derived. Range: pits gauged much as
    chance would choose: where the deepest were sought out it gives too much welding. Raises OutOfRange.
    """
    plan = shell_from_input(shell)
    if not (math.isfinite(measure) and measure > 0.0):
        raise OutOfRange(f"the area of one measure must be more than nothing, got {plainly(measure, 'area')}")
    welded = filled = worked = 0.0
    counts = dict.fromkeys(TREATMENTS, 0)
    for one in stretches:
        mine = [i for i in inserts if i["side"] == one["side"] and one["strake"] in i["strakes"]]
        left = [p for p in one["pits"] if not any(i["from"] <= p["at"] <= i["to"] for i in mine)]
        area = _area_outside(plan, one, mine)
        for pit in left:
            counts[pit["treatment"]] += 1
        weld, fill = (sum(p["treatment"] == name for p in left) for name in ("weld", "fill with epoxy"))
        if left:
            welded += area * one["share"] * weld / len(left)
            filled += area * one["share"] * fill / len(left)
        worked += area if fill else 0.0
    return {
        "weld": float(counts["weld"]),
        "fill": float(counts["fill with epoxy"]),
        "watch": float(counts["watch"]),
        "inserted": float(sum(len(one["pits"]) for one in stretches) - sum(counts.values())),
        "weld_area": welded,
        "weld_measures": welded / measure,
        "fill_area": filled,
        "worked_area": worked,
    }


def _area_outside(plan: ShellPlan, stretch: Mapping[str, Any], inserts: Sequence[Mapping[str, Any]]) -> float:
    """Give the area of a stretch outside inserts, m2, frame space by frame space."""
    if stretch["strake"] not in plan.strakes:
        raise OutOfRange(f"`{stretch['strake']}` is not one of the strakes")
    strake, frames = plan.strakes.index(stretch["strake"]), plan.grid.frames
    seams = plan.grid.seams
    girth = np.where(plan.exists[strake], seams[strake + 1] - seams[strake], 0.0)
    ends = [stretch["from"], stretch["to"], *(i[end] for i in inserts for end in ("from", "to"))]
    cuts = distinct(np.clip(np.concatenate([frames, ends]), stretch["from"], stretch["to"]))
    middle = 0.5 * (cuts[:-1] + cuts[1:])
    out = np.ones(middle.size, np.bool_)
    for one in inserts:
        out &= (middle < one["from"]) | (middle > one["to"])
    inside = out & (middle > frames[0]) & (middle < frames[-1])
    bay = np.searchsorted(frames, middle[inside]) - 1
    return float((np.diff(cuts)[inside] * girth[bay]).sum())


METHOD = Method(
    name="shell.pit-work",
    title="Pits to weld and to fill",
    formula="mouths = A s outside the inserts; welded and filled as the pits gauged there are",
    source=Citation("Areas by frame space, shares by the pits gauged", standing="derived"),
    valid="pits gauged much as chance would choose; where the deepest were sought out it gives too much welding",
    inputs={
        "shell": SHELL,
        "stretches": listed(
            record(
                "One pitted stretch of a strake on one side.",
                ("strake", "side", "from", "to", "share", "pits"),
                strake=text("Its strake."),
                side={"type": "string", "enum": list(SIDES), "description": "Its side."},
                **{"from": length("Its after end."), "to": length("Its forward end.")},
                share=quantity("fraction", "Share of one face that is pits."),
                pits=listed(
                    record(
                        "One pit.",
                        ("at", "treatment"),
                        at=length("Its place, forward of the after perpendicular."),
                        treatment={"type": "string", "enum": list(TREATMENTS), "description": "What it calls for."},
                    ),
                    "The pits gauged.",
                ),
            ),
            "Pitted stretches, with their pits as judged.",
        ),
        "inserts": listed(
            record(
                "One insert.",
                ("strakes", "side", "from", "to"),
                strakes=listed(text("Name of a strake."), "The strakes that it crosses."),
                side={"type": "string", "enum": list(SIDES), "description": "Its side."},
                **{"from": length("Its after end."), "to": length("Its forward end.")},
            ),
            "Inserts that renew plate; none unless given.",
            0,
        ),
        "measure": quantity("area", "Pit mouth that one measure of welding covers; 10 cm2 unless given.", "10 cm2"),
    },
    outputs=(
        Symbol("weld", "pits gauged to weld", "each", "each"),
        Symbol("fill", "pits gauged to fill with epoxy", "each", "each"),
        Symbol("watch", "pits gauged to watch", "each", "each"),
        Symbol("inserted", "pits gauged that go with the plate renewed", "each", "each"),
        Symbol("weld_area", "area of pit mouths to weld", "area", "m2"),
        Symbol("weld_measures", "the same in measures", "each", "each"),
        Symbol("fill_area", "area of pit mouths to fill", "area", "m2"),
        Symbol("worked_area", "plate of the stretches in which pits are filled", "area", "m2"),
    ),
    kernel=pit_work,
    example={
        "shell": {
            "frames": ["19.2 m", "19.8 m", "20.4 m", "21.0 m", "21.6 m"],
            "seams": [["1.10 m"] * 4, ["2.25 m"] * 4],
            "strakes": [{"strake": "B", "thickness": ["11.1 mm"] * 4, "butts": []}],
        },
        "stretches": [
            {
                "strake": "B",
                "side": "port",
                "from": "19.8 m",
                "to": "21.6 m",
                "share": "12 %",
                "pits": [
                    {"at": "20.2 m", "treatment": "local insert"},
                    {"at": "20.7 m", "treatment": "weld"},
                    {"at": "21.3 m", "treatment": "fill with epoxy"},
                ],
            }
        ],
        "inserts": [{"strakes": ["B"], "side": "port", "from": "19.8 m", "to": "20.4 m"}],
    },
    optional=frozenset({"inserts", "measure"}),
)
