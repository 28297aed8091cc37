"""The period in which she rolls, by which a tug sees whether her stability is what was said."""

from __future__ import annotations

from collections.abc import Mapping
from math import sqrt

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length


def roll_period(beam: float, draft: float, length: float, gm: float) -> Mapping[str, float]:
    """Give T = 2 C B/sqrt(GM), C = 0.373 + 0.023 B/d - 0.043 L/100, s; lengths [m].

    Source: IMO, Intact Stability Code, weather criterion (from memory).
    Range: GM more than nothing. Raises OutOfRange.
    """
    if min(beam, draft, length, gm) <= 0:
        raise OutOfRange("sizes and metacentric height must be more than nothing")
    coefficient = 0.373 + 0.023 * beam / draft - 0.043 * length / 100
    return {"coefficient": coefficient, "period": 2 * coefficient * beam / sqrt(gm)}


METHOD = Method(
    name="tow.roll-period",
    title="Period of roll",
    formula="T = 2 C B/√GM, C = 0.373 + 0.023 B/d − 0.043 L/100",
    source=Citation("IMO, Intact Stability Code, weather criterion", standing="from memory"),
    valid="ships of usual form, with GM after free surfaces",
    inputs={
        "beam": length("Breadth on the waterline."),
        "draft": length("Mean draft."),
        "length": length("Length on the waterline."),
        "gm": length("Metacentric height, free surfaces taken off."),
    },
    outputs=(
        Symbol("coefficient", "C", "", ""),
        Symbol("period", "from one side to the other and back", "time", "s"),
    ),
    kernel=roll_period,
    example={"beam": "10 m", "draft": "4 m", "length": "60 m", "gm": "0.6 m"},
)
