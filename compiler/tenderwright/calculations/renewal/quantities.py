"""Quantities of a renewal: the steel, rivets, weld and man-hours of every insert, and their totals."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct

from tenderwright.calculations.renewal.insert import CORNER_THICKNESSES, Insert, insert_steel, mill_overweight
from tenderwright.calculations.renewal.joints import end_plate
from tenderwright.calculations.renewal.outlines import LEAST_SIZE, Outline
from tenderwright.calculations.renewal.rivets import Ends, Fastening, InsertJoints, RivetCount, insert_rivets
from tenderwright.calculations.renewal.shell_grid import ShellGrid
from tenderwright.calculations.steel.man_hours import hours_per_tonne, renewal_hours, tariff_mass
from tenderwright.calculations.steel.plate_mass import STEEL_DENSITY, plate_mass


class RenewalRules(Struct, frozen=True):
    """How inserts are made: their corners, mill tolerance, fastening, and the factors of their man-hours."""

    fastening: Fastening = "riveted"
    ends: Ends = "riveted lap"
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
    ends_area: float
    """Plate of the laps or straps at its ends, m²."""
    mass: float
    """Of all plate fitted, kg, with mill tolerance."""
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
    end_weld: float
    rivets_removed: int
    rivets_renewed: int
    rivets_near_welds: int
    man_hours: float
    by_diameter: tuple[tuple[float, int], ...]
    """Rivets driven, by their diameter in m."""

    @property
    def joint(self) -> float:
        """Give the length to be tested, m."""
        return self.seam + self.butt + self.end_weld


def renewal_of(
    grid: ShellGrid,
    outline: Outline,
    thickness: float,
    joints: InsertJoints,
    rules: RenewalRules | None = None,
) -> Renewal:
    """Count what one insert takes.

    Symbols: thickness of the new plate in m; joints, those that it opens and makes. Laps or straps at its ends are
    plate besides. Source: as `insert_steel`, `insert_rivets`, `end_plate` and `renewal_hours`. Raises OutOfRange.
    """
    rules = rules or RenewalRules()
    length = grid.length(outline.aft, outline.forward)
    breadth = grid.breadth(outline.lower, outline.upper, outline.aft, outline.forward)
    tolerance = mill_overweight(thickness) if rules.tolerance is None else rules.tolerance
    steel = insert_steel(length, breadth, thickness, tolerance, rules.density, rules.corner, rules.least)
    besides = end_plate(joints, rules.ends)
    mass = steel.mass + plate_mass(besides, thickness, rules.density) * (1.0 + tolerance)
    rate = hours_per_tonne(thickness) if rules.rate is None else rules.rate
    hours = renewal_hours(tariff_mass(length, breadth, thickness), rate, rules.factors)
    return Renewal(outline, steel, besides, mass, insert_rivets(joints, rules.fastening), hours)


def renewal_total(renewals: Sequence[Renewal]) -> RenewalTotal:
    """Add up inserts."""

    def steel(value: Callable[[Insert], float]) -> float:
        return sum(value(renewal.steel) for renewal in renewals)

    def rivets(value: Callable[[RivetCount], int]) -> int:
        return sum(value(renewal.rivets) for renewal in renewals)

    by_diameter: dict[float, int] = {}
    for renewal in renewals:
        for diameter, number in renewal.rivets.by_diameter:
            by_diameter[diameter] = by_diameter.get(diameter, 0) + number
    return RenewalTotal(
        inserts=len(renewals),
        area=steel(lambda insert: insert.area) + sum(renewal.ends_area for renewal in renewals),
        mass=sum(renewal.mass for renewal in renewals),
        weld=steel(lambda insert: insert.weld),
        seam=sum(renewal.rivets.seam for renewal in renewals),
        butt=sum(renewal.rivets.butt for renewal in renewals),
        end_weld=sum(renewal.rivets.end_weld for renewal in renewals),
        rivets_removed=rivets(lambda count: count.removed),
        rivets_renewed=rivets(lambda count: count.renewed),
        rivets_near_welds=rivets(lambda count: count.near_welds),
        man_hours=sum(renewal.man_hours for renewal in renewals),
        by_diameter=tuple(sorted(by_diameter.items())),
    )
