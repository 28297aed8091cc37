"""Draft the findings of a docking from the award, the papers from the dock, the surveys and the ship's data."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.ship.block_places import placed_keel_blocks
from tenderwright.calculations.ship.survey_readings import survey_readings, surveys_since
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.findings_draft.account import (
    TODO,
    Entry,
    account_entries,
    not_measured,
    put_off_entries,
)
from tenderwright.documents.findings_draft.of_ship import blocks_as_planned, ship_entries, soundings
from tenderwright.model.bid import Bid
from tenderwright.model.coating import Scheme
from tenderwright.model.in_dock import ActualDays
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.planning.in_dock.live import lines_by_item, live_items
from tenderwright.pricing.in_dock.account import LineAccount, RunningAccount

DAYS = ("arrived", "docked", "dry", "undocked", "departed")


class Draft(Struct, frozen=True):
    """A draft of the findings, and what it could not take from the papers."""

    data: Entry
    asked: int
    """How many values are `todo`."""
    surveys: tuple[str, ...]
    """Surveys of the package that hold readings taken in dock, which are not asked again."""
    not_measured: tuple[str, ...]


def findings_draft(package: Package, calculated: Calculated, bid: Bid | None, made: RunningAccount | None) -> Draft:
    """Draft the findings; without an award nothing of the account is known."""
    days = made.ledger.actual(made.on) if made is not None else ActualDays()
    live = live_items(made, package) if made is not None else tuple(one for one in package.items if not one.withdrawn)
    rows = lines_by_item(made) if made is not None else {}
    live = tuple(one for one in live if made is None or any(row.final for row in rows.get(one.number, ())))
    surveys = _in_dock(calculated, days, made)
    drafts = {"aft": TODO, "forward": TODO}
    entry: Entry = {
        **_yard(package, bid),
        "dates": {key: getattr(days, key) or TODO for key in DAYS},
        "on_docking": {"drafts": drafts, "soundings": soundings(package, docking=True)},
        "on_undocking": {"drafts": drafts, "soundings": soundings(package, docking=False)},
        "blocks": blocks_as_planned(package, calculated.found(placed_keel_blocks)),
        "not_painted": TODO,
        **({} if surveys or not _of_metal(package) else {"readings_file": TODO}),
        **({"renewed": TODO, "rivets": TODO} if _of_metal(package) else {"timber": TODO}),
        **ship_entries(package, live),
        "paint": [_paint(scheme, item, rows.get(item.number, [])) for item, scheme in _schemes(package, live)],
        **(account_entries(made) if made is not None else {"changes": TODO, "prices": TODO}),
        "days_lost": TODO,
        "guarantee_until": TODO,
        "deferred": put_off_entries(made) if made is not None else TODO,
        "lessons": TODO,
        "photographs": TODO,
    }
    kept = {key: value for key, value in entry.items() if value not in ([], {}, "") or key == "deferred"}
    return Draft(kept, _asked(kept), surveys, tuple(not_measured(made)) if made is not None else ())


def _yard(package: Package, bid: Bid | None) -> Entry:
    name = bid.facility.name if bid is not None and bid.facility is not None else ""
    facility = next((one for one in package.facilities if one.facility == name), None)
    offered = bid.dock.kind if bid is not None and bid.dock is not None else None
    return {
        "yard": bid.yard if bid is not None else TODO,
        "place": facility.place if facility is not None and facility.place else TODO,
        "facility": name,
        "dock_type": facility.kind if facility is not None else offered or TODO,
    }


def _of_metal(package: Package) -> bool:
    hull = package.particulars.hull if package.particulars is not None else None
    return hull is None or hull.of_metal


def _in_dock(calculated: Calculated, days: ActualDays, made: RunningAccount | None) -> tuple[str, ...]:
    """Name the surveys whose readings were taken since she was docked, or else since the award."""
    since = days.docked or (made.ledger.contract.award.awarded if made is not None else None)
    return surveys_since(calculated.found(survey_readings), since) if since is not None else ()


def _schemes(package: Package, live: tuple[Item, ...]) -> list[tuple[Item, Scheme]]:
    known = {one.scheme: one for one in package.schemes}
    return [(item, known[ref.name]) for item in live for ref in item.schemes if ref.name in known]


def _paint(scheme: Scheme, item: Item, rows: list[LineAccount]) -> Entry:
    """Ask for the log of a scheme: its zone, coats and products are known, and its area where a line measured it."""
    taken = {f"{item.number}.{line.line}" for line in item.lines if _takes_area(line.takes, scheme)}
    measured = [row for row in rows if row.line.number in taken and row.measured is not None]
    area = f"{measured[0].measured:f} {measured[0].line.unit}" if len(measured) == 1 else TODO
    coats: list[Entry] = [
        {
            "coat": one.coat,
            "product": one.product,
            "batches": TODO,
            "begun": TODO,
            "ended": TODO,
            "dft": {"mean": TODO, "least": TODO, "most": TODO, "readings": TODO, "of": TODO},
        }
        for one in scheme.coats
    ]
    entry: Entry = {"zone": scheme.zone.name, "scheme": scheme.scheme, "area": area, "grade": TODO}
    return {**entry, "profile": TODO, "salts": TODO, "coats": coats}


def _takes_area(takes: object, scheme: Scheme) -> bool:
    return str(takes) == f"coating.{scheme.scheme}.area" if takes is not None else False


def _asked(value: object) -> int:
    if value is TODO:
        return 1
    if isinstance(value, dict):
        return sum(map(_asked, value.values()))
    return sum(map(_asked, value)) if isinstance(value, list) else 0
