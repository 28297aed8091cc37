"""Resistance of an anode in water by its shape, and the current it gives."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Literal

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import number, quantity

Shape = Literal["long slender", "short slender", "long flush", "short flush"]

PROTECTION_POTENTIAL = -0.80
"""Potential of protected steel, V against silver/silver chloride in sea water (from memory, DNV-RP-B401)."""

CLOSED_CIRCUIT = {"zinc": -1.00, "aluminium": -1.05}
"""Potential of an anode at work, V against the same; Lloyd's Register rules."""

UTILISATION: dict[Shape, float] = {
    "long slender": 0.90,
    "short slender": 0.85,
    "long flush": 0.85,
    "short flush": 0.80,
}
"""Fraction of an anode that its shape lets be used (from memory, DNV-RP-B401)."""


def long_slender(resistivity: float, length: float, radius: float) -> float:
    """Find the resistance of a long slender anode that stands off, ohm: rho/(2 pi L) (ln(4 L/r) - 1).

    Symbols: resistivity rho in ohm m, length L and radius r (that of a circle of the same section) in m.
    Range: L >= 4 r. At L = 4 r it differs from the short form by 6.8 %: the jump is in the source.
    Source: MIL-HDBK-1004/10, p. 211 (its K = 0.0234 is this). Raises OutOfRange.
    """
    _require(resistivity=resistivity, length=length, radius=radius)
    if length < 4.0 * radius * (1.0 - 1e-12):
        raise OutOfRange("a slender anode shorter than four times its radius is a short one")
    return resistivity / (2.0 * math.pi * length) * (math.log(4.0 * length / radius) - 1.0)


def short_slender(resistivity: float, length: float, radius: float) -> float:
    """Find the resistance of a short slender anode that stands off, ohm.

    Formula: rho/(2 pi L) [ln((2 L/r)(1 + q)) + r/(2 L) - q], q = sqrt(1 + (r/(2 L))²). Symbols as `long_slender`.
    Range: L < 4 r. Source: DNV-RP-B401 (from memory). Raises OutOfRange.
    """
    _require(resistivity=resistivity, length=length, radius=radius)
    half = radius / (2.0 * length)
    q = math.sqrt(1.0 + half**2)
    bracket = math.log(2.0 * length / radius * (1.0 + q)) + half - q
    return resistivity / (2.0 * math.pi * length) * bracket


def long_flush(resistivity: float, length: float, width: float) -> float:
    """Find the resistance of a long anode flush on the plate, ohm: rho/(2 S), S = (L + w)/2.

    Symbols: resistivity rho in ohm m, length L and width w in m. Range: L >= 4 w (and four thicknesses).
    Source: DNV-RP-B401 (from memory). Raises OutOfRange.
    """
    _require(resistivity=resistivity, length=length, width=width)
    if length < 4.0 * width * (1.0 - 1e-12):
        raise OutOfRange("a flush anode shorter than four times its width is a short one")
    return resistivity / (length + width)


def short_flush(resistivity: float, exposed_area: float) -> float:
    """Find the resistance of a short flush anode or a bracelet, ohm: 0.315 rho / sqrt(A).

    Symbols: resistivity rho in ohm m, exposed area A in m². Source: form 0.315 in report D6316 (rest as
    DNV-RP-B401, from memory). Raises OutOfRange.
    """
    _require(resistivity=resistivity, exposed_area=exposed_area)
    return 0.315 * resistivity / math.sqrt(exposed_area)


def slender_radius(section: float) -> float:
    """Find the radius of the circle of the same cross-section, m: sqrt(A/pi) (derived), A in m². Raises OutOfRange."""
    _require(section=section)
    return math.sqrt(section / math.pi)


def anode_current(resistance: float, anode: float, protection: float = PROTECTION_POTENTIAL) -> float:
    """Find the current that one anode gives, A: (Ec - Ea)/R.

    Symbols: resistance R in ohm, anode potential Ea and protection potential Ec in V.
    Source: DNV-RP-B401 (from memory). Raises OutOfRange for an anode no more negative than the steel.
    """
    _require(resistance=resistance)
    if not (math.isfinite(anode) and math.isfinite(protection) and anode < protection):
        raise OutOfRange("an anode must be more negative than the steel that it protects")
    return (protection - anode) / resistance


