"""Bonded metals on wood are not held at a potential that eats the wood.

Ground: too much current makes alkali at the metal, which softens the wood round it; the aim of -0.55 V to -0.60 V
against silver/silver chloride is from memory, and no rule of metal hulls is applied.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.timber import AIM, wood
from tenderwright.calculations.verdict import within
from tenderwright.checks.context import Context
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Warn of each potential that is more negative than the aim."""
    timber = context.found(wood)
    if timber is None:
        return
    for one in timber.potentials:
        if not within(one.potential.si, AIM[0], at_least=True):
            message = (
                f"the potential at {one.at} is {one.potential}, and {AIM[1]:.2f} V to {AIM[0]:.2f} V is the aim on wood"
            )
            hint = "take anodes off or bond less; look at the wood round each fastening there"
            yield Notice("wood-over-protected", one.here, message, hints=(hint,))
