"""What must be closed for sea, by compartment: every opening of the shell, every tank, and what is on deck."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

from msgspec import Struct

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.condition.loading import TankLoad
from tenderwright.calculations.ship.tow_flooding import within_space
from tenderwright.calculations.ship.undocking import SLACK
from tenderwright.calculations.steps.step import step
from tenderwright.model.tank import Tank
from tenderwright.model.tow import Closure, Compartment, Tow
from tenderwright.model.vessel import Opening

TankFilling = Literal["empty", "slack", "full", "not known"]
ELSEWHERE = ""
"""The name of the compartment of what lies in none that is listed."""


class ToClose(Struct, frozen=True):
    """One thing to close, prove and sign."""

    compartment: str
    """Its name; empty for what lies in no compartment that the tow lists."""
    thing: Opening | Tank | Closure | Compartment
    under: float | None = None
    """Depth of its centre under the waterline of the tow, m; less than nothing over it; None where it is not known."""
    filling: TankFilling = "not known"
    """Of a tank: what is in it under tow."""


@step(lazy=True)
def tow_closures(
    tow_plan: Tow,
    openings: tuple[Opening, ...],
    tanks: tuple[Tank, ...],
    tow_tanks: tuple[TankLoad, ...] | None,
    towed: FloatingPosition | None,
) -> tuple[ToClose, ...]:
    """List them from aft, the spaces first, then shell, tanks and deck of each; nothing of the package is left out."""
    spaces = tow_plan.compartments
    found: list[ToClose] = [ToClose(one.name, one) for one in spaces]
    for opening in openings:
        under = None if towed is None else towed.waterline_at(opening.at.x) - opening.height.si
        found.append(ToClose(_space(spaces, opening.at.x), opening, under))
    loads = {load.name: load for load in tow_tanks or ()}
    for tank in tanks:
        found.append(ToClose(_space(spaces, _middle(tank)), tank, filling=_filling(loads.get(tank.tank))))
    for closure in tow_plan.closures:
        over = None if towed is None else towed.waterline_at(closure.at.x) - closure.height.si
        found.append(ToClose(_space(spaces, closure.at.x), closure, over))
    order = {name: at for at, name in enumerate([*(one.name for one in spaces), ELSEWHERE])}
    return tuple(sorted(found, key=lambda one: order[one.compartment]))


def _space(spaces: Sequence[Compartment], x: float | None) -> str:
    return next((one.name for one in spaces if x is not None and within_space(one, x)), ELSEWHERE)


def _middle(tank: Tank) -> float | None:
    if tank.bounds is not None:
        return float((tank.bounds.from_.x + tank.bounds.to.x) / 2)
    return float(tank.plan.at.x) if tank.plan is not None else None


def _filling(load: TankLoad | None) -> TankFilling:
    if load is None or load.tank.capacity <= 0:
        return "not known"
    share = load.volume / load.tank.capacity
    if load.mass <= 0:
        return "empty"
    return "full" if share >= SLACK[1] else "slack"


def slack(found: Sequence[ToClose]) -> Iterator[Tank]:
    """Yield the tanks that are slack under tow."""
    for one in found:
        if isinstance(one.thing, Tank) and one.filling == "slack":
            yield one.thing
