"""Landing with the hydrostatics read again at every step: her hull in the water with the upthrust of a block."""

from __future__ import annotations

from functools import cached_property

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.hydrostatics.buoyant import Buoyant
from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.equilibrium import float_at, float_at_trim
from tenderwright.calculations.hydrostatics.particulars import Hydrostatics
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.hydrostatics.upright import carried, hydrostatics, least_draft
from tenderwright.calculations.landing.held import Afloat, BlockLine
from tenderwright.calculations.landing.root import root_between
from tenderwright.calculations.landing.settling import ComesDown, Landing, Settling
from tenderwright.calculations.landing.stability import Virtual
from tenderwright.calculations.method import OutOfRange

GREATEST_SHARE = 0.9
"""Part of her displacement up to which one block's upthrust is searched."""
NEAR = 1e-9
SEARCH = 200
"""Water levels looked at down to dry for where the stability comes down to a figure."""
FILM = 1e-6
"""Water under the hull at the last level but dry, m."""


class Lander(Struct, frozen=True, eq=False, dict=True):
    """A ship to be landed: hull, weight [kg], centre of gravity and keel line [m], water density [kg/m3]."""

    form: Buoyant
    displacement: float
    lcg: float
    vcg: float
    density: float
    blocks: BlockLine
    keel: float = 0.0
    """Height above the baseline of the keel that the blocks touch: less than nothing for a bar keel. Where it rakes,
    its height at the after perpendicular."""
    free_surface_moment: float = 0.0
    least_gm: float | None = None
    """Metacentric height to be kept without side blocks and shores, m."""
    rake: float = 0.0
    """Rise of the keel forward against the baseline, per length: more than nothing where she drags aft."""

    def __post_init__(self) -> None:
        """Check the centre of gravity. Raises OutOfRange."""
        if not self.vcg > self.keel_at(self.lcg):
            raise OutOfRange("the centre of gravity must be above the keel")

    def keel_at(self, x: float) -> float:
        """Give the height above the baseline of the keel that the blocks touch at x, m."""
        return self.keel + self.rake * x

    def under(self, upthrust: float, x: float) -> Hydrostatics:
        """Find how she floats under an upthrust at x.

        Formula: rho V + P = W and W (LCG - s VCG) = rho V (LCB - s KB) + P (x - s z), s = trim/L; the same as
            afloat with W - P and its centre.
        Source: statics of a floating body (derived). Raises OutOfRange.
        """
        left = self.displacement - upthrust
        if left <= 0:
            raise OutOfRange("the upthrust is not less than her displacement")
        lcg = (self.displacement * self.lcg - upthrust * x) / left
        vcg = (self.displacement * self.vcg - upthrust * self.keel_at(x)) / left
        return float_at(self.form, left, lcg, vcg, self.density)

    @cached_property
    def afloat(self) -> Hydrostatics:
        """Give how she floats before she touches."""
        return self.under(0.0, 0.0)

    @cached_property
    def contact(self) -> tuple[float, float]:
        """Give the block touched first [m] and its upthrust [kg] as she comes to lie on all. Raises OutOfRange."""
        resting, trim = self.resting_trim, self.afloat.trim
        x = self.first_touched(trim)
        if abs(trim - resting) < NEAR:
            return x, 0.0
        limit = GREATEST_SHARE * self.displacement
        low, high = 0.0, self._near(x)
        while (self.under(high, x).trim - resting) * (trim - resting) > 0:
            low, high = high, 2 * high
            if high > limit:
                raise OutOfRange(
                    "no upthrust of the first block takes off her trim: she would not lie on all the blocks"
                )
        return x, root_between(lambda p: self.under(p, x).trim - resting, low, high, NEAR * self.displacement)

    def _near(self, x: float) -> float:
        """Give an upthrust at x [kg] up to which that at settling is looked for first.

        Of a table of hydrostatics, which is not read at any trim, it is little more than that of the hand method.
        """
        if not isinstance(self.form, HullCurves):
            return 0.02 * self.displacement
        h = self.afloat
        by_hand = h.moment_to_change_trim(self.vcg) * (h.trim - self.resting_trim) / (h.lcf - x)
        return 1.2 * abs(by_hand)

    @property
    def resting_trim(self) -> float:
        """Give her trim on all the blocks, m: that of the blocks, less what her keel rakes."""
        return self.blocks.resting_trim(self.form.length) - self.rake * self.form.length

    def first_touched(self, trim: float) -> float:
        """Give the position of the block that touches first at a trim of the baseline, m."""
        return self.blocks.first_touched(trim + self.rake * self.form.length, self.form.length)

    def water_over(self, position: Hydrostatics, x: float) -> float:
        """Give the height of the water over the keel at x, m."""
        return position.draft + position.trim * (0.5 - x / self.form.length) - self.keel_at(x)

    def carried(self, drafts: Floats, trim: Floats | float) -> tuple[Floats, Floats]:
        """Give the mass displaced [kg] and its moment about the baseline through the metacentre [kg m], by draft."""
        return carried(self.form, drafts, trim, self.density)

    def righting_moment(self, carried: Floats, km_moment: Floats) -> Floats:
        """Give RM = rho V KM - W KG + P z - FSM, kg m per radian, with P = W - rho V at the keel's height z.

        Where the keel rakes, z is taken under her centre of gravity, about which the upthrust of all the blocks lies.
        """
        upthrust = self.displacement - carried
        moment: Floats = km_moment - self.displacement * self.vcg + upthrust * self.keel_at(self.lcg)
        return moment - self.free_surface_moment

    def stability(self, position: Hydrostatics) -> Virtual:
        """Give both forms of the virtual metacentric height in a position, heights from the keel on the blocks."""
        left, km, kg = (
            position.displacement,
            position.km_transverse - self.keel_at(position.lcb),
            self.vcg - self.keel_at(self.lcg),
        )
        upthrust = max(0.0, self.displacement - left)
        moment = left * km - self.displacement * kg - self.free_surface_moment
        return Virtual(
            self.displacement,
            upthrust,
            moment,
            moment / self.displacement,
            moment / left,
            upthrust * km / self.displacement,
            upthrust * kg / left,
        )


