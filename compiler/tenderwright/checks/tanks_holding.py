"""Which tanks hold liquid as she is docked."""

from __future__ import annotations

from tenderwright.model.tank import Tank


def holds_liquid(tank: Tank) -> bool:
    """Tell whether a tank is written as holding something."""
    contents = tank.contents
    readings = [one for one in (contents.sounding, contents.volume, contents.full, contents.mass) if one is not None]
    return contents.liquid != "none" and (contents.ullage is not None or any(one.si > 0 for one in readings))
