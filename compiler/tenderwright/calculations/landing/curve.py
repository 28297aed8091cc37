"""Upthrust and metacentric height against the level of the water, from the first touch until she is dry."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike

from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.landing.exact import Lander, last_draft
from tenderwright.calculations.landing.held import Afloat, BlockLine
from tenderwright.calculations.landing.settling import AFLOAT_INPUTS, BLOCK_INPUTS, LARGE_SHARE, settle
from tenderwright.calculations.landing.settling import METHOD as SETTLING
from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show


class LandingCurve(Struct, frozen=True, eq=False):
    """Arrays in step, from the first touch to dry; she lies on all the blocks from index `settled` on.

    Drafts are above the keel on the blocks, m. At the last point nothing is afloat, so that form (b) is not a number.
    """

    water: Floats
    """Over the block touched first, m."""
    upthrust: Floats
    """kg."""
    draft_aft: Floats
    draft_forward: Floats
    righting_moment: Floats
    """Per radian of heel, kg m."""
    displacement: float
    settled: int

    @property
    def fall(self) -> Floats:
        """Give the fall of the water since the first touch, m."""
        found: Floats = self.water[0] - self.water
        return found

    @property
    def gm_km_falls(self) -> Floats:
        """Give form (a), RM/W, m."""
        return self.righting_moment / self.displacement

    @property
    def gm_kg_rises(self) -> Floats:
        """Give form (b), RM/(W - P), m; not a number where nothing is afloat."""
        left = self.displacement - self.upthrust
        afloat = left > 1e-9 * self.displacement
        return np.where(afloat, self.righting_moment / np.where(afloat, left, 1.0), np.nan)

    @property
    def gm(self) -> Floats:
        """Give the lesser of the two, m; form (a) where form (b) is not a number."""
        return np.fmin(self.gm_km_falls, self.gm_kg_rises)


def landing_curve(ship: Lander, before: int = 21, after: int = 60) -> LandingCurve:
    """Follow a landing with the hydrostatics read again at every level.

    `before` points from the first touch to settling, by equal steps of upthrust, and `after` more from there to dry, by
    equal steps of water level; a table of hydrostatics is followed down to its lowest draft.
    Formula and source: as `settle_exactly`. Raises OutOfRange.
    """
    x, critical = ship.contact
    stages = [ship.under(float(p), x) for p in np.linspace(0.0, critical, before)]
    levels = np.linspace(stages[-1].draft, last_draft(ship), after + 1)[1:]
    drafts = np.append([h.draft for h in stages], levels)
    trims = np.append([h.trim for h in stages], np.full(after, ship.resting_trim))
    carried, km_moment = ship.carried(drafts, trims)
    if not isinstance(ship.form, HullCurves):
        carried[-1] = km_moment[-1] = 0.0
    middle, over = drafts - ship.keel_at(ship.form.length / 2), trims + ship.rake * ship.form.length
    return LandingCurve(
        water=middle + over * (0.5 - x / ship.form.length),
        upthrust=ship.displacement - carried,
        draft_aft=middle + over / 2,
        draft_forward=middle - over / 2,
        righting_moment=ship.righting_moment(carried, km_moment),
        displacement=ship.displacement,
        settled=before - 1,
    )


def held_curve(afloat: Afloat, blocks: BlockLine, falls: ArrayLike | None = None) -> LandingCurve:
    """Follow a landing with TPC, MCTC, LCF and KM held constant, at the falls of water given [m].

    Formula: P = f/(1/TPI + l^2/(MCT L)) to settling, then P grows by TPI with the fall; RM = (W - P) KM - W KG - FSM.
    Without falls: touch, settling, and where the upthrust would reach her displacement, in 80 steps. A fall at or after
    settling counts as settled. Source: as `settle`. Raises OutOfRange.
    """
    one = settle(afloat, blocks).settling
    last = one.fall + (afloat.displacement - one.upthrust) / afloat.mass_per_immersion
    if falls is None:
        f = np.unique(np.append(np.linspace(0.0, last, 80), one.fall))
    else:
        f = np.asarray(falls, dtype=np.float64)
    share = np.clip(f / one.fall, 0.0, 1.0) if one.fall > 0 else np.ones_like(f)
    upthrust = share * one.upthrust + afloat.mass_per_immersion * np.clip(f - one.fall, 0.0, None)
    upthrust = np.minimum(upthrust, afloat.displacement)
    trim = afloat.trim + share * (blocks.resting_trim(afloat.length) - afloat.trim)
    water = one.water_at_touch - f
    after = water + trim * one.first_block / afloat.length
    moment = (afloat.displacement - upthrust) * afloat.km - afloat.displacement * afloat.kg - afloat.free_surface_moment
    return LandingCurve(
        water, upthrust, after, after - trim, moment, afloat.displacement, int(np.searchsorted(f, one.fall))
    )


def at_level(afloat: Afloat, blocks: BlockLine, water: float) -> LandingCurve:
    """Follow a landing by the hand method from the first touch to one level of the water, the last of the curve.

    Formula, source: as `held_curve`. Symbols: water over the block touched first [m]. Range: from the first touch down
    to where all her weight is on the blocks. Raises OutOfRange.
    """
    touch = settle(afloat, blocks).settling.water_at_touch
    if water > touch:
        raise OutOfRange(
            f"she is still afloat: she touches with {show(touch, 'centre', more=1)} of water over the first block"
        )
    found = held_curve(afloat, blocks, [0.0, touch - water])
    if found.upthrust[-1] >= afloat.displacement:
        raise OutOfRange(
            f"with {show(water, 'water level', more=1)} of water over the first block all her weight is on the blocks"
        )
    return found


def _kernel(
    water: float, block_aft: float, block_forward: float, declivity: float = 0.0, **afloat: float
) -> Mapping[str, Any]:
    curve = at_level(Afloat(**afloat), BlockLine(block_aft, block_forward, declivity), water)
    share = curve.upthrust[-1] / curve.displacement
    figures = {
        "water_at_touch": curve.water[0],
        "fall": curve.fall[-1],
        "upthrust": curve.upthrust[-1],
        "upthrust_share": share,
        "draft_aft": curve.draft_aft[-1],
        "draft_forward": curve.draft_forward[-1],
        "gm_km_falls": curve.gm_km_falls[-1],
        "gm_kg_rises": curve.gm_kg_rises[-1],
        "gm": curve.gm[-1],
        "righting_moment": curve.righting_moment[-1],
    }
    told = {"on_all_blocks": curve.settled < 2, "hand_method_in_range": bool(share <= LARGE_SHARE)}
    return {name: float(figure) for name, figure in figures.items()} | told


METHOD = Method(
    name="docking.at-level",
    title="Upthrust, drafts and stability at one level of the water, by the hand method",
    formula="P = f/(1/TPC + l²/(MCTC L)) until she lies on all the blocks, then TPC f more; RM = (W − P) KM − W KG",
    source=SETTLING.source,
    valid=SETTLING.valid,
    inputs={
        **AFLOAT_INPUTS,
        **BLOCK_INPUTS,
        "water": quantity("length", "Water over the block touched first."),
    },
    outputs=(
        Symbol("water_at_touch", "water over the first block as she touches it", "length", "m"),
        Symbol("fall", "fall of water since then", "length", "m"),
        Symbol("on_all_blocks", "whether she lies on all the blocks", "truth", ""),
        Symbol("upthrust", "upthrust of the blocks", "mass", "t"),
        Symbol("upthrust_share", "upthrust by displacement", "fraction", "%"),
        Symbol("hand_method_in_range", "whether that is small enough to hold the particulars constant", "truth", ""),
        Symbol("draft_aft", "draft aft", "length", "m"),
        Symbol("draft_forward", "draft forward", "length", "m"),
        Symbol("gm_km_falls", "virtual GM, form (a), KM falls", "length", "m"),
        Symbol("gm_kg_rises", "virtual GM, form (b), KG rises", "length", "m"),
        Symbol("gm", "lesser of the two", "length", "m"),
        Symbol("righting_moment", "righting moment per radian of heel", "moment", "t*m"),
    ),
    kernel=_kernel,
    example={**SETTLING.example, "water": "4.3 m"},
    optional=SETTLING.optional - {"least_gm"},
    cautions=SETTLING.cautions,
)
