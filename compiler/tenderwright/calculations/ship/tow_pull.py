"""What it takes to pull her: resistance by both methods in each weather, the tug's pull, gear, points and battery."""

from __future__ import annotations

from collections.abc import Mapping
from math import hypot
from typing import Any

from msgspec import Struct

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.schema import GRAVITY
from tenderwright.calculations.steps.outcome import Absent, Each, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tow.battery import METHOD as BATTERY
from tenderwright.calculations.tow.bollard_pull import EFFICIENCY
from tenderwright.calculations.tow.bollard_pull import METHOD as BOLLARD
from tenderwright.calculations.tow.gear import METHOD as GEAR
from tenderwright.calculations.tow.resistance_navy import METHOD as NAVY
from tenderwright.calculations.tow.resistance_ufc import METHOD as UFC
from tenderwright.calculations.tow.resistance_ufc import blade_area
from tenderwright.calculations.uncertainty.judged import METHOD as JUDGED
from tenderwright.calculations.value import Given, given
from tenderwright.calculations.verdict import Limit
from tenderwright.model.particulars import Particulars
from tenderwright.model.tow import Resistance, SeaCase, Tow
from tenderwright.notices import Place
from tenderwright.quantities.display import show

HOVE_TO = "hove-to"
"""The weather in which the tug holds her where she is; always reckoned."""
_WIND, _CURRENT = 20.0, 0.5
"""Wind and current of the survival case in the open sea, m/s (MSC/Circ.884, 9.4, from memory)."""
_WORST = 0.5
"""Efficiency hove to, where none is given (common practice, no source)."""
CARGO = 240.0
"""A_R of UFC 4-159-03 for cargo ships, by which blades are reckoned that nobody has measured."""
PULLS = ("bridle", "towline", "alongside")
"""Uses of towing points that take the whole pull."""


class Weather(Struct, frozen=True):
    """A weather for which the pull is reckoned."""

    name: str
    speed: Given
    wind: Given
    sea: Given | None
    efficiency: Given
    waves: str
    stated: bool
    """Whether the package states it."""
    here: Place


@step()
def tow_weathers(tow_plan: Tow) -> dict[str, Weather] | Absent:
    """Give every weather for which the pull is reckoned, the hove-to case among them whatever the package states."""
    plan = tow_plan.resistance
    if plan is None:
        return Lacking("it needs `resistance` in tow.yaml: frontal area, and the weathers to allow for")
    found = {one.case: _weather(one, plan, EFFICIENCY) for one in plan.cases}
    stated = plan.hove_to or next((one for one in plan.cases if one.case == HOVE_TO), None)
    found[HOVE_TO] = _weather(stated, plan, _WORST) if stated is not None else _survival(plan)
    return found


def _weather(one: SeaCase, plan: Resistance, efficiency: float) -> Weather:
    usual = Given(efficiency, f"{efficiency:.0%}, none is stated", "common practice, no source")
    return Weather(
        one.case,
        given(one.speed),
        given(one.wind),
        given(one.sea) if one.sea is not None else None,
        given(one.efficiency) if one.efficiency is not None else usual,
        one.waves,
        stated=True,
        here=plan.here,
    )


def _survival(plan: Resistance) -> Weather:
    source = "MSC/Circ.884, 9.4 (from memory), none is stated"
    return Weather(
        HOVE_TO,
        Given(_CURRENT, show(_CURRENT, "wind speed", more=1), source),
        Given(_WIND, show(_WIND, "wind speed"), source),
        None,
        Given(_WORST, f"{_WORST:.0%}, none is stated", "common practice, no source"),
        "",
        stated=False,
        here=plan.here,
    )


@step()
def tow_blades(tow_plan: Tow, particulars: Particulars) -> Given:
    """Give the area of the blades that are dragged: as stated, by her length and breadth, or none."""
    plan = tow_plan.resistance
    if tow_plan.propeller in ("unshipped", "none"):
        return Given(
            0.0, f"propeller {tow_plan.propeller}" if tow_plan.propeller != "none" else "no propeller", "tow.yaml"
        )
    if plan is not None and plan.blades is not None:
        return given(plan.blades)
    size = particulars.dimensions
    area = blade_area(size.length_between_perpendiculars.si, size.beam.si, CARGO)
    return Given(area, show(area, "small area"), "UFC 4-159-03, 4-5.2: L B/(0.838 A_R), A_R 240 of cargo ships")


