"""Whether a ship fits a facility: length, beam, water, weight, line load and air draft, each with its clearance."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.facility.clearances import IN_SERVICE, Clearances
from tenderwright.calculations.method import Citation, Method, OutOfRange
from tenderwright.calculations.schema import quantity, record, text
from tenderwright.calculations.verdict import (
    LIMITS_INPUT,
    VERDICT_SYMBOLS,
    Limit,
    Verdict,
    limits_from_input,
    verdict,
    verdict_outputs,
)


class Visitor(Struct, frozen=True):
    """The ship as the facility sees her; lengths in m, masses in kg, line load in kg/m. None where not known."""

    length: float
    """Overall."""
    beam: float
    """Greatest, fenders and rubbing strakes included."""
    weight: float
    draft_over_blocks: float | None = None
    """Greatest of the keel along the blocks, in the facility's water."""
    draft_over_sill: float | None = None
    """Greatest of keel and appendages, in the facility's water."""
    line_load: float | None = None
    """Greatest along the keel."""
    air_draft: float | None = None
    weight_uncertainty: float = 0.0
    """Standard uncertainties of weight, drafts and line load."""
    draft_uncertainty: float = 0.0
    line_load_uncertainty: float = 0.0
    line_load_estimate: float | None = None
    """The greatest line load found another way; the worse is judged."""
    rests_on: str = ""
    """The estimates that this other way rests on; nothing where it is known."""


class Berth(Struct, frozen=True):
    """What the facility offers at the tide chosen; None where a limit is not known."""

    length: float | None
    beam: float | None
    blocks: float | None
    """Water over the blocks."""
    lift: float | None
    line_load: float | None
    sill: float | None = None
    """Water over the sill."""
    has_sill: bool = False
    """Whether there is a sill to cross, so that its depth is needed."""
    lifts: bool = True
    """Whether it lifts her, so that its capacity is needed; a graving dock does not."""
    hangs: bool = False
    """Whether she hangs in slings, so that no line load along the keel is needed."""
    air_draft: float | None = None
    """Height over the water of what she must pass under."""
    is_bridged: bool = False
    """Whether there is something to pass under, so that its height is needed."""
    source: str = ""
    """Where all these come from, such as its certificate."""


def basic_limits(ship: Visitor, berth: Berth, clearances: Clearances = IN_SERVICE) -> tuple[Limit, ...]:
    """Set each demand of the ship, clearance included, beside what the facility offers.

    Formula: length + head + entrance <= length; beam + 2 side <= beam; draft + clearance <= water over blocks and
        over sill; weight <= lift; greatest line load <= line load; air draft + clearance <= height.
    Source: UFC 4-213-10, par. 3-2.1 (the parts); sums derived. Raises OutOfRange.
    """
    if min(ship.length, ship.beam, ship.weight) <= 0:
        raise OutOfRange("length, beam and weight must be more than nothing")

    def with_clearance(value: float | None, clearance: float) -> float | None:
        return None if value is None else value + clearance

    ends = clearances.head + clearances.entrance
    limits = [
        Limit("length", "length", ship.length + ends, berth.length),
        Limit("beam", "length", ship.beam + 2 * clearances.side, berth.beam),
        Limit(
            "water over the blocks",
            "length",
            with_clearance(ship.draft_over_blocks, clearances.blocks),
            berth.blocks,
            uncertainty=ship.draft_uncertainty,
        ),
    ]
    if not berth.hangs or berth.line_load is not None:
        along = Limit("line load", "line_load", ship.line_load, berth.line_load, uncertainty=ship.line_load_uncertainty)
        limits.append(along.or_estimate(ship.line_load_estimate, ship.rests_on))
    if berth.lifts or berth.lift is not None:
        limits.insert(3, Limit("lift", "mass", ship.weight, berth.lift, uncertainty=ship.weight_uncertainty))
    if berth.has_sill or berth.sill is not None:
        draft = with_clearance(ship.draft_over_sill, clearances.sill)
        sill = Limit("water over the sill", "length", draft, berth.sill, uncertainty=ship.draft_uncertainty)
        limits.insert(2, sill)
    if berth.is_bridged or berth.air_draft is not None:
        limits.append(Limit("air draft", "length", with_clearance(ship.air_draft, clearances.air), berth.air_draft))
    return tuple(replace(one, source=berth.source) for one in limits)


def facility_fit(
    ship: Visitor, berth: Berth, clearances: Clearances = IN_SERVICE, further: Iterable[Limit] = ()
) -> Verdict:
    """Judge a facility by its basic limits and by further ones: of a shiplift, a slipway, a floating dock, a cradle.

    Source: as `basic_limits`. Raises OutOfRange.
    """
    return verdict((*basic_limits(ship, berth, clearances), *further))


