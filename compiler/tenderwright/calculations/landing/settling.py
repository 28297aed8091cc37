"""Landing by the hand method: settling and instability with TPC, MCTC, LCF and KM held constant."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from tenderwright.calculations.landing.held import Afloat, BlockLine, lever
from tenderwright.calculations.landing.stability import Virtual, instability_upthrust, virtual_stability
from tenderwright.calculations.landing.upthrust import critical_upthrust, fall_per_upthrust
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity

LARGE_SHARE = 0.05
"""Upthrust by displacement above which the hand method is to be read with care (common practice, no source)."""


class Settling(Struct, frozen=True):
    """How she lands. Drafts in m; `fall` is the water's since the first block was touched."""

    first_block: float
    """Position of the block touched first, m forward of AP."""
    water_at_touch: float
    """Water over that block at the first touch, m."""
    upthrust: float
    """Just as she comes to lie on all the blocks, kg."""
    fall: float
    draft_aft: float
    draft_forward: float
    true_mean_draft: float
    stability: Virtual
    """At that moment."""


class ComesDown(Struct, frozen=True):
    """Where her metacentric height has come down to a figure: to nothing where she loses her stability."""

    gm: float
    """That figure, m; she may have had less from the start."""

    upthrust: float
    fall: float
    draft_aft: float
    draft_forward: float
    true_mean_draft: float
    margin: float
    """Fall of the water from settling to there, m; less than nothing where it comes before settling."""
    at_least: bool = False
    """Whether she still has more there, where her table of hydrostatics ends: she keeps it up to there at least."""


class Landing(Struct, frozen=True):
    """A landing by either method."""

    settling: Settling
    instability: ComesDown
    bearing: ComesDown | None = None
    """Where the metacentric height is the least asked for, so that side blocks and shores must bear; None without."""


def settle(afloat: Afloat, blocks: BlockLine, least_gm: float | None = None) -> Landing:
    """Find upthrust and drafts at settling, at a least metacentric height x and at instability, her particulars held.

    Formula: P = MCT |t_c|/l; f = P (1/TPI + l^2/(MCT L)) until she lies on all the blocks; d_s = d_m - P/TPI;
        on all the blocks the true mean draft falls with the water; P_x = W - (W (KG + x) + FSM)/KM, at which RM/W, the
        lesser of the two forms, is x; P0 is that for nothing.
        Margin: (P_x - P)/TPI where P_x >= P, otherwise (P_x - P)(1/TPI + l^2/(MCT L)); P_x is nothing where she has
        not x afloat.
    Source: Derrett, Ship Stability for Masters and Mates, pp. 246-249; P_x and the margin are derived.
    Range: LCF over the blocks, stable afloat, afloat at settling. Raises OutOfRange.
    """
    arm = lever(blocks, afloat)
    first = blocks.first_touched(afloat.trim, afloat.length)
    removed = blocks.trim_to_remove(afloat.trim, afloat.length)
    rate = fall_per_upthrust(afloat.mass_per_immersion, afloat.moment_to_change_trim, arm, afloat.length)
    upthrust = critical_upthrust(afloat.moment_to_change_trim, removed, arm)
    if upthrust >= afloat.displacement:
        raise OutOfRange("the upthrust to take off her trim is more than her displacement: she cannot settle so")
    stability = virtual_stability(afloat.displacement, upthrust, afloat.km, afloat.kg, afloat.free_surface_moment)
    mean, aft, forward = _drafts(afloat, blocks, upthrust, upthrust)
    settling = Settling(first, afloat.draft_at(first), upthrust, upthrust * rate, aft, forward, mean, stability)

    def comes_down(gm: float, under: float) -> ComesDown:
        step = 1.0 / afloat.mass_per_immersion if under >= upthrust else rate
        margin = (under - upthrust) * step
        mean, aft, forward = _drafts(afloat, blocks, under, upthrust)
        return ComesDown(gm, under, settling.fall + margin, aft, forward, mean, margin)

    zero = instability_upthrust(afloat.displacement, afloat.km, afloat.kg, afloat.free_surface_moment)
    lost = comes_down(0.0, zero)
    if least_gm is None:
        return Landing(settling, lost)
    most = max(0.0, zero - afloat.displacement * least_gm / afloat.km)
    return Landing(settling, lost, comes_down(least_gm, most))


def _drafts(afloat: Afloat, blocks: BlockLine, upthrust: float, critical: float) -> tuple[float, float, float]:
    """Give true mean draft and drafts aft and forward under an upthrust, before or after settling."""
    resting = blocks.resting_trim(afloat.length)
    share = 1.0 if critical <= 0 else min(1.0, upthrust / critical)
    trim = afloat.trim + share * (resting - afloat.trim)
    mean = afloat.true_mean_draft - upthrust / afloat.mass_per_immersion
    after_share = afloat.lcf / afloat.length
    return mean, mean + trim * after_share, mean - trim * (1.0 - after_share)


def outputs_of(landing: Landing, suffix: str = "") -> dict[str, Any]:
    """Give a landing's figures by name."""
    one, zero, bearing = landing.settling, landing.instability, landing.bearing
    found = {
        "first_block": one.first_block,
        "water_at_touch": one.water_at_touch,
        "upthrust": one.upthrust,
        "fall_to_settling": one.fall,
        "settled_aft": one.draft_aft,
        "settled_forward": one.draft_forward,
        "gm_km_falls": one.stability.gm_km_falls,
        "gm_kg_rises": one.stability.gm_kg_rises,
        "gm": one.stability.gm,
        "governing": one.stability.governing,
        "instability_upthrust": zero.upthrust,
        "instability_aft": zero.draft_aft,
        "instability_forward": zero.draft_forward,
        "margin": zero.margin,
        "bearing_upthrust": None if bearing is None else bearing.upthrust,
        "bearing_aft": None if bearing is None else bearing.draft_aft,
        "bearing_forward": None if bearing is None else bearing.draft_forward,
        "bearing_margin": None if bearing is None else bearing.margin,
    }
    return {name + suffix: value for name, value in found.items()}


