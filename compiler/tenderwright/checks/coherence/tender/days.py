"""The days that a package tells of, owner/ apart, each with its place."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date, timedelta

from tenderwright.checks.coherence.tender.order import Dated
from tenderwright.checks.item_place import place_in
from tenderwright.checks.places import At
from tenderwright.model.day import Day
from tenderwright.model.package import Package
from tenderwright.model.tender import Tender
from tenderwright.notices import Place

_DAY = 86400
_CENTURY = re.compile(r"(?<!\d)(20[0-9]{2})(?!\d)")
_YEAR = re.compile(r"\b((?:1[5-9]|20)[0-9]{2})\b")


def days_of(package: Package, at: At) -> Iterator[Dated]:
    """Give all days of the package."""
    if package.tender is not None:
        yield from _tender(package.tender, at)
        yield from _addenda(package.tender, at)
        yield from _items(package, package.tender, at)
    yield from _dockings(package, at)
    yield from _seen(package, at)
    yield from _certificates(package, at)
    yield from _drawings(package, at)
    yield from _questions(package, at)


def _tender(tender: Tender, at: At) -> Iterator[Dated]:
    dates, plan = tender.dates, tender.programme

    def dated(kind: str, what: str, day: date | None, *path: str, rests_on: Place | None = None) -> Iterator[Dated]:
        if day is not None:
            yield Dated(kind, what, day, at("package.yaml", *path), rests_on=rests_on)

    years = _CENTURY.findall(tender.tender.number)
    if years:
        numbered = date(int(years[0]), 1, 1)
        yield from dated("tender.year of its number", "the year in the tender's number", numbered, "tender", "number")
    yield from dated("tender.issued", "the issue of the tender", dates.issued, "dates", "issued")
    if dates.site_visit is not None:
        yield from dated("tender.site visit", "the visit aboard", dates.site_visit.date, "dates", "site_visit", "date")
    yield from dated(
        "tender.last question", "the last day for questions", dates.questions_until, "dates", "questions_until"
    )
    yield from dated("tender.closing", "the closing day", dates.closing, "dates", "closing")
    yield from dated("tender.award", "the planned award", dates.award, "dates", "award")
    if dates.valid is not None and dates.closing is not None:
        stands = dates.closing + timedelta(days=int(dates.valid.si / _DAY))
        closing = at("package.yaml", "dates", "closing")
        what = "the last day of validity"
        yield from dated("tender.last day of validity", what, stands, "dates", "valid", rests_on=closing)
    for event in ("arrival", "docking", "undocking", "redelivery"):
        yield from dated(f"programme.{event}", event, getattr(plan, event, None), "programme", event)


def _addenda(tender: Tender, at: At) -> Iterator[Dated]:
    before: date | None = None
    for index, addendum in enumerate(tender.addenda):
        place, of = at("package.yaml", "addenda", index, "date"), str(index)
        yield Dated("addendum.issued", f"addendum {addendum.number}", addendum.date, place, of)
        if before is not None:
            earlier = at("package.yaml", "addenda", index - 1, "date")
            yield Dated("addendum.the one before", "the addendum before it", before, earlier, of)
        before = addendum.date


def _event(day: Day, at: At) -> Place | None:
    """Find the day of the programme from which a day is counted."""
    if not day.event:
        return None
    return at("package.yaml", "dates" if day.event == "award" else "programme", day.event)


def _items(package: Package, tender: Tender, at: At) -> Iterator[Dated]:
    for item in package.items:
        if item.withdrawn:
            continue
        last = item.option_until
        day = last.on(tender.events) if last is not None else None
        if last is not None and day is not None:
            what, place = f"the last day of option {item.number}", place_in(item, "option_until")
            yield Dated("option.last day", what, day, place, rests_on=_event(last, at))
        for index, furnished in enumerate(item.owner_furnished):
            comes = furnished.delivered
            day = comes.on(tender.events) if comes is not None else None
            if comes is not None and day is not None:
                what, place = f"`{furnished.what}`", place_in(item, "owner_furnished", index, "delivered")
                yield Dated("furnished.delivered", what, day, place, rests_on=_event(comes, at))


def _dockings(package: Package, at: At) -> Iterator[Dated]:
    if package.particulars is not None and package.particulars.built is not None:
        place = at("vessel/particulars.yaml", "built")
        yield Dated("ship.built", "her building", date(package.particulars.built, 1, 1), place)
    for docking in package.history:
        path, of = docking.here.path, docking.docking
        yield Dated("docking.docked", "docked", docking.docked, at(path, "docked"), of)
        yield Dated("docking.undocked", "undocked", docking.undocked, at(path, "undocked"), of)
        if docking.guarantee_until is not None:
            place = at(path, "guarantee_until")
            yield Dated("docking.guaranteed", "the end of the guarantee", docking.guarantee_until, place, of)


def _seen(package: Package, at: At) -> Iterator[Dated]:
    """Give the days on which something was seen or measured of the ship."""
    seen = (*_seen_of_tanks(package, at), *_seen_afloat(package, at), *_seen_of_condition(package, at))
    for what, day, place in seen:
        yield Dated("seen.on", what, day, place)


def _seen_of_tanks(package: Package, at: At) -> Iterator[tuple[str, date, Place]]:
    for index, tank in enumerate(package.tanks):
        if tank.contents.read is not None:
            place = at("vessel/tanks.yaml", "tanks", index, "contents", "read")
            yield f"the sounding of {tank.tank}", tank.contents.read, place


def _seen_afloat(package: Package, at: At) -> Iterator[tuple[str, date, Place]]:
    observed = package.lightship.observed if package.lightship is not None else None
    if observed is not None:
        yield "the reading of the drafts", observed.read, at("vessel/lightship.yaml", "observed", "read")
    for index, anode in enumerate(package.anodes):
        if anode.seen is not None:
            yield f"the look at anode {anode.anode}", anode.seen, at("vessel/anodes.yaml", "anodes", index, "seen")


def _seen_of_condition(package: Package, at: At) -> Iterator[tuple[str, date, Place]]:
    condition, path = package.condition, "vessel/condition.yaml"
    if condition is None:
        return
    for index, renewed in enumerate(condition.renewed):
        yield f"`{renewed.what}`", renewed.on, at(path, "renewed", index, "on")
    for index, leak in enumerate(condition.leaks):
        yield f"what is said of the leak at {leak.where}", leak.seen, at(path, "leaks", index, "seen")
        for number, look in enumerate(leak.history):
            yield f"a look at the leak at {leak.where}", look.on, at(path, "leaks", index, "history", number, "on")
    for index, clearance in enumerate(condition.clearances):
        for number, measured in enumerate(clearance.found):
            place = at(path, "clearances", index, "found", number, "on")
            yield f"the measuring of {clearance.what}", measured.on, place


def _certificates(package: Package, at: At) -> Iterator[Dated]:
    for facility in package.facilities:
        if facility.certificate is not None and facility.certificate.valid_until is not None:
            what, place = f"the certificate of {facility.name}", at(facility.here.path, "certificate", "valid_until")
            yield Dated("certificate.last day", what, facility.certificate.valid_until, place)


def _drawings(package: Package, at: At) -> Iterator[Dated]:
    for index, drawing in enumerate(package.drawings):
        name = drawing.drawing
        if drawing.date is not None:
            place = at("drawings.yaml", "drawings", index, "date")
            yield Dated("drawing.dated", f"the date of {name}", drawing.date, place, name)
        years = [int(year) for year in _YEAR.findall(drawing.title)]
        if years:
            place = at("drawings.yaml", "drawings", index, "title")
            yield Dated(
                "drawing.year of its title", f"the year in the title of {name}", date(max(years), 1, 1), place, name
            )
        if drawing.verified != "none":
            place = at("drawings.yaml", "drawings", index, "verified")
            yield Dated(
                "drawing.verified", f"the verifying of {name}", date.fromisoformat(drawing.verified), place, name
            )


def _questions(package: Package, at: At) -> Iterator[Dated]:
    tender = package.tender
    addenda = {one.number: (index, one.date) for index, one in enumerate(tender.addenda)} if tender is not None else {}
    for question in package.questions:
        path, of = question.here.path, question.number
        yield Dated("question.asked", f"question {of}", question.asked, at(path, "asked"), of)
        if question.answered is not None:
            place = at(path, "answered")
            yield Dated("question.answered", f"the answer to question {of}", question.answered, place, of)
        if question.addendum in addenda:
            index, issued = addenda[question.addendum]
            place = at("package.yaml", "addenda", index, "date")
            yield Dated("question.addendum", f"addendum {question.addendum}", issued, place, of)
