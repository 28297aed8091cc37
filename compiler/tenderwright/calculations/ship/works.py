"""Items that work on the plating under a side block, so that the block is moved for them or the place is lost."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from msgspec import Struct

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.ship.footprints import Footprint
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import step
from tenderwright.model.item import Item
from tenderwright.model.vessel import Strake

POINTS = 120


class Work(Struct, frozen=True):
    """A block that covers plating on which an item works: it is moved for that item, or the item loses the place."""

    footprint: Footprint
    item: str
    what: str


@step()
def blocks_over_work(
    items: tuple[Item, ...],
    strakes: tuple[Strake, ...],
    hull: Hull,
    plan_footprints: tuple[Footprint, ...],
) -> tuple[Work, ...] | Absent:
    """List the side blocks under which a definite or measured item does hot work on strakes that it names."""
    if not strakes:
        return Lacking("it needs vessel/strakes.yaml")
    form, by_name = hull.form, {strake.strake: strake for strake in strakes}
    widest = float(form.stations[int(np.argmax(form.deck_half_breadths))])
    amidships = girth(form, widest, np.inf)
    found: list[Work] = []
    for item in items:
        if not item.withdrawn and "hot work" in item.does and item.kind in ("definite", "measured"):
            named = [by_name[ref.name] for ref in item.where.strakes if ref.name in by_name]
            found += _under(item, named, plan_footprints, form, amidships)
    return tuple(found)


def girth(form: HullForm, x: float, y: float) -> float:
    """Give the length along the section from the keel to half-breadth y, or to the deck edge, m.

    Formula: sum of chords of the section curve. Source: geometry (derived).
    """
    z = np.linspace(form.keel_at(x), form.deck_at(x), POINTS)
    half = form.half_breadth_at(x, z)
    beyond = np.flatnonzero(half > y)
    last = int(beyond[0]) if beyond.size else POINTS - 1
    across, up = np.minimum(half[: last + 1], y), z[: last + 1]
    return float(half[0] + np.hypot(np.diff(across), np.diff(up)).sum())


def _under(
    item: Item, strakes: list[Strake], blocks: tuple[Footprint, ...], form: HullForm, amidships: float
) -> Iterator[Work]:
    extent = item.where.extent
    if extent is None:
        return
    aft, forward = sorted((extent.from_.x, extent.to.x))
    for block in blocks:
        if block.kind != "side" or block.forward <= aft or block.aft >= forward:
            continue
        if {item.where.side, block.side} == {"port", "starboard"}:
            continue
        share = girth(form, block.x, np.inf) / amidships
        y = abs(block.y)
        half = (block.left - block.right) / 2
        inner, outer = girth(form, block.x, y - half), girth(form, block.x, y + half)
        under = [s.strake for s in strakes if s.from_girth.si * share < outer and s.to_girth.si * share > inner]
        if under:
            yield Work(block, item.number, f"strake {', '.join(under)}")
