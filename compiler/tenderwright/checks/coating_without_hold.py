"""Work stops at a hold point before the first coat, so that the prepared surface is accepted.

Ground: what is covered can no longer be judged; that an inspector accepts the surface before the first coat is common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import key_in
from tenderwright.model.appliers import appliers
from tenderwright.model.coating import Scheme
from tenderwright.notices import Notice

CODE = "coating-without-hold"


def check(context: Context) -> Iterator[Notice]:
    """Report items that coat and have no hold point, and schemes accepted at one that their item does not have."""
    for item in context.live_items:
        if item.schemes and not any(hold.kind == "hold" for hold in item.holds):
            message = f"item {item.number} applies scheme `{item.schemes[0]}` and has no hold point"
            hint = "add a hold point under `holds`, at which the prepared surface is accepted before the first coat"
            yield Notice(CODE, key_in(item, "schemes"), message, hints=(hint,))
    for scheme in context.package.schemes:
        yield from _hold(context, scheme)


def _hold(context: Context, scheme: Scheme) -> Iterator[Notice]:
    hold = scheme.preparation.hold
    for item in appliers(context.package, scheme) if hold else ():
        if item.holds and not any(entry.hold == hold for entry in item.holds):
            names = ", ".join(entry.hold for entry in item.holds)
            message = (
                f"scheme `{scheme.scheme}` is accepted at hold point {hold}, which item {item.number} does not have"
            )
            hint = f"name a hold point of item {item.number}, which has {names}, or add {hold} to it"
            yield Notice(CODE, scheme.preparation.here, message, hints=(hint,))
