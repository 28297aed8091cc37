"""Quantities of a renewal: the steel, rivets, weld and man-hours of every insert, and their totals."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct

from tenderwright.calculations.renewal.insert import CORNER_THICKNESSES, Insert, insert_steel, mill_overweight
from tenderwright.calculations.renewal.outlines import LEAST_SIZE, Outline
from tenderwright.calculations.renewal.rivets import Fastening, RivetCount, Riveting, insert_rivets
from tenderwright.calculations.renewal.shell_grid import ShellGrid
from tenderwright.calculations.steel.man_hours import hours_per_tonne, renewal_hours, tariff_mass
from tenderwright.calculations.steel.plate_mass import STEEL_DENSITY


class RenewalRules(Struct, frozen=True):
    """How inserts are made: their corners, mill tolerance, fastening, and the factors of their man-hours."""

    fastening: Fastening = "riveted"
    corner: float = CORNER_THICKNESSES
    tolerance: float | None = None
    """Mill tolerance; that of the published table by thickness where None."""
    density: float = STEEL_DENSITY
    factors: tuple[float, ...] = ()
    """Factors of the man-hours, for place, curvature and access."""
    rate: float | None = None
    """Man-hours per tonne of one's own, in place of the published tariff."""
    least: float = LEAST_SIZE


class Renewal(Struct, frozen=True):
    """One insert with all that is counted of it."""

    outline: Outline
    steel: Insert
    rivets: RivetCount
    man_hours: float
    """By the tariff for welded steel; riveting is not in it."""


class RenewalTotal(Struct, frozen=True):
    """What all inserts come to: areas in m², masses in kg, lengths in m."""

    inserts: int
    area: float
    mass: float
    weld: float
    seam: float
    butt: float
    rivets_removed: int
    rivets_renewed: int
    rivets_near_welds: int
    man_hours: float


def renewal_of(
    grid: ShellGrid,
    outline: Outline,
    thickness: float,
    riveting: Riveting,
    butts: Sequence[float] = (),
    rules: RenewalRules | None = None,
) -> Renewal:
    """Count what one insert takes.

    Symbols: thickness of the new plate in m; butts, the lengths of riveted butts within it, m. All its seams are
    opened, and every frame at its ends and between. Source: as `insert_steel`, `insert_rivets` and
    `renewal_hours`. Raises OutOfRange.
    """
    rules = rules or RenewalRules()
    length = grid.length(outline.aft, outline.forward)
    breadth = grid.breadth(outline.lower, outline.upper, outline.aft, outline.forward)
    tolerance = mill_overweight(thickness) if rules.tolerance is None else rules.tolerance
    steel = insert_steel(length, breadth, thickness, tolerance, rules.density, rules.corner, rules.least)
    seams, frames = len(outline.strakes) + 1, len(outline.bays) + 1
    rivets = insert_rivets(length, breadth, seams, frames, butts, riveting, rules.fastening)
    rate = hours_per_tonne(thickness) if rules.rate is None else rules.rate
    hours = renewal_hours(tariff_mass(length, breadth, thickness), rate, rules.factors)
    return Renewal(outline, steel, rivets, hours)


def renewal_total(renewals: Sequence[Renewal]) -> RenewalTotal:
    """Add up inserts."""

    def steel(value: Callable[[Insert], float]) -> float:
        return sum(value(renewal.steel) for renewal in renewals)

    def rivets(value: Callable[[RivetCount], int]) -> int:
        return sum(value(renewal.rivets) for renewal in renewals)

    return RenewalTotal(
        inserts=len(renewals),
        area=steel(lambda insert: insert.area),
        mass=steel(lambda insert: insert.mass),
        weld=steel(lambda insert: insert.weld),
        seam=sum(renewal.rivets.seam for renewal in renewals),
        butt=sum(renewal.rivets.butt for renewal in renewals),
        rivets_removed=rivets(lambda count: count.removed),
        rivets_renewed=rivets(lambda count: count.renewed),
        rivets_near_welds=rivets(lambda count: count.near_welds),
        man_hours=sum(renewal.man_hours for renewal in renewals),
    )
