"""Propellers on their shafts: off the centreline, kept ashore, blanked; what they reach, and what a dock must take."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.facilities import facility_drafts, facility_fits, widest
from tenderwright.calculations.ship.shafts import not_placed, placed_propellers
from tenderwright.documents.desk import Desk
from tenderwright.documents.parts.ship import particulars
from tenderwright.model.package import Package
from tenderwright.model.particulars import Shaft
from tests.calculations.ship import marram
from tests.documents.composed import composed, words
from tests.outcomes import result_of
from tests.replacing import replace

DOCK = "corve-graving-dock"


def twin(off: str, height: str, **changes: object) -> Package:
    """Give Marram with a shaft to each side in place of her own."""
    package = marram.package()
    ship = package.particulars
    assert ship is not None
    only = ship.shafts[0]
    shafts = tuple(
        replace(
            only,
            shaft=side,
            side=side,
            tube=None,
            off_centre=marram.length(off),
            height=marram.length(height),
            **changes,
        )
        for side in ("port", "starboard")
    )
    return replace(package, particulars=replace(ship, shafts=shafts))


def shafts_of(package: Package) -> tuple[Shaft, ...]:
    assert package.particulars is not None
    return package.particulars.shafts


def test_her_propeller_stands_at_her_stern_tube() -> None:
    (one,) = placed_propellers(marram.package().particulars, marram.package().openings)
    assert (one.x, one.y, one.z) == (0.5, 0.0, 1.25)
    assert one.lowest == pytest.approx(1.25 - 1.15)


def test_twin_propellers_stand_off_the_centreline_port_positive() -> None:
    package = twin("2.4 m", "1.1 m")
    placed = placed_propellers(package.particulars, package.openings)
    assert [one.y for one in placed] == [2.4, -2.4]
    assert {one.outreach for one in placed} == {2.4 + 1.15}


@pytest.mark.parametrize("state", ["propeller removed", "drawn and blanked"])
def test_what_is_kept_ashore_stands_nowhere(state: str) -> None:
    package = twin("2.4 m", "1.1 m", state=state)
    assert placed_propellers(package.particulars, package.openings) == ()


def test_a_shaft_whose_place_is_not_known_is_not_placed() -> None:
    package = twin("2.4 m", "1.1 m")
    ship = package.particulars
    assert ship is not None
    unknown = replace(ship, shafts=tuple(replace(one, off_centre=None) for one in ship.shafts))
    assert placed_propellers(unknown, ()) == ()
    assert not_placed(unknown, ()) == unknown.shafts
    assert not_placed(ship, package.openings) == ()


def test_what_a_propeller_reaches_is_not_left_out_in_silence() -> None:
    package = twin("2.4 m", "1.1 m")
    ship = package.particulars
    assert ship is not None
    unknown = replace(ship, shafts=tuple(replace(one, off_centre=None) for one in ship.shafts))
    desk = Desk(replace(package, particulars=unknown, openings=()), composed("marram").compiled.links, marram.ship())
    assert words(particulars(desk).blocks).count("no draft or breadth of hers counts it") == 2
    assert "counts it" not in words(particulars(composed("marram").desk()).blocks)


def test_propellers_below_the_keel_decide_the_draft_over_the_sill() -> None:
    package = twin("2.4 m", "0.5 m")
    found = result_of(marram.calculated(package), facility_drafts)[DOCK]
    assert found.over_sill > marram.found(facility_drafts)[DOCK].over_sill + 0.4
    assert found.over_blocks == marram.found(facility_drafts)[DOCK].over_blocks


def test_a_dock_must_be_as_wide_as_her_propellers_reach() -> None:
    package = twin("4.2 m", "1.2 m")
    assert package.particulars is not None
    assert widest(package.particulars, package.appendages, package.openings) == (2 * (4.2 + 1.15), "her propellers")
    fits = result_of(marram.calculated(package), facility_fits)[DOCK]
    beam = next(limit for limit in fits.limits if limit.name == "beam")
    usual = next(limit for limit in marram.found(facility_fits)[DOCK].limits if limit.name == "beam")
    assert beam.demand is not None
    assert usual.demand is not None
    assert beam.demand == pytest.approx(usual.demand + 10.7 - 9.1)


def test_a_ship_without_shafts_has_no_propeller() -> None:
    package = marram.package()
    assert package.particulars is not None
    bare = replace(package.particulars, shafts=())
    assert placed_propellers(bare, package.openings) == ()
    assert placed_propellers(None, package.openings) == ()
    assert [one.shaft for one in shafts_of(package)] == ["tail-shaft"]
