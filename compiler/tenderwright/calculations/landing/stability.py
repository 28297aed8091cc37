"""Stability while the blocks carry part of her weight: both forms of the virtual metacentric height."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show

Form = Literal["KM falls", "KG rises"]


class Virtual(Struct, frozen=True):
    """Her virtual stability under an upthrust; heights above the line of action's foot, the keel."""

    displacement: float
    upthrust: float
    righting_moment: float
    """Per radian of heel, kg m: RM = (W - P) KM - W KG - FSM."""
    gm_km_falls: float
    """Form (a): RM/W, m."""
    gm_kg_rises: float
    """Form (b): RM/(W - P), m."""
    loss_km_falls: float
    """P KM/W, m."""
    loss_kg_rises: float
    """P KG/(W - P), m."""

    @property
    def governing(self) -> Form:
        """Name the form with the lesser metacentric height."""
        return "KM falls" if self.gm_km_falls <= self.gm_kg_rises else "KG rises"

    @property
    def gm(self) -> float:
        """Give the lesser of the two, m."""
        return min(self.gm_km_falls, self.gm_kg_rises)


def virtual_stability(
    displacement: float, upthrust: float, km: float, kg: float, free_surface_moment: float = 0.0
) -> Virtual:
    """Find both forms of the virtual metacentric height.

    Formula: RM = (W - P) KM - W KG - FSM; (a) KM falls by P KM/W, GM1 = RM/W;
        (b) KG rises by P KG/(W - P), G1M = RM/(W - P); so W GM1 = (W - P) G1M.
    Symbols: W, P [kg]; KM, KG [m] above the keel on which P acts; FSM [kg m].
    Source: Derrett, Ship Stability for Masters and Mates, pp. 246-249; one moment for both forms is derived, so
    that the free surface is FSM/W in form (a) and FSM/(W - P) in form (b).
    Range: 0 <= P < W, small heel, P on the centreline. Raises OutOfRange.
    """
    if displacement <= 0 or km <= 0:
        raise OutOfRange("displacement and KM must be more than nothing")
    if kg < 0 or free_surface_moment < 0:
        raise OutOfRange("KG and the free-surface moment must not be less than nothing")
    if not 0 <= upthrust < displacement:
        raise OutOfRange(f"an upthrust of {show(upthrust, 'weight')} is not between nothing and her displacement")
    left = displacement - upthrust
    moment = left * km - displacement * kg - free_surface_moment
    return Virtual(
        displacement,
        upthrust,
        moment,
        moment / displacement,
        moment / left,
        upthrust * km / displacement,
        upthrust * kg / left,
    )


def instability_upthrust(displacement: float, km: float, kg: float, free_surface_moment: float = 0.0) -> float:
    """Give the upthrust at which both forms reach zero, P0 = W - (W KG + FSM)/KM, which is W GM/KM, kg.

    Source: derived. Raises OutOfRange where she is not stable afloat.
    """
    if displacement <= 0 or km <= 0:
        raise OutOfRange("displacement and KM must be more than nothing")
    upthrust = displacement - (displacement * kg + free_surface_moment) / km
    if upthrust <= 0:
        raise OutOfRange("the metacentric height afloat is not more than nothing: she is not stable before landing")
    return upthrust


def _kernel(
    displacement: float, upthrust: float, km: float, kg: float, free_surface_moment: float = 0.0
) -> Mapping[str, Any]:
    found = virtual_stability(displacement, upthrust, km, kg, free_surface_moment)
    return {
        "gm_km_falls": found.gm_km_falls,
        "gm_kg_rises": found.gm_kg_rises,
        "gm": found.gm,
        "governing": found.governing,
        "loss_km_falls": found.loss_km_falls,
        "loss_kg_rises": found.loss_kg_rises,
        "righting_moment": found.righting_moment,
        "instability_upthrust": instability_upthrust(displacement, km, kg, free_surface_moment),
    }


METHOD = Method(
    name="docking.stability",
    title="Virtual metacentric height while landing",
    formula="RM = (W − P) KM − W KG − FSM; (a) KM falls: GM₁ = RM/W; (b) KG rises: G₁M = RM/(W − P); "
    "P₀ = W − (W KG + FSM)/KM",
    source=Citation("Derrett, Ship Stability for Masters and Mates", "Drydocking and grounding, pp. 246-249"),
    valid="small heel; upthrust on the centreline at the keel; KM held, or read at the displacement W − P",
    inputs={
        "displacement": quantity("mass", "Displacement afloat."),
        "upthrust": quantity("mass", "Upthrust of the blocks."),
        "km": quantity("length", "Transverse metacentre above the keel."),
        "kg": quantity("length", "Centre of gravity above the keel, without free surfaces."),
        "free_surface_moment": quantity("moment", "Sum over the slack tanks.", "100 t*m"),
    },
    outputs=(
        Symbol("gm_km_falls", "virtual GM, form (a), KM falls", "length", "m"),
        Symbol("gm_kg_rises", "virtual GM, form (b), KG rises", "length", "m"),
        Symbol("gm", "lesser of the two", "length", "m"),
        Symbol("governing", "form that governs", "text", ""),
        Symbol("loss_km_falls", "loss by upthrust, form (a)", "length", "m"),
        Symbol("loss_kg_rises", "loss by upthrust, form (b)", "length", "m"),
        Symbol("righting_moment", "righting moment per radian of heel", "moment", "t*m"),
        Symbol("instability_upthrust", "upthrust at which stability is lost", "mass", "t"),
    ),
    kernel=_kernel,
    example={"displacement": "6000 t", "upthrust": "60 t", "km": "7.5 m", "kg": "6.0 m"},
    optional=frozenset({"free_surface_moment"}),
    cautions=(
        "free surfaces are counted once, by one moment; mixing P KM/W with FSM/(W − P) is not either form",
        "stability is for a naval architect to confirm",
    ),
)
