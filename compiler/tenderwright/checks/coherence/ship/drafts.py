"""The drafts and trims of one ship are alike from docking to docking, and what is wanted is like what was.

Ground: a ship that no longer trades floats within a quarter of her usual draft, and trims as she always does; 1.5 % of
her length is more than stores and ballast make (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median

from msgspec import Struct

from tenderwright.checks.coherence.ship.held import held, like
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.notices import Notice
from tenderwright.quantities.display import plainly, show
from tenderwright.quantities.quantity import Quantity

CODE = "draft-unlike-hers"


class _Drafts(Struct, frozen=True):
    what: str
    aft: Quantity
    forward: Quantity
    stated: bool = True
    """Whether they are held against the rest; those last read are held against the calculation elsewhere."""

    @property
    def mean(self) -> float:
        return (self.aft.si + self.forward.si) / 2

    @property
    def trim(self) -> float:
        return self.aft.si - self.forward.si


def check(ship: Ship) -> Iterator[Notice]:
    """Report drafts and trims of earlier dockings that are not hers, and a condition that no ship is docked in."""
    length, draft = ship.length, ship.draft
    if length is None or draft is None:
        return
    known = list(_known(ship))
    for one in known:
        if one.stated:
            yield from _held(ship, one, [other for other in known if other is not one], length, draft)
    yield from _wanted(ship, known, length)


def _known(ship: Ship) -> Iterator[_Drafts]:
    lightship = ship.package.lightship
    if lightship is not None and lightship.observed is not None:
        yield _Drafts("drafts last read", lightship.observed.aft, lightship.observed.forward, stated=False)
    for docking in ship.package.history:
        if docking.drafts is not None:
            yield _Drafts(f"on docking at {docking.place or docking.yard}", docking.drafts.aft, docking.drafts.forward)
        after = docking.undocking_drafts
        if after is not None:
            yield _Drafts(f"on undocking at {docking.place or docking.yard}", after.aft, after.forward)


def _held(ship: Ship, one: _Drafts, others: list[_Drafts], length: float, draft: float) -> Iterator[Notice]:
    keel = ship.package.particulars.keel.depth if ship.package.particulars is not None else None
    depth = keel.si if keel is not None else 0.0
    low, high = 0.65 * draft, 1.35 * draft + depth
    against = f"she draws {show(draft, 'draft')} as a rule"
    wrong: list[Notice] = []
    for end, stated in (("aft", one.aft), ("forward", one.forward)):
        room = 0.02 * length
        wrong += held(CODE, f"draft {end} {one.what}", stated, low - room, high + room, against, exact=True)
    yield from wrong
    if wrong:
        return
    if abs(one.trim) > 0.035 * length:
        message = (
            f"{one.what} her trim was {show(one.trim, 'trim')} by the stern, {one.aft} aft and {one.forward} forward"
        )
        yield Notice(CODE, _odd(one, draft).at, message, hints=("look at the digits of both drafts",))
        return
    if len(others) < 2:
        return
    usual = median(other.trim for other in others)
    least, most = min(other.trim for other in others), max(other.trim for other in others)
    turned = one.trim < -0.15 < 0.15 < least or one.trim > 0.15 > -0.15 > most
    if turned or abs(one.trim - usual) > 0.015 * length:
        message = (
            f"{one.what} her trim was {show(one.trim, 'trim')} by the stern, {one.aft} aft and "
            f"{one.forward} forward, and at other times about {show(usual, 'trim')}"
        )
        hint = "are aft and forward swapped?" if turned else "look at the digits of both drafts"
        yield Notice(CODE, _odd(one, median(other.mean for other in others)).at, message, hints=(hint,))
        return
    mean = median(other.mean for other in others)
    if abs(one.mean - mean) > 0.15 * mean:
        message = (
            f"{one.what} she drew {show(one.mean, 'centre')} in the mean, and at other times about "
            f"{show(mean, 'centre')}"
        )
        yield Notice(CODE, _odd(one, mean).at, message, hints=("look at the digits of both drafts",))


def _odd(one: _Drafts, usual: float) -> Quantity:
    """Give the draft that is farther from the usual one."""
    return max((one.aft, one.forward), key=lambda draft: abs(draft.si - usual))


def _wanted(ship: Ship, known: list[_Drafts], length: float) -> Iterator[Notice]:
    lightship, plan = ship.package.lightship, ship.package.docking_plan
    docking = lightship.docking if lightship is not None else None
    beam = ship.package.particulars.dimensions.beam.si if ship.package.particulars is not None else length / 5
    if docking is not None:
        most = 0.025 * length
        against = f"no ship {show(length, 'centre', more=-1)} long is docked with more than {like(most, docking.trim)}"
        wrong = list(held(CODE, "trim wanted for docking", docking.trim, -most, most, against))
        trims = [one.trim for one in known]
        if not wrong and len(trims) >= 2 and docking.trim.si < -0.1 and min(trims) > 0.1:
            message = f"trim wanted for docking is {docking.trim}, by the head, and she has always trimmed by the stern"
            wrong = [Notice(CODE, docking.trim.at, message, hints=("trim by the stern is positive: look at the sign",))]
        yield from wrong
        against = "a ship that lists more than 3 deg is not set on blocks"
        yield from held(CODE, "greatest list for docking", docking.most_list, 0.0, 0.0525, against)
    for stated in (docking.least_gm if docking is not None else None, plan.least_gm if plan is not None else None):
        low, high = 0.05, max(0.25 * beam, 0.5)
        against = (
            f"from {plainly(low, 'centre')} to {show(high, 'centre', more=-1)} is asked of a ship "
            f"{show(beam, 'centre', more=-1)} broad (common practice, no source)"
        )
        yield from held(CODE, "least metacentric height", stated, low, high, against)
