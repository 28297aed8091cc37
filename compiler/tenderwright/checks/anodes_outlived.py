"""Anodes last until the next docking, or somebody renews them before.

Ground: bare steel wastes when its anodes are spent; bolted zincs are renewed by divers every other year or so (common
practice, no source). How long they last is found from what was left of them and from the current that her surfaces ask.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

_YEAR = 365.25 * 86400.0
_SLACK = 1e-6


def check(context: Context) -> Iterator[Notice]:
    """Warn where a new anode lasts less than the interval, or fewer are fitted than the interval needs."""
    condition = context.package.condition
    if condition is None or condition.anodes is None or condition.anodes.renewed_between:
        return
    interval = condition.next_docking
    hint = "let divers renew them and say so in `renewed_between`, fit more or larger ones, or dock sooner"
    for number, lot in enumerate(condition.anodes.fitted, start=1):
        life = context.value(f"anodes.lot-{number}.whole-life")
        if life is not None and life.si is not None and life.si < interval.si * (1.0 - _SLACK):
            message = f"a new anode lasts {life.si / _YEAR:.1f} years here, and the next docking is {interval} away"
            yield Notice("anodes-outlived", lot.here, message, hints=(hint,))
    needed, fitted = context.value("anodes.needed"), context.value("anodes.count")
    if needed is not None and fitted is not None and needed.si > fitted.si:
        governs = context.record.values["anodes.governs"].si
        message = f"{needed.si:.0f} anodes are needed for {interval}, by {governs}, and {fitted.si:.0f} are fitted"
        hints = (hint, "`tenderwright explain anodes.needed` shows the working")
        yield Notice("anodes-outlived", condition.anodes.here, message, hints=hints)
