"""What is left of anodes at dockings, how long they last, and whether they are renewed."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any, Literal

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity

Decision = Literal["keep", "renew", "look into it"]


_YEAR = 365.25 * 86400.0
_ROUND_OFF = 1e-9


class Found(Struct, frozen=True):
    """What was left of an anode, or of a group of them, some years after it was fitted new."""

    years: float
    left: float

    def __post_init__(self) -> None:
        if not (math.isfinite(self.years) and self.years > 0.0):
            raise OutOfRange(f"anodes are looked at some time after they are fitted, got {self.years:g} yr")
        if not 0.0 <= self.left <= 1.0:
            raise OutOfRange(f"what is left of an anode is a fraction of 0 to 1, got {self.left:g}")

    @property
    def wasted(self) -> float:
        """Give the fraction wasted."""
        return 1.0 - self.left


class AnodeLife(Struct, frozen=True):
    """How an anode wastes, and what comes of it."""

    rate: float
    """Fraction wasted per year."""
    wasted: float
    """Fraction wasted when last seen."""
    years_left: float | None
    """From when last seen to the utilisation limit; None where nothing wasted."""
    whole_life: float | None
    """Years that a new anode lasts to the limit."""
    at_next: float
    """Fraction wasted expected at the next docking if kept; may pass 1."""
    decision: Decision
    notes: tuple[str, ...]


def anode_life(found: Sequence[Found], utilisation: float, to_next: float, *, renewed: bool = False) -> AnodeLife:
    """Find how long anodes last from what was left of them.

    Formula: rate = sum(w t)/sum(t²) over looks at wasted fraction w after t years (least squares through new; one
    look gives w/t); years left = (u - w)/rate; at the next docking w + rate T; renewed where that is above u. Where
    a new one was fitted in its place at the last look (`renewed`), it begins with w = 0.
    Symbols: found, in any order; utilisation u; to_next T in years from the last look to the next docking.
    Range: wastage in step with time; an anode found wholly wasted may have been so for long: its rate is a least one.
    Source: derived. Raises OutOfRange.
    """
    if not found:
        raise OutOfRange("what was left of the anodes is needed at one time at least")
    if not 0.0 < utilisation <= 1.0:
        raise OutOfRange(f"the utilisation is above 0 and at most 1, got {utilisation:g}")
    if not (math.isfinite(to_next) and to_next >= 0.0):
        raise OutOfRange(f"the time to the next docking cannot be less than nothing, got {to_next:g} yr")
    rate = sum(look.wasted * look.years for look in found) / sum(look.years**2 for look in found)
    last = max(found, key=lambda look: look.years)
    begins = 0.0 if renewed else last.wasted
    at_next = begins + rate * to_next
    if rate <= _ROUND_OFF:
        note = "nothing has wasted: look for a passive or unbonded anode, or paint on it; this is not endless life"
        return AnodeLife(rate, last.wasted, None, None, at_next, "look into it", (note,))
    whole = utilisation / rate
    notes = list(_notes(last, utilisation, whole, to_next))
    decision: Decision = "renew" if at_next > utilisation + _ROUND_OFF else "keep"
    return AnodeLife(rate, last.wasted, max(0.0, utilisation - begins) / rate, whole, at_next, decision, tuple(notes))


def _notes(last: Found, utilisation: float, whole: float, to_next: float) -> Sequence[str]:
    notes = []
    if to_next > whole + _ROUND_OFF:
        renewals = math.ceil(to_next / whole - _ROUND_OFF) - 1
        times = "once" if renewals == 1 else f"{renewals} times"
        notes.append(
            f"a new anode lasts {whole:.1f} years and the next docking is {to_next:.1f} years away: divers must renew "
            f"between dockings at least {times}"
        )
    if last.wasted >= 1.0 - _ROUND_OFF:
        notes.append("an anode found wholly wasted may have been so for long: the rate is a least one")
    elif last.wasted > utilisation:
        notes.append("more was wasted than the anode can use: the steel may have gone unprotected")
    return notes


def _kernel(found: Sequence[Mapping[str, float]], utilisation: float, to_next: float) -> AnodeLife:
    looks = [Found(look["time"] / _YEAR, look["left"]) for look in found]
    return anode_life(looks, utilisation, to_next / _YEAR)


def outputs_of(life: AnodeLife) -> Mapping[str, Any]:
    """Give the outputs of the method from a life."""
    return {
        "rate": life.rate,
        "wasted": life.wasted,
        "left_to_use": None if life.years_left is None else life.years_left * _YEAR,
        "whole_life": None if life.whole_life is None else life.whole_life * _YEAR,
        "at_next": life.at_next,
        "decision": life.decision,
        "notes": list(life.notes),
    }


METHOD = Method(
    name="anode.life",
    title="Life of anodes from what was left of them",
    formula="rate = Σ w t/Σ t²; years left = (u − w)/rate; wasted at the next docking w + rate T; renew above u",
    source=Citation("Wastage in step with time", standing="derived"),
    valid="anodes of one group that waste in step with time",
    inputs={
        "found": listed(
            {
                "type": "object",
                "properties": {
                    "time": quantity("time", "Time since the anode was fitted new."),
                    "left": quantity("fraction", "What was left of it."),
                },
                "required": ["time", "left"],
                "additionalProperties": False,
            },
            "What was left at each look.",
        ),
        "utilisation": quantity("fraction", "Fraction of an anode that can be used."),
        "to_next": quantity("time", "From the last look to the next docking."),
    },
    outputs=(
        Symbol("rate", "fraction wasted per year", "fraction", "%"),
        Symbol("wasted", "fraction wasted when last seen", "fraction", "%"),
        Symbol("left_to_use", "time to the utilisation limit", "time", "yr"),
        Symbol("whole_life", "time that a new anode lasts", "time", "yr"),
        Symbol("at_next", "fraction wasted expected at the next docking", "fraction", "%"),
        Symbol("decision", "keep, renew, or look into it", "text", ""),
        Symbol("notes", "what is to be said of it", "text", ""),
    ),
    kernel=_kernel,
    example={"found": [{"time": "3 yr", "left": "55 %"}], "utilisation": "85 %", "to_next": "2 yr"},
    cautions=("zincs found 50 to 60 % wasted are judged in fair order (common practice, no source)",),
    figures=outputs_of,
)
