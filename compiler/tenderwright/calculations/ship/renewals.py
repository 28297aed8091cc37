"""Renewal of shell plate: inserts for what is beyond its limit at the docking, and what a denser survey would add."""

from __future__ import annotations

from typing import Any

from tenderwright.calculations.renewal.bad_spaces import METHOD as BAD_SPACES
from tenderwright.calculations.renewal.bad_spaces import BadSpaces
from tenderwright.calculations.renewal.found_later import METHOD as FOUND_LATER
from tenderwright.calculations.renewal.outlines import LEAST_SIZE, LEAST_SIZE_SOURCE
from tenderwright.calculations.renewal.shell_plan import ShellPlan
from tenderwright.calculations.renewal.shell_renewal import METHOD as RENEWAL
from tenderwright.calculations.renewal.shell_renewal import RenewalPlan
from tenderwright.calculations.ship.pitting import PitStretch
from tenderwright.calculations.steps.outcome import Absent, Each, Lacking
from tenderwright.calculations.steps.step import Uses, step_of
from tenderwright.calculations.thickness.named_readings import SIDES
from tenderwright.calculations.thickness.pitting import Pitting
from tenderwright.calculations.thickness.shell_forecast import ShellCondition
from tenderwright.calculations.value import Given, given
from tenderwright.model.shell_condition import RenewalPractice
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.model.vessel import Strake
from tenderwright.quantities.display import plainly, show


@step_of(BAD_SPACES, "shell.bad", names={name: name for name in ("spaces", "now", "next", "pits", "apart")})
def bad_spaces(
    shell_forecast: ShellCondition,
    condition: ShipCondition,
    strakes: tuple[Strake, ...],
    shell_plan: ShellPlan,
    pit_stretches: dict[str, PitStretch],
    pits_judged: Each[Pitting],
) -> Uses:
    """Find the frame spaces in which plate is renewed."""
    pits = [
        {"strake": pit_stretches[name].pitted.strake.name, "side": pit_stretches[name].side, "at": pit.at}
        for name, judged in pits_judged.items()
        for pit in judged.pits
        if pit.treatment == "local insert"
    ]
    of = ", ".join(f"shell.pits.{name}.inserts" for name in pits_judged)
    inputs = {
        "shell": _given_plan(shell_plan, strakes),
        "forecast": Given(shell_forecast, f"{len(shell_forecast.calls)} plates called", "shell.plates.gauged"),
        "pits": Given(pits, f"{len(pits)} pits that call for a local insert", of or condition.here),
        "apart": _given_apart(condition),
    }
    return Uses("both sides", inputs, condition.here)


def _given_plan(plan: ShellPlan, strakes: tuple[Strake, ...]) -> Given:
    return Given(plan, plan.words, strakes[0].here)


def _given_apart(condition: ShipCondition) -> Given:
    apart = [
        {
            "item": one.item.name,
            "strake": one.strake.name,
            **({"side": one.side} if one.side in SIDES else {}),
            "from": one.from_.x,
            "to": one.to.x,
        }
        for one in condition.apart
    ]
    words = "; ".join(f"item {one.item}: {one.strake} {one.side}, {one.from_} to {one.to}" for one in condition.apart)
    return Given(apart, words or "none", condition.apart[0].here if condition.apart else condition.here)


@step_of(RENEWAL, "shell.renewal")
def shell_renewal(
    bad_spaces: BadSpaces, condition: ShipCondition, strakes: tuple[Strake, ...], shell_plan: ShellPlan
) -> Uses | Absent:
    """Lay out the inserts of both sides."""
    practice = condition.renewal
    if practice is None:
        return Lacking("it needs `renewal` in vessel/condition.yaml")
    bad = bad_spaces.spaces()
    inputs = {
        "shell": _given_plan(shell_plan, strakes),
        "bad": Given(bad, f"{len(bad)} frame spaces to renew", "shell.bad.spaces"),
        "rivet": Given(practice.rivet.si, f"{practice.rivet}, {practice.source}", practice.rivet.at),
        "seam_rows": Given(practice.seam_rows, str(practice.seam_rows), practice.here),
        "butt_rows": Given(practice.butt_rows, str(practice.butt_rows), practice.here),
        "fastening": Given(practice.fastening, practice.fastening, practice.here),
        "least_bays": Given(practice.least_bays, str(practice.least_bays), practice.here),
        "least_size": given(practice.least_size)
        if practice.least_size
        else Given(LEAST_SIZE, plainly(LEAST_SIZE, "size"), str(LEAST_SIZE_SOURCE)),
        **_optional(practice),
        **_joints(strakes),
        **_items(condition),
    }
    return Uses("plate named for renewal, items of their own left out", inputs, practice.here)


