"""Only docking plugs stand in the plug register, and no anode weighs more than it did when it was new."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.notices import Notice
from tenderwright.notices.suggest import did_you_mean


def check(context: ClosingContext) -> Iterator[Notice]:
    """Report openings that are no docking plugs, and anodes with more left than there was."""
    openings = {one.opening: one for one in context.package.openings}
    plugs = [name for name, one in openings.items() if one.kind == "docking plug"]
    for plug in context.findings.plugs:
        if plug.plug.name in openings and plug.plug.name not in plugs:
            message = f"opening `{plug.plug.name}` is a {openings[plug.plug.name].kind}, not a docking plug"
            yield Notice("dead-reference", plug.plug.at, message, hints=did_you_mean(plug.plug.name, plugs))
    fitted = {one.anode: one for one in context.package.anodes}
    for number, one in enumerate(context.findings.anodes):
        if one.left is not None and one.left.si > 1:
            yield Notice("out-of-bounds", one.left.at, f"`{one.left}` of an anode cannot be left")
        new = fitted.get(one.anode.name)
        if new is not None and one.left_mass is not None and one.left_mass.si > new.mass.si * 1.001:
            message = f"{one.left_mass} is left of anode `{one.anode.name}`, which weighed {new.mass} when new"
            yield Notice("out-of-bounds", context.at("anodes", number, "left_mass"), message)
