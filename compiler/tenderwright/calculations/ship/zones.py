"""Areas of the coating zones: bands of shell from the offsets, insides of tanks with their stiffening, or as stated."""

from __future__ import annotations

from typing import Any

from tenderwright.calculations.coatings.stiffened_area import METHOD as STIFFENED
from tenderwright.calculations.coatings.stiffened_area import Panel, internal_area
from tenderwright.calculations.hydrostatics.band_area import METHOD as BAND
from tenderwright.calculations.hydrostatics.band_area import band_area
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.adapter import given_form
from tenderwright.calculations.ship.estimates import BAND_ESTIMATE, band_estimate
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.coating import Zone
from tenderwright.model.package import Package
from tenderwright.quantities.quantity import Quantity

ZONE_AREA: Method[Any] = Method(
    name="zone.area",
    title="Area of a coating zone with what is added and taken away",
    formula="A = A_surface + sum(added) - sum(taken away)",
    source=Citation("Sum of areas", standing="derived"),
    valid="areas of one zone, each counted once",
    inputs={},
    outputs=(Symbol("area", "area of the zone", "area", "m2"),),
    kernel=lambda: {},
    example={},
)


def zone_values(package: Package, results: Results, record: Record) -> None:
    """Keep the area of every zone."""
    for zone in package.zones:
        prefix = f"zone.{zone.zone}"
        try:
            surface = _surface(package, zone, results, record)
        except OutOfRange as error:
            record.fail(ZONE_AREA, prefix, f"{zone.name}: {error}", zone.here)
            continue
        if surface is None:
            record.failed[f"{prefix}.area"] = "what it rests on could not be calculated"
            continue
        inputs = {"surface": surface}
        inputs |= {f"add: {entry.what}": given(entry.area) for entry in zone.add}
        inputs |= {f"less: {entry.what}": given(entry.area) for entry in zone.less}
        area = surface.si + sum(e.area.si for e in zone.add) - sum(e.area.si for e in zone.less)
        if area <= 0:
            record.fail(ZONE_AREA, prefix, f"{zone.name}: more is taken away than there is", zone.here)
            continue
        record.keep(ZONE_AREA, prefix, zone.name, inputs, {"area": area})


def _surface(package: Package, zone: Zone, results: Results, record: Record) -> Given | None:
    if zone.surface == "stated":
        if zone.area is None:
            raise OutOfRange("a stated zone needs its area")
        return given(zone.area)
    if zone.surface == "shell band":
        return _band(package, zone, results, record)
    return _internal(zone, results, record)


def _band(package: Package, zone: Zone, results: Results, record: Record) -> Given | None:
    form = results.form
    if form is None:
        if package.offsets is not None or package.particulars is None:
            return None
        area, inputs = band_estimate(package.particulars, zone, results.water_density)
        return _kept(record, BAND_ESTIMATE, f"zone.{zone.zone}.shell", zone, inputs, area)
    lower = zone.lower.si if isinstance(zone.lower, Quantity) else None
    upper = zone.upper.si if isinstance(zone.upper, Quantity) else None
    inputs = {"offsets": given_form(package)}
    inputs |= {"lower": given(zone.lower)} if isinstance(zone.lower, Quantity) else {}
    inputs |= {"upper": given(zone.upper)} if isinstance(zone.upper, Quantity) else {}
    area = band_area(form, lower, upper)
    return _kept(record, BAND, f"zone.{zone.zone}.shell", zone, inputs, area)


def _internal(zone: Zone, results: Results, record: Record) -> Given | None:
    if zone.tank is None:
        raise OutOfRange("an internal zone needs its tank")
    shape = results.tanks.get(zone.tank.name)
    if shape is None:
        return None
    boundary = shape.body.surface_area
    panels: list[Panel] = []
    left = 1.0
    inputs = {"boundary": Given(boundary, f"{boundary:.1f} m2", f"tank.{zone.tank.name}.capacity")}
    for entry in zone.stiffening:
        share = entry.share.si if entry.share else 1.0
        left -= share
        flange = entry.flange.si if entry.flange else 0.0
        panels.append(Panel(boundary * share, entry.spacing.si, entry.web.si, flange))
        words = f"{entry.web} web, {entry.flange or '0 mm'} flange at {entry.spacing} on {share:.0%}"
        inputs[entry.member] = Given(None, words, entry.here)
    if left < -1e-9:
        raise OutOfRange("the shares of stiffening are more than 100 %")
    panels.append(Panel(boundary * max(left, 0.0)))
    return _kept(record, STIFFENED, f"zone.{zone.zone}.internal", zone, inputs, internal_area(panels))


def _kept(record: Record, method: Method[Any], prefix: str, zone: Zone, inputs: dict[str, Given], area: float) -> Given:
    record.keep(method, prefix, zone.name, inputs, {"area": area}, {"area": "area"})
    return given(record.values[f"{prefix}.area"], f"{area:.1f} m2")