def resistance_of(
    shape: Shape,
    resistivity: float,
    length: float | None = None,
    radius: float | None = None,
    width: float | None = None,
    exposed_area: float | None = None,
) -> float:
    """Find the resistance of an anode by its shape, ohm; arguments as that shape's formula asks. Raises OutOfRange."""
    if shape == "short flush":
        return short_flush(resistivity, _given("exposed area", exposed_area))
    if shape == "long flush":
        return long_flush(resistivity, _given("length", length), _given("width", width))
    form = long_slender if shape == "long slender" else short_slender
    return form(resistivity, _given("length", length), _given("radius", radius))


def _given(name: str, value: float | None) -> float:
    if value is None:
        raise OutOfRange(f"an anode of this shape needs its {name}")
    return value


def _require(**values: float) -> None:
    for name, value in values.items():
        if not (math.isfinite(value) and value > 0.0):
            raise OutOfRange(f"the {name.replace('_', ' ')} must be more than nothing, got {value:g}")


def _kernel(
    shape: Shape,
    resistivity: float,
    length: float | None = None,
    radius: float | None = None,
    width: float | None = None,
    exposed_area: float | None = None,
    depth: float | None = None,
    left: float = 1.0,
    alloy: str = "zinc",
) -> Mapping[str, float]:
    if alloy not in CLOSED_CIRCUIT:
        known = " and ".join(CLOSED_CIRCUIT)
        raise OutOfRange(f"the potential of {alloy} anodes at work is not known here, only of {known}")
    if not 0.0 < left <= 1.0:
        raise OutOfRange(f"what is left of an anode is above nothing and at most all, got {100.0 * left:g} %")
    if length is not None and width is not None and depth is not None:
        width, depth = width * math.sqrt(left), depth * math.sqrt(left)
        radius = slender_radius(width * depth) if radius is None else radius
        exposed_area = length * width + 2.0 * depth * (length + width) if exposed_area is None else exposed_area
    elif left < 1.0:
        raise OutOfRange("an anode that is partly spent needs its length, width and depth when new")
    found = resistance_of(shape, resistivity, length, radius, width, exposed_area)
    return {
        "resistance": found,
        "current": anode_current(found, CLOSED_CIRCUIT[alloy]),
        "utilisation": UTILISATION[shape],
    }


METHOD = Method(
    name="anode.resistance",
    title="Resistance and current of an anode",
    formula="R = ρ/(2πL)(ln(4L/r) − 1); flush, ρ/(L + w) if long, 0.315 ρ/√A if short; I = (Ec − Ea)/R",
    source=Citation("MIL-HDBK-1004/10 (UFC 3-570-02N)", "p. 211; other shapes DNV-RP-B401, from memory"),
    valid="one anode far from others; new with its own size, spent with what is left",
    inputs={
        "shape": {"type": "string", "enum": list(UTILISATION), "description": "Shape and fixing of the anode."},
        "resistivity": number(
            "Resistivity of the water in ohm m; sea water about 0.25, as the berth measures.", exclusiveMinimum=0
        ),
        "length": _length("Length, for slender and long flush anodes."),
        "radius": _length(
            "Radius of the circle of its section, for slender anodes; by width and depth unless given.", "35 mm"
        ),
        "width": _length("Width, for long flush anodes."),
        "exposed_area": quantity(
            "area", "Exposed area, for short flush anodes; by length, width and depth unless given.", "0.08 m2"
        ),
        "depth": _length("Depth from the plate outward.", "30 mm"),
        "left": quantity("fraction", "What is left of it, shrunk alike in width and depth; all unless given.", "15 %"),
        "alloy": {"type": "string", "enum": list(CLOSED_CIRCUIT), "description": "Zinc unless given."},
    },
    outputs=(
        Symbol("resistance", "resistance", "resistance", "ohm"),
        Symbol("current", "current that it gives to protected steel", "current", "A"),
        Symbol("utilisation", "fraction that its shape lets be used", "fraction", "%"),
    ),
    kernel=_kernel,
    example={"shape": "long flush", "resistivity": 0.25, "length": "400 mm", "width": "100 mm"},
    optional=frozenset({"length", "radius", "width", "exposed_area", "depth", "left", "alloy"}),
    cautions=("the forms for long and short slender anodes do not meet at L = 4 r; that is in the source",),
)
