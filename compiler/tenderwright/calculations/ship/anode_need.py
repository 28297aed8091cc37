"""Anodes needed until the next docking: the current that is asked, their number, and places for further ones."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from typing import Any

from tenderwright.calculations.anodes.demand import METHOD as DEMAND
from tenderwright.calculations.anodes.lasting import METHOD as LASTING
from tenderwright.calculations.anodes.layout import METHOD as LAYOUT
from tenderwright.calculations.anodes.number import METHOD as NUMBER
from tenderwright.calculations.anodes.number import AnodeNumber
from tenderwright.calculations.anodes.resistance import METHOD as RESISTANCE
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steps.outcome import Absent, Each, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.anode_duty import AnodeDuty, AnodeStrip, ProtectedSurface
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.model.vessel import Anode, Opening
from tenderwright.quantities.display import show

_BESIDE = 0.6
"""How far above or below a strip a thing stands that still takes room on it, m (common practice, no source)."""


@step_of(DEMAND, "anodes", names={name: f"current-{name}" for name in ("initial", "mean", "final")})
def anode_demand(
    anode_duty: AnodeDuty,
    condition: ShipCondition,
    zone_area: Each[Mapping[str, Any]],
) -> Uses | Absent:
    """Find the current that the surfaces ask of the anodes."""
    surfaces, words, origins = [], [], []
    for one in anode_duty.surfaces:
        area = _area(one, zone_area)
        if isinstance(area, Absent):
            return area
        figures = {"area": area.si, "initial": one.initial.si, "mean": one.mean.si, "final": one.final.si}
        coated = {name: figure for name, figure in (("a", one.a), ("b", one.b)) if figure is not None}
        surfaces.append(figures | coated)
        breaks = f"a {one.a or 0:g}, b {one.b or 0:g} a year" if coated else "bare"
        words.append(f"{one.name} {area.text} at {one.initial}, {one.mean}, {one.final}, {breaks} ({one.source})")
        origins += [area.origin] if isinstance(area.origin, str) else []
    inputs = {
        "surfaces": Given(surfaces, "; ".join(words), ", ".join(origins) or anode_duty.surfaces[0].here),
        "life": given(condition.next_docking),
    }
    return Uses("surfaces that the anodes look after", inputs, anode_duty.here)


def _area(one: ProtectedSurface, zone_area: Each[Mapping[str, Any]]) -> Given | Absent:
    zone = zone_area.outcomes.get(one.zone.name) if one.zone else None
    if one.zone is not None and zone is not None and not isinstance(zone, Absent):
        area = zone["area"] * (one.share.si if one.share else 1.0)
        return Given(area, show(area, "area"), f"zone.{one.zone.name}.area")
    if one.area is not None:
        return given(one.area)
    if isinstance(zone, Absent):
        return zone.passed_on()
    raise OutOfRange(f"the area of `{one.name}` is not known: give `zone` or `area`")


@step_of(RESISTANCE, "anodes.new", names={"current": "current"})
def current_when_new(anode_duty: AnodeDuty, listed_anodes: tuple[Anode, ...], anode_alloy: Given) -> Uses:
    """Find the current of the mean anode when it is new."""
    return _current(anode_duty, listed_anodes, anode_alloy, 1.0, "new")


@step_of(RESISTANCE, "anodes.spent", names={"current": "current"})
def current_when_spent(anode_duty: AnodeDuty, listed_anodes: tuple[Anode, ...], anode_alloy: Given) -> Uses:
    """Find the current of the mean anode when it is spent: it shrinks alike in breadth and depth."""
    return _current(anode_duty, listed_anodes, anode_alloy, 1.0 - anode_duty.utilisation.si, "spent")


def _current(duty: AnodeDuty, anodes: tuple[Anode, ...], alloy: Given, left: float, state: str) -> Uses:
    sized = [a for a in anodes if a.length is not None and a.width is not None and a.thickness is not None]
    if not sized:
        raise OutOfRange("anodes need their length, width and thickness in vessel/anodes.yaml")
    length, width, depth = (
        sum(q.si for a in sized if (q := getattr(a, name)) is not None) / len(sized)
        for name in ("length", "width", "thickness")
    )
    here = sized[0].here

    def mean(figure: float) -> Given:
        return Given(figure, f"{show(figure, 'thickness', more=-1)}, mean of {len(sized)}", here)

    inputs = {
        "shape": Given(duty.shape, duty.shape, duty.here),
        "resistivity": Given(duty.resistivity, f"{duty.resistivity:g} ohm m", duty.here),
        "length": mean(length),
        "width": mean(width),
        "depth": mean(depth),
        "left": Given(left, f"{100.0 * left:.0f} %", duty.here),
        "alloy": alloy,
    }
    return Uses(f"one anode when {state}", inputs, duty.here)


@step_of(NUMBER, "anodes", names={"mass": "mass-needed", "number": "needed", "governs": "governs"})
def anodes_needed(
    anode_duty: AnodeDuty,
    condition: ShipCondition,
    anode_alloy: Given,
    fitted_anodes: Mapping[str, Any],
    anode_demand: Mapping[str, Any],
    current_when_new: Mapping[str, Any],
    current_when_spent: Mapping[str, Any],
) -> Uses:
    """Count the anodes needed until the next docking."""

    def current(figure: float, name: str) -> Given:
        return Given(figure, f"{figure:.2f} A", name)

    inputs = {
        f"{name}_demand": current(anode_demand[name], f"anodes.current-{name}") for name in ("initial", "mean", "final")
    }
    inputs |= {
        "life": given(condition.next_docking),
        "initial_current": current(current_when_new["current"], "anodes.new.current"),
        "final_current": current(current_when_spent["current"], "anodes.spent.current"),
    }
    inputs |= _alike(anode_duty, anode_alloy, fitted_anodes)
    return Uses("anodes needed until the next docking", inputs, anode_duty.here)


@step_of(LASTING, "anodes")
def anodes_lasting(
    anode_duty: AnodeDuty,
    anode_alloy: Given,
    fitted_anodes: Mapping[str, Any],
    anode_demand: Mapping[str, Any],
) -> Uses:
    """Find how long the anodes fitted, renewed, last by mass."""
    mean, count = anode_demand["mean"], fitted_anodes["count"]
    inputs = {
        "mean_demand": Given(mean, f"{mean:.2f} A", "anodes.current-mean"),
        "number": Given(int(count), f"{count:.0f}", "anodes.count"),
    }
    inputs |= _alike(anode_duty, anode_alloy, fitted_anodes)
    return Uses("the anodes fitted, renewed", inputs, anode_duty.here)


def _alike(duty: AnodeDuty, alloy: Given, fitted: Mapping[str, Any]) -> dict[str, Given]:
    """Give what is known of one anode, the mean of those fitted."""
    each = fitted["mass"] / fitted["count"]
    return {
        "mass": Given(
            each, f"{show(each, 'small part', more=1)}, the mean of those fitted", "anodes.mass, anodes.count"
        ),
        "utilisation": given(duty.utilisation),
        "alloy": alloy,
        "capacity": Given(duty.capacity, f"{duty.capacity:g} A h/kg, {duty.source}", duty.here),
    }


@step_of(LAYOUT, "anodes.further")
def further_anodes(
    anode_duty: AnodeDuty,
    anodes_needed: AnodeNumber,
    listed_anodes: tuple[Anode, ...],
    openings: tuple[Opening, ...],
) -> Uses | Absent:
    """Place further anodes on the strip of one side, clear of those fitted and of openings."""
    more = anodes_needed.number - len(listed_anodes)
    if more <= 0:
        return NotAsked("as many anodes are fitted as are needed")
    strip = anode_duty.strip
    if strip is None:
        return Lacking("it needs `strip` under `anodes` in vessel/condition.yaml")
    length = max((anode.length.si for anode in listed_anodes if anode.length), default=0.4)
    hindrances = [*_fitted(strip, listed_anodes, length), *_opened(strip, openings)]
    taken = [{"start": at - half, "end": at + half, "what": name} for at, half, name in hindrances]
    words = ", ".join(
        f"{name} {show(at - half, 'centre')} to {show(at + half, 'centre')}" for at, half, name in hindrances
    )
    number = math.ceil(more / 2)
    inputs = {
        "start": given(strip.from_),
        "end": given(strip.to),
        "number": Given(number, f"{number}, half of the {more} that are wanting", "anodes.needed, anodes.count"),
        "length": Given(
            length, f"{show(length, 'centre', more=1)}, the longest of those fitted", listed_anodes[0].here
        ),
        "taken": Given(taken, words or "nothing", strip.here),
    }
    return Uses("further anodes on either side", inputs, strip.here)


def _fitted(strip: AnodeStrip, anodes: tuple[Anode, ...], length: float) -> Iterator[tuple[float, float, str]]:
    for anode in anodes:
        if abs(anode.height.si - strip.height.si) < _BESIDE:
            yield anode.at.x, 0.5 * length, anode.anode


def _opened(strip: AnodeStrip, openings: tuple[Opening, ...]) -> Iterator[tuple[float, float, str]]:
    for opening in openings:
        if abs(opening.height.si - strip.height.si) < _BESIDE:
            size = opening.length.si if opening.length else opening.bore.si if opening.bore else 0.3
            yield opening.at.x, 0.5 * size, opening.opening
