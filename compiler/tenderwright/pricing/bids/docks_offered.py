"""Judges the docks that yards offer from their own figures, by the calculation that judges a facility of the list."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec.structs import replace

from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.calculations.steps.outcome import Absent, Each
from tenderwright.calculations.steps.registry import steps
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.verdict import Verdict
from tenderwright.model.bid import Bid, DockOffered
from tenderwright.model.common import Water
from tenderwright.model.facility import Facility, FacilityLimits
from tenderwright.model.package import Package
from tenderwright.pricing.bids.responsive import Fit, facility_fit, fit_of
from tenderwright.pricing.dock_figures import ALL, stated
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import written_as
from tenderwright.quantities.quantity import Quantity

_SAME = 0.005
"""The share by which a figure of a yard may differ from that of the list and still be called the same."""


def dock_fits(bids: Mapping[str, Bid], package: Package, calculated: Calculated) -> dict[str, Fit]:
    """Judge the dock of each bid: by the yard's own figures, or where it gave none by those of facilities/."""
    docks = {name: made for name, bid in bids.items() if (made := offered(name, bid, package)) is not None}
    judged = _judged(package, tuple(docks.values())) if docks else Each({})
    listed = calculated.outcome(facility_fits)
    return {
        name: _fit(bid, docks[name], judged, package) if name in docks else _without(bid, listed, package)
        for name, bid in bids.items()
    }


def offered(name: str, bid: Bid, package: Package) -> Facility | None:
    """Make a facility of the dock that a bid offers, its water and the height on the way from the list where unsaid."""
    dock = bid.dock
    if dock is None or dock.kind is None:
        return None
    known, limits = listed_as(bid, package), dock.limits or FacilityLimits()
    water = Water(density=dock.density, here=dock.here) if dock.density is not None else None
    if known is not None:
        water = water or known.water
        limits = replace(limits, air_draft=limits.air_draft or known.limits.air_draft)
    return Facility(
        facility=name,
        name=dock.name or bid.yard,
        kind=dock.kind,
        limits=limits,
        cars=dock.cars,
        hoists=dock.hoists,
        slope=dock.slope,
        certificate=dock.certificate,
        water=water,
        here=dock.here,
    )


def listed_as(bid: Bid, package: Package) -> Facility | None:
    """Give the facility of the list that a bid offers."""
    name = bid.facility.name if bid.facility is not None else ""
    return next((one for one in package.facilities if one.facility == name), None)


def _judged(package: Package, docks: tuple[Facility, ...]) -> Each[Verdict] | Absent:
    """Run what the verdict takes, and nothing else, for these docks in the place of those of the package."""
    asked = tuple(replace(step, lazy=True) for step in steps())
    return Calculated(replace(package, facilities=docks), asked).outcome(facility_fits)


def _fit(bid: Bid, dock: Facility, judged: Each[Verdict] | Absent, package: Package) -> Fit:
    fit = fit_of(dock.name, judged if isinstance(judged, Absent) else judged.outcomes[dock.facility])
    said, known = bid.dock, listed_as(bid, package)
    assert said is not None
    if said.lacking:
        fit = replace(fit, state="fail" if fit.state == "fail" else "not known", why=_joined(fit.why, _wanting(said)))
    tender = package.tender
    undocking = tender.events.get("undocking") if tender is not None else None
    ends = said.certificate.valid_until if said.certificate is not None else None
    if undocking is not None and ends is not None and ends < undocking:
        fit = replace(fit, why=_joined(fit.why, f"its certificate ends on {day(ends)}, before undocking"))
    differs = list(_differences(said, known)) if known is not None else []
    return replace(fit, differs=tuple(differs))


def _without(bid: Bid, listed: Each[Verdict] | Absent, package: Package) -> Fit:
    """Judge a dock of which the yard gave no figures, or not its kind."""
    if bid.dock is not None:
        return Fit("not known", bid.dock.name or bid.yard, why=_wanting(bid.dock))
    return facility_fit(bid, listed, package)


def _wanting(dock: DockOffered) -> str:
    return f"not given: {', '.join(dock.lacking)}"


def _joined(*words: str) -> str:
    return "; ".join(filter(None, words))


def _differences(dock: DockOffered, known: Facility) -> Iterator[str]:
    """Say where a yard's figures are not those of the list."""
    for figure in ALL:
        here = stated(dock, figure)
        there = stated(known, figure)
        if here is None or there is None or figure.form == "text":
            continue
        if isinstance(here, Quantity) and isinstance(there, Quantity):
            if abs(here.si - there.si) > _SAME * max(abs(here.si), abs(there.si)):
                yield _told(figure.label, written_as(here), written_as(there))
        elif here != there:
            yield _told(figure.label, str(here), str(there))


def _told(label: str, here: str, there: str) -> str:
    return f"{label}: {here}, and {there} in the list"