def _joints(strakes: tuple[Strake, ...]) -> dict[str, Given]:
    """Give the joints that differ from the ship's usual ones, by strake, as an input."""
    written = [(strake, one) for strake in strakes for one in strake.joints]
    joints = []
    for strake, one in written:
        joint: dict[str, Any] = {"joint": one.joint, "strakes": [strake.strake], "kind": one.kind, "rows": one.rows}
        joint["rivet"] = one.rivet.si
        if one.pitch is not None:
            joint["pitch"] = one.pitch.si
        joint |= {name: end.x for name, end in (("from", one.from_), ("to", one.to)) if end is not None}
        joints.append(joint)
    words = (f"{strake.strake}: {one.joint}, {one.kind}, {one.rows} of {one.rivet}" for strake, one in written)
    return {"joints": Given(joints, "; ".join(words), written[0][1].here)} if joints else {}


def _items(condition: ShipCondition) -> dict[str, Given]:
    """Give the items of their own that join the ends of their plate otherwise, as an input."""
    said = [one for one in condition.apart if one.ends]
    items = [{"item": name, "ends": ends} for name, ends in {one.item.name: one.ends for one in said}.items()]
    words = "; ".join(f"item {one.item}: {one.ends}" for one in said)
    return {"items": Given(items, words, said[0].here)} if items else {}


def _optional(practice: RenewalPractice) -> dict[str, Given]:
    """Give what the practice may say besides, as inputs."""
    inputs = {
        name: given(quantity)
        for name, quantity in (
            ("seam_pitch", practice.seam_pitch),
            ("frame_pitch", practice.frame_pitch),
            ("mill_tolerance", practice.mill_tolerance),
        )
        if quantity is not None
    }
    for name, figure in (("corner", practice.corner), ("hours_rate", practice.hours_rate)):
        if figure is not None:
            inputs[name] = given(figure, origin=practice.here)
    if practice.ends:
        inputs["ends"] = Given(practice.ends, practice.ends, practice.here)
    if practice.work:
        work = [
            {"strakes": [strake.name for strake in one.strakes], "place": one.place, "curvature": one.curvature}
            for one in practice.work
        ]
        words = (f"strakes {', '.join(map(str, w.strakes))}: {w.place}, curvature {w.curvature}" for w in practice.work)
        inputs["work"] = Given(work, "; ".join(words), practice.work[0].here)
    return inputs


@step_of(FOUND_LATER, "shell.contingent", kept=True)
def shell_contingent(
    shell_renewal: RenewalPlan,
    condition: ShipCondition,
    strakes: tuple[Strake, ...],
    shell_plan: ShellPlan,
    bad_spaces: BadSpaces,
) -> Uses:
    """Expect what a denser survey would add to the plate named."""
    total, counts = shell_renewal.total, bad_spaces.by_strake()
    words = "; ".join(f"{s['strake']}: {s['bad']} of {s['sampled']} bad, {s['unsampled']} not gauged" for s in counts)
    joint = total.joint
    inputs = {
        "strakes": Given(counts, words, "shell.bad.spaces"),
        "shell": _given_plan(shell_plan, strakes),
        "renewed_area": Given(total.area, show(total.area, "area", more=1), "shell.renewal.area"),
        "renewed_mass": Given(total.mass, show(total.mass, "small part"), "shell.renewal.mass"),
        "renewed_joint": Given(joint, show(joint, "run", more=1), "shell.renewal.joint"),
    }
    at = condition.renewal.here if condition.renewal else condition.here
    return Uses("plate not gauged, both sides", inputs, at)
