"""The diver's forms: plating by strake and frame, anodes and openings by number, potentials along her."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from tenderwright.calculations.ship.shell_plan import shell_plates
from tenderwright.calculations.ship.timber import of_wood
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Heading
from tenderwright.documents.parts.survey_form import Cells, blank, entered, form, padded
from tenderwright.model.care import COLUMNS
from tenderwright.quantities.customs import day, system
from tenderwright.quantities.display import in_column

_STRETCHES = 8
"""Of the ship's length, where her plates are not known."""
_BANDS = ("keel and bottom", "bilge", "side to the water")
_STATIONS = 5
"""Places along her at which potentials are read."""


def plating(desk: Desk) -> list[Block]:
    """Compose the grid of the hull, a row for each plate with both sides; by stretches where no plates are known."""
    unit = "in" if system() == "us" else "mm"
    each = [("frame", 0.7), ("kind", 0.6), (f"measured_{unit}", 1.25), ("seen: coating, growth, rivets, seams", 2.6)]
    columns = [("strake", 0.6), ("plate", 1.5), (f"as_built_{unit}", 1.1), *each, *each, ("photograph", 1.0)]
    rows = list(_plates(desk))
    if rows:
        note = entered(
            "surveys/NAME.csv, a row for each reading, with these columns and side, date, instrument and stage",
            "kind is plate or pit; what was seen goes into vessel/condition.yaml",
        )
        cells = [padded(row, len(columns)) for row in rows]
        return [Heading("Plating: port left, starboard right"), *form(columns, cells, note)]
    seen = "planks, seams, sheathing, borers" if of_wood(desk.package.particulars) else "coating, growth, plate, seams"
    columns = [("stretch", 1.4), ("band", 1.2), (f"port: {seen}", 4), (f"starboard: {seen}", 4), ("photograph", 1.0)]
    stretches = [(where, band) for where in _stretches(desk) for band in _BANDS]
    note = entered("vessel/timber.yaml" if of_wood(desk.package.particulars) else "vessel/condition.yaml and surveys/")
    return [Heading("Hull below the water"), *form(columns, [padded(row, len(columns)) for row in stretches], note)]


def _plates(desk: Desk) -> Iterator[Cells]:
    """Yield strake, ends and thickness of each plate between butts, from the keel up and from aft."""
    frames, plates = desk.package.frames, desk.calculated.found(shell_plates)
    if frames is None or plates is None:
        return
    for strake, edges in zip(desk.package.strakes, plates.grid.edges, strict=True):
        for aft, forward in pairwise(edges.tolist()):
            middle = 0.5 * (aft + forward)
            built = next((run.thickness.si for run in strake.plates if run.from_.x <= middle <= run.to.x), None)
            if built is not None:
                where = f"{frames.label(aft)} – {frames.label(forward).removeprefix('Fr ')}"
                yield strake.strake, where, in_column(built, "thickness")


def _stretches(desk: Desk) -> list[str]:
    ends = along(desk, _STRETCHES)
    return [f"{aft} – {forward}" for aft, forward in pairwise(ends)] or [""] * _STRETCHES


def along(desk: Desk, parts: int) -> list[str]:
    """Give places that part her length in so many; none where neither frames nor length are known."""
    frames = desk.package.frames
    if frames is None or (not frames.numbers and not frames.length):
        return []
    low, high = (frames.distances[0], frames.distances[-1]) if frames.numbers else (0.0, frames.length or 0.0)
    at = [low + (high - low) * part / parts for part in range(parts + 1)]
    return [
        frames.label(min(frames.distances, key=lambda x: abs(x - one))) if frames.numbers else frames.label(one)
        for one in at
    ]


def anodes(desk: Desk) -> list[Block]:
    """Compose the list of anodes."""
    columns = [
        ("anode", 0.7),
        ("where", 1.2),
        ("side", 0.9),
        ("height", 0.8),
        ("new", 1.3),
        ("left, last seen", 1.5),
        ("left", 0.8),
        ("held fast, straps sound", 1.6),
        ("photograph", 1.2),
    ]
    rows = []
    for one in desk.package.anodes:
        seen = f" on {day(one.seen)}" if one.seen is not None else ""
        left = f"{desk.quantity(one.left)}{seen}" if one.left is not None else ""
        new = f"{one.alloy}, {desk.quantity(one.mass)}"
        rows.append((one.anode.upper(), str(one.at), one.side, desk.quantity(one.height), new, left))
    if not rows:
        return []
    note = entered("vessel/anodes.yaml, left and seen of each")
    return [Heading("Anodes"), *form(columns, [padded(row, len(columns)) for row in rows], note)]


def openings(desk: Desk) -> list[Block]:
    """Compose the list of openings in the hull."""
    columns = [
        ("opening", 2.2),
        ("kind", 1.1),
        ("where", 1.1),
        ("side", 0.9),
        ("height", 0.8),
        ("bore", 0.8),
        ("state", 1.1),
        ("seen: grid, rim, growth, wasting", 2.6),
        ("photograph", 1.1),
    ]
    rows = [
        (one.name, one.kind, str(one.at), one.side, desk.quantity(one.height), desk.quantity(one.bore))
        for one in desk.package.openings
    ]
    if not rows:
        return []
    note = entered(
        "vessel/openings.yaml", "state is in use, blanked afloat, seized or unknown, and what was seen goes into notes"
    )
    return [Heading("Openings"), *form(columns, [padded(row, len(columns)) for row in rows], note)]


def potentials(desk: Desk) -> list[Block]:
    """Compose the form for potentials: at the places of the last readings, or where there are none along her."""
    last: dict[str, str] = {}
    for one in desk.package.care_readings:
        if one.kind == "potential":
            last[one.place] = str(one.method)
    places = [*last] or [f"{at} {side}" for at in along(desk, _STATIONS - 1) for side in ("port", "starboard")]
    wide = {"place": 2.0, "remark": 3.0, "method": 1.4}
    columns = [(key, wide.get(key, 1.0)) for key in COLUMNS]
    known = {"kind": "potential", "unit": "V"}
    rows = [
        [place if key == "place" else known.get(key, last.get(place, "") if key == "method" else "") for key in COLUMNS]
        for place in places
    ]
    why = (
        "too strong a protection attacks the wood round metals, and the usual rule is not hers"
        if of_wood(desk.package.particulars)
        else "method is the electrode: the same hull reads otherwise against another"
    )
    note = entered("care/NAME.csv, a row for each", why)
    return [Heading("Potentials"), *form(columns, rows or blank(2 * _STATIONS, len(columns)), note)]
