"""How she lands: by the hand method before the tanks are moved, then with the hydrostatics read again at every step."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.hydrostatics.at_weight import METHOD as AT_WEIGHT
from tenderwright.calculations.hydrostatics.at_weight import AtWeight
from tenderwright.calculations.landing.entry_limit import METHOD as ENTRY_LIMIT
from tenderwright.calculations.landing.entry_trim import METHOD as ENTRY_TRIM
from tenderwright.calculations.landing.held import BlockLine, lever
from tenderwright.calculations.landing.landing import METHOD as LANDING
from tenderwright.calculations.landing.landing import BothLandings
from tenderwright.calculations.landing.settling import METHOD as SETTLING
from tenderwright.calculations.ship.block_places import (
    PlacedBlock,
    first_block,
    given_allowable,
    given_cap,
    given_line,
)
from tenderwright.calculations.ship.buoyancy import Buoyancy
from tenderwright.calculations.ship.docking_condition import given_condition
from tenderwright.calculations.ship.keel import KeelLine
from tenderwright.calculations.ship.wanted import LEAST_GM, USUAL, given_least_gm, least_gm, trim_tolerance
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.lightship import Lightship
from tenderwright.model.particulars import Particulars
from tenderwright.quantities.display import show

_ENTRY = ("trim", "governs", "least_trim", "result")
_LANDING_NAMES = {s.name: s.name.replace("_", "-") for s in LANDING.outputs if not s.name.startswith("curve")}


class Stage(Struct, frozen=True):
    """A stage of the water falling, in order."""

    name: str
    water: float
    """Over the top of the keel blocks at the first block touched."""
    draft_aft: float
    """Above the underside of the keel."""
    draft_forward: float
    upthrust: float
    gm: float | None
    """The lesser of the two virtual metacentric heights."""


@step_of(AT_WEIGHT, "docking.estimate-afloat")
def afloat_at_trim(
    arrival: FloatingPosition, buoyancy: Buoyancy, lightship: Lightship, dock_water: Given
) -> Uses | Absent:
    """Find her particulars with weights and liquids as on arrival, at the trim wanted for docking."""
    if buoyancy.estimated:
        return buoyancy.estimated
    wanted = lightship.docking.trim if lightship.docking else None
    loading, trim = arrival.loading, arrival.hydrostatics.trim
    inputs = {
        **buoyancy.given,
        "displacement": Given(loading.mass, show(loading.mass, "weight"), "condition.arrival.displacement"),
        "trim": given(wanted) if wanted else Given(trim, show(trim, "trim", more=1), "condition.arrival.trim"),
        "density": dock_water,
        "kg": Given(loading.vcg, show(loading.vcg, "centre", more=1), "condition.arrival.vcg"),
    }
    return Uses("weights and liquids as on arrival, at the trim wanted", inputs, lightship.here)


@step_of(SETTLING, "docking.estimate")
def landing_estimate(
    afloat_at_trim: AtWeight,
    arrival: FloatingPosition,
    block_line: BlockLine,
    docking_plan: DockingPlan,
    keel_line: KeelLine,
    lightship: Lightship,
) -> Uses:
    """Find the landing by the hand method at the trim wanted, with weights and liquids as on arrival."""
    h, keel = afloat_at_trim.hydrostatics, keel_line.at
    from_here = "docking.estimate-afloat"
    moment = arrival.loading.free_surface_moment
    figures = {
        "displacement": (arrival.loading.mass, "weight", "condition.arrival.displacement"),
        "length": (h.length, "centre", "vessel/particulars.yaml"),
        "draft_aft": (h.draft_aft - keel(0.0), "centre", f"{from_here}.draft-aft"),
        "draft_forward": (h.draft_forward - keel(h.length), "centre", f"{from_here}.draft-forward"),
        "lcf": (h.lcf, "centre", f"{from_here}.lcf"),
        "mass_per_immersion": (h.mass_per_immersion, "immersion", f"{from_here}.mass-per-immersion"),
        "moment_to_change_trim": (
            afloat_at_trim.moment_to_change_trim, "change of trim", f"{from_here}.moment-to-change-trim",
        ),
        "km": (h.km_transverse - keel(h.lcb), "centre", f"{from_here}.km-transverse"),
        "kg": (arrival.loading.vcg - keel(arrival.loading.lcg), "centre", "condition.arrival.vcg"),
        "free_surface_moment": (moment, "moment", "condition.arrival.free-surface-moment"),
    }  # fmt: skip
    inputs = {name: Given(si, show(si, purpose, digits=4), origin) for name, (si, purpose, origin) in figures.items()}
    about = "at the trim wanted, weights and liquids as on arrival; drafts above the underside of the keel"
    inputs |= given_line(block_line, docking_plan) | given_least_gm(docking_plan, lightship)
    return Uses(about, inputs, docking_plan.here)


@step_of(LANDING, "docking.landing", names=_LANDING_NAMES, kept=True)
def landing(
    docking: FloatingPosition,
    buoyancy: Buoyancy,
    block_line: BlockLine,
    docking_plan: DockingPlan,
    keel_line: KeelLine,
    dock_water: Given,
    lightship: Lightship,
) -> Uses | Absent:
    """Land her from the docking condition by both methods."""
    if buoyancy.estimated:
        return buoyancy.estimated
    inputs = {**buoyancy.given, "density": dock_water} | given_condition("condition.docking", docking)
    inputs |= given_line(block_line, docking_plan) | keel_line.given
    inputs |= given_least_gm(docking_plan, lightship)
    return Uses("from the docking condition; drafts above the underside of the keel", inputs, docking_plan.here)


@step_of(ENTRY_TRIM, "docking.entry")
def entry_trim(
    landing: BothLandings, block_line: BlockLine, docking_plan: DockingPlan, lightship: Lightship
) -> Uses | Absent:
    """Find the greatest trim on entering that leaves the metacentric height asked for."""
    least = least_gm(docking_plan, lightship)
    if least is None:
        return Lacking(LEAST_GM)
    afloat = landing.afloat
    figures = {
        "displacement": (afloat.displacement, "weight", "condition.docking.displacement"),
        "km": (afloat.km, "centre", "condition.docking.km"),
        "kg": (afloat.kg, "centre", "condition.docking.vcg"),
        "free_surface_moment": (afloat.free_surface_moment, "moment", "condition.docking.free-surface-moment"),
    }
    inputs = {name: Given(si, show(si, purpose, digits=4), origin) for name, (si, purpose, origin) in figures.items()}
    inputs |= _first_end(landing, block_line, docking_plan) | {"least_gm": given(least)}
    return Uses("trim that keeps the least metacentric height, docking condition", inputs, least.at)


def _first_end(landing: BothLandings, block_line: BlockLine, plan: DockingPlan) -> dict[str, Given]:
    """Give lever, moment to change trim and slope of the blocks, all as seen from the end that touches first."""
    afloat, read = landing.afloat, "read in the docking condition"
    arm, moment = lever(block_line, afloat), afloat.moment_to_change_trim
    found = {
        "lever": Given(arm, show(arm, "centre", digits=4), "from the first block to the centre of flotation"),
        "moment_to_change_trim": Given(moment, show(moment, "change of trim", digits=4), read),
        "length": Given(afloat.length, show(afloat.length, "centre", digits=4), "vessel/particulars.yaml"),
    }
    if plan.declivity is None:
        return found | {"declivity": Given(0.0, "level", "no declivity is given")}
    slope = plan.declivity.value
    if landing.exact.settling.first_block == block_line.aft:
        return found | {"declivity": given(slope)}
    return found | {"declivity": Given(-slope.si, f"{slope}, seen from forward", slope.at)}


@step_of(ENTRY_LIMIT, "docking.entry-limit", names={name: name.replace("_", "-") for name in _ENTRY})
def entry_limit(
    landing: BothLandings,
    entry_trim: Mapping[str, Any] | None,
    block_line: BlockLine,
    placed_keel_blocks: tuple[PlacedBlock, ...],
    docking_plan: DockingPlan,
    particulars: Particulars,
    lightship: Lightship,
) -> Uses | Absent:
    """Find the trim with which she may enter: the least of what stability, the first block and the tender allow."""
    if lightship.docking is None:
        return Lacking("it needs `docking` with the `trim` wanted in vessel/lightship.yaml")
    wanted, tolerance = lightship.docking.trim, trim_tolerance(lightship)
    by_first = 1.0 if landing.exact.settling.first_block == block_line.aft else -1.0
    words = str(wanted) if by_first > 0 else f"{wanted}, by the head {show(-wanted.si, 'centre', digits=4)}"
    inputs = {
        "wanted": Given(by_first * wanted.si, words, wanted.at),
        "tolerance": tolerance,
        "tolerance_source": Given("the tender's own", "the tender's own", lightship.docking.here),
    }
    if lightship.docking.trim_tolerance is None:
        inputs["tolerance_source"] = Given(USUAL, USUAL, lightship.docking.here)
    inputs |= _first_end(landing, block_line, docking_plan)
    if entry_trim is not None:
        held = float(entry_trim["trim"])
        inputs["stability_held"] = Given(held, show(held, "centre", digits=4), "docking.entry.trim")
    if landing.entry_trim is not None:
        exact = landing.entry_trim
        inputs["stability_exact"] = Given(exact, show(exact, "centre", digits=4), "docking.landing.entry-trim")
    first = first_block(placed_keel_blocks, landing.exact.settling.first_block)
    inputs |= given_cap(first, particulars) | given_allowable(docking_plan)
    return Uses(f"trim on entering, docking condition, first block at {first.position}", inputs, wanted.at)


@step()
def landing_stages(landing: BothLandings) -> tuple[Stage, ...]:
    """Give the levels of the water from the first touch to dry."""
    afloat, found = landing.afloat, landing.exact
    one, zero = found.settling, found.instability
    touch = Stage(
        "first block touched",
        one.water_at_touch,
        afloat.draft_aft,
        afloat.draft_forward,
        0.0,
        landing.gm_afloat,
    )
    settled = Stage(
        "on all the blocks",
        one.water_at_touch - one.fall,
        one.draft_aft,
        one.draft_forward,
        one.upthrust,
        one.stability.gm,
    )
    bear = None
    least = [each.bearing for each in (found, landing.held) if each.bearing is not None]
    if least:
        first = min(least, key=lambda bearing: bearing.margin)
        bear = Stage(
            "side blocks and shores bear by now",
            settled.water - first.margin,
            first.draft_aft,
            first.draft_forward,
            first.upthrust,
            None if first.at_least else first.gm,
        )
    lost = Stage(
        "stability lost without side blocks",
        one.water_at_touch - zero.fall,
        zero.draft_aft,
        zero.draft_forward,
        zero.upthrust,
        0.0,
    )
    dry = Stage("dry", 0.0, 0.0, 0.0, afloat.displacement, None)
    between = [
        stage
        for stage in (settled, bear, None if zero.at_least else lost)
        if stage is not None and (stage is settled or stage.upthrust < 0.999 * afloat.displacement)
    ]
    return (touch, *sorted(between, key=lambda stage: -stage.water), dry)
