"""A table of offsets as an input: its shape and how it becomes a hull form."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.hydrostatics.hull_form import HullForm, hull_form
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import record


def _lengths(description: str) -> dict[str, Any]:
    return {"type": "array", "items": {"type": "string", "quantity": "length"}, "description": description}


OFFSETS: Mapping[str, Any] = record(
    "A table of offsets; x forward of the after perpendicular, z above the baseline.",
    ("length", "waterlines", "stations"),
    length=_length("Length between perpendiculars."),
    waterlines=_lengths("Heights of the waterlines, rising."),
    stations={
        "type": "array",
        "minItems": 3,
        "items": {
            "type": "object",
            "additionalProperties": False,
            "required": ["x", "half_breadths"],
            "properties": {
                "x": _length("Position forward of the after perpendicular."),
                "half_breadths": _lengths("Half-breadth at each waterline; 0 below the keel."),
                "keel": _length("Height of the keel here; 0 where left out."),
                "deck": _length("Height of the deck edge here; the top waterline where left out."),
                "deck_half_breadth": _length("Half-breadth at the deck edge; as the top waterline where left out."),
                "half_siding": _length("Half-breadth at the keel, where the keel lies between waterlines."),
            },
        },
    },
)


def hull_from_offsets(offsets: Mapping[str, Any] | HullForm) -> HullForm:
    """Make the hull form from a converted table of offsets (metres), or take one that is made. Raises OutOfRange."""
    if isinstance(offsets, HullForm):
        return offsets
    stations, waterlines = offsets["stations"], offsets["waterlines"]
    if len(waterlines) < 2:
        raise OutOfRange("a hull form needs at least two waterlines")
    for number, station in enumerate(stations, 1):
        if (count := len(station["half_breadths"])) != len(waterlines):
            raise OutOfRange(f"station {number} has {count} half-breadths, but there are {len(waterlines)} waterlines")
    return hull_form(
        length=offsets["length"],
        stations=[s["x"] for s in stations],
        waterlines=waterlines,
        half_breadths=[s["half_breadths"] for s in stations],
        keel_heights=[s.get("keel", 0.0) for s in stations],
        deck_heights=[s.get("deck", waterlines[-1]) for s in stations],
        deck_half_breadths=[s.get("deck_half_breadth", s["half_breadths"][-1]) for s in stations],
        half_sidings=[s.get("half_siding", 0.0) for s in stations],
    )


def _row(x: str, deck: str, *half_breadths: str) -> dict[str, Any]:
    return {
        "x": x,
        "half_breadths": list(half_breadths),
        "deck": deck,
        "deck_half_breadth": half_breadths[-1],
    }


EXAMPLE_OFFSETS: Mapping[str, Any] = {
    "length": "40 m",
    "waterlines": ["0 m", "1 m", "2 m", "3 m", "4 m"],
    "stations": [
        _row("0 m", "5.2 m", "0 m", "0.2 m", "0.9 m", "2.1 m", "2.9 m"),
        _row("5 m", "5.0 m", "0.2 m", "1.6 m", "2.6 m", "3.3 m", "3.7 m"),
        _row("10 m", "4.8 m", "0.4 m", "2.9 m", "3.7 m", "4.0 m", "4.1 m"),
        _row("15 m", "4.7 m", "0.5 m", "3.5 m", "4.1 m", "4.2 m", "4.2 m"),
        _row("20 m", "4.7 m", "0.5 m", "3.6 m", "4.2 m", "4.2 m", "4.2 m"),
        _row("25 m", "4.8 m", "0.5 m", "3.4 m", "4.0 m", "4.2 m", "4.2 m"),
        _row("30 m", "5.0 m", "0.4 m", "2.5 m", "3.2 m", "3.6 m", "3.9 m"),
        _row("35 m", "5.3 m", "0.2 m", "1.2 m", "1.7 m", "2.1 m", "2.6 m"),
        _row("40 m", "5.7 m", "0 m", "0.1 m", "0.1 m", "0.1 m", "0.2 m"),
    ],
}
