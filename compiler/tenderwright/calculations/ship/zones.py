"""Areas of the coating zones: bands of shell by the best evidence, insides of tanks with stiffening, or as stated."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.coatings.band_estimate import METHOD as BAND_ESTIMATE
from tenderwright.calculations.coatings.girth_area import METHOD as GIRTHS
from tenderwright.calculations.coatings.stiffened_area import METHOD as STIFFENED
from tenderwright.calculations.coatings.zone_area import METHOD as ZONE_AREA
from tenderwright.calculations.hydrostatics.band_area import METHOD as BAND
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.steps.outcome import Absent, Each, Failed, Lacking, NotAsked, Resting
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tanks.sounding import Tank as TankShape
from tenderwright.calculations.value import Given, given
from tenderwright.model.coating import Zone
from tenderwright.model.common import AreaEntry
from tenderwright.model.package import Package
from tenderwright.model.particulars import Particulars
from tenderwright.model.uncertain import standard_uncertainty
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

_AREA = {"area": "area"}
INSIDE = Given(0.05, "5 %", "bounds and stiffening of a tank: common practice, no source")
"""Standard uncertainty of the area inside a tank, as a share."""


@step()
def shell_bands(package: Package) -> dict[str, Zone]:
    """Give the zones that are bands of a shell whose form is given, by offsets or by sections."""
    return _zones(package, "shell band") if _has_form(package) else {}


@step()
def girth_bands(package: Package) -> dict[str, Zone]:
    """Give the zones that are bands of a shell of which girths alone are given."""
    bands = {} if _has_form(package) else _zones(package, "shell band")
    return {name: zone for name, zone in bands.items() if zone.girths is not None}


@step()
def estimated_bands(package: Package) -> dict[str, Zone]:
    """Give the zones that are bands of a shell of which neither form nor girths are given."""
    bands = {} if _has_form(package) else _zones(package, "shell band")
    return {name: zone for name, zone in bands.items() if zone.girths is None}


@step()
def internal_zones(package: Package) -> dict[str, Zone]:
    """Give the zones that are insides of tanks."""
    return _zones(package, "internal")


def _zones(package: Package, surface: str) -> dict[str, Zone]:
    return {zone.zone: zone for zone in package.zones if zone.surface == surface}


def _has_form(package: Package) -> bool:
    named = ("vessel/offsets.yaml", "vessel/sections.yaml")
    return any(given is not None for given in (package.offsets, package.sections)) or package.broken.among(*named)


@step_of(BAND, "zone.{}.shell", each="shell_bands")
def zone_shell(zone: Zone, hull: Hull) -> Uses:
    """Find the area of a band of shell from her form."""
    return Uses(zone.name, {"offsets": hull.given, "share": hull.area} | _edges(zone), zone.here, of=zone.name)


@step_of(GIRTHS, "zone.{}.shell", each="girth_bands")
def zone_shell_girths(zone: Zone, particulars: Particulars) -> Uses | Absent:
    """Find the area of a band of shell from girths measured with a tape."""
    read = zone.girths
    if read is None:
        return NotAsked("no girths are given")
    if len(read.at) != len(read.girths):
        why = f"{len(read.girths)} girths for {len(read.at)} places"
        return Failed(why, Notice("bad-table", read.here, why, hints=("give one girth for each place",)))
    rows = [{"x": at.x, "girth": girth.si} for at, girth in zip(read.at, read.girths, strict=True)]
    inputs = {
        "girths": Given(rows, f"{len(rows)} girths ({read.source})", read.here),
        "beam": given(particulars.dimensions.beam),
    }
    if read.along is not None:
        inputs["along"] = given(read.along)
    return Uses(zone.name, inputs, zone.here, of=zone.name)


@step_of(BAND_ESTIMATE, "zone.{}.shell", each="estimated_bands")
def zone_shell_estimate(zone: Zone, particulars: Particulars, dock_water: Given) -> Uses | Absent:
    """Estimate the area of a band of shell from the ship's dimensions."""
    size, edges = particulars.dimensions, _edges(zone)
    inputs = {"beam": given(size.beam)} | edges
    if "upper" not in edges:
        inputs |= {"length_overall": given(size.length_overall), "depth": given(size.depth)}
        return Uses(zone.name, inputs, zone.here, of=zone.name)
    inputs["length_between_perpendiculars"] = given(size.length_between_perpendiculars)
    if "lower" not in edges:
        if particulars.displacement is None:
            return Lacking(
                "it needs vessel/offsets.yaml, vessel/sections.yaml, `girths` of the zone in vessel/zones.yaml, or "
                "`displacement` in vessel/particulars.yaml"
            )
        inputs |= {"draft": given(size.draft), "displacement": given(particulars.displacement), "density": dock_water}
    return Uses(zone.name, inputs, zone.here, of=zone.name)


