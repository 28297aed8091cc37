"""A sounding lies within the tank and its pipe, and a volume within the tank's capacity.

Ground: geometry. A sounding above the tank's top or off the pipe is a slip of the pen, or of the table it was
read from.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import cos

from tenderwright.checks.context import Context
from tenderwright.model.tank import Tank
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

CODE = "sounding-beyond-tank"
_SLACK = 0.005
"""Soundings are read to this much [m]."""


def check(context: Context) -> Iterator[Notice]:
    """Report contents beyond the tank, unless the calculation of the tank has told of them already."""
    failed = {name.split(".")[1] for name in context.record.failed if name.startswith("tank.")}
    for tank in context.package.tanks:
        if tank.tank not in failed:
            yield from _reading(tank)
            yield from _volume(context, tank)


def _reading(tank: Tank) -> Iterator[Notice]:
    contents = tank.contents
    for word, reading in (("sounding", contents.sounding), ("ullage", contents.ullage)):
        limit = _limit(tank, word)
        if reading is not None and limit is not None and reading.si > limit[0] + _SLACK:
            message = (
                f"{word} {reading} of tank `{tank.tank}` is more than the {show(limit[0], 'centre')} to the {limit[1]}"
            )
            hint = "take it again, and write what the tape says; if it is the same, measure the pipe and the tank"
            yield Notice(CODE, reading.at, message, hints=(hint,))


def _limit(tank: Tank, word: str) -> tuple[float, str] | None:
    """Give how far [m] a reading can go along the pipe, and to what; None where the package does not say."""
    pipe, bounds = tank.pipe, tank.bounds
    readings = [one.si for row in tank.table if (one := getattr(row, word)) is not None]
    if readings:
        return max(readings), "last row of its table" if word == "sounding" else "greatest ullage of its table"
    if pipe is None:
        return None
    slope = cos(pipe.slant.si) if pipe.slant is not None else 1.0
    ends: list[tuple[Quantity, str]] = [(pipe.head, "head of its pipe")] if pipe.head is not None else []
    if bounds is not None and word == "sounding":
        ends.append((bounds.top, "top of the tank"))
    return min((((end.si - pipe.foot.si) / slope, what) for end, what in ends), default=None)


def _volume(context: Context, tank: Tank) -> Iterator[Notice]:
    volume, capacity = tank.contents.volume, tank.capacity
    if volume is None or capacity is None:
        return
    if volume.si > capacity.si * (1 + 1e-9):
        message = f"tank `{tank.tank}` holds {volume}, and its capacity is {capacity}"
        hint = "take the sounding again, and write what the tape says; if it is the same, check the capacity"
        yield Notice(CODE, volume.at, message, hints=(hint,))
