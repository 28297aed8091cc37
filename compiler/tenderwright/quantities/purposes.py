"""What a figure is for: the one table that says in which unit, and how finely, each kind of figure is shown."""

from __future__ import annotations

from msgspec import Struct


class Form(Struct, frozen=True):
    """How a figure is written in one system of units."""

    unit: str
    places: int
    """Decimals; fewer or more are written where a figure asks for it, and as many as it takes for what is small."""
    eighths: bool = False
    """Whether it is written in feet, inches and eighths of an inch, as a tape reads."""


class Purpose(Struct, frozen=True):
    """What a figure is for: what it measures, and how it is written in each system."""

    dimension: str
    metric: Form
    us: Form


def _of(dimension: str, metric: str, places: int, us: str, us_places: int, *, eighths: bool = False) -> Purpose:
    return Purpose(dimension, Form(metric, places), Form(us, us_places, eighths))


PURPOSES = {
    # Along, across and above the ship.
    "distance": _of("length", "m", 2, "ft", 2, eighths=True),
    "height": _of("length", "m", 2, "ft", 2, eighths=True),
    "frame offset": _of("length", "mm", 0, "ft", 2, eighths=True),
    "draft": _of("length", "m", 2, "ft", 2),
    "draft mark": _of("length", "m", 2, "ft", 2, eighths=True),
    "water level": _of("length", "m", 2, "ft", 2),
    "trim": _of("length", "m", 2, "ft", 2),
    "centre": _of("length", "m", 2, "ft", 2),
    "metacentric height": _of("length", "m", 2, "ft", 2),
    "sounding": _of("length", "m", 2, "ft", 2, eighths=True),
    "clearance": _of("length", "m", 2, "ft", 2),
    "run": _of("length", "m", 1, "ft", 0),
    # Of plates, parts and films.
    "size": _of("length", "mm", 0, "in", 1),
    "paper": _of("length", "mm", 1, "in", 2),
    "thickness": _of("length", "mm", 1, "in", 3),
    "rivet": _of("length", "mm", 0, "in", 3),
    "film": _of("length", "um", 0, "mil", 1),
    "rate of loss": _of("rate_of_loss", "mm/yr", 3, "mil/yr", 2),
    # Areas and volumes.
    "area": _of("area", "m2", 1, "ft2", 0),
    "small area": _of("area", "m2", 2, "ft2", 1),
    "spot": _of("area", "cm2", 0, "in2", 1),
    "capacity": _of("volume", "m3", 2, "US_gal", 0),
    "volume displaced": _of("volume", "m3", 1, "ft3", 0),
    "paint": _of("volume", "L", 0, "US_gal", 1),
    "surface spreading": _of("spreading_rate", "m2/L", 1, "ft2/US_gal", 0),
    "second moment": _of("second_moment", "m4", 2, "ft4", 1),
    # Weights and loads.
    "weight": _of("mass", "t", 1, "long_ton", 1),
    "load of a tank": _of("mass", "t", 2, "long_ton", 2),
    "part": _of("mass", "kg", 0, "lb", 0),
    "small part": _of("mass", "kg", 1, "lb", 1),
    "moment": _of("moment", "t*m", 1, "ft*long_ton", 0),
    "immersion": _of("line_load", "t/cm", 2, "long_ton/in", 2),
    "change of trim": _of("mass", "t*m/cm", 2, "ft*long_ton/in", 1),
    "line load": _of("line_load", "t/m", 1, "long_ton/ft", 2),
    "weight of a run": _of("line_load", "kg/m", 1, "lb/ft", 1),
    "block load": _of("pressure", "MPa", 2, "psi", 0),
    "pressure": _of("pressure", "MPa", 2, "psi", 0),
    "test pressure": _of("pressure", "bar", 2, "psi", 1),
    "small pressure": _of("pressure", "kPa", 1, "psi", 2),
    "vapour pressure": _of("pressure", "Pa", 0, "psi", 3),
    "floor load": _of("area_density", "t/m2", 1, "long_ton/ft2", 2),
    "plate weight": _of("area_density", "kg/m2", 1, "lb/ft2", 2),
    "salts": _of("area_density", "mg/m2", 0, "ug/cm2", 1),
    "force": _of("force", "kN", 0, "lbf", 0),
    "stiffness": _of("stiffness", "MN/m", 0, "lbf/in", 0),
    "density": _of("density", "t/m3", 3, "lb/ft3", 2),
    "density in kilograms": _of("density", "kg/m3", 1, "lb/ft3", 2),
    # Weather, electricity, time and numbers, of which some are written alike in both.
    "temperature": _of("temperature", "degC", 1, "degF", 0),
    "temperature difference": _of("temperature_difference", "K", 1, "degF", 1),
    "wind speed": _of("speed", "m/s", 0, "kn", 0),
    "speed through water": _of("speed", "kn", 1, "kn", 1),
    "sea distance": _of("length", "nmi", 0, "nmi", 0),
    "minutes": _of("time", "min", 0, "min", 0),
    "current density": _of("current_density", "mA/m2", 0, "mA/ft2", 1),
    "work rate": _of("work_rate", "person_hour/t", 0, "person_hour/long_ton", 0),
    "current": _of("current", "A", 2, "A", 2),
    "potential": _of("potential", "V", 2, "V", 2),
    "resistance": _of("resistance", "ohm", 2, "ohm", 2),
    "salinity": _of("salinity", "g/kg", 1, "g/kg", 1),
    "power": _of("power", "W", 0, "W", 0),
    "charge": _of("charge", "Ah", 0, "Ah", 0),
    "flow": _of("flow", "m3/h", 1, "US_gal/min", 0),
    "pull": _of("force", "kN", 1, "lbf", 0),
    "energy": _of("energy", "kWh", 0, "kWh", 0),
    "work": _of("person_hour", "person_hour", 0, "person_hour", 0),
    "days": _of("time", "d", 1, "d", 1),
    "hours": _of("time", "h", 1, "h", 1),
    "years": _of("time", "yr", 1, "yr", 1),
    "angle": _of("angle", "deg", 2, "deg", 2),
    "share": _of("fraction", "%", 0, "%", 0),
    "count": _of("each", "each", 0, "each", 0),
}
"""Each purpose with its unit and decimals, metric and US customary."""