def held_particulars(ship: Lander) -> Afloat:
    """Read the particulars afloat that the hand method holds constant; heights from the keel on the blocks."""
    h = ship.afloat
    return Afloat(
        displacement=ship.displacement,
        length=ship.form.length,
        draft_aft=h.draft_aft - ship.keel_at(0.0),
        draft_forward=h.draft_forward - ship.keel_at(h.length),
        lcf=h.lcf,
        mass_per_immersion=h.mass_per_immersion,
        moment_to_change_trim=h.moment_to_change_trim(ship.vcg),
        km=h.km_transverse - ship.keel_at(h.lcb),
        kg=ship.vcg - ship.keel_at(ship.lcg),
        free_surface_moment=ship.free_surface_moment,
    )


def settle_exactly(ship: Lander) -> Landing:
    """Find settling and instability with the hydrostatics read again at W - P and at the real trim.

    Formula: at settling the trim under an upthrust at the first block is that of the blocks; from then on the trim is
        held and P = W - rho V(d). Stability is lost where RM = (W - P) KM - W KG + P z - FSM is nothing, KM read
        at that draft and trim; side blocks and shores bear before RM/W, the lesser of the two forms, is the least
        asked for. Drafts are above the keel on the blocks.
    Source: statics of a floating body (derived).
    Range: deck edge clear of the water; liquids keep their centres as she trims; a table of hydrostatics is followed
        down to its lowest draft. Raises OutOfRange.
    """
    free, (x, upthrust) = ship.afloat, ship.contact
    touch, settled = ship.water_over(free, x), ship.under(upthrust, x)
    fall = touch - ship.water_over(settled, x)
    one = Settling(
        x,
        touch,
        upthrust,
        fall,
        settled.draft_aft - ship.keel_at(0.0),
        settled.draft_forward - ship.keel_at(ship.form.length),
        settled.draft_at_lcf - ship.keel_at(settled.lcf),
        ship.stability(settled),
    )
    if ship.stability(free).righting_moment <= 0:
        raise OutOfRange("the metacentric height afloat is not more than nothing: she is not stable before landing")
    bearing = None if ship.least_gm is None else _comes_down(ship, one, free, settled, ship.least_gm)
    return Landing(one, _comes_down(ship, one, free, settled, 0.0), bearing)


