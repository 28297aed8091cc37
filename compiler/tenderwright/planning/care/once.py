"""What falls due once between dockings: anodes to renew, plates to gauge, and all that was put off."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from msgspec import Struct

from tenderwright.calculations.care.coming_out import after
from tenderwright.calculations.ship.anode_life import each_anode, seen_anodes
from tenderwright.calculations.ship.coming_out import plates_after
from tenderwright.calculations.ship.condition_of_shell import shell_forecast
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.thickness.forecast import CALL_WATCH, CALLS
from tenderwright.model.award import Award
from tenderwright.model.item import Item
from tenderwright.model.package import Package

YEAR = 365.25 * 86400.0
_YEAR = timedelta(seconds=YEAR)
NAMED = 12
"""Plates that are named; of more, their number stands."""
PREPARE = 1.5
"""Years before a docking at which its tender is begun (common practice, no source)."""


class Once(Struct, frozen=True):
    """Something that is done once."""

    name: str
    what: str
    day: date | None
    """None where no day is known."""
    waits_for: str = ""
    by: str = ""
    source: str = ""


def once(package: Package, calculated: Calculated) -> tuple[Once, ...]:
    """Give what falls due once, by its day."""
    found = [*_anodes(package, calculated), *_watched(package, calculated), *_guarantee(package), *_ahead(package)]
    return tuple(sorted(found, key=lambda one: (one.day is None, one.day or date.max, one.name)))


def put_off(package: Package, award: Award | None) -> tuple[Once, ...]:
    """Give the work that waits: put off in the last docking, left out of this one, shut afloat, or leaking."""
    return (*_deferred(package), *_left_out(package, award), *_openings(package), *_leaks(package))


def next_planned(package: Package) -> date | None:
    """Give the day of the docking after the one planned, or after the last where none is; None where nothing tells."""
    programme = package.tender.programme if package.tender is not None else None
    docked = programme.docking if programme is not None else max((one.docked for one in package.history), default=None)
    if docked is None or package.condition is None:
        return None
    return date.fromisoformat(after(str(docked), package.condition.next_docking.si / YEAR))


def _afloat_again(package: Package) -> date | None:
    programme = package.tender.programme if package.tender is not None else None
    return (
        programme.undocking if programme is not None else max((one.undocked for one in package.history), default=None)
    )


def _anodes(package: Package, calculated: Calculated) -> Iterator[Once]:
    """Yield the first renewal of anodes that do not last until the next docking."""
    each, seen = calculated.found(each_anode), calculated.found(seen_anodes)
    planned, from_ = next_planned(package), _afloat_again(package)
    if each is None or seen is None or planned is None or from_ is None:
        return
    years = (planned - from_) / _YEAR
    short = [one for one in each.anodes if one.life.whole_life is not None and one.life.whole_life < years]
    if short:
        first = min(one.life.whole_life or 0.0 for one in short)
        names = ", ".join(one.name.upper() for one in short)
        yield Once(
            "anodes-renew",
            f"Renew anodes {names}, which do not last",
            from_ + first * _YEAR,
            by="diver",
            source="anodes one by one",
        )


def _watched(package: Package, calculated: Calculated) -> Iterator[Once]:
    """Yield the gauging, half-way, of plates that are called to be watched."""
    forecast, planned, from_ = calculated.found(shell_forecast), next_planned(package), _afloat_again(package)
    if forecast is None or planned is None or from_ is None:
        return
    plates = [one.name for one in forecast.calls if one.call == CALLS[CALL_WATCH]]
    if plates:
        words = ", ".join(plates) if len(plates) <= NAMED else f"the {len(plates)} plates on watch"
        when, half = "half-way", from_ + (planned - from_) / 2
        first = calculated.found(plates_after)
        if first is not None and first.early and from_ < date.fromisoformat(first.early) < half:
            when, half = f"before {first.plate} may reach its limit", date.fromisoformat(first.early)
        what = f"Gauge from inside, {when}: {words}"
        yield Once("watch-list", what, half, by="gauging firm", source="half-way is common practice, no source")


def _guarantee(package: Package) -> Iterator[Once]:
    for docking in package.history:
        if docking.guarantee_until is not None:
            day = docking.guarantee_until - timedelta(days=30)
            yield Once(
                f"guarantee-{docking.docking}",
                f"Look at all that {docking.yard} did, before its guarantee ends on {docking.guarantee_until}",
                day,
                by="ship manager",
            )


def _ahead(package: Package) -> Iterator[Once]:
    planned = next_planned(package)
    if planned is not None:
        begin = planned - PREPARE * _YEAR
        yield Once(
            "tender",
            "Begin the tender of the next docking",
            begin,
            by="ship manager",
            source="common practice, no source",
        )
        yield Once("docking", "The next docking, as planned", planned, by="ship manager")


def _deferred(package: Package) -> Iterator[Once]:
    last = max(package.history, key=lambda one: one.docked, default=None)
    for number, one in enumerate(last.deferred if last is not None else (), start=1):
        what = ", ".join(part for part in (one.what, one.where, one.condition) if part)
        yield Once(
            f"put-off-{number}",
            what,
            None,
            one.why,
            one.by,
            f"put off in the docking of {last.docked.year}" if last else "",
        )


def _left_out(package: Package, award: Award | None) -> Iterator[Once]:
    taken = {one.name for one in award.options} if award is not None else set()
    dropped = {one.name for one in award.dropped} if award is not None else set()
    for item in package.items:
        if item.withdrawn:
            continue
        if item.number in dropped:
            yield Once(
                f"item-{item.number}",
                f"Item {item.number}, {item.title}",
                None,
                "not awarded",
                "next docking",
                "this tender",
            )
        elif item.kind == "option" and item.number not in taken:
            why = "an option that was not taken up" if award is not None else "an option: money, and a decision"
            yield Once(
                f"item-{item.number}",
                f"Item {item.number}, {item.title}",
                None,
                why,
                "this docking or the next",
                "this tender",
            )


def _openings(package: Package) -> Iterator[Once]:
    shut = [one for one in package.openings if one.state in ("blanked afloat", "seized", "unknown")]
    for one in shut:
        item = next((each.number for each in package.items if _names(each, one.opening)), "")
        waits = f"item {item} of this docking" if item else "a decision: blank it at the next docking"
        yield Once(
            f"opening-{one.opening}",
            f"{one.name}: {one.state}",
            None,
            waits,
            "watch it meanwhile",
            "openings of her shell",
        )


def _names(item: Item, opening: str) -> bool:
    return not item.withdrawn and any(one.name == opening for one in item.where.openings)


def _leaks(package: Package) -> Iterator[Once]:
    for one in package.condition.leaks if package.condition is not None else ():
        waits = f"item {one.item.name} of this docking" if one.item is not None else "the next docking"
        yield Once(
            f"leak-{one.leak}",
            f"Leak at the {one.where}: {one.state} on {one.seen}",
            None,
            waits,
            "read it with the bilges",
            "register of leaks",
        )