@step_of(UFC, "tow.{}.ufc", each="tow_weathers")
def tow_by_ufc(
    weather: Weather,
    tow_plan: Tow,
    towed: FloatingPosition,
    tow_water: Given,
    tow_blades: Given,
    particulars: Particulars,
) -> Uses | Absent:
    """Find her resistance in a weather by UFC 4-159-03."""
    plan = tow_plan.resistance
    assert plan is not None
    size, h = particulars.dimensions, towed.hydrostatics
    inputs = {
        "speed": weather.speed,
        "wind": weather.wind,
        "length": given(size.length_between_perpendiculars),
        "beam": given(size.beam),
        "draft": Given(h.draft, show(h.draft, "draft"), "condition.tow.draft"),
        "displacement": _displacement(towed),
        "frontal_area": given(plan.frontal_area),
        "density": tow_water,
        "blades": tow_blades,
    }
    if plan.fouling is not None:
        inputs["fouling"] = Given(plan.fouling, f"{plan.fouling:g}", plan.here)
    return Uses(weather.name.replace("-", " "), inputs | _common(plan, weather), weather.here)


@step_of(NAVY, "tow.{}.navy", each="tow_weathers")
def tow_by_navy(weather: Weather, tow_plan: Tow, towed: FloatingPosition, tow_blades: Given) -> Uses | Absent:
    """Find her resistance in a weather by the towing manual, as far as its curves are given."""
    plan = tow_plan.resistance
    assert plan is not None
    curve = [{"speed": one.speed.si, "per_ton": one.per_ton} for one in plan.hull_curve]
    inputs = {
        "speed": weather.speed,
        "wind": weather.wind,
        "displacement": _displacement(towed),
        "frontal_area": given(plan.frontal_area),
        "propeller_area": tow_blades,
    }
    if curve:
        inputs["hull_curve"] = Given(
            curve, f"{len(curve)} points ({plan.curve_source or 'no source stated'})", plan.here
        )
    return Uses(weather.name.replace("-", " "), inputs | _common(plan, weather), weather.here)


def _displacement(towed: FloatingPosition) -> Given:
    return Given(towed.loading.mass, show(towed.loading.mass, "weight"), "condition.tow.displacement")


def _common(plan: Resistance, weather: Weather) -> dict[str, Given]:
    found = {}
    if plan.wind_shape is not None:
        found["wind_shape"] = Given(plan.wind_shape, f"{plan.wind_shape:g}", plan.here)
    if weather.sea is not None:
        found["sea"] = weather.sea
    return found


@step_of(BOLLARD, "tow.pull")
def tow_pull(
    tow_plan: Tow,
    tow_weathers: dict[str, Weather],
    tow_by_ufc: Each[Mapping[str, Any]],
    tow_by_navy: Each[Mapping[str, Any]],
) -> Uses | Absent:
    """Find the pull that governs, the greater of both methods in each weather, and the bollard pull that it takes."""
    rows: list[dict[str, Any]] = []
    for name, weather in tow_weathers.items():
        pulls = [each[name]["pull"] for each in (tow_by_ufc, tow_by_navy) if name in each]
        known = [pull for pull in pulls if pull is not None]
        row: dict[str, Any] = {"name": name.replace("-", " "), "efficiency": weather.efficiency.si}
        rows.append(row | ({"pull": max(known)} if known else {}))
    if not any("pull" in row for row in rows):
        return Lacking("it needs `sea`, the resistance in waves, of at least one weather in tow.yaml")
    words = f"{len(rows)} weathers, the greater of both methods in each"
    plan = tow_plan.resistance
    assert plan is not None
    return Uses("over all weathers", {"cases": Given(rows, words, "tow.*.ufc.pull, tow.*.navy.pull")}, plan.here)


