"""What the blocks that stay carry while one is out: moved for what is under it, or crushed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.blocks.area_moment import METHOD as RIGID
from tenderwright.calculations.blocks.area_moment import Block, area_moment
from tenderwright.calculations.blocks.keel_line import METHOD as ELASTIC
from tenderwright.calculations.blocks.pressure import METHOD as PRESSURE
from tenderwright.calculations.blocks.pressure import contact_pressure, judge_pressure
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity, record, text
from tenderwright.calculations.verdict import Limit

_GIRDER = tuple(name for name in ELASTIC.inputs if name != "blocks")


class OneOut(Struct, frozen=True):
    """With one block out, the block that stays and bears hardest; numbers from 1 in the order given."""

    out: int
    hardest: int
    load: float
    """kg."""
    pressure: float
    """By the worse of a rigid and an elastic hull, Pa."""
    rigid: float
    """Greatest pressure on a block that stays, rigid hull, Pa."""


class OutInTurn(Struct, frozen=True):
    """Each block that is taken out, in turn."""

    cases: tuple[OneOut, ...]
    limit: Limit
    """Of the worst of them."""

    @property
    def worst(self) -> OneOut:
        """Give the case with the greatest pressure."""
        return max(self.cases, key=lambda one: one.pressure)


def out_in_turn(
    weight: float,
    lcg: float,
    blocks: Sequence[Mapping[str, float]],
    out: Sequence[int] = (),
    girder: Mapping[str, Any] | None = None,
    rests_on: str = "",
    allowable: float | None = None,
    allowable_source: str = "",
) -> OutInTurn:
    """Take out one block after the other, each set again before the next, and find the hardest pressure of the rest.

    Formula: loads by `area_moment` and, with a girder, by `stand_on_blocks`, the greater of the two; p = R g/(a b).
    Symbols: weight [kg]; centre of gravity and blocks [m]; numbers of the blocks taken out from 1, all where none is
        given; allowable [Pa]. Source: as those (derived). Raises OutOfRange.
    """
    if (allowable is None) != (not allowable_source.strip()):
        raise OutOfRange("an allowable needs its source, and a source its allowable")
    if len(blocks) < 3 or any(not 1 <= one <= len(blocks) for one in out):
        raise OutOfRange("she needs three blocks or more, and those taken out are among them")
    if girder is not None and any("stiffness" not in one for one in blocks):
        raise OutOfRange("under a girder that bends each block needs its stiffness")
    cases = tuple(_without(one, weight, lcg, blocks, girder) for one in out or range(1, len(blocks) + 1))
    known, worst = max(one.rigid for one in cases), max(one.pressure for one in cases)
    limit = judge_pressure("pressure with a block out", known, allowable, allowable_source)
    return OutInTurn(cases, limit.or_estimate(worst, rests_on))


def _without(
    out: int, weight: float, lcg: float, blocks: Sequence[Mapping[str, float]], girder: Mapping[str, Any] | None
) -> OneOut:
    rest = [(i, one) for i, one in enumerate(blocks, start=1) if i != out]
    line = [Block(one["x"], one["length"], one["width"]) for _, one in rest]
    loads = list(area_moment(weight, lcg, line).reactions)
    rigid = max(contact_pressure(r, b["length"], b["width"], b["width"]) for r, (_, b) in zip(loads, rest, strict=True))
    if girder is not None:
        springs = [{"x": one["x"], "stiffness": one["stiffness"]} for _, one in rest]
        elastic = ELASTIC.kernel(blocks=springs, **girder).loads.tolist()
        loads = [max(pair) for pair in zip(loads, elastic, strict=True)]
    found = [
        OneOut(out, i, load, contact_pressure(load, one["length"], one["width"], one["width"]), rigid)
        for (i, one), load in zip(rest, loads, strict=True)
    ]
    return max(found, key=lambda one: one.pressure)


def outputs_of(found: OutInTurn) -> Mapping[str, Any]:
    """Give the worst case as outputs, with the pressure of each."""
    worst, limit = found.worst, found.limit
    return {
        "out": float(worst.out),
        "hardest": float(worst.hardest),
        "load": worst.load,
        "pressure": worst.pressure,
        "rigid": limit.demand,
        "margin": limit.margin,
        "met": limit.met,
        "pressures": [one.pressure for one in found.cases],
    }


METHOD = Method(
    name="blocks.one-out",
    title="Pressure on the blocks that stay while one is out",
    formula="loads of the other blocks under a rigid and an elastic hull, the greater; p = R g/(a b)",
    source=Citation("As of the loads with all blocks standing", standing="derived"),
    valid="one block out at a time, set again hard before the next; side blocks bear nothing",
    inputs={
        "weight": RIGID.inputs["weight"],
        "lcg": RIGID.inputs["lcg"],
        "blocks": listed(
            record(
                "One block.",
                ("x", "length", "width"),
                x=quantity("length", "Middle of the block, forward of AP."),
                length=quantity("length", "Length of the cap."),
                width=quantity("length", "Width in contact."),
                stiffness=number("Stiffness of the whole block, N/m; needed with a girder.", exclusiveMinimum=0),
            ),
            "The keel blocks.",
            3,
        ),
        "out": listed({"type": "integer", "minimum": 1}, "Numbers of the blocks that are taken out; all if none.", 0),
        "girder": record(
            "The hull girder and the weights on it, as `blocks.elastic-line` takes them.",
            tuple(name for name in _GIRDER if name not in ELASTIC.optional),
            **{name: ELASTIC.inputs[name] for name in _GIRDER},
        ),
        "rests_on": text("Estimates that the loads under the girder rest on; nothing where they are known."),
        "allowable": PRESSURE.inputs["allowable"],
        "allowable_source": PRESSURE.inputs["allowable_source"],
    },
    outputs=(
        Symbol("out", "number of the block whose absence is worst", "each", "each"),
        Symbol("hardest", "number of the block that then bears hardest", "each", "each"),
        Symbol("load", "load on it", "mass", "t"),
        Symbol("pressure", "pressure on it", "pressure", "MPa"),
        Symbol("rigid", "greatest pressure with a block out that is not an estimate", "pressure", "MPa"),
        Symbol("margin", "allowable less pressure", "pressure", "MPa"),
        Symbol("met", "whether it is within the allowable; not known without one, or by estimates", "truth", ""),
        Symbol("pressures", "greatest pressure with each block out, in their order", "pressure", "MPa"),
    ),
    kernel=out_in_turn,
    figures=outputs_of,
    example={
        "weight": "600 t",
        "lcg": "22.5 m",
        "blocks": [{"x": f"{x} m", "length": "0.4 m", "width": "0.4 m"} for x in range(2, 43, 2)],
        "out": [5, 6],
        "allowable": "3.1 MPa",
        "allowable_source": "S. J. Record, The Mechanical Properties of Wood, 1914: white oak, green, working stress",
    },
    optional=frozenset({"out", "girder", "rests_on", "allowable", "allowable_source"}),
    cautions=("taking out a block under a ship is done by the dockmaster's order, one at a time, after it is judged",),
)
