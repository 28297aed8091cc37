"""The thickness surveys of the package read into arrays, with a notice for what cannot be read."""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import date

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.distinct import distinct
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steps.outcome import Absent, Failed, Lacking
from tenderwright.calculations.steps.step import step
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Codes, Flags, Floats
from tenderwright.calculations.thickness.named_plates import NamedPlates
from tenderwright.calculations.thickness.named_readings import SIDES
from tenderwright.calculations.thickness.readings import GREATEST_THICKNESS, Readings
from tenderwright.calculations.thickness.table import Kind, Table, read_table
from tenderwright.model import survey_row
from tenderwright.model.package import Package
from tenderwright.model.survey import Survey, told_rows
from tenderwright.notices import Notice, Place
from tenderwright.quantities.position import FrameTable, parse_position
from tenderwright.quantities.quantity import QuantityError

_KINDS: dict[str, Kind] = {"as_built_mm": "number", "measured_mm": "number", "date": "date"}
COLUMNS: dict[str, Kind] = {name: _KINDS.get(name, "name") for name in survey_row.COLUMNS}
"""A frame is a name, for whoever knows the frames to place."""
OPTIONAL = ("tank", "member", "kind", "instrument", "stage")
KINDS = ("plate", "pit")
PLATE, PIT = 0, 1


class SurveyCount(Struct, frozen=True):
    """A survey as it was read."""

    name: str
    first: str
    """Day of its first reading, written YYYY-MM-DD."""
    last: str
    readings: int
    """Of plate and members."""
    pits: int
    greatest_loss: float
    above_nominal: int
    stages: tuple[str, ...]
    instruments: tuple[str, ...]


class Members(Struct, frozen=True, eq=False):
    """Readings of members inside tanks."""

    names: tuple[tuple[str, str], ...]
    """Tank and member."""
    member: Ints
    """Of each reading, by its place among the names."""
    readings: Readings
    """Their strakes and places count for nothing."""


class SurveyReadings(Struct, frozen=True, eq=False):
    """Every reading of every survey, surveys in order of time."""

    plate: Readings
    pits: Readings
    members: Members
    counts: tuple[SurveyCount, ...]
    notices: tuple[Notice, ...] = ()
    """Of rows that were left out."""


@step()
def survey_readings(package: Package, frames: FrameTable, shell_plates: NamedPlates | None) -> SurveyReadings | Absent:
    """Read all surveys of the package."""
    if not package.surveys:
        return Lacking("it needs thickness readings under surveys/")
    if shell_plates is None:
        return Lacking("it needs vessel/strakes.yaml")
    found, notices = read_surveys(package)
    if found is not None:
        return replace(found, notices=tuple(notices))
    if notices:
        return Failed("no reading of the surveys can be used", notices[0], tuple(notices[1:]))
    return Lacking("it needs thickness readings under surveys/")


def read_surveys(package: Package) -> tuple[SurveyReadings | None, list[Notice]]:
    """Read all surveys; rows that cannot be used give notices and are left out. None where nothing is left."""
    notices: list[Notice] = []
    if package.frames is None:
        return None, notices
    read = []
    for survey in package.surveys:
        one = _read(survey, package, package.frames, notices)
        if one is not None and one.table.line.size:
            read.append(one)
    read.sort(key=lambda one: int(one.table.dates["date"].min()))
    return (_joined(read) if read else None), notices


def surveys_since(readings: SurveyReadings | None, day: date) -> tuple[str, ...]:
    """Name the surveys of a package whose readings were taken on a day or after it."""
    counts = readings.counts if readings is not None else ()
    return tuple(f"surveys/{one.name}.csv" for one in counts if date.fromisoformat(one.last) >= day)


class _Read(Struct, frozen=True, eq=False):
    survey: Survey
    table: Table
    strake: Ints
    side: Ints
    x: Floats
    kind: Ints
    on_shell: Flags


