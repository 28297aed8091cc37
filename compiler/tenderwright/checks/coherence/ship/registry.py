"""The rules of the ship's coherence, by the subject of each."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from tenderwright.checks.coherence.ship import (
    anodes,
    areas,
    blocks,
    curves,
    draft_marks,
    drafts,
    facilities,
    items,
    lengths,
    liquids,
    off_the_hull,
    offsets,
    particulars,
    plating,
    readings,
    sections,
    sides,
    tanks,
    usual,
    weights,
)
from tenderwright.checks.coherence.ship.shell import shell_of
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.checks.context import Context
from tenderwright.notices import Notice

Rule = Callable[[Ship], Iterator[Notice]]
FORM: tuple[Rule, ...] = (lengths.check, offsets.check, sections.check)
"""Of her form, by which the others place what is in her."""
RULES: tuple[Rule, ...] = (
    particulars.check,
    curves.check,
    draft_marks.check,
    off_the_hull.check,
    sides.check,
    tanks.check,
    liquids.check,
    weights.check,
    drafts.check,
    blocks.check,
    plating.check,
    readings.check,
    areas.check,
    anodes.check,
    facilities.check,
    items.check,
    usual.check,
)


def check(context: Context) -> Iterator[Notice]:
    """Hold her data against each other, rule by rule; where her form is in doubt, nothing is held against it."""
    stated = context.package.particulars
    shell = shell_of(context.calculated, stated.dimensions.beam.si) if stated is not None else None
    ship = Ship(context.package, shell, context.calculated)
    form = [notice for rule in FORM for notice in rule(ship)]
    yield from form
    if form:
        ship = Ship(context.package, None, context.calculated)
    for rule in RULES:
        yield from rule(ship)
