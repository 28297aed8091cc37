"""Zones and schemes of the demonstration ship: their areas, what they take, and what is said where they cannot be."""

from __future__ import annotations

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.coatings.patch_area import rusted_fraction
from tenderwright.calculations.hydrostatics.band_area import band_area
from tenderwright.calculations.ship.coatings import scheme_abrasive, scheme_paint
from tenderwright.calculations.ship.hull import hull
from tenderwright.calculations.ship.water import dock_water
from tenderwright.calculations.steps.again import different
from tenderwright.calculations.steps.outcome import Lacking, Resting
from tenderwright.model.coating import Girths
from tenderwright.model.package import Broken, Package
from tenderwright.notices import Place
from tenderwright.quantities.quantity import parse_quantity
from tests.replacing import replace

from .marram import at, length, package, ship

ZONES = ("boot-top", "rudder-and-stern-frame", "forepeak-inside")


def test_a_band_is_its_shell_with_what_is_added_and_taken_away() -> None:
    calculated = ship()
    record = calculated.record
    found = calculated.found(hull)
    assert found is not None
    shell = record.values["zone.underwater.shell.area"].si
    assert shell == band_area(found.form, None, 2.9)
    assert record.values["zone.underwater.area"].si == pytest.approx(shell + 23.3 + 19.2 - 0.4)


def test_every_figure_of_a_zone_and_a_scheme_comes_out_again() -> None:
    record = ship().record
    assert [value.name for value, _ in different(record) if value.name.startswith(("zone.", "coating."))] == []


def test_the_shell_of_a_ship_without_offsets_is_estimated_from_her_dimensions() -> None:
    calculated = calculate(replace(package(), offsets=None))
    record = calculated.record
    working = record.values["zone.underwater.shell.area"].working
    assert working.method.name == "zone.band-estimate"
    assert working.inputs["density"] == calculated.found(dock_water)
    measured = ship().record.values
    for zone, within in (("underwater", 0.1), ("boot-top", 0.2), ("topside", 0.3)):  # the deck sheers up at the ends
        name = f"zone.{zone}.shell.area"
        assert record.values[name].si == pytest.approx(measured[name].si, rel=within)
    assert [value.name for value, _ in different(record) if value.name.startswith("zone.")] == []
    assert "zone.rudder-and-stern-frame.shell.area" not in record.known


def test_without_her_displacement_the_band_from_the_keel_is_lacking_and_says_so() -> None:
    particulars = package().particulars
    assert particulars is not None
    record = calculate(replace(package(), offsets=None, particulars=replace(particulars, displacement=None))).record
    assert "`displacement`" in record.missing["zone.underwater.shell.area"]
    assert "`displacement`" in record.missing["coating.underwater-spot.paint"]
    assert "zone.boot-top.area" in record.values


def test_a_table_of_offsets_with_a_mistake_leaves_stated_zones_alone() -> None:
    broken = replace(package(), offsets=None, broken=Broken(files=frozenset({"vessel/offsets.yaml"})))
    calculated = calculate(broken)
    record = calculated.record
    assert "zone.underwater.area" in record.failed
    assert "coating.underwater-spot.area" in record.failed
    assert record.values["zone.rudder-and-stern-frame.area"].si == pytest.approx(11.6)
    paint = calculated.found(scheme_paint)
    assert paint is not None
    assert isinstance(paint.outcomes["underwater-spot"], Resting)


def _with_zone(name: str, **changes: object) -> Package:
    zones = tuple(replace(zone, **changes) if zone.zone == name else zone for zone in package().zones)
    return replace(package(), zones=zones)


