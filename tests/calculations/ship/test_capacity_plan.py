"""Her tanks by a capacity plan alone: the condition afloat stays within what that is said to leave in doubt."""

from __future__ import annotations

from functools import cache

import pytest

from tenderwright.calculations.ship.docking_condition import docking_tank_states
from tenderwright.calculations.ship.how_sure import known_tanks
from tenderwright.calculations.ship.side_loads import side_block_slopes, side_block_verdict
from tenderwright.calculations.ship.tanks import tank_contents, tank_shape, tank_sounding_table
from tenderwright.calculations.ship.zones import zone_internal
from tenderwright.calculations.steps.again import different
from tenderwright.calculations.steps.outcome import Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.model.package import Package
from tenderwright.model.tank import CapacityPlan, Contents, TableRow, Tank
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity, parse_quantity
from tests.calculations.ship import marram
from tests.calculations.ship.test_buoyancy import metric
from tests.outcomes import result_of
from tests.replacing import replace

FILLINGS = [one / 20 for one in range(1, 20)]


def _length(figure: float) -> Quantity:
    return marram.length(f"{figure:.4f} m")


def planned(tank: Tank, *, bottom: bool = True) -> Tank:
    """Give a tank of hers as a capacity plan would, with as much in it as she has."""
    shape, held = result_of(marram.ship(), tank_shape)[tank.tank], result_of(marram.ship(), tank_contents)[tank.tank]
    x, y, z = shape.contents(shape.capacity).centroid
    inertia = max(shape.contents(one * shape.capacity).surface_transverse for one in FILLINGS)
    assert tank.bounds is not None
    plan = CapacityPlan(
        at=Position(f"{x:.4f} m", x),
        off_centre=_length(y),
        height=_length(z),
        inertia=parse_quantity(f"{inertia:.4f} m4", "second_moment"),
        from_=tank.bounds.from_,
        to=tank.bounds.to,
        bottom=_length(max(shape.body.bottom, 0.0)) if bottom else None,
        here=tank.here,
    )
    full = parse_quantity(f"{held.liquid.volume / shape.capacity * 100:.6f} %", "fraction")
    contents = replace(tank.contents, sounding=None, ullage=None, volume=None, full=full)
    capacity = parse_quantity(f"{shape.capacity:.6f} m3", "volume")
    return replace(tank, bounds=None, pipe=None, plan=plan, contents=contents, capacity=capacity)


def alone_package(*, bottom: bool = True) -> Package:
    """Give her with all her tanks so."""
    tanks = tuple(planned(tank, bottom=bottom) for tank in marram.package().tanks)
    return replace(marram.package(), tanks=tanks)


@cache
def alone(*, bottom: bool = True) -> Calculated:
    """Calculate her so."""
    return marram.calculated(alone_package(bottom=bottom))


def _both(name: str, of: Calculated) -> tuple[float, float]:
    return float(marram.ship().record.values[name].si), float(of.record.values[name].si)


@pytest.mark.parametrize("bottom", [True, False])
def test_weight_and_centre_stay_within_what_is_said_to_be_in_doubt(bottom: bool) -> None:
    """Measured: 0.08 t, 0.1 mm along and 2 mm up, where the uncertainty of the metacentric height is 29 mm."""
    found = alone(bottom=bottom)
    displacement = _both("condition.docking.displacement", found)
    u_gm, u_trim = (float(found.record.values[f"uncertainty.{name}"].si) for name in ("gm", "trim"))
    vcg, lcg = _both("condition.docking.vcg", found), _both("condition.docking.lcg", found)
    assert displacement[1] == pytest.approx(displacement[0], abs=200.0)
    assert abs(vcg[1] - vcg[0]) <= u_gm
    assert lcg[1] == pytest.approx(lcg[0], abs=0.005)
    trim = _both("condition.arrival.trim", found)
    assert abs(trim[1] - trim[0]) <= u_trim
    assert u_gm > _both("uncertainty.gm", marram.ship())[0]


def test_free_surface_and_metacentric_height_are_on_the_safe_side() -> None:
    for condition in ("arrival", "docking"):
        moment = _both(f"condition.{condition}.free-surface-moment", alone())
        gm = _both(f"condition.{condition}.gm-fluid", alone())
        assert moment[1] > moment[0]
        assert gm[0] - 0.15 < gm[1] < gm[0]


def test_all_that_rests_on_the_tanks_is_there_and_can_be_run_again() -> None:
    assert not [one for one in alone().record.notices if one.place.path == "vessel/tanks.yaml"]
    for name in ("docking.trim.moved", "docking.landing.upthrust", "blocks.keel.elastic.greatest"):
        assert name in alone().record.values
    assert list(different(alone().record)) == []


def test_what_needs_the_faces_or_the_form_of_a_tank_says_so() -> None:
    areas, tables = alone().outcome(zone_internal), alone().outcome(tank_sounding_table)
    for outcomes, words in ((areas, "does not give its faces"), (tables, "it needs `table`")):
        assert outcomes.outcomes
        assert all(isinstance(one, Lacking) and words in one.why for one in outcomes.outcomes.values())


def _sounded(table: tuple[TableRow, ...], contents: Contents) -> Calculated:
    """Give her at rest on an even keel, one tank of hers by its plan and a table of its own."""
    lightship = marram.package().lightship
    assert lightship is not None
    tanks = []
    for tank in marram.package().tanks:
        one = tank
        if tank.tank == "db-2-port":
            one = replace(planned(tank), pipe=tank.pipe, table=table, contents=contents)
        tanks.append(one)
    level = replace(lightship, observed=None)
    return marram.calculated(replace(marram.package(), tanks=tuple(tanks), lightship=level))


