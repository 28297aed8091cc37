"""By the programme each coat goes on within the times that its scheme prints for the coat beneath.

Ground: a coat too early lifts or traps solvent, and one too late does not hold on the cured film; later than the
greatest time the surface is abraded first, which nobody priced (common practice, no source; the data sheet of the
paint's maker gives the times).
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Note, Notice
from tenderwright.planning.coats import PutOn, put_on
from tenderwright.planning.durations import DAY

_PART = 0.01
"""Days."""


def check(context: OwnerContext) -> Iterator[Notice]:
    """Warn of coats that follow too late or too early on the one beneath, at likely durations."""
    if context.schedule is None:
        return
    for coats in put_on(context.schedule, context.package).values():
        for beneath, upper in pairwise(coats):
            if beneath.activity is not upper.activity:
                yield from _between(beneath, upper)


def _between(beneath: PutOn, upper: PutOn) -> Iterator[Notice]:
    waited, source = upper.activity.start - beneath.activity.finish, upper.activity.node.source
    least, most = beneath.coat.overcoat_least, beneath.coat.overcoat_most
    if source is None:
        return
    what = f"`{upper.activity.node.name}` puts coat {upper.coat.coat} of scheme `{upper.scheme.scheme}`"
    on = f"on coat {beneath.coat.coat} of scheme `{beneath.scheme.scheme}`"
    if most is not None and waited > most.si / DAY + _PART:
        message = f"{what} {on} {waited:.1f} d after it, and that takes a coat until {most}"
        hint = "bring the two nearer together, or choose a coat with a longer time; else abrading is to be priced"
        yield Notice("overcoating-outrun", source.here, message, (Note("the time is here", most.at),), (hint,))
    if least is not None and waited < least.si / DAY - _PART:
        message = f"{what} {on} {waited * 24:.0f} h after it, and that takes no coat before {least}"
        hint = "let an activity of kind `cure` stand between the two"
        yield Notice("overcoating-outrun", source.here, message, (Note("the time is here", least.at),), (hint,))
