"""Area of internal surfaces with their stiffeners, floors and webs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.coatings.ranges import require_not_negative, require_positive
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity
from tenderwright.quantities.display import plainly


class Panel(Struct, frozen=True):
    """A boundary seen from inside: area in m², stiffeners of a height and flange at a spacing, in m."""

    area: float
    spacing: float | None = None
    """None for a plain panel."""
    height: float = 0.0
    flange: float = 0.0
    """Width of the flange of an angle or bulb; nothing for a flat bar."""


class Web(Struct, frozen=True):
    """A floor, web or bulkhead within a space, coated on both faces: area and holes of one in m²."""

    area: float
    holes: float = 0.0
    count: int = 1


def stiffener_factor(height: float, spacing: float, flange: float = 0.0) -> float:
    """Find how much the stiffeners enlarge one side of a panel.

    Formula: flat bar 1 + 2h/s; angle or bulb 1 + (2h + 2f)/s. Symbols: height h, spacing s, flange f in m.
    Range: plate and stiffener edges thin beside h and s. Source: derived. Raises OutOfRange.
    """
    require_not_negative("height of the stiffener", height)
    require_not_negative("flange of the stiffener", flange)
    require_positive("spacing of the stiffeners", spacing)
    return 1.0 + 2.0 * (height + flange) / spacing


def internal_area(panels: Sequence[Panel], webs: Sequence[Web] = ()) -> float:
    """Find the area to coat within a space, m².

    Formula: A = sum(A_panel factor) + sum(2 n (A_web - holes)). Source: derived. Raises OutOfRange.
    """
    total = 0.0
    for panel in panels:
        require_not_negative("area of a panel", panel.area)
        if panel.spacing is None and (panel.height > 0.0 or panel.flange > 0.0):
            raise OutOfRange("a panel with stiffeners needs their spacing")
        factor = 1.0 if panel.spacing is None else stiffener_factor(panel.height, panel.spacing, panel.flange)
        total += panel.area * factor
    for web in webs:
        require_not_negative("area of a web", web.area)
        require_not_negative("area of its holes", web.holes)
        if web.holes > web.area:
            raise OutOfRange(
                f"holes of {plainly(web.holes, 'area')} do not fit in a web of {plainly(web.area, 'area')}"
            )
        if web.count < 0:
            raise OutOfRange(f"the number of webs cannot be less than nothing, got {web.count}")
        total += 2.0 * web.count * (web.area - web.holes)
    return total


def _kernel(panels: list[Mapping[str, Any]], webs: list[Mapping[str, Any]] | None = None) -> Mapping[str, Any]:
    boundary = [Panel(**panel) for panel in panels]
    inside = [Web(**web) for web in webs or []]
    plain = sum(panel.area for panel in boundary)
    area = internal_area(boundary, inside)
    return {"area": area, "boundary": plain, "ratio": area / plain if plain > 0.0 else None}


_PANEL = {
    "type": "object",
    "properties": {
        "area": quantity("area", "Plain area."),
        "spacing": quantity("length", "Spacing of the stiffeners."),
        "height": quantity("length", "Height of a stiffener."),
        "flange": quantity("length", "Flange of an angle or bulb.", "65 mm"),
    },
    "required": ["area"],
    "additionalProperties": False,
}
_WEB = {
    "type": "object",
    "properties": {
        "area": quantity("area", "One face."),
        "holes": quantity("area", "Holes in one."),
        "count": {"type": "integer", "minimum": 0, "description": "How many alike."},
    },
    "required": ["area"],
    "additionalProperties": False,
}

METHOD = Method(
    name="coating.stiffened-area",
    title="Area of internal surfaces with stiffeners and floors",
    formula="A = Σ A_panel (1 + (2h + 2f)/s) + Σ 2 n (A_web − holes)",
    source=Citation("Geometry of a stiffened panel", standing="derived"),
    valid="thin plate; stiffeners on the coated side; brackets and pipes not counted",
    inputs={
        "panels": listed(_PANEL, "The boundary, seen from inside."),
        "webs": {
            "type": "array",
            "items": _WEB,
            "description": "Floors, webs and bulkheads within the space.",
        },
    },
    outputs=(
        Symbol("area", "area to coat", "area", "m2"),
        Symbol("boundary", "plain area of the boundary", "area", "m2"),
        Symbol("ratio", "area to coat by plain area", "fraction", ""),
    ),
    kernel=_kernel,
    example={
        "panels": [{"area": "48 m2", "spacing": "600 mm", "height": "100 mm"}, {"area": "12 m2"}],
        "webs": [{"area": "2.4 m2", "holes": "0.4 m2", "count": 6}],
    },
    optional=frozenset({"webs"}),
    cautions=("adding 100 to 200 % of the boundary for framing, as some do, has no source",),
)
