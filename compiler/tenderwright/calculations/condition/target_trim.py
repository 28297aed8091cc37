"""Target trim: the least liquid to move between tanks, or with the sea, for a wanted trim."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain

import numpy as np
from msgspec import Struct, field
from msgspec.structs import replace

from tenderwright.calculations.condition.floating import FloatingPosition, floating_position
from tenderwright.calculations.condition.loading import TankLoad, Weight, liquids
from tenderwright.calculations.condition.trim_programme import Bounds, Moments, least_movement
from tenderwright.calculations.hydrostatics.buoyant import Buoyant
from tenderwright.calculations.hydrostatics.equilibrium import float_at_trim
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange
from tenderwright.quantities.display import show

TONNE = 1000.0
ROUNDS = 30
SETTLED = 1e-7
"""Changes of mass [t] between rounds below this end the search."""


class MovableTank(Struct, frozen=True, eq=False):
    """A loaded tank, the liquid it may hold, and the least and greatest mass [kg] wanted in it.

    A tank that must stay as it is has both limits at its present mass.
    """

    load: TankLoad
    liquid: str
    minimum: float
    maximum: float

    def as_input(self) -> dict[str, object]:
        """Give it by names."""
        limits = {"liquid": self.liquid, "minimum": self.minimum, "maximum": self.maximum}
        return self.load.as_input() | limits


class Transfer(Struct, frozen=True):
    """A mass [kg] of liquid to pump from one place to another; `sea` is outside the ship."""

    source: str
    destination: str
    liquid: str
    mass: float


class TrimPlan(Struct, frozen=True):
    """What to move, and how the ship then floats."""

    feasible: bool
    """Whether the trim (and the list, where asked) is met; otherwise this is the nearest that can be had."""
    changes: tuple[float, ...]
    """Change of mass in each tank, in the order given [kg]."""
    transfers: tuple[Transfer, ...]
    masses: tuple[float, ...]
    """What each tank then holds, in the order given [kg]."""
    position: FloatingPosition
    """The full equilibrium with the liquid moved."""

    @property
    def moved(self) -> float:
        """Mass pumped in all [kg]."""
        return sum(t.mass for t in self.transfers)


def target_trim(
    form: Buoyant,
    weights: Sequence[Weight],
    tanks: Sequence[MovableTank],
    trim: float,
    density: float,
    *,
    upright: bool = False,
    exchanged: Sequence[str] = ("sea water",),
) -> TrimPlan:
    """Find the least liquid to move for a wanted trim, and for no list where `upright`.

    Formula: at the wanted slope s = t/L the ship floats where sum(w*(x - s*z)) = W*(LCB - s*KB); this is
    linear in the masses but for the hull's curve over W and the tanks' centroids, which are taken again each
    round. The result is then floated in full.
    Symbols: trim by the stern [m]; density of the water [kg/m3]; `exchanged` liquids may come from or go to
    the sea.
    Source: linear programming on the moments of weights (derived).
    Range: as `floating_position`. Raises OutOfRange.
    """
    for tank in tanks:
        if not 0 <= tank.minimum <= tank.maximum <= tank.load.tank.capacity * tank.load.density * (1 + 1e-9):
            raise OutOfRange(f"{tank.load.name}: limits must run from nothing up to what the tank holds")
    if not tanks:
        raise OutOfRange("there are no tanks to move liquid between")
    now = np.array([t.load.mass for t in tanks]) / TONNE
    search = _Search(form, weights, tanks, trim, density, now, upright)
    change, arms = np.zeros(len(tanks)), search.first_arms()
    for _ in range(ROUNDS):
        moments = search.moments(now + change, arms)
        found, met = least_movement(search.bounds(), [t.liquid for t in tanks], exchanged, moments)
        settled = float(np.abs(found - change).max()) < SETTLED
        change = search.kept(np.where(np.abs(found) < SETTLED, 0.0, found))
        arms = np.where(change != 0, search.secant(now, now + change), arms)
        if settled:
            return _plan(search, tuple((change * TONNE).tolist()), met, exchanged)
    raise OutOfRange("the search for a trim does not settle on one set of tanks")


class _Search(Struct, frozen=True, eq=False):
    form: Buoyant
    weights: Sequence[Weight]
    tanks: Sequence[MovableTank]
    trim: float
    density: float
    now: Floats
    upright: bool
    known: dict[tuple[int, float], tuple[float, ...]] = field(default_factory=dict)
    """The moments of a tank, by its place in the list and the mass in it [t]."""

    @property
    def slope(self) -> float:
        return self.trim / self.form.length

    def bounds(self) -> Bounds:
        least = np.array([t.minimum for t in self.tanks]) / TONNE
        most = np.array([t.maximum for t in self.tanks]) / TONNE
        spans = (least - self.now, most - self.now, self.now - most, self.now - least)
        return Bounds(*(np.maximum(span, 0.0) for span in spans))

    def kept(self, change: Floats) -> Floats:
        """Hold changes to the tanks' limits against the solver's rounding."""
        least = np.array([t.minimum for t in self.tanks]) / TONNE
        most = np.array([t.maximum for t in self.tanks]) / TONNE
        return np.clip(change, least - self.now, most - self.now)

    def loaded(self, masses: Floats) -> list[TankLoad]:
        return [self.load(*one) for one in enumerate(masses.tolist())]

    def load(self, tank: int, mass: float) -> TankLoad:
        return replace(self.tanks[tank].load, mass=mass * TONNE)

    def tank_moments(self, masses: Floats) -> Floats:
        """Give each tank's moments w*(x - s*z) and, where asked, w*y, shape (moments, tanks) [t m]."""
        return self.moments_of(masses)[0]

    def moments_of(self, *fillings: Floats) -> list[Floats]:
        """Give the moments of several fillings of the tanks; what a tank holds is looked at once in a search."""
        each = [list(enumerate(masses.tolist())) for masses in fillings]
        new = [one for one in dict.fromkeys(chain(*each)) if one not in self.known]
        bodies = liquids([self.load(*one) for one in new], self.slope)
        for (tank, mass), body in zip(new, bodies, strict=True):
            x, y, z = body.centroid
            self.known[tank, mass] = ((x - self.slope * z) * mass, y * mass)[: 2 if self.upright else 1]
        return [np.array(list(zip(*(self.known[one] for one in filling), strict=True))) for filling in each]

    def first_arms(self) -> Floats:
        """Give each tank's arms over the middle half of the change its limits allow [m]."""
        b = self.bounds()
        return self.secant(self.now - b.down_most / 2, self.now + b.up_most / 2)

    def secant(self, low: Floats, high: Floats) -> Floats:
        """Give the moment of each tonne between two contents [m], 0 where they are the same."""
        below, above = self.moments_of(low, high)
        rise = above - below
        return np.divide(rise, high - low, out=np.zeros_like(rise), where=high != low)

    def moments(self, masses: Floats, arms: Floats) -> Moments:
        """Give the arms about the point where added mass keeps the slope, and the moments wanted."""
        fixed = sum(w.mass for w in self.weights) / TONNE
        total = fixed + float(masses.sum())
        found = float_at_trim(self.form, total * TONNE / self.density, self.trim, self.density)
        s = self.slope
        surface = found.draft + self.trim * (0.5 - found.lcf / self.form.length)
        keeps = found.lcf - s * surface
        required = total * (found.lcb - s * found.kb) + keeps * (fixed + float(self.now.sum()) - total)
        along = sum(w.mass * (w.x - s * w.z) for w in self.weights) / TONNE
        at_now = self.tank_moments(self.now).sum(axis=1)
        about, wanted = np.array([[keeps]]), np.array([required - along])
        if self.upright:
            about = np.array([[keeps], [0.0]])
            wanted = np.append(wanted, -sum(w.mass * w.y for w in self.weights) / TONNE)
        return Moments(arms - about, wanted - at_now)


