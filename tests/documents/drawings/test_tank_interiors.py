"""Inside the tanks: every member is listed, and the hatching grows with its loss."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.members import members_found
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.steps.outcome import Lacking
from tenderwright.documents.drawings.shell_expansion import CLASSES
from tenderwright.documents.drawings.tank_interiors import hatch_of, tank_interiors

from .ship import LACKING, altered, figure, marram, of_kind

DRAWN = "tank-interiors"


def test_every_member_is_listed_with_its_worst_reading() -> None:
    _, calculated = marram()
    listed = of_kind(figure(DRAWN), "member")
    for one in calculated.found(members_found):
        assert one.member in listed
        assert f"{1e3 * one.found.least:.1f} of {1e3 * one.found.as_built:.1f}" in listed


def test_spaces_that_lie_one_behind_the_other_share_a_place() -> None:
    package, calculated = marram()
    gauged = {one.tank for one in calculated.found(members_found)}
    order = [tank.tank for tank in package.tanks if tank.tank in gauged]
    pair = f"{order.index('db-1-port') + 1}, {order.index('db-1-starboard') + 1}"
    assert pair in of_kind(figure(DRAWN), "number")


@pytest.mark.parametrize(("share", "of"), [(0.4, None), (0.5, None), (0.6, 0), (0.75, 0), (0.8, 1), (1.0, 1), (1.1, 2)])
def test_the_hatching_grows_with_the_share_of_the_limit(share: float, of: int | None) -> None:
    assert hatch_of(share) is (None if of is None else CLASSES[of][1])


def test_none_is_drawn_without_readings_of_members() -> None:
    for step in (members_found, hull_outline):
        assert tank_interiors(marram()[0], altered({step: LACKING})) == LACKING
    assert isinstance(tank_interiors(marram()[0], altered({members_found: ()})), Lacking)
