"""A tank from a capacity plan alone: capacity, centre when full, free surface, and its extent where known."""

from __future__ import annotations

from math import hypot, sqrt

from msgspec.structs import replace

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, quantity
from tenderwright.calculations.tanks.polyhedron import box
from tenderwright.calculations.tanks.sounding import Tank
from tenderwright.quantities.display import show

PLAN = {
    "capacity": quantity("volume", "Capacity, 100 % full."),
    "x": length("Centre of the full tank forward of AP."),
    "y": length("To port."),
    "z": length("Above the baseline."),
    "x_aft": length("After end."),
    "x_forward": length("Fore end."),
    "bottom": length("Height of the lowest point of the tank."),
    "free_surface": quantity("second_moment", "Second moment of the free surface about its own fore-and-aft axis."),
    "breadth": length("Greatest breadth that the tank can have, where its free surface is not stated."),
}
OPTIONAL = frozenset({"x_aft", "x_forward", "bottom", "free_surface", "breadth"})


def tank_of_plan(
    capacity: float,
    x: float,
    y: float,
    z: float,
    x_aft: float | None = None,
    x_forward: float | None = None,
    bottom: float | None = None,
    free_surface: float | None = None,
    breadth: float | None = None,
) -> Tank:
    """Make a tank from what a capacity plan gives.

    Formula: a box of the capacity about the full centre. Its length is what the extent leaves about the centre,
        l = 2 min(x - x_aft, x_forward - x); its depth 2 (z - bottom), or where no bottom is given V / (l b) with
        b = (12 i/l)^(1/3), or the side of a cube; never deeper than to the baseline. So the centre of a part stays
        at the full one's x and y, and is z_bottom + (z - z_bottom) v/V up. The free surface is as stated, whatever
        the filling, or the greatest that the extent permits: (x_forward - x_aft) B^3/12.
    Symbols: capacity V [m3]; lengths [m]; free surface i [m4]; B greatest breadth [m].
    Source: geometry of a box (derived).
    Range: the centre lies within the extent and above the bottom. Raises OutOfRange.
    """
    if capacity <= 0:
        raise OutOfRange("a tank needs a capacity")
    if (x_aft is None) != (x_forward is None):
        raise OutOfRange("the extent of a tank needs both its ends")
    long, surface = None, free_surface
    if x_aft is not None and x_forward is not None:
        long = 2 * min(x - x_aft, x_forward - x)
        if long <= 0:
            raise OutOfRange(
                f"its centre, {show(x, 'centre')}, is not between its ends, {show(x_aft, 'centre')} and "
                f"{show(x_forward, 'centre')}"
            )
        if free_surface is None and breadth is not None:
            surface = (x_forward - x_aft) * breadth**3 / 12
    deep = _depth(capacity, z, long, bottom, free_surface)
    area = capacity / deep
    long = long or sqrt(area)
    ends = ((x - long / 2, x + long / 2), (y - area / long / 2, y + area / long / 2), (z - deep / 2, z + deep / 2))
    known = {"x_aft": x_aft, "x_forward": x_forward, "bottom": bottom, "free_surface": free_surface, "breadth": breadth}
    plan = {"capacity": capacity, "x": x, "y": y, "z": z} | {
        name: one for name, one in known.items() if one is not None
    }
    return Tank(replace(box(*ends), shape={"plan": plan}), surface=surface)


def _depth(capacity: float, z: float, long: float | None, bottom: float | None, surface: float | None) -> float:
    if bottom is not None:
        if z <= bottom:
            raise OutOfRange(f"its centre, {show(z, 'centre')} up, is not above its bottom, {show(bottom, 'centre')}")
        return 2 * (z - bottom)
    if z <= 0:
        raise OutOfRange("a centre below the baseline needs the height of the tank's bottom")
    side: float = capacity ** (1 / 3)
    deep = capacity / (long * (12 * surface / long) ** (1 / 3)) if long and surface else side
    return min(deep, 2 * z)


def place_uncertainty(tank: Tank, volume: float) -> tuple[float, float, float]:
    """Give the standard uncertainty of the place of a volume [m3] in a tank of a plan, along, across and up [m].

    Formula: a/sqrt(3) for a band of half-width a, with f = v/V. Along (1 - f) l/6, by which the centre of a triangle
        lies off that of a rectangle; across (1 - f) |y|, as the last of it may lie at the centreline; up
        (f^(1/3) - f) d, by which the contents of a cone on its point lie above those of a box, d from the bottom to
        the full centre, and 5/3 (1 - f) d beside it where no bottom is stated, by which the bottom of a vee with the
        same free surface lies lower. A full tank's centre is as stated.
    Source: geometry; JCGM 100:2008, 4.3.7 (derived).
    """
    plan = (tank.body.shape or {})["plan"]
    share = min(volume / tank.capacity, 1.0)
    lower, upper = tank.body.lower_corner.tolist(), tank.body.upper_corner.tolist()
    long = plan["x_forward"] - plan["x_aft"] if "x_aft" in plan else upper[0] - lower[0]
    deep = plan["z"] - lower[2]
    up = hypot((share ** (1 / 3) - share) * deep, 0.0 if "bottom" in plan else 5 / 3 * (1 - share) * deep)
    return (1 - share) * long / 6 / sqrt(3), (1 - share) * abs(plan["y"]) / sqrt(3), up / sqrt(3)


METHOD = Method(
    name="tank.capacity-plan",
    title="A tank from a capacity plan",
    formula="a box of the capacity V about the full centre: z = z_bottom + (z_full - z_bottom) v/V; "
    "i as stated, or (x_forward - x_aft) B³/12",
    source=Citation("geometry of a box", "", "derived"),
    valid="centre within the extent; part-filled, liquid lies under the full tank's centre, whatever its shape",
    inputs=PLAN,
    outputs=(Symbol("capacity", "capacity, 100 % full", "volume", "m3"),),
    kernel=tank_of_plan,
    figures=lambda tank: {"capacity": tank.capacity},
    example={
        "capacity": "46.2 m3",
        "x": "16.1 m",
        "y": "2.1 m",
        "z": "0.62 m",
        "x_aft": "12 m",
        "x_forward": "20 m",
        "bottom": "0 m",
        "free_surface": "38 m4",
    },
    optional=OPTIONAL,
    cautions=("A tank from its capacity plan is a box in drawings and loads; its true shape is not known.",),
)