def _comes_down(ship: Lander, one: Settling, free: Hydrostatics, settled: Hydrostatics, gm: float) -> ComesDown:
    """Find where the lesser metacentric height first comes down to a figure, from touch; at the latest when dry."""
    x, trim, moment = one.first_block, settled.trim, ship.displacement * gm
    if ship.stability(free).righting_moment <= moment:
        return _there(ship, one, gm, 0.0, 0.0, free.draft, free.trim, free.draft_at_lcf)
    if one.stability.righting_moment <= moment:
        upthrust = root_between(
            lambda p: ship.stability(ship.under(p, x)).righting_moment - moment,
            *(0.0, one.upthrust, NEAR * ship.displacement),
        )
        position = ship.under(upthrust, x)
        fall = one.water_at_touch - ship.water_over(position, x)
        return _there(ship, one, gm, upthrust, fall, position.draft, position.trim, position.draft_at_lcf)
    found = _draft_on_blocks(ship, settled.draft, moment)
    draft = last_draft(ship) if found is None else found
    dry = found is None and not isinstance(ship.form, HullCurves)
    upthrust = ship.displacement if dry else ship.displacement - float(_carried_at(ship, draft)[0][0])
    mean = draft + trim * (0.5 - settled.lcf / ship.form.length)
    there = _there(ship, one, gm, upthrust, one.fall + settled.draft - draft, draft, trim, mean)
    return there if found is not None or dry else replace(there, at_least=True)


def _draft_on_blocks(ship: Lander, start: float, moment: float) -> float | None:
    """Find the draft amidships, on all the blocks and from one down, at which the righting moment is a figure, m."""
    trim = ship.resting_trim

    def above(draft: float) -> float:
        return float(ship.righting_moment(*_carried_at(ship, draft))[0]) - moment

    drafts = np.linspace(start, last_draft(ship) + FILM, SEARCH)
    lost = np.flatnonzero(ship.righting_moment(*ship.carried(drafts, trim)) <= moment)
    if not lost.size:
        return None
    k = int(lost[0])
    if k == 0:
        return start
    return root_between(above, float(drafts[k - 1]), float(drafts[k]), NEAR)


def _carried_at(ship: Lander, draft: float) -> tuple[Floats, Floats]:
    return ship.carried(np.array([draft]), ship.resting_trim)


def greatest_entry_trim(ship: Lander) -> float | None:
    """Give the greatest trim, by the end that touches first, with which she settles at the least metacentric height.

    Formula: on all the blocks at the draft where RM/W is the least asked for, P = W - rho V; her centre of gravity is
        then where rho V at its centre and P at the first block hold her at the trim of the blocks, and the trim sought
        is that at which she floats free with it there.
    Symbols: m, above the trim of level keel. Source: as `settle_exactly` (derived). None where no least is asked for,
    or where she has it neither afloat at the trim of the blocks nor loses it before she is dry, or where a table of
    hydrostatics is not read so far, or her deck edge would be under water first. Raises OutOfRange.
    """
    if ship.least_gm is None:
        return None
    trim, free, form = ship.resting_trim, ship.afloat, ship.form
    afloat = float_at_trim(form, ship.displacement / ship.density, trim, ship.density)
    moment = ship.displacement * ship.least_gm
    if ship.stability(afloat).righting_moment <= moment:
        return None
    draft = _draft_on_blocks(ship, afloat.draft, moment)
    if draft is None:
        return None
    there, x = hydrostatics(form, draft, trim, ship.density), ship.first_touched(free.trim)
    upthrust, slope = ship.displacement - there.displacement, trim / form.length
    # W (LCG - s VCG) = rho V (LCB - s KB) + P (x - s z)
    arms = there.displacement * (there.lcb - slope * there.kb) + upthrust * (x - slope * ship.keel_at(x))
    lcg = arms / ship.displacement + slope * ship.vcg
    try:
        found = float_at(form, ship.displacement, lcg, ship.vcg, ship.density).trim
    except OutOfRange:
        return None
    return found if x == ship.blocks.aft else -found


def _there(
    ship: Lander, one: Settling, gm: float, upthrust: float, fall: float, draft: float, trim: float, mean: float
) -> ComesDown:
    length = ship.form.length
    middle, over = draft - ship.keel_at(length / 2), trim + ship.rake * length
    at_lcf = mean - ship.keel_at(length / 2)
    return ComesDown(gm, upthrust, fall, middle + over / 2, middle - over / 2, at_lcf, fall - one.fall)


def last_draft(ship: Lander) -> float:
    """Give the draft amidships above the baseline, at the trim of the blocks, at which her hull leaves the water or her
    table of hydrostatics ends, m."""
    return least_draft(ship.form, ship.resting_trim)