@step_of(GEAR, "tow.gear")
def tow_gear(tow_plan: Tow, tow_pull: Mapping[str, Any]) -> Uses:
    """Find the strength asked of the gear, and the pull on a leg of the bridle."""
    held = tow_plan.tugs[0].held if tow_plan.tugs else "hook"
    origin = tow_plan.here if tow_plan.tugs else "taken as a hook, which asks most, while no tug is known"
    inputs = {"pull": _force(tow_pull, "pull"), "held": Given(held, held, origin)}
    spread = bridle_spread(tow_plan)
    if tow_plan.bridle is not None and spread is not None:
        inputs |= {"spread": spread, "leg": given(tow_plan.bridle.leg)}
    return Uses("for the pull that governs", inputs, tow_plan.here)


def bridle_spread(plan: Tow) -> Given | None:
    """Give the distance between the two towing points of the bridle; None where there are not two with their places."""
    ends = [one for one in plan.points if one.use == "bridle" and one.off_centre is not None]
    if len(ends) != 2:
        return None
    (x, y), (other_x, other_y) = ((one.at.x, one.off_centre.si if one.off_centre else 0.0) for one in ends)
    apart = hypot(x - other_x, y - other_y)
    return Given(apart, show(apart, "distance"), ends[0].here) if apart > 0 else None


def _force(pull: Mapping[str, Any], name: str) -> Given:
    return Given(pull[name], show(pull[name], "pull"), f"tow.pull.{name}")


@step_of(JUDGED, "tow.points", names={"result": "result", "deciding": "deciding", "use": "use"})
def tow_points(tow_plan: Tow, tow_gear: Mapping[str, Any]) -> Uses | Absent:
    """Judge each towing point by the strength asked of fittings."""
    points = [one for one in tow_plan.points if one.use in PULLS]
    if not points:
        return Lacking("it needs `points` in tow.yaml: where the towline or the bridle is made fast")
    asked = tow_gear["fittings"]
    limits = [
        Limit(one.point, "force", asked, one.capacity.si if one.capacity else None, source=one.source) for one in points
    ]
    given_limits = Given(limits, ", ".join(one.point for one in points), points[0].here)
    return Uses("towing points, by the yield of fitting and deck", {"limits": given_limits}, points[0].here)


@step_of(JUDGED, "tow.tug", names={"result": "result", "deciding": "deciding", "use": "use"})
def tow_tug(tow_plan: Tow, tow_pull: Mapping[str, Any]) -> Uses | Absent:
    """Judge the bollard pull of the tug that pulls first by what is asked."""
    if not tow_plan.tugs:
        return NotAsked("no tug is named yet")
    tug = tow_plan.tugs[0]
    needed = None if tow_pull["unknown"] else tow_pull["needed"]
    pull = tug.bollard_pull.si * GRAVITY if tug.bollard_pull is not None else None
    limit = Limit(f"bollard pull of {tug.name}", "force", needed, pull, source=tug.tested)
    found = replace_known(limit, tow_pull["needed"])
    return Uses(tug.name, {"limits": Given([found], tug.name, tow_plan.here)}, tow_plan.here)


def replace_known(limit: Limit, at_least: float) -> Limit:
    """Hold what is known already against the limit, where that alone passes it though some weather is not known."""
    known = Limit(limit.name, limit.dimension, at_least, limit.limit, source=limit.source)
    return known if limit.demand is None and known.met is False else limit


@step_of(BATTERY, "tow.battery")
def tow_battery(tow_plan: Tow) -> Uses | Absent:
    """Find the charge that lights and alarms use on passage."""
    plan = tow_plan.electricity
    if plan is None:
        return NotAsked("tow.yaml tells of no lights and alarms")
    loads = [{"count": one.count, "power": one.power.si, "hours": one.hours.si} for one in plan.loads]
    inputs = {
        "loads": Given(loads, ", ".join(one.what for one in plan.loads), plan.here),
        "voltage": given(plan.voltage),
        "time": given(plan.lasts),
    }
    return Uses("lights and alarms", inputs, plan.here)


@step_of(JUDGED, "tow.battery-carried", names={"result": "result", "deciding": "deciding", "use": "use"})
def tow_battery_carried(tow_plan: Tow, tow_battery: Mapping[str, float]) -> Uses | Absent:
    """Judge the battery carried by the charge asked."""
    plan = tow_plan.electricity
    assert plan is not None
    carried = plan.battery
    limit = Limit(
        "battery", "charge", tow_battery["charge"], carried.si if carried else None, source="the battery carried"
    )
    return Uses("lights and alarms", {"limits": Given([limit], "battery", plan.here)}, plan.here)
