"""A member inside a tank as its surveys found it: floors, frames and bulkheads."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, quantity
from tenderwright.calculations.thickness.diminution import METHOD as DIMINUTION
from tenderwright.calculations.thickness.diminution import STATES, State, classify, diminution
from tenderwright.calculations.thickness.limits import renewal_thickness
from tenderwright.calculations.thickness.named_readings import READINGS, NamedReadings, readings_from_input
from tenderwright.calculations.thickness.rate import READING_UNCERTAINTY, rates

_YEAR = 365.25 * 86400.0


class GaugedMember(Struct, frozen=True):
    """A member by its latest survey; thicknesses in m."""

    readings: int
    as_built: float
    least: float
    mean_loss: float
    greatest_loss: float
    state: State
    """Of its worst reading."""
    renewal_thickness: float
    rate: float
    """m a year by all surveys; nan where one survey alone gauged it."""


def gauge_member(
    readings: Sequence[Mapping[str, Any]] | NamedReadings, allowable: float, uncertainty: float = READING_UNCERTAINTY
) -> GaugedMember:
    """Find the state of a member from its latest survey and its rate of loss from all.

    Formula: D = max(0, t0 - t) / t0; renewed below t0 (1 - a), with t0 the mean of its readings. Symbols: readings of
    one member; allowable a; uncertainty of a survey's mean thickness in m. Source: as `classify` and `rates`.
    Raises OutOfRange.
    """
    taken = readings_from_input(readings).readings
    if not len(taken):
        raise OutOfRange("a member needs at least one reading")
    alike = np.zeros(len(taken), np.int64)
    rate = rates(alike, 1, taken.survey, taken.year, taken.as_built, taken.measured, uncertainty).rate
    last = taken.only(taken.survey == taken.survey.max())
    loss = diminution(last.as_built, last.measured).fraction
    built = float(last.as_built.mean())
    return GaugedMember(
        len(last),
        built,
        float(last.measured.min()),
        float(loss.mean()),
        float(loss.max()),
        STATES[int(classify(loss, allowable).max())],
        float(renewal_thickness(built, allowable)),
        float(rate[0]),
    )


def outputs_of(found: GaugedMember) -> dict[str, Any]:
    """Give a member as the outputs of the method; without a rate where one survey alone gauged it."""
    outputs: dict[str, Any] = {
        "mean_diminution": found.mean_loss,
        "greatest_diminution": found.greatest_loss,
        "least": found.least,
        "state": found.state,
        "renewal_thickness": found.renewal_thickness,
    }
    return outputs if math.isnan(found.rate) else outputs | {"rate": found.rate / _YEAR}


METHOD = Method(
    name="thickness.member",
    title="Member inside a tank, as gauged",
    formula=DIMINUTION.formula,
    source=DIMINUTION.source,
    valid="general wastage against the thickness as built, by the latest survey; the rate by all of them",
    inputs={
        "readings": READINGS,
        "allowable": quantity("fraction", "What the member may lose before it is renewed, as its source says."),
        "uncertainty": length("Uncertainty of a survey's mean thickness; 0.1 mm unless given.", "0.1 mm"),
    },
    outputs=(
        Symbol("mean_diminution", "mean of the diminutions, those above nominal as nothing", "fraction", "%"),
        Symbol("greatest_diminution", "greatest of the diminutions", "fraction", "%"),
        Symbol("least", "least reading", "length", "mm"),
        Symbol("state", "worst reading: sound, substantial or renew", "text", ""),
        Symbol("renewal_thickness", "thickness below which plate is renewed", "length", "mm"),
        Symbol("rate", "rate of loss", "rate_of_loss", "mm/yr"),
    ),
    kernel=gauge_member,
    figures=outputs_of,
    example={
        "readings": [
            {"survey": 1, "date": "2007-10-08", "as_built": "7.9 mm", "measured": "6.8 mm"},
            {"survey": 2, "date": "2025-10-08", "as_built": "7.9 mm", "measured": "5.0 mm"},
            {"survey": 2, "date": "2025-10-08", "as_built": "7.9 mm", "measured": "6.5 mm"},
        ],
        "allowable": "25 %",
    },
    optional=frozenset({"uncertainty"}),
    cautions=DIMINUTION.cautions,
)
