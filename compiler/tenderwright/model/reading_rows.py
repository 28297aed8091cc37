"""Thickness readings of one docking, row by row: from a CSV file, or from those written in the findings themselves."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date

from tenderwright.model.delivered_survey import survey_of
from tenderwright.model.findings import ReadingTaken
from tenderwright.model.survey_columns import SurveyColumns
from tenderwright.model.survey_row import COLUMNS
from tenderwright.notices import Notice, Place
from tenderwright.reading.source import Source

GREATEST = 500.0
"""Thicknesses of this and more are taken for mistakes of unit, mm."""


@dataclass(frozen=True)
class ReadingRow:
    """One reading; thicknesses in mm."""

    strake: str
    frame: float | None
    side: str
    tank: str
    as_built: float
    measured: float
    day: date
    stage: str
    here: Place = field(compare=False)

    @property
    def loss(self) -> float:
        """Give the share of the thickness as built that is lost; nothing for a reading above it."""
        return max(0.0, 1 - self.measured / self.as_built)


def read_rows(source: Source, columns: SurveyColumns | None = None) -> tuple[list[ReadingRow], list[Notice]]:
    """Read a CSV file of readings; each row that cannot be read gives a notice and is left out."""
    rows: list[ReadingRow] = []
    survey, notices = survey_of(source, columns)
    reader = csv.reader(io.StringIO(survey.text))
    if tuple(cell.strip() for cell in next(reader, ())) != COLUMNS:
        message = f"the first row must be {','.join(COLUMNS)}, or with `_in` or `_mil` for `_mm`"
        return [], [Notice("bad-survey", Place(source.path), message)]
    for cells in reader:
        place = Place(source.path, survey.line(reader.line_num))
        if not cells:
            continue
        try:
            rows.append(_row(cells, place))
        except ValueError as error:
            notices.append(Notice("bad-survey", place, f"cannot read the row: {error}"))
    return rows, notices


def _row(cells: list[str], place: Place) -> ReadingRow:
    if len(cells) != len(COLUMNS):
        raise ValueError(f"it has {len(cells)} cells, not {len(COLUMNS)}")
    found = dict(zip(COLUMNS, (cell.strip() for cell in cells), strict=True))
    as_built, measured = _thickness(found["as_built_mm"]), _thickness(found["measured_mm"])
    if not found["strake"] and not found["tank"]:
        raise ValueError("it names neither a strake nor a tank")
    if found["strake"] and not found["frame"]:
        raise ValueError("a reading of a strake needs its frame")
    frame = float(found["frame"]) if found["frame"] else None
    day = date.fromisoformat(found["date"])
    return ReadingRow(
        found["strake"], frame, found["side"], found["tank"], as_built, measured, day, found["stage"], place
    )


def _thickness(cell: str) -> float:
    found = float(cell)
    if not 0 < found < GREATEST:
        raise ValueError(f"a thickness must lie between 0 and {GREATEST:.0f} mm")
    return found


def rows_of(readings: Sequence[ReadingTaken]) -> tuple[list[ReadingRow], list[Notice]]:
    """Give the readings written in the findings as rows, at their own places."""
    rows: list[ReadingRow] = []
    notices: list[Notice] = []
    for one in readings:
        strake = one.strake.name if one.strake else ""
        try:
            if not strake and one.tank is None:
                raise ValueError("it names neither a strake nor a tank")
            if strake and one.frame is None:
                raise ValueError("a reading of a strake needs its frame")
            as_built, measured = (_thickness(_mm(length.si)) for length in (one.as_built, one.measured))
        except ValueError as error:
            notices.append(Notice("bad-survey", one.here, f"cannot use the reading: {error}"))
            continue
        tank = one.tank.name if one.tank else ""
        rows.append(ReadingRow(strake, one.frame, one.side, tank, as_built, measured, one.day, one.stage, one.here))
    return rows, notices


def survey_text(readings: Sequence[ReadingTaken]) -> str:
    """Write the readings of the findings in the form of a survey."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(COLUMNS)
    for one in readings:
        cells = {
            "strake": one.strake.name if one.strake else "",
            "frame": f"{one.frame:g}" if one.frame is not None else "",
            "side": one.side,
            "tank": one.tank.name if one.tank else "",
            "member": one.member,
            "kind": one.kind,
            "as_built_mm": _mm(one.as_built.si),
            "measured_mm": _mm(one.measured.si),
            "date": one.day.isoformat(),
            "instrument": one.instrument,
            "stage": one.stage,
        }
        writer.writerow([cells[column] for column in COLUMNS])
    return out.getvalue()


def _mm(si: float) -> str:
    return f"{round(si * 1000, 3):g}"
