"""A stretch of steel, rivets, timber or bare shell runs from aft, and soundings say how much there was."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.notices import Notice


def check(context: ClosingContext) -> Iterator[Notice]:
    """Report stretches the wrong way round, and soundings that give no measure."""
    findings = context.findings
    for key in ("renewed", "rivets", "timber", "not_painted"):
        for number, one in enumerate(getattr(findings, key)):
            if one.from_ is not None and one.to is not None and one.to.x < one.from_.x:
                message = f"`to` {one.to} lies abaft `from` {one.from_}"
                yield Notice("out-of-bounds", context.at(key, number, "to"), message)
    for key in ("on_docking", "on_undocking"):
        for number, taken in enumerate(getattr(findings, key).soundings):
            if taken.sounding is None and taken.ullage is None and taken.volume is None:
                hints = ("write `sounding`, `ullage` or `volume`",)
                message = f"it is not said how much was in tank `{taken.tank}`"
                yield Notice("missing-key", context.at(key, "soundings", number), message, hints=hints)
