"""How the limits of a facility are told: what is passed, and where what is lacking would be written."""

from __future__ import annotations

from collections.abc import Iterable

from tenderwright.calculations.verdict import DOUBT, Limit
from tenderwright.quantities.display import show

CRADLE = "cradle: "
"""What the names of the limits of a cradle begin with."""

_FIELDS = {
    "length": "`length` under `limits`",
    "beam": "`beam` under `limits`",
    "water over the sill": "`sill` under `limits`",
    "water over the blocks": "`blocks` under `limits`",
    "lift": "`lift` under `limits`",
    "line load": "`line_load` under `limits`",
    "air draft": "`air_draft` under `limits`, and under `dimensions` in vessel/particulars.yaml",
    "cradle: cars coupled": "`most_coupled` under `cars`",
    "cradle: line load": "`line_limit` under `cars`",
    "cradle: load on an axle": "`axles` and `axle_limit` under `cars`",
    "line load averaged over a hoist bay": "`bay_mass` under `hoists`",
    "load on a hoist pair": "`bay_mass` under `hoists`",
    "lift with cradle": "`bay_mass` under `hoists`",
    "haul force": "`haul` under `slope`",
}
"""Where what a limit needs is written in the file of the facility."""


def passed(limits: Iterable[Limit]) -> str:
    """Say which limits are passed, the worst first, and by how much."""
    worst = sorted((one for one in limits if one.met is False), key=lambda one: one.use or 0.0, reverse=True)
    figures = ((one.name.removeprefix(CRADLE), _shown(one.demand, one), _shown(one.limit, one)) for one in worst)
    return "; ".join(f"{name} {demand} against a limit of {limit}" for name, demand, limit in figures)


def doubted(limits: Iterable[Limit]) -> str:
    """Say which limits are met by less than the figure is known to, each with what it may be out by."""
    return "; ".join(
        f"{one.name.removeprefix(CRADLE)} {_shown(one.demand, one)} ± {_shown(DOUBT * one.uncertainty, one)} against a "
        f"limit of {_shown(one.limit, one)}"
        for one in limits
    )


def lacking(limits: Iterable[Limit]) -> str:
    """Name the fields that would supply what is not known."""
    return ", ".join(dict.fromkeys(_FIELDS.get(one.name, one.name) for one in limits))


def _shown(number: float | None, limit: Limit) -> str:
    if number is None:
        return "not known"
    return show(number, limit.purpose)
