"""Upthrust and metacentric height against the level of the water, from the first touch until she is dry."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.landing.exact import Lander, dry_draft, first_contact
from tenderwright.calculations.landing.held import Afloat, BlockLine
from tenderwright.calculations.landing.settling import settle


@dataclass(frozen=True, eq=False)
class LandingCurve:
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
    equal steps of water level. Formula and source: as `settle_exactly`. Raises OutOfRange.
    """
    free = ship.under(0.0, 0.0)
    x, critical = first_contact(ship, free)
    stages = [ship.under(float(p), x) for p in np.linspace(0.0, critical, before)]
    levels = np.linspace(stages[-1].draft, dry_draft(ship), after + 1)[1:]
    drafts = np.append([h.draft for h in stages], levels)
    trims = np.append([h.trim for h in stages], np.full(after, ship.resting_trim))
    carried, km_moment = ship.carried(drafts, trims)
    carried[-1] = km_moment[-1] = 0.0
    middle = drafts - ship.keel
    return LandingCurve(
        water=middle + trims * (0.5 - x / ship.form.length),
        upthrust=ship.displacement - carried,
        draft_aft=middle + trims / 2,
        draft_forward=middle - trims / 2,
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