def _kernel(
    ship: Mapping[str, Any],
    berth: Mapping[str, Any],
    clearances: Mapping[str, Any] | None = None,
    cradle: Sequence[Mapping[str, Any] | Limit] = (),
    floating_dock: Sequence[Mapping[str, Any] | Limit] = (),
    shiplift: Sequence[Mapping[str, Any] | Limit] = (),
    slipway: Sequence[Mapping[str, Any] | Limit] = (),
) -> Verdict:
    offered: dict[str, Any] = dict.fromkeys(("length", "beam", "blocks", "lift", "line_load"))
    wanted = IN_SERVICE if clearances is None else _clearances(clearances)
    further = [replace(one, name=f"cradle: {one.name}") for one in limits_from_input(cradle)]
    further += limits_from_input([*floating_dock, *shiplift, *slipway])
    return facility_fit(Visitor(**ship), Berth(**offered | dict(berth)), wanted, further)


def _clearances(data: Mapping[str, Any]) -> Clearances:
    figures = {name: value for name, value in data.items() if name != "source"}
    return Clearances(**figures, source=Citation(data["source"]))


SHIP = record(
    "The ship; leave out what is not known.",
    ("length", "beam", "weight"),
    length=quantity("length", "Length overall."),
    beam=quantity("length", "Greatest beam, fenders included."),
    weight=quantity("mass", "Displacement on arrival."),
    draft_over_blocks=quantity("length", "Greatest draft of the keel along the blocks."),
    draft_over_sill=quantity("length", "Greatest draft of keel and appendages."),
    line_load=quantity("line_load", "Greatest line load along the keel."),
    line_load_estimate=quantity("line_load", "The same under an elastic hull; the worse is judged."),
    rests_on=text("Estimates that this rests on; nothing where it is known."),
    air_draft=quantity("length", "Height of the highest part above the water."),
    weight_uncertainty=quantity("mass", "Standard uncertainty of the displacement.", "4 t"),
    draft_uncertainty=quantity("length", "Standard uncertainty of the drafts.", "20 mm"),
    line_load_uncertainty=quantity("line_load", "Standard uncertainty of the line load.", "0.2 t/m"),
)
BERTH = record(
    "What the facility offers at the tide chosen; leave out what is not known.",
    (),
    length=quantity("length", "Length."),
    beam=quantity("length", "Beam between fenders."),
    blocks=quantity("length", "Water over the blocks."),
    lift=quantity("mass", "Greatest weight."),
    line_load=quantity("line_load", "Greatest line load."),
    sill=quantity("length", "Water over the sill."),
    has_sill={"type": "boolean", "description": "Whether there is a sill to cross."},
    lifts={"type": "boolean", "description": "Whether it lifts her, unless said otherwise; a graving dock does not."},
    hangs={"type": "boolean", "description": "Whether she hangs in slings, where no line load is needed."},
    air_draft=quantity("length", "Height over the water of what she passes under."),
    is_bridged={"type": "boolean", "description": "Whether there is something to pass under."},
    source=text("Where these come from, such as its certificate."),
)
CLEARANCES = record(
    "Clearances; 0.3 m each where left out (common practice, no source).",
    ("blocks", "sill", "head", "entrance", "side", "air", "source"),
    blocks=quantity("length", "Keel over the blocks.", "0.6 m"),
    sill=quantity("length", "Deepest part over the sill.", "0.6 m"),
    head=quantity("length", "At the head.", "1.5 m"),
    entrance=quantity("length", "At the entrance.", "4.6 m"),
    side=quantity("length", "Each side.", "3.0 m"),
    air=quantity("length", "Under a bridge.", "0.3 m"),
    source=text("Where they come from."),
)

METHOD = Method(
    name="facility.fit",
    title="Whether a ship fits a facility",
    formula="demand + clearance ≤ what is offered, for length, beam, sill, blocks, lift, line load and air draft",
    source=Citation("UFC 4-213-10, 15 August 2002", "par. 3-2.1, the parts; sums derived"),
    valid="figures in the facility's water and at the tide chosen",
    inputs={
        "ship": SHIP,
        "berth": BERTH,
        "clearances": CLEARANCES,
        "cradle": LIMITS_INPUT | {"description": "Limits of the cradle, as `cradle.cars` gives them."},
        "floating_dock": LIMITS_INPUT | {"description": "Limits of a dock, as `facility.floating-dock` gives them."},
        "shiplift": LIMITS_INPUT | {"description": "Limits of a shiplift, as `facility.shiplift` gives them."},
        "slipway": LIMITS_INPUT | {"description": "Limits of a slipway, as `facility.slipway` gives them."},
    },
    outputs=VERDICT_SYMBOLS,
    kernel=_kernel,
    figures=verdict_outputs,
    example={
        "ship": {
            "length": "51.8 m",
            "beam": "9.4 m",
            "weight": "600 t",
            "draft_over_blocks": "3.3 m",
            "draft_over_sill": "3.5 m",
            "line_load": "21 t/m",
            "air_draft": "19.4 m",
        },
        "berth": {
            "length": "96 m",
            "beam": "14.6 m",
            "blocks": "4.3 m",
            "lift": "3500 t",
            "line_load": "45 t/m",
            "sill": "5.1 m",
            "air_draft": "22 m",
        },
    },
    optional=frozenset({"clearances", "cradle", "floating_dock", "shiplift", "slipway"}),
    cautions=("a planning figure: the dockmaster and the facility's engineer accept her or not",),
)
