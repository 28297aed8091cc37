"""Anodes last until the next docking, or somebody renews them before.

Ground: bare steel wastes when its anodes are spent; bolted zincs are renewed by divers every other year or so (common
practice, no source). How long they last is found from what was left of them and from the current that her surfaces ask.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.anode_life import each_anode
from tenderwright.checks.context import Context
from tenderwright.notices import Notice

_YEAR = 365.25 * 86400.0
_SLACK = 1e-6
NAMED = 6


def check(context: Context) -> Iterator[Notice]:
    """Warn where a new anode lasts less than the interval, or fewer are fitted than the interval needs."""
    condition = context.package.condition
    if condition is None or condition.anodes is None or condition.anodes.renewed_between:
        return
    interval = condition.next_docking
    hint = "let divers renew them and say so in `renewed_between`, fit more or larger ones, or dock sooner"
    each = context.found(each_anode)
    short = [
        one
        for one in (each.anodes if each is not None else ())
        if one.life.whole_life is not None and one.life.whole_life * _YEAR < interval.si * (1.0 - _SLACK)
    ]
    if short:
        worst = min(short, key=lambda one: one.life.whole_life or 0.0)
        names = ", ".join(f"`{one.name}`" for one in short[:NAMED]) + (" and others" if len(short) > NAMED else "")
        message = (
            f"a new anode lasts {worst.life.whole_life:.1f} years where `{worst.name}` is, and the next docking is "
            f"{interval} away; it is too far for {len(short)} anodes: {names}"
        )
        place = next(anode.here for anode in context.package.anodes if anode.anode == worst.name)
        yield Notice("anodes-outlived", place, message, hints=(hint,))
    needed, fitted = context.value("anodes.needed"), context.value("anodes.count")
    if needed is not None and fitted is not None and needed.si > fitted.si:
        governs = context.record.values["anodes.governs"].si
        message = f"{needed.si:.0f} anodes are needed for {interval}, by {governs}, and {fitted.si:.0f} are fitted"
        hints = (hint, "`tenderwright explain anodes.needed` shows the working")
        yield Notice("anodes-outlived", condition.anodes.here, message, hints=hints)
