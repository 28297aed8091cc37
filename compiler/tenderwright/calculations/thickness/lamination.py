"""Laminations of old plate, as an ultrasonic test found them."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol


def lamination(readings: int, laminated: int) -> Mapping[str, float | str]:
    """Sum up the ultrasonic test of a strake for laminations.

    Formula: share = n / N of the readings that came back from within the plate. Symbols: readings N of the test or
    gauging, laminated n of them. Range: a reading tells of its own spot; what lies between is traced from it. Source:
    derived; that a laminated place is traced and is not welded is common practice, no source. Raises OutOfRange.
    """
    if readings < 0 or laminated < 0:
        raise OutOfRange("a number of readings cannot be less than nothing")
    if not readings + laminated:
        return {"state": "not tested"}
    share = laminated / (readings + laminated)
    return {"share": share, "state": "laminated in places" if laminated else "none found"}


METHOD = Method(
    name="thickness.lamination",
    title="Laminations of old plate, by ultrasonic test",
    formula="share = n / N",
    source=Citation("Count of readings", standing="derived"),
    valid="a reading tells of its own spot; a laminated place is traced from it before it is cut, drilled or welded",
    inputs={
        "readings": {"type": "integer", "minimum": 0, "description": "Readings that came back from the far face."},
        "laminated": {"type": "integer", "minimum": 0, "description": "Readings that came back from within the plate."},
    },
    outputs=(
        Symbol("share", "share of the readings that found a lamination", "fraction", "%"),
        Symbol("state", "none found, laminated in places, or not tested", "text", ""),
    ),
    kernel=lamination,
    example={"readings": 120, "laminated": 3},
    cautions=("a lamination read as the far face passes for lost metal: half the thickness, all at once, is one",),
)
