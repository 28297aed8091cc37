"""The usual tasks of her care between dockings, with how often each is done and who says so."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.model.package import Package

COMMON = "common practice, no source"
DAY = 86400.0


class Usual(Struct, frozen=True):
    """A usual task."""

    task: str
    what: str
    days: float
    source: str
    kinds: tuple[str, ...] = ()
    """The kinds of reading that show it as done."""
    by: str = "shipkeeper"
    of: str = ""
    """`metal` or `wood`, where it is done on such a hull alone."""


BELT, GAUGING = "belt", "gauging"

USUAL = (
    Usual(
        "bilge",
        "Read every bilge: how high, how much water since, salt or fresh, any oil",
        1,
        COMMON,
        ("leak", "pump", "bilge"),
    ),
    Usual(
        "humidity",
        "Read the humidity of dry spaces: aim at 35 %, act over 50 %; a drier that never stops has a leak of air",
        7,
        "MIL-HDBK-1130 for 35 % and the week; the limit is common practice, no source",
        ("humidity",),
        of="metal",
    ),
    Usual(
        "moorings",
        "Look at lines, chafe, shackles, bollards, fenders and gangway, at high and low water",
        30,
        COMMON,
        ("mooring",),
    ),
    Usual(
        "alarms",
        "Lift every bilge float and wet every sensor; hear the alarm where somebody always is",
        91,
        "MIL-HDBK-1130, 3.3.16.3",
        ("alarm",),
    ),
    Usual(
        "potentials",
        "Read the hull's potential at six places and more on either side, at two depths, with the salinity",
        91,
        COMMON,
        ("potential",),
        of="metal",
    ),
    Usual(
        "potentials",
        "Read the potential of bonded metals, so that they do not eat the wood round them",
        182,
        COMMON,
        ("potential",),
        of="wood",
    ),
    Usual(
        "moisture",
        "Read the moisture of the wood at the same spots, with the same meter",
        182,
        COMMON,
        ("moisture",),
        of="wood",
    ),
    Usual(
        "diver",
        "Diver over the whole bottom: grids, rudder, shaft, anodes counted and judged, bare patches",
        365.25,
        COMMON,
        ("diver",),
        "diver",
        of="metal",
    ),
    Usual(
        "diver",
        "Diver over the whole bottom: grids, rudder, shaft, seams, sheathing, bare patches",
        365.25,
        COMMON,
        ("diver",),
        "diver",
        of="wood",
    ),
    Usual(
        "borers",
        "Look for borers at bare wood and torn sheathing, at low water or by a diver",
        365.25,
        COMMON,
        ("borers",),
        "shipwright",
        of="wood",
    ),
    Usual(
        "boot-top",
        "Touch up the paint at the waterline from a raft, trimmed or listed by half a degree",
        365.25,
        COMMON,
        ("boot-top",),
    ),
    Usual(
        "openings",
        "Go through every opening in the shell: work what is used, look at the blanks of what is not",
        365.25,
        COMMON,
        ("openings",),
    ),
    Usual(
        "stability",
        "Bring the log of weights up to date: beyond 2 % of displacement, or 1 % of her length, she is inclined",
        365.25,
        "rule for passenger ships (from memory)",
        ("stability",),
        "naval architect",
    ),
    Usual(
        BELT,
        "Gauge the belt at the waterline from inside, at the same points; readings go into surveys/",
        2.5 * 365.25,
        COMMON,
        by="gauging firm",
        of="metal",
    ),
    Usual(
        GAUGING,
        "Gauge what can be reached afloat: bilge turn, under old sea chests, plates on watch",
        5 * 365.25,
        COMMON,
        by="gauging firm",
        of="metal",
    ),
)
"""Every task there usually is; those of one name are for other hulls."""

FIRST_YEAR = {"potentials": 30.0}
"""What is done more often in the first year after a docking (common practice, no source), days."""


def usual_for(package: Package) -> tuple[Usual, ...]:
    """Give the usual tasks of a ship by what her hull is of."""
    hull = package.particulars.hull if package.particulars is not None else None
    of = "wood" if hull is not None and not hull.of_metal else "metal"
    return tuple(one for one in USUAL if one.of in ("", of))