def test_what_cannot_be_is_told_by_the_name_of_the_zone() -> None:
    forepeak = next(zone for zone in package().zones if zone.zone == "forepeak-inside")
    twice = tuple(replace(one, share=parse_quantity("60 %", "fraction")) for one in forepeak.stiffening)
    record = calculate(_with_zone("forepeak-inside", stiffening=twice)).record
    assert any("Forepeak, inside: the shares of stiffening are more than 100 %" in n.message for n in record.notices)
    assert "zone.forepeak-inside.area" in record.failed
    record = calculate(_with_zone("forepeak-inside", tank=None)).record
    assert any("Forepeak, inside: an internal zone needs its tank" in notice.message for notice in record.notices)
    record = calculate(_with_zone("rudder-and-stern-frame", area=None)).record
    assert any("Rudder and stern frame: a stated zone needs its area" in notice.message for notice in record.notices)
    less = replace(next(zone for zone in package().zones if zone.less).less[0], area=parse_quantity("900 m2", "area"))
    record = calculate(_with_zone("rudder-and-stern-frame", less=(less,))).record
    assert any("more is taken away than there is" in notice.message for notice in record.notices)


def test_a_tank_without_bounds_leaves_its_inside_lacking() -> None:
    bare = tuple(replace(tank, bounds=None) if tank.tank == "forepeak" else tank for tank in package().tanks)
    record = calculate(replace(package(), tanks=bare)).record
    assert "bounds of tank `forepeak`" in record.missing["zone.forepeak-inside.area"]


def test_a_scheme_covers_what_its_rust_grade_stands_for() -> None:
    spot = package().schemes[0]
    assert spot.extent is not None
    graded = replace(spot, extent=replace(spot.extent, share=None, rust_grade=3))
    record = calculate(replace(package(), schemes=(graded, *package().schemes[1:]))).record
    area = record.values[f"coating.{spot.scheme}.area"]
    assert area.si == record.values["zone.underwater.area"].si * rusted_fraction(3, "ASTM D610").greatest
    assert area.working.inputs["rust_grade"].si == 3


def test_a_scheme_that_blasts_nothing_is_not_asked_for_abrasive() -> None:
    calculated = ship()
    found = calculated.found(scheme_abrasive)
    assert found is not None
    assert "underwater-overall" not in found.outcomes
    assert found["underwater-spot"]["spent"] > found["underwater-spot"]["abrasive"]


def test_what_no_package_gives_is_lacking() -> None:
    calculated = calculate(replace(package(), offsets=None, particulars=None))
    paint = calculated.found(scheme_paint)
    assert paint is not None
    assert isinstance(paint.outcomes["underwater-spot"], Lacking)


def test_girths_go_before_a_formula_and_form_before_girths() -> None:
    girths = Girths(
        source="taped in dock",
        at=tuple(at(place) for place in ("0 m", "4 m", "14 m", "24 m", "34 m", "44 m", "47 m")),
        girths=tuple(length(one) for one in ("0.6 m", "3.6 m", "6.0 m", "6.9 m", "5.6 m", "3.4 m", "2.9 m")),
        here=Place("vessel/zones.yaml", 1, 1),
    )
    zones = tuple(replace(one, girths=girths) if one.zone == "underwater" else one for one in package().zones)
    taped = calculate(replace(package(), offsets=None, zones=zones)).record.values
    assert taped["zone.underwater.shell.area"].working.method.name == "zone.girth-area"
    assert taped["zone.boot-top.shell.area"].working.method.name == "zone.band-estimate"
    assert taped["coating.underwater-overall.area"].si == taped["zone.underwater.area"].si
    by_form = calculate(replace(package(), zones=zones)).record.values
    assert by_form["zone.underwater.area"].si == ship().record.values["zone.underwater.area"].si
    short = replace(girths, girths=girths.girths[:-1])
    zones = tuple(replace(one, girths=short) if one.zone == "underwater" else one for one in package().zones)
    record = calculate(replace(package(), offsets=None, zones=zones)).record
    assert [one.message for one in record.notices if one.code == "bad-table"] == ["6 girths for 7 places"]


def test_each_source_says_how_sure_it_is() -> None:
    values = ship().record.values
    shares = {name: values[f"zone.{name}.uncertainty"].si / values[f"zone.{name}.area"].si for name in ZONES}
    assert shares["boot-top"] == pytest.approx(0.01)
    assert shares["rudder-and-stern-frame"] == pytest.approx(0.03)
    assert 0.03 < shares["forepeak-inside"] <= 0.05
    estimated = calculate(replace(package(), offsets=None)).record.values
    assert estimated["zone.boot-top.uncertainty"].si > values["zone.boot-top.uncertainty"].si
