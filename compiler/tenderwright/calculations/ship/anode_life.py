"""Anodes: what was left of them, how long they last, and what is needed until the next docking."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Literal, cast

from tenderwright.calculations.anodes.breakdown import BARE, coating_breakdown
from tenderwright.calculations.anodes.demand import B401, Demand, Densities, Surface, total_demand
from tenderwright.calculations.anodes.demand import METHOD as DEMAND
from tenderwright.calculations.anodes.layout import Layout, Taken, anode_layout
from tenderwright.calculations.anodes.life import METHOD as LIFE
from tenderwright.calculations.anodes.life import Found, anode_life, mean_current
from tenderwright.calculations.anodes.number import METHOD as NUMBER
from tenderwright.calculations.anodes.number import AnodeType, anodes_needed, greatest_life
from tenderwright.calculations.anodes.resistance import CLOSED_CIRCUIT, Shape, anode_current, resistance_of
from tenderwright.calculations.condition_results import AnodeGroup, AnodePlan
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.thickness.readings import year_of
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.anode_duty import AnodeDuty
from tenderwright.model.package import Package
from tenderwright.model.vessel import Anode

_YEAR = 365.25 * 86400.0
_LIFE_NAMES = {
    "rate": "rate",
    "wasted": "wasted",
    "left_to_use": "left-to-use",
    "whole_life": "whole-life",
    "at_next": "at-next",
    "decision": "decision",
}
_DEMAND_NAMES = {name: f"current-{name}" for name in ("initial", "mean", "final")}
_NUMBER_NAMES = {"mass": "mass-needed", "number": "needed", "governs": "governs"}


def anode_duty(package: Package, results: Results, record: Record) -> None:
    """Keep the life of each lot of anodes, the current asked, and the number needed until the next docking."""
    condition = package.condition
    if condition is None or condition.anodes is None or not package.anodes or package.tender is None:
        for method, names in ((DEMAND, _DEMAND_NAMES), (NUMBER, _NUMBER_NAMES)):
            if "vessel/condition.yaml" in package.broken.files or "vessel/anodes.yaml" in package.broken.files:
                record.failed |= {f"anodes.{name}": "what it rests on has a mistake" for name in names.values()}
            else:
                why = "it needs `anodes` in vessel/condition.yaml, and vessel/anodes.yaml"
                record.missing |= {f"anodes.{name}": why for name in names.values()}
            assert method.outputs
        return
    duty = condition.anodes
    docking = year_of(str(package.tender.programme.docking))
    interval = condition.next_docking.si / _YEAR
    results.condition.anode_groups = tuple(_groups(package, duty, docking + interval, record))
    try:
        _plan(package, duty, condition.next_docking.si, results, record)
    except OutOfRange as error:
        record.fail(NUMBER, "anodes", str(error), duty.here, _NUMBER_NAMES)


def _groups(package: Package, duty: AnodeDuty, next_docking: float, record: Record) -> Iterator[AnodeGroup]:
    """Yield the anodes of each lot that were looked at on one day, each with its life."""
    named = {anode.anode: anode for anode in package.anodes}
    for number, lot in enumerate(duty.fitted, start=1):
        anodes = [named[name.name] for name in lot.anodes if name.name in named]
        seen = [anode for anode in anodes if anode.left is not None and anode.seen is not None]
        if not seen:
            continue
        last = max(cast(object, anode.seen) for anode in seen)  # type: ignore[type-var]
        group = [anode for anode in seen if anode.seen == last]
        years = year_of(str(last)) - year_of(str(lot.on))
        left = sum(anode.left.si for anode in group if anode.left) / len(group)
        prefix = f"anodes.lot-{number}"
        try:
            life = anode_life([Found(years, left)], duty.utilisation.si, next_docking - year_of(str(last)))
            alloy = sum(anode.mass.si for anode in group)
            current = mean_current(1.0 - left, alloy, 1, duty.capacity, years)
        except OutOfRange as error:
            record.fail(LIFE, prefix, str(error), lot.here, _LIFE_NAMES)
            continue
        inputs = {
            "anodes": Given(None, ", ".join(anode.anode for anode in group), lot.here),
            "fitted": Given(None, str(lot.on), lot.here),
            "left": Given(left, f"{left:.0%} on the mean, seen {last}", group[0].here),
            "utilisation": given(duty.utilisation),
        }
        outputs = {
            "rate": life.rate,
            "wasted": life.wasted,
            "left_to_use": None if life.years_left is None else life.years_left * _YEAR,
            "whole_life": None if life.whole_life is None else life.whole_life * _YEAR,
            "at_next": life.at_next,
            "decision": life.decision,
        }
        record.keep(LIFE, prefix, f"anodes fitted {lot.on}", inputs, outputs, _LIFE_NAMES)
        yield AnodeGroup(
            tuple(anode.anode for anode in group),
            str(lot.on),
            str(last),
            years,
            left,
            min(anode.left.si for anode in group if anode.left),
            life,
            current,
        )


def _plan(package: Package, duty: AnodeDuty, interval: float, results: Results, record: Record) -> None:
    surfaces, inputs = [], {}
    for one in duty.surfaces:
        densities = Densities(one.name, one.initial.si, one.mean.si, one.final.si, B401)
        coated = one.a is not None or one.b is not None
        broken = coating_breakdown(one.a or 0.0, one.b or 0.0, interval / _YEAR) if coated else BARE
        area, origin = _area(one.zone.name if one.zone else "", record), ""
        if one.zone is not None and area is not None:
            origin = f"zone.{one.zone.name}.area"
            area *= one.share.si if one.share else 1.0
        elif one.area is not None:
            area = one.area.si
        if area is None:
            raise OutOfRange(f"the area of `{one.name}` is not known: give `zone` or `area`")
        surfaces.append(Surface(area, densities, broken))
        words = f"{area:.1f} m2 at {one.mean}, {broken.mean:.1%} of it bare on the mean: {one.source}"
        inputs[one.name] = Given(area, words, origin or one.here)
    demand = total_demand(surfaces)
    life = {
        "interval": Given(interval, f"{interval / _YEAR:g} yr", package.condition.here if package.condition else "")
    }
    outputs = {"initial": demand.initial, "mean": demand.mean, "final": demand.final}
    record.keep(DEMAND, "anodes", "surfaces that the anodes look after", inputs | life, outputs, _DEMAND_NAMES)
    _number(package, duty, demand, interval, results, record)


def _area(zone: str, record: Record) -> float | None:
    value = record.values.get(f"zone.{zone}.area")
    return float(value.si) if value is not None else None


def _number(
    package: Package, duty: AnodeDuty, demand: Demand, interval: float, results: Results, record: Record
) -> None:
    anodes = package.anodes
    each = sum(anode.mass.si for anode in anodes) / len(anodes)
    alloy = cast(Literal["zinc", "aluminium"], anodes[0].alloy)
    new, spent = (_current(duty, anodes, left, alloy) for left in (1.0, 1.0 - duty.utilisation.si))
    kind = AnodeType(each, new, spent, duty.utilisation.si, alloy, duty.capacity)
    needed = anodes_needed(demand, kind, interval)
    lasts = greatest_life(demand, kind, len(anodes)) / _YEAR
    more = needed.number - len(anodes)
    layout = _layout(package, duty, more) if more > 0 else None
    results.condition.anode_plan = AnodePlan(
        needed, each, len(anodes), demand.initial, demand.mean, demand.final, lasts, layout
    )
    inputs = {
        "current": given(record.values["anodes.current-mean"], f"{demand.mean:.2f} A mean"),
        "interval": Given(interval, f"{interval / _YEAR:g} yr", "anodes.current-mean"),
        "mass": Given(each, f"{each:.2f} kg, the mean of those fitted", "anodes.mass"),
        "currents": Given(None, f"{new:.2f} A new, {spent:.2f} A spent, one anode", duty.here),
        "capacity": Given(duty.capacity, f"{duty.capacity:g} A h/kg, {duty.source}", duty.here),
        "utilisation": given(duty.utilisation),
    }
    outputs = {"mass": needed.mass, "number": float(needed.number), "governs": needed.governs}
    record.keep(NUMBER, "anodes", "anodes needed until the next docking", inputs, outputs, _NUMBER_NAMES)


def _current(duty: AnodeDuty, anodes: tuple[Anode, ...], left: float, alloy: str) -> float:
    """Give the current of the mean anode, A, with a share of its mass left: it shrinks alike in breadth and depth."""
    sized = [a for a in anodes if a.length is not None and a.width is not None and a.thickness is not None]
    if not sized:
        raise OutOfRange("anodes need their length, width and thickness in vessel/anodes.yaml")
    length, width, depth = (
        sum(q.si for a in sized if (q := getattr(a, name)) is not None) / len(sized)
        for name in ("length", "width", "thickness")
    )
    shrunk = math.sqrt(left)
    width, depth = width * shrunk, depth * shrunk
    resistance = resistance_of(
        cast(Shape, duty.shape),
        duty.resistivity,
        length=length,
        radius=math.sqrt(width * depth / math.pi),
        width=width,
        exposed_area=length * width + 2.0 * depth * (length + width),
    )
    return anode_current(resistance, CLOSED_CIRCUIT[alloy])


def _layout(package: Package, duty: AnodeDuty, more: int) -> Layout | None:
    """Place further anodes on the strip of one side, clear of those fitted and of openings."""
    strip = duty.strip
    if strip is None:
        return None
    sizes = [anode.length.si for anode in package.anodes if anode.length]
    length = max(sizes, default=0.4)
    taken = [
        Taken(anode.at.x - 0.5 * length, anode.at.x + 0.5 * length, anode.anode)
        for anode in package.anodes
        if abs(anode.height.si - strip.height.si) < 0.6
    ]
    for opening in package.openings:
        if abs(opening.height.si - strip.height.si) < 0.6:
            half = 0.5 * (opening.length.si if opening.length else opening.bore.si if opening.bore else 0.3)
            taken.append(Taken(opening.at.x - half, opening.at.x + half, opening.opening))
    return anode_layout(strip.from_.x, strip.to.x, math.ceil(more / 2), length, taken)