def _read(survey: Survey, package: Package, frames: FrameTable, notices: list[Notice]) -> _Read | None:
    path = survey.here.path
    try:
        table = read_table(survey.text, COLUMNS, OPTIONAL)
    except OutOfRange as error:
        hint = f"the first row is {','.join(COLUMNS)}, of which {', '.join(OPTIONAL)} may be left out"
        notices.append(Notice("bad-survey", Place(path), str(error), hints=(hint,)))
        return None
    told = [(row.line, f"cannot read the row: {row.why}") for row in table.refused]
    on_shell = _filled(table, "strake")
    strakes = {strake.strake: index for index, strake in enumerate(package.strakes)}
    tanks = {tank.tank for tank in package.tanks}
    fine = np.ones(table.line.size, np.bool_)

    places = _places(table.names["frame"].names, frames)

    def keep(name: str, bad_names: Sequence[bool], rows: Flags | bool, words: str, kind: str = "") -> None:
        codes = table.names.get(name)
        if codes is None or not any(bad_names):
            return
        bad = np.array(bad_names, np.bool_)[codes.code] & rows
        for code in distinct(codes.code[bad & fine]).tolist():
            if package.broken.may_hold(kind, codes.names[code]):
                continue
            line = int(table.line[bad & (codes.code == code)][0])
            told.append((line, words.format(codes.names[code])))
        fine[bad] = False

    def names(column: str) -> tuple[str, ...]:
        return table.names[column].names if column in table.names else ()

    off = [bool(n) and n not in strakes for n in names("strake")]
    keep("strake", off, True, "`{}` is not a strake of hers", "strake")
    keep("side", [n not in SIDES for n in names("side")], on_shell, "the side is `port` or `starboard`, not `{}`")
    keep("frame", np.isnan(places).tolist(), on_shell, "`{}` is not a frame of hers")
    keep("kind", [n not in ("", *KINDS) for n in names("kind")], True, "the kind is `plate` or `pit`, not `{}`")
    off = [n not in tanks for n in names("tank")]
    keep("tank", off, ~on_shell, "`{}` is not a tank of hers, and no strake is named", "tank")
    if "tank" not in table.names and not on_shell.all():
        told.append((int(table.line[~on_shell][0]), "no strake is named"))
        fine &= on_shell
    for name in ("as_built_mm", "measured_mm"):
        bad = ~((table.numbers[name] > 0.0) & (table.numbers[name] < 1e3 * GREATEST_THICKNESS))
        told += [(int(line), "a thickness must lie between 0 and 500 mm") for line in table.line[bad & fine]]
        fine &= ~bad
    notices += told_rows(path, [(survey.line(line), why) for line, why in told])
    kept = table if fine.all() else table.only(fine)
    strake_of, side_of = np.array([strakes.get(n, -1) for n in kept.names["strake"].names], np.int64), SIDES
    x_of = np.nan_to_num(places)
    return _Read(
        survey,
        kept,
        _by(strake_of, kept.names["strake"]),
        _by(np.array([side_of.index(n) if n in side_of else 0 for n in kept.names["side"].names]), kept.names["side"]),
        x_of[kept.names["frame"].code] if x_of.size else np.zeros(0),
        _kinds(kept),
        on_shell if fine.all() else on_shell[fine],
    )


def _filled(table: Table, name: str) -> Flags:
    codes = table.names[name]
    return (
        np.array([bool(text) for text in codes.names], np.bool_)[codes.code] if codes.names else np.zeros(0, np.bool_)
    )


def _by(values: Ints, codes: Codes) -> Ints:
    return values[codes.code] if values.size else np.zeros(0, np.int64)


def _kinds(table: Table) -> Ints:
    if "kind" not in table.names:
        return np.zeros(table.line.size, np.int64)
    codes = table.names["kind"]
    return _by(np.array([KINDS.index(name) if name in KINDS else PLATE for name in codes.names], np.int64), codes)