ABBREVIATIONS = {"immersion": ("TPC", "TPI"), "change of trim": ("MCTC", "MCTI")}
"""By what a figure is for, its letters, metric and US customary."""

USUAL = {
    ("length", "m"): "distance", ("length", "cm"): "size", ("length", "mm"): "thickness", ("length", "um"): "film",
    ("length", "ft"): "distance", ("length", "yd"): "distance", ("length", "in"): "thickness",
    ("length", "mil"): "film",
    ("area", "m2"): "area", ("area", "ft2"): "area", ("area", "cm2"): "spot", ("area", "mm2"): "spot",
    ("area", "in2"): "spot", ("volume", "m3"): "capacity", ("volume", "US_gal"): "capacity", ("volume", "L"): "paint",
    ("mass", "t"): "weight", ("mass", "long_ton"): "weight", ("mass", "kg"): "small part", ("mass", "lb"): "small part",
    ("mass", "t*m/cm"): "change of trim", ("line_load", "t/m"): "line load", ("line_load", "kg/m"): "weight of a run",
    ("line_load", "lb/ft"): "weight of a run", ("line_load", "t/cm"): "immersion",
    ("line_load", "long_ton/in"): "immersion",
    ("pressure", "MPa"): "pressure", ("pressure", "bar"): "test pressure", ("pressure", "kPa"): "small pressure",
    ("pressure", "Pa"): "vapour pressure", ("area_density", "kg/m2"): "plate weight",
    ("area_density", "t/m2"): "floor load", ("area_density", "long_ton/ft2"): "floor load",
    ("area_density", "mg/m2"): "salts", ("area_density", "ug/cm2"): "salts",
    ("density", "kg/m3"): "density in kilograms",
    ("density", "t/m3"): "density", ("time", "d"): "days", ("time", "h"): "hours", ("time", "yr"): "years",
}  # fmt: skip
"""By what a figure measures and the unit that somebody chose for it, what it is then for."""

_BY_DIMENSION = {purpose.dimension: name for name, purpose in reversed(PURPOSES.items())}


def purpose_of(dimension: str, unit: str) -> str:
    """Name what a figure is for by what it measures and the unit chosen for it; empty for what has no unit."""
    if not unit:
        return ""
    return USUAL.get((dimension, unit)) or _BY_DIMENSION.get(dimension, "")
