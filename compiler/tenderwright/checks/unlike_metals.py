"""Unlike metals that touch in sea water are bonded and looked after by anodes, or parted.

Ground: of a bronze propeller on a steel shaft the steel wastes (galvanic series in sea water, as in general handbooks,
from memory); zincs near the stern, a bonded shaft, or a coat that parts the two are common practice, with no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.metals import judged_pair, metal_pairs
from tenderwright.checks.context import Context
from tenderwright.model.ship_condition import MetalPair
from tenderwright.notices import Notice
from tenderwright.quantities.display import plainly

REACH = 6.0
"""How far from the propeller an anode may stand to look after it, m (common practice, no source)."""
_NOBLE = ("bronze", "brass", "gunmetal", "stainless", "nickel-copper")
_CARE = (
    "name what is done: `bonded`, `anodes`, or `coated`",
    "a brush and slip ring bonds a shaft; zincs stand near it",
)


def check(context: Context) -> Iterator[Notice]:
    """Warn of each pair of unlike metals, the propeller's included, that nothing looks after."""
    pairs = context.found(metal_pairs) or {}
    for key, pair in pairs.items():
        judged = context.found_for(judged_pair, key)
        if judged is not None and judged["risk"] != "little" and not _cared(pair):
            message = f"{pair.what}: {judged['wastes']} wastes against {judged['spared']}, and nothing looks after it"
            yield Notice("unlike-metals", pair.here, message, hints=_CARE)
    if not any("propeller" in pair.what for pair in pairs.values()):
        yield from _propellers(context)


def _cared(pair: MetalPair) -> bool:
    return bool(pair.bonded or pair.anodes or pair.coated)


def _propellers(context: Context) -> Iterator[Notice]:
    """Warn of a propeller of a noble metal with no anode near it, where the package says no more of the pair."""
    ship = context.package.particulars
    if ship is None or "vessel/anodes.yaml" in context.package.broken.files:
        return
    for shaft in ship.shafts:
        propeller = shaft.propeller
        if propeller is None or shaft.state != "propeller fitted":
            continue
        at = propeller.at
        near = [one for one in context.package.anodes if at is None or abs(one.at.x - at.x) <= REACH]
        if not near and any(metal in propeller.material for metal in _NOBLE):
            where = f"within {plainly(REACH, 'centre')} of it" if at is not None else "on the ship"
            message = f"the propeller of {propeller.material} stands on a steel hull, and no anode stands {where}"
            hint = "list the anodes at the stern in vessel/anodes.yaml, or the pair in vessel/condition.yaml (`metals`)"
            yield Notice("unlike-metals", propeller.diameter.at, message, hints=(hint,))