LANDING_SYMBOLS = (
    Symbol("first_block", "block touched first, forward of AP", "length", "m"),
    Symbol("water_at_touch", "water over that block at first touch", "length", "m"),
    Symbol("upthrust", "upthrust as she comes to lie on all the blocks", "mass", "t"),
    Symbol("fall_to_settling", "fall of water from first touch to lying on all the blocks", "length", "m"),
    Symbol("settled_aft", "draft aft when settled", "length", "m"),
    Symbol("settled_forward", "draft forward when settled", "length", "m"),
    Symbol("gm_km_falls", "virtual GM at settling, form (a), KM falls", "length", "m"),
    Symbol("gm_kg_rises", "virtual GM at settling, form (b), KG rises", "length", "m"),
    Symbol("gm", "lesser of the two", "length", "m"),
    Symbol("governing", "form that governs", "text", ""),
    Symbol("instability_upthrust", "upthrust at which stability is lost", "mass", "t"),
    Symbol("instability_aft", "draft aft at instability", "length", "m"),
    Symbol("instability_forward", "draft forward at instability", "length", "m"),
    Symbol("margin", "fall of water from settling to instability", "length", "m"),
    Symbol("bearing_upthrust", "upthrust at which the metacentric height is the least asked for", "mass", "t"),
    Symbol("bearing_aft", "draft aft then", "length", "m"),
    Symbol("bearing_forward", "draft forward then", "length", "m"),
    Symbol("bearing_margin", "fall of water from settling to there: side blocks and shores bear before", "length", "m"),
)

SHARE_SYMBOLS = (
    Symbol("upthrust_share", "upthrust at settling by displacement", "fraction", "%"),
    Symbol("hand_method_in_range", "whether that is small enough to hold the particulars constant", "truth", ""),
)


def settled(
    block_aft: float, block_forward: float, declivity: float = 0.0, least_gm: float | None = None, **afloat: float
) -> Landing:
    """Land her by the hand method from converted input; see `settle`. Raises OutOfRange."""
    return settle(Afloat(**afloat), BlockLine(block_aft, block_forward, declivity), least_gm)


def _figures(landing: Landing) -> dict[str, Any]:
    stability = landing.settling.stability
    share = stability.upthrust / stability.displacement
    return outputs_of(landing) | {"upthrust_share": share, "hand_method_in_range": share <= LARGE_SHARE}


AFLOAT_INPUTS: Mapping[str, Mapping[str, Any]] = {
    "displacement": quantity("mass", "Displacement afloat in the dock's water."),
    "length": quantity("length", "Length between the drafts."),
    "draft_aft": quantity("length", "Draft aft in the dock's water."),
    "draft_forward": quantity("length", "Draft forward in the dock's water."),
    "lcf": quantity("length", "Centre of flotation, forward of the after perpendicular."),
    "mass_per_immersion": quantity("line_load", "Mass per unit of immersion (TPC)."),
    "moment_to_change_trim": quantity("mass", "Moment to change trim per unit of trim (MCTC)."),
    "km": quantity("length", "Transverse metacentre above the keel on the blocks."),
    "kg": quantity("length", "Centre of gravity above the same, without free surfaces."),
    "free_surface_moment": quantity("moment", "Sum over the slack tanks.", "50 t*m"),
}
BLOCK_INPUTS: Mapping[str, Mapping[str, Any]] = {
    "block_aft": quantity("length", "Aftermost keel block, forward of the after perpendicular."),
    "block_forward": quantity("length", "Foremost keel block, forward of the after perpendicular."),
    "declivity": quantity("angle", "Angle by which the block line falls aft.", "0.2 deg"),
}
LEAST_GM = quantity("length", "Least metacentric height to be kept without side blocks and shores.", "0.45 m")

METHOD = Method(
    name="docking.settling",
    title="Drafts, upthrust and stability at settling and at instability",
    formula="P = MCTC t_c/l; d_s = d_m − P/TPC; P_x = W − (W (KG + x) + FSM)/KM, x the least GM, or nothing; "
    "d_x = d_m − P_x/TPC; margin = (P_x − P)/TPC",
    source=Citation(
        "Derrett, Ship Stability for Masters and Mates",
        "Drydocking and grounding, pp. 246-249; instability and margin are derived",
    ),
    valid="TPC, MCTC, LCF and KM held constant: upthrust up to 5 to 10 % of displacement (common practice, no source)",
    inputs={**AFLOAT_INPUTS, **BLOCK_INPUTS, "least_gm": LEAST_GM},
    outputs=(*LANDING_SYMBOLS, *SHARE_SYMBOLS),
    kernel=settled,
    figures=_figures,
    example={
        "displacement": "3000 t",
        "length": "84 m",
        "draft_aft": "4.5 m",
        "draft_forward": "4.0 m",
        "lcf": "40 m",
        "mass_per_immersion": "12 t/cm",
        "moment_to_change_trim": "80 t*m/cm",
        "km": "4.5 m",
        "kg": "4.05 m",
        "block_aft": "0 m",
        "block_forward": "84 m",
    },
    optional=frozenset({"free_surface_moment", "declivity", "least_gm"}),
    cautions=(
        "side blocks and shores are not counted: they bear before the metacentric height is the least asked for",
        "the docking plan and stability are for a naval architect and the dockmaster",
    ),
)
