"""What was read of the hull's potential lies within its limits, or something was done about it.

Ground: steel more positive than -0.80 V against silver/silver chloride in sea water is not protected (EN 16222, from
memory); metals on wood more negative than -0.60 V eat the wood round them (from memory). Judged by the last reading of
each place, brought to that cell, and by what was recorded there on that day or later.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.care.potentials import OVER, PROTECTED, WOOD_OVER, Potentials
from tenderwright.calculations.ship.care import hull_potentials
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "potential-without-action"


def check(context: Context) -> Iterator[Notice]:
    """Warn of each place whose last potential is beyond a limit, with no action after it."""
    found = context.found(hull_potentials)
    if found is None:
        return
    rows = {one.place: one for one in context.package.care_readings if one.kind == "potential"}
    acted = {one.place: one.day for one in context.package.care_readings if one.kind == "action"}
    for place, beyond in _beyond(found).items():
        last = rows[place]
        if place in acted and acted[place] >= last.day:
            continue
        message = f"the potential at {place} was {beyond}"
        hint = "find the cause and mend it, then write what was done as a row of kind `action` for the place"
        yield Notice(CODE, last.here, message, hints=(hint,))


def _beyond(found: Potentials) -> dict[str, str]:
    """Say of each place what is wrong with its potential."""
    passed = {limit.name: limit for limit in found.judged.passed}
    told = {}
    for one in found.places:
        read = f"{show(one.potential, 'potential')} against silver in sea water"
        if f"protected, {one.place}" in passed:
            told[one.place] = f"{read}, more positive than {show(PROTECTED, 'potential')}: the steel is not protected"
        elif (limit := passed.get(f"not over-protected, {one.place}")) is not None:
            wood = limit.limit == -WOOD_OVER
            harm = "alkali softens the wood" if wood else "coating may come off"
            told[one.place] = f"{read}, more negative than {show(WOOD_OVER if wood else OVER, 'potential')}: {harm}"
    return told