def _places(names: Sequence[str], frames: FrameTable) -> Floats:
    """Give where frames lie, m: `36`, `36.4` (four tenths of the space on), `Fr 36 + 200 mm`; nan for no frame."""
    numbers = np.array(frames.numbers, np.float64)
    order = np.argsort(numbers)
    wanted, places = np.full(len(names), np.nan), np.full(len(names), np.nan)
    for index, name in enumerate(names):
        try:
            wanted[index] = float(name)
        except ValueError:
            places[index] = _written(name, frames)
    if not names or not frames.numbers:
        return places
    inside = (wanted >= numbers[order[0]]) & (wanted <= numbers[order[-1]])
    places[inside] = np.interp(wanted[inside], numbers[order], np.array(frames.distances)[order])
    return places


def _written(name: str, frames: FrameTable) -> float:
    try:
        return parse_position(name, frames).x
    except QuantityError:
        return math.nan


def _joined(read: list[_Read]) -> SurveyReadings:
    stages = sorted({name for one in read for name in _names(one.table, "stage")})
    survey = np.repeat(np.arange(len(read)), [one.table.line.size for one in read])
    as_built = np.concatenate([one.table.numbers["as_built_mm"] for one in read]) * 1e-3
    measured = np.concatenate([one.table.numbers["measured_mm"] for one in read]) * 1e-3
    year = np.concatenate([one.table.years("date") for one in read])
    kind = np.concatenate([one.kind for one in read])
    on_shell = np.concatenate([one.on_shell for one in read])
    whole = Readings(
        np.maximum(np.concatenate([one.strake for one in read]), 0),
        np.concatenate([one.side for one in read]),
        np.concatenate([_codes(one.table, "stage", stages) for one in read]),
        survey,
        np.concatenate([one.x for one in read]),
        as_built,
        measured,
        year,
    )
    inside = ~on_shell
    names, member = _member_codes(read, inside)
    members = Members(names, member, whole.only(inside))
    return SurveyReadings(
        whole.only(on_shell & (kind == PLATE)),
        whole.only(on_shell & (kind == PIT)),
        members,
        tuple(_count(one) for one in read),
    )


def _names(table: Table, column: str) -> tuple[str, ...]:
    return table.names[column].names if column in table.names else ("",)


def _codes(table: Table, column: str, order: list[str]) -> Ints:
    if column not in table.names:
        return np.full(table.line.size, order.index(""), np.int64)
    codes = table.names[column]
    return _by(np.array([order.index(name) for name in codes.names], np.int64), codes)


def _member_codes(read: list[_Read], inside: Flags) -> tuple[tuple[tuple[str, str], ...], Ints]:
    """Give every pair of tank and member, and its number for each reading inside a tank."""
    tanks = sorted({name for one in read for name in _names(one.table, "tank")} | {""})
    members = sorted({name for one in read for name in _names(one.table, "member")} | {""})
    key = np.concatenate(
        [_codes(one.table, "tank", tanks) * len(members) + _codes(one.table, "member", members) for one in read]
    )
    known = distinct(key[inside])
    names = tuple((tanks[code // len(members)], members[code % len(members)]) for code in known.tolist())
    return names, np.searchsorted(known, key[inside])


def _count(one: _Read) -> SurveyCount:
    days, plate = one.table.dates["date"], one.kind == PLATE
    loss = 1.0 - one.table.numbers["measured_mm"] / one.table.numbers["as_built_mm"]
    first, last = (str(np.datetime64(int(day), "D")) for day in (days.min(), days.max()))
    return SurveyCount(
        one.survey.name,
        first,
        last,
        int(plate.sum()),
        int((~plate).sum()),
        float(np.clip(loss[plate], 0.0, None).max(initial=0.0)),
        int((loss[plate] < -1e-9).sum()),
        tuple(name for name in _names(one.table, "stage") if name),
        tuple(name for name in _names(one.table, "instrument") if name),
    )
