"""The keel that stands on the blocks."""

from __future__ import annotations

from tenderwright.calculations.value import Given, given
from tenderwright.model.particulars import Particulars


def underside(particulars: Particulars) -> float:
    """Give the height above the keel line of what stands on the blocks, m: less than nothing for a bar keel."""
    keel = particulars.keel
    return -keel.depth.si if keel.kind == "bar" and keel.depth is not None else 0.0


def given_underside(particulars: Particulars) -> dict[str, Given]:
    """Give that height as an input; nothing where the keel line itself stands on the blocks."""
    depth = particulars.keel.depth
    if particulars.keel.kind != "bar" or depth is None:
        return {}
    return {"keel": Given(-depth.si, f"−{depth}", depth.at)}


def given_straight(particulars: Particulars) -> dict[str, Given]:
    """Give the ends of the straight keel as inputs."""
    straight = particulars.keel.straight
    return {"keel_aft": given(straight.from_), "keel_forward": given(straight.to)}
