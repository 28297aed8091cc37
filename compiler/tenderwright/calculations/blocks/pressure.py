"""Pressure on a block's cap, or under a bar keel, against an allowable that the reader supplies."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import GRAVITY, quantity, text
from tenderwright.calculations.verdict import Limit


def contact_pressure(load: float, contact_length: float, block_width: float, keel_width: float) -> float:
    """Give the pressure of the keel on a cap, p = R g/(length x width), Pa; the width is the lesser of the two.

    Symbols: R [kg]; contact length along the ship, widths of cap and of flat keel or bar keel [m].
    Source: statics (derived). Raises OutOfRange.
    """
    if load < 0 or min(contact_length, block_width, keel_width) <= 0:
        raise OutOfRange("the load must not be negative, and the contact must have length and width")
    return load * GRAVITY / (contact_length * min(block_width, keel_width))


def judge_pressure(name: str, pressure: float | None, allowable: float | None, source: str = "") -> Limit:
    """Set a pressure beside its allowable [Pa], None where none is known."""
    if allowable is not None and allowable <= 0:
        raise OutOfRange("the allowable pressure must be more than nothing")
    return Limit(name, "pressure", pressure, allowable, source=source)


def _kernel(
    load: float,
    contact_length: float,
    block_width: float,
    keel_width: float,
    allowable: float | None = None,
    allowable_source: str = "",
) -> Mapping[str, Any]:
    if (allowable is None) != (not allowable_source.strip()):
        raise OutOfRange("an allowable needs its source, and a source its allowable")
    limit = judge_pressure("pressure", contact_pressure(load, contact_length, block_width, keel_width), allowable)
    return {
        "pressure": limit.demand,
        "width": min(block_width, keel_width),
        "allowable": allowable,
        "margin": limit.margin,
        "met": limit.met,
        "allowable_source": allowable_source or None,
    }


METHOD = Method(
    name="blocks.pressure",
    title="Pressure of the keel on a block",
    formula="p = R g/(a b), b the lesser of cap width and keel width",
    source=Citation("Statics", standing="derived"),
    valid="even bearing over the contact; also for the upthrust on the first block while landing",
    inputs={
        "load": quantity("mass", "Load on the block, or upthrust on the first block."),
        "contact_length": quantity("length", "Length in contact along the ship."),
        "block_width": quantity("length", "Width of the cap."),
        "keel_width": quantity("length", "Width of the flat keel or the bar keel."),
        "allowable": quantity("pressure", "Allowable pressure of the cap."),
        "allowable_source": text("Where the allowable comes from; needed with it."),
    },
    outputs=(
        Symbol("pressure", "pressure", "pressure", "MPa"),
        Symbol("width", "width in contact", "length", "m"),
        Symbol("allowable", "allowable", "pressure", "MPa"),
        Symbol("margin", "allowable less pressure", "pressure", "MPa"),
        Symbol("met", "whether it is within the allowable; not known without one", "truth", ""),
        Symbol("allowable_source", "where the allowable comes from", "text", ""),
    ),
    kernel=_kernel,
    example={
        "load": "18 t",
        "contact_length": "300 mm",
        "block_width": "1.0 m",
        "keel_width": "200 mm",
        "allowable": "3.10 MPa",
        "allowable_source": "S. J. Record, The Mechanical Properties of Wood, 1914: white oak, green, working stress",
    },
    optional=frozenset({"allowable", "allowable_source"}),
    cautions=(
        "block design and material are not settled here; UFC 4-213-10, par. 8-2, gives its data for planning only",
    ),
)
