"""Classes of water washing and jetting by pressure, whose bounds changed between editions."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from tenderwright.calculations.coatings.ranges import require_positive
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import quantity

WashingEdition = Literal["1990s", "2002"]
WashingClass = Literal[
    "low-pressure water cleaning",
    "high-pressure water cleaning",
    "high-pressure waterjetting",
    "ultrahigh-pressure waterjetting",
]

SOURCES: dict[WashingEdition, Citation] = {
    "1990s": Citation("SSPC-SP 12 / NACE No. 5, text of the 1990s", "pressure classes"),
    "2002": Citation("SSPC-SP 12 / NACE No. 5, 2002", "pressure classes", standing="from memory"),
}

_UPPER_BOUNDS: dict[WashingEdition, tuple[tuple[float, WashingClass], ...]] = {
    "1990s": (
        (34e6, "low-pressure water cleaning"),
        (70e6, "high-pressure water cleaning"),
        (170e6, "high-pressure waterjetting"),
    ),
    "2002": (
        (34e6, "low-pressure water cleaning"),
        (70e6, "high-pressure water cleaning"),
        (210e6, "high-pressure waterjetting"),
    ),
}


def washing_class(pressure: float, edition: WashingEdition) -> WashingClass:
    """Name the class of a washing pressure in Pa, by the edition that the specification cites.

    Bounds: 34, 70 and 170 MPa in the text of the 1990s; 34, 70 and 210 MPa in that of 2002. A pressure on a
    bound of the two upper classes stays in the lower one. Source: `SOURCES`. Raises OutOfRange.
    """
    require_positive("pressure", pressure)
    low, *others = _UPPER_BOUNDS[edition]
    if pressure < low[0]:
        return low[1]
    for bound, name in others:
        if pressure <= bound:
            return name
    return "ultrahigh-pressure waterjetting"


def _kernel(pressure: float, edition: WashingEdition) -> Mapping[str, Any]:
    return {"class": washing_class(pressure, edition), "source": str(SOURCES[edition])}


METHOD = Method(
    name="coating.washing-class",
    title="Class of water washing by its pressure",
    formula="bounds at 34, 70 and 170 MPa in the text of the 1990s, at 34, 70 and 210 MPa in that of 2002",
    source=SOURCES["1990s"],
    valid="pressure at the nozzle; by the edition that the specification cites",
    inputs={
        "pressure": quantity("pressure", "Pressure at the nozzle."),
        "edition": {
            "type": "string",
            "enum": list(SOURCES),
            "description": "Edition that the specification cites; that of 2002 is from memory.",
        },
    },
    outputs=(
        Symbol("class", "class of the washing", "text", ""),
        Symbol("source", "where its bounds come from", "text", ""),
    ),
    kernel=_kernel,
    example={"pressure": "50 MPa", "edition": "1990s"},
    cautions=("water at such pressure cuts: the yard's method and its competent person come first",),
)
