"""When to stop stands on the dock sheet, from the same figures as the tables; nothing is promised."""

from __future__ import annotations

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.docking_condition import docking_tank_states
from tenderwright.calculations.ship.landing import landing
from tenderwright.calculations.ship.stops import floating_stops
from tenderwright.calculations.ship.trim import trim_plan
from tenderwright.calculations.ship.undocking import lifting_off, undocking_tank_states
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Table, plain
from tenderwright.documents.parts.docking_condition import condition
from tenderwright.documents.parts.landing import landing_limits
from tenderwright.documents.parts.stops import floating_off_stops, landing_stops
from tenderwright.documents.parts.undocking import dockside_tanks
from tests.documents.composed import composed, rows, words
from tests.replacing import replace


def desk(**plan: object) -> Desk:
    """Lay the desk for the demonstration with another docking plan."""
    compiled = composed("marram").compiled
    package = replace(compiled.package, docking_plan=replace(compiled.package.docking_plan, **plan))
    return Desk(package, compiled.links, calculate(package))


def table(blocks: list) -> Table:
    (found,) = (one for one in blocks if isinstance(one, Table))
    return found


def test_landing_stops_at_list_trim_and_where_side_blocks_bear() -> None:
    found, ours = composed("marram").found(landing), composed("marram").desk()
    stops = table(landing_stops(ours))
    before, between, bear = (row[0] for row in rows(stops))
    assert "list above 0.5°" in before
    assert "trim outside 0.20 m to 0.40 m by the stern" in before
    one = found.exact.settling
    assert f"From {one.water_at_touch:.2f} m" in between
    assert f"At {one.water_at_touch - one.fall - found.bear_within:.2f} m" in bear
    assert "on the order of the dockmaster" in words(stops)
    assert "side blocks" in bear


def test_floating_stops_at_openings_shores_and_the_last_block() -> None:
    levels, last = composed("marram").found(floating_stops), composed("marram").found(lifting_off)
    stops = [row[0] for row in rows(table(floating_off_stops(composed("marram").desk())))]
    assert f"{levels.covered:.2f} m, the last opening" in stops[0]
    assert last.bearing is not None
    assert levels.shores == pytest.approx(last.settling.water_at_touch - last.bearing.fall)
    assert levels.shores < levels.last_block < levels.afloat
    assert f"Up to {levels.shores:.2f} m" in stops[1]
    # The highest opening under her waterline, its centre and half its bore over the underside of the bar keel.
    package = composed("marram").compiled.package
    opening = next(one for one in package.openings if one.name == levels.last_opening)
    assert levels.covered == pytest.approx(opening.height.si + opening.bore.si / 2 + 0.18)


def test_without_somebody_who_orders_or_a_least_height_the_sheet_says_what_is_lacking() -> None:
    bare = desk(ordered_by="", least_gm=None)
    bare = replace(
        bare,
        package=replace(
            bare.package,
            lightship=replace(bare.package.lightship, docking=replace(bare.package.lightship.docking, least_gm=None)),
        ),
    )
    bare = Desk(bare.package, bare.links, calculate(bare.package))
    assert "somebody not yet named in the docking plan" in words(table(landing_stops(bare)))
    limits = dict(landing_limits(bare))
    assert "it needs the metacentric height asked for" in words(limits["Side blocks and shores bear"])
    assert all("shores" not in row[0] for row in rows(table(floating_off_stops(bare))))


def test_a_trim_that_cannot_be_reached_is_not_said_to_be_there() -> None:
    compiled = composed("marram").compiled
    tanks = tuple(replace(one, movable=False) for one in compiled.package.tanks)
    package = replace(compiled.package, tanks=tanks)
    calculated = calculate(package)
    plan = calculated.found(trim_plan)
    assert plan is not None
    assert not plan.feasible
    assert not plan.transfers
    text = words(condition(Desk(package, compiled.links, calculated)))
    assert "cannot be reached" in text
    assert "Without moving any liquid she is calculated to float" in text
    assert "wanted are" not in text
    there = words(condition(composed("marram").desk()))
    assert "With the movement below she is calculated to float with a trim of 0.30 m" in there
    assert "Subject to soundings" in there
    assert "cannot be reached" not in there


def test_what_a_pipe_cannot_show_is_said_beside_the_tanks_that_are_to_be_found_dry() -> None:
    states = composed("marram").found(undocking_tank_states)
    recess = states["shaft-recess"]
    assert recess.mass == 0
    assert recess.unseen > 1.0
    assert all(one.unseen == 0 for one in states.values() if one.sounding)
    (tanks,) = dockside_tanks(composed("marram").desk())
    said = plain(tanks.note)
    assert "as much as this may yet lie below its foot" in said
    docked = composed("marram").found(docking_tank_states)["shaft-recess"]
    assert f"Shaft recess {max(recess.unseen, docked.unseen):.2f}" in said
