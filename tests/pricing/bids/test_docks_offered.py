"""The docks that yards offer: judged from their own figures by the calculation that judges those of the list."""

from __future__ import annotations

from datetime import date

import pytest

from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.linking.evaluation import bid_name
from tenderwright.model.bid import Bid, DockOffered
from tenderwright.model.docking_plan import CalculatedLoads
from tenderwright.model.facility import FacilityLimits
from tenderwright.pipeline import Compiled, compile_owner, compile_package, read
from tenderwright.pricing.bids.docks_offered import dock_fits
from tenderwright.pricing.bids.responsive import Fit
from tenderwright.quantities.quantity import parse_quantity
from tests.pipeline.packages import MARRAM
from tests.replacing import replace

LIFT, CORVE = "sallow-haven-shiplift-company", "corve-harbour-dock-trust"


@pytest.fixture(scope="module")
def marram() -> tuple[Compiled, dict[str, Bid]]:
    files = read(MARRAM)
    compiled = compile_package(files)
    papers = compile_owner(files, compiled).papers
    return compiled, {bid_name(path): bid for path, bid in papers.bids.items()}


def fit(marram: tuple[Compiled, dict[str, Bid]], name: str, dock: DockOffered | None, **more: object) -> Fit:
    compiled, bids = marram
    bid = replace(bids[name], dock=dock, **more)  # type: ignore[arg-type]
    return dock_fits({name: bid}, compiled.package, compiled.calculated)[name]


def dock_of(marram: tuple[Compiled, dict[str, Bid]], name: str) -> DockOffered:
    dock = marram[1][name].dock
    assert dock is not None
    return dock


def limits_of(dock: DockOffered) -> FacilityLimits:
    assert dock.limits is not None
    return dock.limits


def test_the_same_figures_are_judged_as_those_of_the_list(marram: tuple[Compiled, dict[str, Bid]]) -> None:
    compiled, bids = marram
    listed = compiled.calculated.each(facility_fits)
    for name, found in dock_fits(bids, compiled.package, compiled.calculated).items():
        facility, dock = bids[name].facility, bids[name].dock
        assert facility is not None
        assert dock is not None
        assert (found.state, found.facility) == (listed[facility.name].words, dock.name)
        assert (found.deciding, found.differs) == (listed[facility.name].governs.name, ())


def test_a_lift_that_is_too_small_does_not_take_her(marram: tuple[Compiled, dict[str, Bid]]) -> None:
    dock = dock_of(marram, LIFT)
    small = replace(dock, limits=replace(limits_of(dock), lift=parse_quantity("500 t", "mass")))
    found = fit(marram, LIFT, small)
    assert found.state == "fail"
    assert "lift" in found.why
    assert found.differs == ("Greatest weight lifted: 500 t, and 1500 t in the list",)


def test_what_the_yard_left_out_is_named_and_keeps_the_dock_from_being_known(
    marram: tuple[Compiled, dict[str, Bid]],
) -> None:
    compiled, bids = marram
    plan = compiled.package.docking_plan
    assert plan is not None
    # Her naval architect's own line load in the place of an estimate, so that a dock can be known to take her.
    loads = CalculatedLoads(
        pressure=parse_quantity("1 MPa", "pressure"),
        line_load=parse_quantity("20 t/m", "line_load"),
        source="naval architect's block loads, 2027-02-12",
        here=plan.here,
    )
    sure = replace(compiled.package, docking_plan=replace(plan, calculated_loads=loads))
    dock = dock_of(marram, CORVE)
    for lacking, state, why in (((), "pass", ""), (("Depth of water over the sill",), "not known", "not given: ")):
        bid = replace(bids[CORVE], dock=replace(dock, lacking=lacking))
        found = dock_fits({CORVE: bid}, sure, compiled.calculated)[CORVE]
        assert (found.state, found.why) == (state, why + ", ".join(lacking))


def test_a_certificate_that_ends_before_undocking_is_told_of(marram: tuple[Compiled, dict[str, Bid]]) -> None:
    dock = dock_of(marram, LIFT)
    assert dock.certificate is not None
    ended = replace(dock, certificate=replace(dock.certificate, valid_until=date(2027, 4, 30)))
    assert "its certificate ends on 30 April 2027, before undocking" in fit(marram, LIFT, ended).why
    assert "certificate" not in fit(marram, LIFT, dock).why


def test_without_its_kind_nothing_is_judged(marram: tuple[Compiled, dict[str, Bid]]) -> None:
    dock = replace(dock_of(marram, CORVE), kind=None, lacking=("Kind of dock",))
    found = fit(marram, CORVE, dock)
    assert (found.state, found.deciding, found.why) == ("not known", "", "not given: Kind of dock")


def test_a_bid_without_figures_is_judged_by_the_list(marram: tuple[Compiled, dict[str, Bid]]) -> None:
    assert fit(marram, CORVE, None).facility == "Corve Harbour Dock Trust"
    assert fit(marram, CORVE, None, facility=None) == Fit("not known")


def test_a_dock_that_is_not_of_the_list_is_judged_all_the_same(marram: tuple[Compiled, dict[str, Bid]]) -> None:
    dock = dock_of(marram, CORVE)
    narrow = replace(dock, limits=replace(limits_of(dock), beam=parse_quantity("8 m", "length")))
    found = fit(marram, CORVE, narrow, facility=None)
    assert (found.state, found.deciding, found.differs) == ("fail", "beam", ())