def _rows(word: str, *rows: tuple[str, str]) -> tuple[TableRow, ...]:
    here = marram.package().tanks[0].here
    return tuple(
        TableRow(**{word: marram.length(at)}, volume=parse_quantity(volume, "volume"), here=here)  # type: ignore[arg-type]
        for at, volume in rows
    )


INNAGES = _rows("sounding", ("0 in", "0 US_gal"), ("12 in", "600 US_gal"), ("3 ft", "2400 US_gal"))
ULLAGES = _rows("ullage", ("13 ft", "2400 US_gal"), ("15 ft", "600 US_gal"), ("16 ft", "0 US_gal"))


@pytest.mark.parametrize(
    ("table", "word", "reading", "gallons"),
    [(INNAGES, "sounding", "2 ft", 1500.0), (ULLAGES, "ullage", "14 ft", 1500.0), (ULLAGES, "ullage", "16 ft", 0.0)],
)
def test_a_plan_is_sounded_by_the_ships_own_table(
    table: tuple[TableRow, ...], word: str, reading: str, gallons: float
) -> None:
    (tank,) = [one for one in marram.package().tanks if one.tank == "db-2-port"]
    contents = replace(tank.contents, **{"sounding": None, word: marram.length(reading)})
    found = _sounded(table, contents)
    volume = result_of(found, tank_contents)["db-2-port"].liquid.volume
    assert volume == pytest.approx(gallons * parse_quantity("1 US_gal", "volume").si)
    shown = result_of(found, tank_sounding_table)["db-2-port"]
    assert (shown.by, shown.trims, len(shown.volumes)) == (word, (0.0,), 3)


def test_the_sounding_at_docking_is_read_from_the_table_at_her_trim() -> None:
    """Derived: at the pipe it is deeper or shallower than at the tank's middle by the slope times the distance."""
    (tank,) = [one for one in marram.package().tanks if one.tank == "db-2-port"]
    found = _sounded(INNAGES, replace(tank.contents, sounding=marram.length("2 ft")))
    state = result_of(found, docking_tank_states)["db-2-port"]
    assert state.sounding is not None
    plan = result_of(found, tank_shape)["db-2-port"]
    assert tank.pipe is not None
    middle = (plan.body.lower_corner[0] + plan.body.upper_corner[0]) / 2
    slope = float(found.record.values["condition.docking.trim"].si) / 50.4
    gallons = state.volume / parse_quantity("1 US_gal", "volume").si
    inches = gallons / 50 if gallons < 600 else 12 + (gallons - 600) / 75
    assert state.sounding == pytest.approx(inches * 0.0254 - (tank.pipe.at.x - middle) * slope, abs=0.002)


def test_a_reading_that_the_table_does_not_know_needs_the_pipe() -> None:
    (tank,) = [one for one in marram.package().tanks if one.tank == "db-2-port"]
    headless = replace(tank.pipe, head=None)
    package = marram.package()
    one = replace(planned(tank), pipe=headless, table=ULLAGES, contents=tank.contents)
    tanks = tuple(one if other.tank == one.tank else other for other in package.tanks)
    outcome = marram.calculated(replace(package, tanks=tanks)).record
    assert "`foot` and `head`" in outcome.missing[f"tank.{one.tank}.table-volume"]


def test_a_moment_without_its_density_weighs_as_much_as_it_can() -> None:
    """A moment that was worked for oil is a larger surface than it would be for the water that is in the tank now."""
    (tank,) = [one for one in marram.package().tanks if one.tank == "oil-port"]
    by_plan = planned(tank)
    assert by_plan.plan is not None
    moment = replace(by_plan.plan, inertia=None, moment=parse_quantity("20 t*m", "moment"))
    for liquid, density in (("oily water", 880.0), ("none", 880.0), ("diesel oil", 880.0)):
        one = replace(by_plan, plan=moment, contents=replace(by_plan.contents, liquid=liquid, density=None))
        tanks = tuple(one if other.tank == one.tank else other for other in marram.package().tanks)
        shape = result_of(marram.calculated(replace(marram.package(), tanks=tanks)), tank_shape)["oil-port"]
        assert shape.surface == pytest.approx(20000.0 / density)


def test_contents_are_as_sure_as_they_were_told() -> None:
    """Told by how full it is, to 4 % either way: u = 4 %/sqrt(3) of the mass, and no sounding enters."""
    (tank,) = [one for one in marram.package().tanks if one.tank == "fresh-water-port"]
    told = replace(planned(tank).contents, full=parse_quantity("45 % ± 4 %", "fraction"))
    tanks = tuple(
        replace(planned(tank), contents=told) if one.tank == tank.tank else one for one in marram.package().tanks
    )
    rows = result_of(marram.calculated(replace(marram.package(), tanks=tanks)), known_tanks)
    (row,) = [one for one in rows if one["name"] == tank.name]
    assert row["u_share"] == pytest.approx(0.04 / 3**0.5 / 0.45)
    assert row["u_level"] == 0.0
    assert all(one["u_level"] > 0 for one in rows if one["name"] != tank.name)


def test_side_blocks_are_set_against_wind_without_the_shell_over_them() -> None:
    package = replace(alone_package(), offsets=None, curves=metric())
    found = marram.calculated(package)
    hers = marram.ship().record.values
    assert found.record.values["blocks.side.moment-wind"].si == pytest.approx(hers["blocks.side.moment-wind"].si)
    assert isinstance(found.outcome(side_block_slopes), Lacking)
    judged = result_of(found, side_block_verdict)
    assert judged.met is not True
    assert judged.limits[0].demand is None