def _plan(search: _Search, changes: tuple[float, ...], met: bool, exchanged: Sequence[str]) -> TrimPlan:
    loads = search.loaded(search.now + np.array(changes) / TONNE)
    position = floating_position(search.form, search.weights, loads, search.density)
    if met and abs(position.hydrostatics.trim - search.trim) > 1e-3:
        raise OutOfRange(
            f"the plan gives a trim of {show(position.hydrostatics.trim, 'trim', more=1)}, not "
            f"{show(search.trim, 'trim', more=1)}"
        )
    return TrimPlan(met, changes, _transfers(search.tanks, changes, exchanged), tuple(t.mass for t in loads), position)


def _transfers(
    tanks: Sequence[MovableTank], changes: Sequence[float], exchanged: Sequence[str]
) -> tuple[Transfer, ...]:
    """Pair tanks that give with tanks that take, in the order given; the sea makes up the rest."""
    result: list[Transfer] = []
    for liquid in sorted({t.liquid for t in tanks}):
        own = [(t.load.name, c) for t, c in zip(tanks, changes, strict=True) if t.liquid == liquid]
        giving = {name: -change for name, change in own if change < 0}
        taking = {name: change for name, change in own if change > 0}
        surplus = sum(change for _, change in own)
        if liquid in exchanged and abs(surplus) > SETTLED * TONNE:
            (giving if surplus > 0 else taking)["sea"] = abs(surplus)
        result.extend(_paired(giving, taking, liquid))
    return tuple(result)


def _paired(giving: dict[str, float], taking: dict[str, float], liquid: str) -> list[Transfer]:
    result = []
    for source in giving:
        for destination in taking:
            mass = min(giving[source], taking[destination])
            if mass > SETTLED * TONNE:
                giving[source] -= mass
                taking[destination] -= mass
                result.append(Transfer(source, destination, liquid, mass))
    return result
