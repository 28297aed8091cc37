"""The four facilities: whether three take her rests on the elastic hull, and one does not."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.calculations.ship.keel_loads import keel_bearing
from tenderwright.model.docking_plan import CalculatedLoads
from tenderwright.quantities.quantity import parse_quantity
from tests.calculations.ship import marram
from tests.outcomes import result_of
from tests.replacing import replace


def test_whether_three_take_her_rests_on_estimates_and_the_slipway_does_not() -> None:
    fits = dict(marram.found(facility_fits).items())
    assert {name: fit.met for name, fit in fits.items()} == {
        "corve-graving-dock": None,
        "kettle-sound-floating-dock": None,
        "sallow-haven-shiplift": None,
        "tarnmouth-slipway": False,
    }
    open_, (bearing, whole) = fits["corve-graving-dock"].unknown, (marram.found(keel_bearing), 21.45e3)
    assert [one.name for one in open_] == ["line load"]
    assert open_[0].demand == bearing.rigid_line_load > whole
    assert open_[0].estimate == bearing.elastic_line_load


def test_with_the_naval_architects_block_loads_it_is_known() -> None:
    loads = CalculatedLoads(
        pressure=parse_quantity("2.4 MPa", "pressure"),
        line_load=parse_quantity("36 t/m", "line_load"),
        source="block loads by the naval architect",
        here=marram.plan().here,
    )
    calculated = marram.calculated(marram.with_plan(calculated_loads=loads))
    fits = {name: fit.met for name, fit in result_of(calculated, facility_fits).items()}
    assert fits["corve-graving-dock"] is True
    assert fits["kettle-sound-floating-dock"] is True
    assert fits["sallow-haven-shiplift"] is False
    assert result_of(calculated, keel_bearing).limit.met is True


def test_the_slipway_fails_for_its_cradle_its_line_load_and_its_water() -> None:
    fit = marram.found(facility_fits)["tarnmouth-slipway"]
    passed = {limit.name for limit in fit.limits if limit.met is False}
    assert passed == {
        "cradle: cars available",
        "cradle: cars coupled",
        "cradle: line load",
        "line load",
        "water over the blocks",
    }
    assert fit.governs.name == "line load"


def test_blocks_built_higher_than_the_facilitys_own_take_water_away() -> None:
    fit = marram.found(facility_fits)["corve-graving-dock"]
    limit = next(one for one in fit.limits if one.name == "water over the blocks")
    assert limit.limit == pytest.approx(4.3 - (1.5 - 1.2))


def test_she_draws_more_in_brackish_water_than_in_salt() -> None:
    def demand(name: str) -> float:
        limits = marram.found(facility_fits)[name].limits
        found = next(one.demand for one in limits if one.name == "water over the blocks")
        assert found is not None
        return found

    # Fresh-water allowance W/(4 TPC) for 25 kg/m3: about 22 mm for the 12 kg/m3 between 1.012 and 1.024 t/m3.
    assert demand("corve-graving-dock") - demand("kettle-sound-floating-dock") == pytest.approx(0.026, abs=0.006)


def test_a_limit_that_is_not_given_is_not_known() -> None:
    package = marram.package()
    facilities = tuple(
        replace(one, limits=replace(one.limits, line_load=None)) if one.facility == "corve-graving-dock" else one
        for one in package.facilities
    )
    calculated = marram.calculated(replace(package, facilities=facilities))
    record = calculated.record
    fit = result_of(calculated, facility_fits)["corve-graving-dock"]
    assert fit.met is None
    assert fit.governs.name == "line load"
    assert record.values["facility.corve-graving-dock.result"].si == "not known"
