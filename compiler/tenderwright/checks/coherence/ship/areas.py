"""Areas fit the shell, the appendages and the sums that they are of; bands of the shell meet each other.

Ground: geometry. A sum that is written out beside an area is done again.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from tenderwright.calculations.ship.zones import zone_area, zone_internal
from tenderwright.checks.coherence.ship.held import LOOK, held, like
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.coating import Zone
from tenderwright.model.common import AreaEntry
from tenderwright.model.history import CoatingApplied, EarlierDocking
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

CODE = "area-contradicts"
_BY = re.compile(r"([0-9]+(?:\.[0-9]+)?) m by ([0-9]+(?:\.[0-9]+)?) (mm|m)\b")
_FACES = (1.0, 2.0, 4.0, 3.1416, 6.2832, 0.7854)
_SPOTS = re.compile(r"\b(spot|spots|patch|patches|part|touch|bare places|repairs?)\b")


def check(ship: Ship) -> Iterator[Notice]:
    """Report areas beyond what there is to coat, bands with gaps, and areas that are not what they are made of."""
    whole = _whole(ship)
    for zone in ship.package.zones:
        for entry in (*zone.add, *zone.less):
            yield from _entry(ship, zone, entry, whole)
        yield from _stated(ship, zone, whole)
        yield from _internal(ship, zone)
    yield from _bands(ship)
    for docking in ship.package.history:
        for coating in docking.coatings:
            yield from _coated(ship, docking, coating)


def _whole(ship: Ship) -> float | None:
    """Give about how much shell there is in all [m2]."""
    if ship.shell is None:
        return None
    return ship.shell.length * (ship.shell.beam + 2.2 * ship.shell.depth)


def _entry(ship: Ship, zone: Zone, entry: AreaEntry, whole: float | None) -> Iterator[Notice]:
    what, words = f"area of `{entry.what}`", entry.what.lower()
    if match := _BY.search(entry.basis):
        product = float(match[1]) * float(match[2]) * (0.001 if match[3] == "mm" else 1.0)
        if product > 0 and not any(abs(entry.area.si / (product * faces) - 1) < 0.08 for faces in _FACES):
            message = f"{what} is {entry.area}, and {match[0]} makes {show(product, 'area', digits=3)} a face"
            yield Notice(CODE, entry.area.at, message, hints=("look at the area and at what it is made of",))
            return
    own = _appendages(ship, words)
    if own is not None:
        against = f"vessel/appendages.yaml has {like(own, entry.area)} of it"
        yield from held(CODE, what, entry.area, 0.75 * own, 1.25 * own, against, exact=True)
        return
    keel = ship.package.particulars.keel if ship.package.particulars is not None else None
    if "bar keel" in words and keel is not None and keel.depth is not None:
        run = abs(keel.straight.to.x - keel.straight.from_.x)
        found = run * (keel.width.si + 2 * keel.depth.si)
        against = (
            f"a bar keel {keel.width} by {keel.depth} over {show(run, 'centre', more=-1)} has {like(found, entry.area)}"
        )
        yield from held(CODE, what, entry.area, 0.4 * found, 1.5 * found, against, exact=True)
        return
    inside = ship.calculated.each(zone_internal).get(zone.zone)
    most = whole
    if inside is not None:
        most = inside["area"]
    elif whole is not None and zone.surface == "shell band":
        most = 0.3 * whole if entry in zone.add else 0.1 * whole
    if most is not None:
        against = f"there are about {like(most, entry.area)} at most to add or to leave out"
        if re.search(r"\b(grids?|portlights?|sea chests?|plugs?|valves?)\b", words) and whole is not None:
            most = 0.01 * whole
            against = f"openings take no more than about {like(most, entry.area)} of such a shell"
        yield from held(CODE, what, entry.area, 0.0, most, against)


def _appendages(ship: Ship, words: str) -> float | None:
    """Give the area of the appendages that some words name; None where they name none, or something else too."""
    if "vessel/appendages.yaml" in ship.package.broken.files:
        return None
    found, rest = 0.0, words
    for one in ship.package.appendages:
        if one.area is None:
            return None
        name = one.name.split(",")[0].lower()
        if name in words and "inside" not in words:
            found += one.area.si
            rest = rest.replace(name, "")
    side = re.search(r"\b(port|starboard)\b", words)
    if found and side and not re.search(r"\b(both|port and starboard)\b", words):
        return None
    return found or None


def _stated(ship: Ship, zone: Zone, whole: float | None) -> Iterator[Notice]:
    if zone.area is None:
        return
    what, own = f"area of zone `{zone.zone}`", _appendages(ship, zone.name.lower())
    if own is not None:
        against = f"vessel/appendages.yaml has {like(own, zone.area)} of it"
        yield from held(CODE, what, zone.area, 0.75 * own, 1.35 * own, against, exact=True)
    elif whole is not None:
        against = f"her whole shell has about {like(whole, zone.area)}"
        yield from held(CODE, what, zone.area, 0.0, 2.0 * whole, against)


def _internal(ship: Ship, zone: Zone) -> Iterator[Notice]:
    if zone.tank is not None:
        for tank in ship.package.tanks:
            other = tank.tank != zone.tank.name
            if other and zone.zone in (tank.tank, f"{tank.tank}-inside"):
                message = (
                    f"zone `{zone.zone}` is the inside of tank `{zone.tank.name}`, and there is a tank `{tank.tank}`"
                )
                yield Notice(CODE, zone.here, message, hints=("look at the tank, or at the name of the zone",))
    for one in zone.stiffening:
        what = f"the {one.member} of zone `{zone.zone}`"
        for name, stated, low, high in (
            ("web", one.web, 0.03, 0.8),
            ("flange", one.flange, 0.0, 0.4),
            ("spacing", one.spacing, 0.2, 2.0),
        ):
            against = (
                f"it is from {show(low, 'thickness', more=-1)} to {show(high, 'thickness', more=-1)} (common "
                "practice, no source)"
            )
            yield from held(CODE, f"{name} of {what}", stated, low, high, against)
        if one.flange is not None and one.flange.si > 2 * one.web.si:
            yield Notice(CODE, one.flange.at, f"flange of {what} is {one.flange}, and the web {one.web}", hints=(LOOK,))


def _bands(ship: Ship) -> Iterator[Notice]:
    bands = [zone for zone in ship.package.zones if zone.surface == "shell band"]

    def low(zone: Zone) -> float:
        return zone.lower.si if isinstance(zone.lower, Quantity) else -1.0

    def high(zone: Zone) -> float:
        return zone.upper.si if isinstance(zone.upper, Quantity) else 1e3

    bands.sort(key=lambda zone: (low(zone), high(zone)))
    for zone in bands:
        if isinstance(zone.upper, Quantity):
            top = float(ship.shell.form.deck_heights.max()) if ship.shell is not None else 1e3
            against = f"it begins at {zone.lower}, and her deck ends at {show(top, 'centre')}"
            yield from held(CODE, f"upper edge of zone `{zone.zone}`", zone.upper, low(zone), top, against)
        if zone.lower == "keel" and isinstance(zone.upper, Quantity) and ship.draft is not None:
            against = f"she draws {show(ship.draft, 'draft')}"
            most = 1.6 * ship.draft
            name = f"{zone.zone} {zone.name}".lower()
            least = 0.6 * ship.draft if re.search(r"under ?water", name) else 0.0
            yield from held(CODE, f"upper edge of zone `{zone.zone}`", zone.upper, least, most, against)
    for one, other in pairwise(bands):
        if not isinstance(one.upper, Quantity) or not isinstance(other.lower, Quantity):
            continue
        if other.lower.si > low(one) + 1e-6 and abs(one.upper.si - other.lower.si) > 0.02:
            how = "a gap" if other.lower.si > one.upper.si else "an overlap"
            message = f"zone `{one.zone}` ends at {one.upper} and zone `{other.zone}` begins at {other.lower}: {how}"
            yield Notice(CODE, other.lower.at, message, hints=("bands of the shell meet at one height",))


def _coated(ship: Ship, docking: EarlierDocking, coating: CoatingApplied) -> Iterator[Notice]:
    found = ship.calculated.each(zone_area).get(coating.zone.name)
    if found is None or coating.area is None:
        return
    there = found["area"]
    words = f"{coating.system} {coating.preparation}".lower()
    overall = re.search(r"\b(overall|whole|in full|all over)\b", words)
    low = 0.0 if _SPOTS.search(words) and not overall else 0.3 * there
    against = f"zone `{coating.zone.name}` has {like(there, coating.area)}"
    what = f"area coated at {docking.place or docking.yard}"
    yield from held(CODE, what, coating.area, low, 1.3 * there, against)
