"""Thickness readings lie on their strake, count from the thickness that the strake has, and are no thicker than it was.

Ground: no plate grows. Plate is rolled up to some 10 % over its nominal thickness, and a reading under a fifth of it is
of a hole or of a slip (common practice, no source).
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.median import median
from tenderwright.calculations.ship.survey_readings import Members, survey_readings
from tenderwright.calculations.thickness.named_readings import SIDES
from tenderwright.calculations.thickness.readings import Readings
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.survey import Survey
from tenderwright.model.vessel import Strake
from tenderwright.notices import Notice, Place
from tenderwright.quantities.display import plainly, show

CODE = "reading-unlikely"
Flags = NDArray[np.bool_]
_ROOM = 0.7
"""How far over the end of a plate a reading may be placed [m]."""
_MOST = 3
"""Rows of one survey that are told for one reason."""


def check(ship: Ship) -> Iterator[Notice]:
    """Report readings that contradict the strakes or each other's steel."""
    found = ship.calculated.found(survey_readings)
    if found is None:
        return
    names = [count.name for count in found.counts]
    surveys = {survey.name: survey for survey in ship.package.surveys}
    order = [surveys[name] for name in names if name in surveys]
    strakes = ship.package.strakes
    told: set[tuple[str, int]] = set()
    for readings, least in ((found.plate, 0.2), (found.pits, 0.0), (found.members.readings, 0.15)):
        if not len(readings):
            continue
        on_shell = readings is not found.members.readings
        share = readings.measured / readings.as_built
        thick = (share > 1.13) & (readings.measured - readings.as_built > 0.0004)
        yield from _rows(readings, thick, order, strakes if on_shell else (), "it is thicker than it was built", told)
        thin = share < least
        yield from _rows(
            readings, thin, order, strakes if on_shell else (), "next to nothing would be left of it", told
        )
        if on_shell:
            yield from _strakes(ship, readings, order, told)
        else:
            wrong = _unlike_their_member(found.members)
            yield from _rows(readings, wrong, order, (), "others of that member count from another thickness", told)


def _unlike_their_member(members: Members) -> Flags:
    """Mark the readings that count from a thickness far from that of most readings of the same member."""
    wrong = np.zeros(len(members.readings), np.bool_)
    for code in range(len(members.names)):
        rows = members.member == code
        if rows.sum() >= 3:
            usual = median(members.readings.as_built[rows])
            wrong |= rows & (np.abs(members.readings.as_built / usual - 1) > 0.3)
    return wrong


def _strakes(ship: Ship, readings: Readings, order: Sequence[Survey], told: set[tuple[str, int]]) -> Iterator[Notice]:
    """Hold the places and the thicknesses as built against those of the strakes."""
    strakes = ship.package.strakes
    off, other = np.zeros(len(readings), np.bool_), np.zeros(len(readings), np.bool_)
    renewed = _renewed(ship, readings)
    for index, strake in enumerate(strakes):
        if not strake.plates:
            continue
        rows = (readings.strake == index) & ~renewed
        if not rows.any():
            continue
        off |= rows & ~_within(readings, strake.plates[0].from_.x, strake.plates[-1].to.x)
        fits = ~rows
        for plate in strake.plates:
            room = max(0.0004, 0.04 * plate.thickness.si)
            on = rows & _within(readings, plate.from_.x, plate.to.x)
            same = np.abs(readings.as_built - plate.thickness.si) <= room
            fits |= on & same
            sure = rows & _within(readings, plate.from_.x + 2 * _ROOM, plate.to.x - 2 * _ROOM)
            if sure.sum() >= 4 and (sure & ~same).sum() > 0.6 * sure.sum():
                stated = median(readings.as_built[on & ~same])
                message = (
                    f"thickness of strake {strake.strake}, {plate.from_} to {plate.to}, is {plate.thickness}, and the "
                    f"surveys have {show(stated, 'thickness')} as built there"
                )
                yield Notice(CODE, plate.thickness.at, message, hints=("look at the strake and at the surveys",))
                fits |= on
        other |= rows & ~off & ~fits
    if ship.package.condition is None and "vessel/condition.yaml" in ship.package.broken.files:
        other[:] = False  # what was renewed is not known
    yield from _rows(readings, off, order, strakes, "its frame lies beyond the plates of that strake", told)
    yield from _rows(readings, other, order, strakes, "the strake was built of another thickness there", told)


def _within(readings: Readings, low: float, high: float) -> Flags:
    found: Flags = (readings.x >= low - _ROOM) & (readings.x <= high + _ROOM)
    return found


def _renewed(ship: Ship, readings: Readings) -> Flags:
    """Mark the readings on plate that was renewed, which may be of any thickness."""
    marked = np.zeros(len(readings), np.bool_)
    names = [strake.strake for strake in ship.package.strakes]
    told = ship.package.condition.renewed if ship.package.condition is not None else ()
    stretches = [(one.strake.name, one.from_.x, one.to.x) for one in told]
    for docking in ship.package.history:
        for steel in docking.renewed:
            if steel.strake is not None and steel.from_ is not None and steel.to is not None:
                stretches.append((steel.strake.name, steel.from_.x, steel.to.x))
    for name, low, high in stretches:
        if name in names:
            marked |= (readings.strake == names.index(name)) & _within(readings, low, high)
    return marked


def _rows(
    readings: Readings,
    wrong: Flags,
    order: Sequence[Survey],
    strakes: Sequence[Strake],
    why: str,
    told: set[tuple[str, int]],
) -> Iterator[Notice]:
    """Tell the first few of some readings, each at its line."""
    count: dict[int, int] = {}
    for row in np.flatnonzero(wrong).tolist():
        survey = int(readings.survey[row])
        count[survey] = count.get(survey, 0) + 1
        if count[survey] > _MOST or survey >= len(order):
            continue
        built, measured = 1000 * float(readings.as_built[row]), 1000 * float(readings.measured[row])
        strake = strakes[int(readings.strake[row])].strake if strakes else ""
        side = SIDES[int(readings.side[row])] if strakes else ""
        line = _line(order[survey], strake, side, built, measured)
        if (order[survey].name, line) in told:
            continue
        told.add((order[survey].name, line))
        where = f"on strake {strake}, {side}, " if strakes else ""
        more = int((wrong & (readings.survey == survey)).sum()) - _MOST
        hints: tuple[str, ...] = ("look at the decimal point, at the columns and at the frame",)
        if count[survey] == _MOST and more > 0:
            hints = (*hints, f"{more} more rows of this survey are alike")
        message = (
            f"the reading {where}of {plainly(measured / 1000, 'thickness')} where "
            f"{plainly(built / 1000, 'thickness')} was built is unlikely: {why}"
        )
        yield Notice(CODE, Place(order[survey].here.path, line), message, hints=hints)


def _line(survey: Survey, strake: str, side: str, built: float, measured: float) -> int:
    """Find the line of a reading in its survey."""
    reader = csv.reader(io.StringIO(survey.text))
    columns = [cell.strip() for cell in next(reader, [])]
    for cells in reader:
        row = dict(zip(columns, (cell.strip() for cell in cells), strict=False))
        if row.get("strake", "") != strake or (side and row.get("side", "") != side):
            continue
        try:
            same = abs(float(row["as_built_mm"]) - built) < 1e-6 and abs(float(row["measured_mm"]) - measured) < 1e-6
        except (KeyError, ValueError):
            continue
        if same:
            return reader.line_num
    return 1
