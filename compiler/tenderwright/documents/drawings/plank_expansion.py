"""The plank expansion: the planks that the survey tells of, strake by strake, with borings and fastenings drawn."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from tenderwright.calculations.ship.timber import wood
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale
from tenderwright.documents.drawings.framed import MARGIN, framed
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.legend import Entry, legend
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.model.timber import Plank, Timber

TITLE = "Planks as surveyed"
REPAIR = "For tender. Planks for pricing: shipwright and surveyor mark each plank on the ship before it comes off."
CONDITIONS = {
    "renew": Hatch((45, 135), 0.9, pen.FINE, "", pen.RED),
    "soft": Hatch((45,), 0.9, pen.FINE),
    "split": Hatch((0,), 0.9, pen.FINE),
    "worn": Hatch((135,), 1.4, pen.FINE),
    "watch": Hatch((90,), 1.8, pen.FINE),
    "not seen": Hatch((0,), 1.6, pen.FINE, "1.2 0.8"),
    "sound": Hatch((), 1.0),
}
"""By condition of the plank; sound ones are left white."""
SIDES = ("port", "starboard")
_MOST, _NAME = 12.0, 26.0
"""Greatest height of a row, and width of the names of strakes, mm."""


def plank_expansion(package: Package, calculated: Calculated) -> Figure | Absent:
    """Draw the planks in rows, port above and starboard below, or say why not."""
    timber, ship = calculated.outcome(wood), package.particulars
    if isinstance(timber, Absent):
        return timber
    if not timber.planks or ship is None:
        return Lacking("it needs `planks` in vessel/timber.yaml")
    rows = {side: _strakes([one for one in timber.planks if one.side in (side, "both")]) for side in SIDES}
    ends = [x for one in timber.planks for x in (one.from_.x, one.to.x)]
    low, high = min(0.0, *ends), max(ship.dimensions.length_between_perpendiculars.si, *ends)
    sheet = framed(package, "plank-expansion", TITLE, "survey of her timber", REPAIR)
    room = Room(sheet.right - MARGIN, 0.0)
    scale = largest_scale(room, lambda one: ((high - low) * 1000 / one + _NAME + 4, 0.0))
    sheet = sheet.at(scale)
    row = min(_MOST, (sheet.over - MARGIN - FRAMES_HEIGHT - 1) / (sum(map(len, rows.values())) + 1))
    view = View(scale, MARGIN + _NAME + 2 - low * 1000 / scale, 0.0)
    marks, top = [], MARGIN
    for side in SIDES:
        if rows[side]:
            marks.append(pen.text((4, top + 2.4), side.capitalize(), pen.NORMAL, bold=True, kind="side"))
        # Upward on the ship is upward on the paper for port, and downward for starboard, as the shell is laid flat.
        order = rows[side][::-1] if side == "port" else rows[side]
        for strake in order:
            of = [one for one in timber.planks if one.strake == strake and one.side in (side, "both")]
            marks.append(pen.text((4, top + row / 2 + 2.6), pen.shortened(f"{strake}", pen.SMALL, _NAME), pen.SMALL))
            marks += [mark for one in of for mark in _plank(one, view, (top, row))]
            top += row
        top += row / 2
    marks += [frame_scale(package.frames, view, top, (low, high))] if package.frames else []
    marks.append(pen.line((MARGIN, sheet.over + 1), (sheet.beside, sheet.over + 1)))
    marks.append(legend(_key({one.condition for one in timber.planks}), 4, sheet.over + 4, sheet.beside - 4))
    words = _words(timber)
    caption = (
        "Each row is a strake, forward to the right, lengths to scale and widths not: port above with its garboard "
        "lowest, starboard below with its garboard highest. Only planks that the survey describes are shown; what is "
        "left blank was not surveyed or is not listed."
    )
    return sheet.figure(marks, caption, words)


def _strakes(planks: Iterable[Plank]) -> list[str]:
    """Give the strakes from the keel up: the garboard, then those that are numbered, then the rest as listed."""
    names = list(dict.fromkeys(one.strake for one in planks))

    def height(name: str) -> tuple[int, int]:
        if name.lower() in ("garboard", "keel"):
            return 0, 0
        return (1, int(name)) if name.isdecimal() else (2, names.index(name))

    return sorted(names, key=height)


def _plank(one: Plank, view: View, at: tuple[float, float]) -> list[str]:
    top, row = at
    left, right = sorted((view.x(one.from_.x), view.x(one.to.x)))
    box = [(left, top + 0.6), (right, top + 0.6), (right, top + row - 0.6), (left, top + row - 0.6)]
    named = f"{one.plank} ({one.item})" if one.item else one.plank
    return [
        CONDITIONS[one.condition].over([box]),
        pen.polygon(box, pen.HEAVY if one.condition == "renew" else pen.FINE),
        pen.label(((left + right) / 2, top + row / 2), named, pen.SMALL, bold=one.condition == "renew", kind="plank"),
    ]


def _key(used: set[str]) -> list[Entry]:
    entries = [Entry(words, hatch.swatch(-3.5, 0), 7.0) for words, hatch in CONDITIONS.items() if words in used]
    return [*entries, Entry("in brackets: the item", "", 0.0)]


def _words(timber: Timber) -> str:
    renewed: Sequence[str] = [f"{one.plank} {one.side}" for one in timber.planks if one.condition == "renew"]
    return f"{len(timber.planks)} planks in rows by strake. To renew: {', '.join(renewed) or 'none'}."