def _edges(zone: Zone) -> dict[str, Given]:
    """Give the heights between which a band lies; nothing for the keel and for the deck edge."""
    edges = {"lower": zone.lower, "upper": zone.upper}
    return {name: given(height) for name, height in edges.items() if isinstance(height, Quantity)}


@step_of(STIFFENED, "zone.{}.internal", names=_AREA, each="internal_zones")
def zone_internal(zone: Zone, tank_shape: Each[TankShape]) -> Uses | Absent:
    """Find the area inside a tank with its stiffening."""
    if zone.tank is None:
        raise OutOfRange(f"{zone.name}: an internal zone needs its tank")
    tank = zone.tank.name
    shape = tank_shape.outcomes.get(tank, Resting(f"there is no tank `{tank}`"))
    if isinstance(shape, Absent):
        return shape.passed_on()
    if shape.planned:
        return Lacking(f"it needs the bounds of tank `{tank}` in vessel/tanks.yaml: its plan does not give its faces")
    boundary = shape.body.surface_area
    panels: list[dict[str, float]] = []
    words, left = [f"boundary {show(boundary, 'area')}"], 1.0
    for entry in zone.stiffening:
        share = entry.share.si if entry.share else 1.0
        left -= share
        panel = {"area": boundary * share, "spacing": entry.spacing.si, "height": entry.web.si}
        panels.append(panel | ({"flange": entry.flange.si} if entry.flange else {}))
        size = f"{entry.web} web, {entry.flange or 'no'} flange at {entry.spacing}"
        words.append(f"{entry.member} {size} on {share:.0%}")
    if left < -1e-9:
        raise OutOfRange(f"{zone.name}: the shares of stiffening are more than 100 %")
    panels.append({"area": boundary * max(left, 0.0)})
    inputs = {"panels": Given(panels, "; ".join(words), f"tank.{tank}.capacity")}
    return Uses(zone.name, inputs, zone.here, of=zone.name)


@step_of(ZONE_AREA, "zone.{}", each="zones")
def zone_area(
    zone: Zone,
    zone_shell: Each[Mapping[str, Any]],
    zone_shell_girths: Each[Mapping[str, Any]],
    zone_shell_estimate: Each[Mapping[str, Any]],
    zone_internal: Each[Mapping[str, Any]],
) -> Uses | Absent:
    """Find the area of a zone with what is added and taken away, and how sure its surface is."""
    name = zone.zone
    if zone.surface == "stated":
        if zone.area is None:
            raise OutOfRange(f"{zone.name}: a stated zone needs its area")
        surface = given(zone.area)
        sure = Given(standard_uncertainty(zone, "area"), "as stated", zone.area.at)
    else:
        by = (zone_shell, zone_shell_girths, zone_shell_estimate, zone_internal)
        found = next(each.outcomes[name] for each in by if name in each.outcomes)
        if isinstance(found, Absent):
            return found.passed_on()
        own = f"zone.{name}.{'internal' if zone.surface == 'internal' else 'shell'}"
        surface = Given(found["area"], show(found["area"], "area"), f"{own}.area")
        if zone.surface == "internal":
            sure = Given(INSIDE.si * found["area"], f"{INSIDE.text} of it", INSIDE.origin)
        else:
            sure = Given(found["uncertainty"], show(found["uncertainty"], "area"), f"{own}.uncertainty")
    inputs = {"surface": surface, "uncertainty": sure} | _more("added", zone.add) | _more("taken_away", zone.less)
    return Uses(zone.name, inputs, zone.here, of=zone.name)


def _more(name: str, entries: tuple[AreaEntry, ...]) -> dict[str, Given]:
    """Give what is added to a zone or taken away; nothing where there is nothing."""
    if not entries:
        return {}
    areas = [{"what": entry.what, "area": entry.area.si} for entry in entries]
    return {name: Given(areas, "; ".join(f"{entry.what} {entry.area}" for entry in entries), entries[0].area.at)}
