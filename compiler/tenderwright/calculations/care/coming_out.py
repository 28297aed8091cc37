"""When she should come out of the water again: the earliest of all grounds."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, record, text
from tenderwright.calculations.thickness.readings import day_of, year_of

LAST = 9000.0
"""A day later than this year is none."""
_SAME = 1e-6


class Ground(Struct, frozen=True):
    """One ground to come out, with the day by the likely figure and the early one it is judged by."""

    ground: str
    early: str
    likely: str = ""
    """Empty where the likely figure never comes to it."""
    moves: str = ""
    """What would move it."""

    def as_input(self) -> dict[str, Any]:
        """Give it as the input of the method."""
        row = {"ground": self.ground, "early": self.early, "likely": self.likely, "moves": self.moves}
        return {key: value for key, value in row.items() if value}


class ComingOut(Struct, frozen=True):
    """The grounds in order of their days."""

    grounds: tuple[Ground, ...]
    planned: str
    """Day of the docking that it is held against; empty where none is planned."""

    @property
    def governs(self) -> Ground:
        """Give the ground that governs."""
        return self.grounds[0]

    @property
    def in_time(self) -> bool | None:
        """Tell whether the docking planned is no later; None where none is planned."""
        return None if not self.planned else self.planned <= self.governs.early

    @property
    def margin(self) -> float | None:
        """Give the years from the docking planned to the day; less than nothing where it is too late."""
        return None if not self.planned else year_of(self.governs.early) - year_of(self.planned)


def after(day: str, years: float) -> str:
    """Give the day some years after another, both written YYYY-MM-DD: the same day of the year after whole years."""
    whole = round(years)
    if abs(years - whole) < _SAME and int(day[:4]) + whole < LAST:
        same = f"{int(day[:4]) + whole}{day[4:]}"
        return same if not same.endswith("02-29") else day_of(year_of(day) + years)
    return day_of(min(year_of(day) + years, LAST))


def coming_out(grounds: Sequence[Mapping[str, Any]], planned: str = "") -> ComingOut:
    """Find the earliest of all grounds to come out, and hold the docking planned against it.

    Formula: day = min over grounds of the early day. Symbols: grounds, each with its early day, at which it may come
    true with two standard uncertainties, and the likely one; planned, the day of the docking.
    Source: derived. Raises OutOfRange where there is no ground.
    """
    if not grounds:
        raise OutOfRange("there is no ground by which to judge")
    made = [Ground(one["ground"], one["early"], one.get("likely", ""), one.get("moves", "")) for one in grounds]
    for one in made:
        year_of(one.early)
        if one.likely and one.likely < one.early:
            raise OutOfRange(f"the likely day of `{one.ground}` is before the early one")
    return ComingOut(tuple(sorted(made, key=lambda one: (one.early, one.ground))), planned)


def outputs_of(found: ComingOut) -> Mapping[str, Any]:
    """Give it as the outputs of the method."""
    margin = found.margin
    return {
        "day": found.governs.early,
        "likely": found.governs.likely,
        "governs": found.governs.ground,
        "result": {True: "pass", False: "fail", None: "not known"}[found.in_time],
        "margin": None if margin is None else margin * 365.25 * 86400.0,
        "next_day": found.grounds[1].early if len(found.grounds) > 1 else "",
        "next_ground": found.grounds[1].ground if len(found.grounds) > 1 else "",
    }


_DAY = {"type": "string", "format": "date"}
METHOD = Method(
    name="care.coming-out",
    title="When she should come out again",
    formula="day = min of the early days of all grounds; early with two standard uncertainties",
    source=Citation("The earliest ground", standing="derived"),
    valid="grounds that are known; what was not looked at is no ground",
    inputs={
        "grounds": listed(
            record(
                "A ground.",
                ("ground", "early"),
                ground=text("What the ground is."),
                early=_DAY | {"description": "Day on which it may come true."},
                likely=_DAY | {"description": "Day by the likely figures; left out where it never comes to it."},
                moves=text("What would move it."),
            ),
            "The grounds.",
        ),
        "planned": _DAY | {"description": "Day of the docking planned; left out where none is."},
    },
    outputs=(
        Symbol("day", "day by which she should come out", "text", ""),
        Symbol("likely", "day by the likely figures of the same ground", "text", ""),
        Symbol("governs", "ground that governs", "text", ""),
        Symbol("result", "whether the docking planned is no later", "text", ""),
        Symbol("margin", "from the docking planned to that day", "time", "yr"),
        Symbol("next_day", "day by the ground after it", "text", ""),
        Symbol("next_ground", "the ground after it", "text", ""),
    ),
    kernel=coming_out,
    figures=outputs_of,
    example={
        "grounds": [
            {"ground": "plate B4 port to its limit", "early": "2031-04-02", "likely": "2034-10-11"},
            {"ground": "the owner's interval", "early": "2032-05-05", "likely": "2032-05-05"},
        ],
        "planned": "2031-05-05",
    },
    optional=frozenset({"planned"}),
)
