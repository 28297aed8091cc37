"""The list of tanks on the tank drawing, and the key of its hatchings."""

from __future__ import annotations

import math
from collections.abc import Iterable

from tenderwright.calculations.ship.tanks import tank_contents, tank_shape
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.hatch import liquid_hatch
from tenderwright.documents.drawings.table import Column, Line, height, table
from tenderwright.model.package import Package
from tenderwright.model.tank import Tank
from tenderwright.quantities.display import in_column, show, unit_of

_ABREAST = 2
_GAP = 3.0


def tank_list_height(package: Package) -> float:
    """Give the height of the list, mm."""
    return height(math.ceil(len(package.tanks) / _ABREAST))


def tank_list(package: Package, calculated: Calculated, top: float, width: float) -> str:
    """List every tank by number with hatching, name, sounding and volume, in columns side by side."""
    each = (width - 4 - _GAP * (_ABREAST - 1)) / _ABREAST
    unit = unit_of("capacity")
    wide = max(14.0, pen.text_width(unit, pen.SMALL) + 1.8)
    columns = (
        Column("", 5.0),
        Column("", 8.0),
        Column("Tank", each - 26.0 - wide),
        Column("Sounding", 13.0, "right"),
        Column(unit, wide, "right"),
    )
    lines = [_line(number, tank, calculated) for number, tank in enumerate(package.tanks, 1)]
    rows = math.ceil(len(lines) / _ABREAST)
    parts = [lines[start : start + rows] for start in range(0, len(lines), rows)]
    return "".join(
        table(columns, part, 4 + index * (each + _GAP), top, "tank-list") for index, part in enumerate(parts)
    )


def _line(number: int, tank: Tank, calculated: Calculated) -> Line:
    contents, held = tank.contents, calculated.each(tank_contents).get(tank.tank)
    reading = show(contents.sounding.si, "centre") if contents.sounding else "–"
    if contents.ullage and not contents.sounding:
        reading = f"ull. {show(contents.ullage.si, 'centre')}"
    if contents.full:
        reading = str(contents.full)
    if contents.liquid == "none":
        reading = "dry"
    volume = in_column(held.liquid.volume, "capacity") if held else "–"
    name = tank.name if tank.tank in calculated.each(tank_shape) else f"{tank.name} (not drawn)"
    return Line((f"{number}", "", name, reading, volume), liquid_hatch(contents.liquid))


def liquid_key(liquids: Iterable[str], middle: float) -> str:
    """Explain the hatching of each liquid aboard, in one row."""
    marks, left = [], 4.0
    for liquid in sorted(dict.fromkeys(liquids), key=lambda one: one == "none"):
        shown = "dry" if liquid == "none" else liquid
        marks.append(liquid_hatch(liquid).swatch(left, middle))
        marks.append(pen.text((left + 8.2, middle + 0.9), shown, pen.SMALL, kind="key"))
        left += 8.2 + pen.text_width(shown, pen.SMALL) + 5
    return "".join(marks)
