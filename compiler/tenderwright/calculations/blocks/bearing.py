"""What each keel block bears: the worse of a rigid and an elastic hull, its line load, and the pressure on its cap."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.blocks.keel_line import tributary_lengths
from tenderwright.calculations.blocks.pressure import METHOD as PRESSURE
from tenderwright.calculations.blocks.pressure import contact_pressure, judge_pressure
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record, text
from tenderwright.calculations.verdict import Limit


class Borne(Struct, frozen=True):
    """What one block bears: loads in kg, None where that hull was not reckoned with; the rest of the greater."""

    rigid: float | None
    elastic: float | None
    line_load: float
    """Over the length that the block holds up, kg/m."""
    pressure: float
    """Pa."""

    @property
    def load(self) -> float:
        """Give the greater of the two loads, kg."""
        return max(one for one in (self.rigid, self.elastic) if one is not None)


class Bearing(Struct, frozen=True):
    """What all blocks bear, in the order of their places."""

    blocks: tuple[Borne, ...]
    limit: Limit
    """Of the greatest pressure."""
    rigid_line_load: float | None
    elastic_line_load: float | None

    @property
    def hardest(self) -> int:
        """Give the index of the block with the greatest pressure."""
        return max(range(len(self.blocks)), key=lambda i: self.blocks[i].pressure)


def bearing(
    blocks: Sequence[Mapping[str, float]],
    rigid: Sequence[float] | None = None,
    elastic: Sequence[float] | None = None,
    rests_on: str = "",
    calculated: float | None = None,
    allowable: float | None = None,
    allowable_source: str = "",
) -> Bearing:
    """Find line load and pressure of each block from its loads, and hold the worst against the allowable.

    Formula: R = max of both hulls; line load R/s, s from mid-gap to mid-gap; p = R g/(a b).
    Symbols: blocks of place x, length a and width b in contact [m], rising in x; loads [kg]; rests_on, the estimates
        that the elastic loads rest on, nothing where they are known; calculated, the greatest pressure as somebody
        answerable for it calculated it, which is then judged in place of the estimates [Pa]; allowable [Pa].
    Source: statics (derived). Raises OutOfRange.
    """
    if (allowable is None) != (not allowable_source.strip()):
        raise OutOfRange("an allowable needs its source, and a source its allowable")
    hulls = [one for one in (rigid, elastic) if one is not None]
    if not hulls or any(len(one) != len(blocks) for one in hulls):
        raise OutOfRange("each block needs its load under a rigid or an elastic hull, or both")
    spans = tributary_lengths(np.array([one["x"] for one in blocks])).tolist()

    def pressures(loads: Sequence[float]) -> list[float]:
        return [contact_pressure(r, b["length"], b["width"], b["width"]) for r, b in zip(loads, blocks, strict=True)]

    def line_load(loads: Sequence[float] | None) -> float | None:
        return None if loads is None else max(r / s for r, s in zip(loads, spans, strict=True))

    worse = [max(pair) for pair in zip(*hulls, strict=True)]
    borne = tuple(
        Borne(
            None if rigid is None else rigid[i],
            None if elastic is None else elastic[i],
            load / spans[i],
            pressure,
        )
        for i, (load, pressure) in enumerate(zip(worse, pressures(worse), strict=True))
    )
    known, estimated = (None if one is None else max(pressures(one)) for one in (rigid, elastic))
    limit = judge_pressure("pressure on a keel block", known, allowable, allowable_source)
    limit = limit.or_estimate(estimated, rests_on) if calculated is None else limit.or_estimate(calculated, "")
    return Bearing(borne, limit, line_load(rigid), line_load(elastic))


def outputs_of(found: Bearing) -> Mapping[str, Any]:
    """Give what the blocks bear as outputs."""
    limit = found.limit
    return {
        "pressures": [one.pressure for one in found.blocks],
        "line_loads": [one.line_load for one in found.blocks],
        "greatest": limit.worse,
        "number": float(found.hardest + 1),
        "rigid": limit.demand,
        "elastic": limit.estimate,
        "rigid_line_load": found.rigid_line_load,
        "elastic_line_load": found.elastic_line_load,
        "allowable": limit.limit,
        "margin": limit.margin,
        "met": limit.met,
    }


METHOD = Method(
    name="blocks.bearing",
    title="Loads, line loads and pressures of the keel blocks, the worse of a rigid and an elastic hull",
    formula="R = max(R rigid, R elastic); R/s from mid-gap to mid-gap; p = R g/(a b)",
    source=Citation("Statics", standing="derived"),
    valid="even bearing over each cap; side blocks bear nothing; where what is worse rests on estimates, not known",
    inputs={
        "blocks": listed(
            record(
                "One keel block.",
                ("x", "length", "width"),
                x=quantity("length", "Middle of the block, forward of AP."),
                length=quantity("length", "Length in contact along the ship."),
                width=quantity("length", "Width in contact."),
            ),
            "The keel blocks, from aft.",
            2,
        ),
        "rigid": listed(quantity("mass", "Load of a block."), "Loads under a rigid hull, from aft."),
        "elastic": listed(quantity("mass", "Load of a block."), "Loads under an elastic hull, from aft."),
        "rests_on": text("Estimates that the elastic loads rest on; nothing where they are known."),
        "calculated": quantity("pressure", "Greatest by the naval architect, in place of estimates.", "2.6 MPa"),
        "allowable": PRESSURE.inputs["allowable"],
        "allowable_source": PRESSURE.inputs["allowable_source"],
    },
    outputs=(
        Symbol("pressures", "pressure on each block, from aft", "pressure", "MPa"),
        Symbol("line_loads", "line load of each block, from aft", "line_load", "t/m"),
        Symbol("greatest", "greatest pressure", "pressure", "MPa"),
        Symbol("number", "number of the block that bears it, from aft", "each", "each"),
        Symbol("rigid", "greatest pressure that is not an estimate", "pressure", "MPa"),
        Symbol("elastic", "greatest pressure by estimates, where that is worse", "pressure", "MPa"),
        Symbol("rigid_line_load", "greatest line load, rigid hull", "line_load", "t/m"),
        Symbol("elastic_line_load", "greatest line load, elastic hull", "line_load", "t/m"),
        Symbol("allowable", "allowable", "pressure", "MPa"),
        Symbol("margin", "allowable less the greatest", "pressure", "MPa"),
        Symbol("met", "whether it is within the allowable; not known without one, or by estimates", "truth", ""),
    ),
    kernel=bearing,
    figures=outputs_of,
    example={
        "blocks": [{"x": f"{x} m", "length": "0.4 m", "width": "0.4 m"} for x in (2, 4, 6)],
        "rigid": ["20 t", "21 t", "22 t"],
        "elastic": ["26 t", "18 t", "24 t"],
        "rests_on": "girder estimated from the midship section",
        "allowable": "3.1 MPa",
        "allowable_source": "S. J. Record, The Mechanical Properties of Wood, 1914: white oak, green, working stress",
    },
    optional=frozenset({"rigid", "elastic", "rests_on", "calculated", "allowable", "allowable_source"}),
    cautions=PRESSURE.cautions,
)
