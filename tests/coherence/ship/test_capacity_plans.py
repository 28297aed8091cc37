"""What a capacity plan gives of a tank is held against her dimensions; nothing is told of a sound one."""

from __future__ import annotations

from functools import cache

import pytest
from msgspec.structs import replace

from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.checks.coherence.ship.tanks import check
from tenderwright.model.tank import Tank
from tenderwright.notices import Notice
from tenderwright.pipeline import Compiled, compile_package, read
from tenderwright.quantities.position import parse_position
from tenderwright.quantities.quantity import parse_quantity
from tests.packages.test_kestrel_bank import PACKAGE


@cache
def _kestrel_bank() -> Compiled:
    return compile_package(read(PACKAGE))


def _told(name: str, **changes: str) -> list[Notice]:
    """Give what is told of her with the plan of one tank changed."""
    package = _kestrel_bank().package
    assert package.frames is not None
    kinds = {"height": "length", "off_centre": "length", "breadth": "length", "inertia": "second_moment"}
    kinds |= {"moment": "moment", "capacity": "volume"}
    parsed = {
        key: parse_position(text, package.frames) if key in ("at", "from_", "to") else parse_quantity(text, kinds[key])
        for key, text in changes.items()
    }

    def changed(tank: Tank) -> Tank:
        if tank.tank != name or tank.plan is None:
            return tank
        capacity = parsed.pop("capacity", tank.capacity)
        return replace(tank, plan=replace(tank.plan, **parsed), capacity=capacity)

    tanks = tuple(changed(tank) for tank in package.tanks)
    return list(check(Ship(replace(package, tanks=tanks), None, _kestrel_bank().calculated)))


def test_nothing_is_told_of_her_own() -> None:
    assert _told("db-3") == []
    assert _told("db-3", from_="Fr 68", to="Fr 100") == []


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"at": "Fr 84 + 320 ft"}, "long over all"),
        ({"at": "Fr 48"}, "is not between"),
        ({"off_centre": "26 ft"}, "from the centreline"),
        ({"breadth": "64 ft"}, "breadth of"),
        ({"height": "61 ft"}, "height of the centre"),
        ({"inertia": "9000 m4"}, "free surface of"),
        ({"moment": "145000 ft*long_ton"}, "free-surface moment"),
        ({"capacity": "2150000 US_gal"}, "capacity of"),
    ],
)
def test_a_gross_mistake_in_a_plan_is_told(changes: dict[str, str], words: str) -> None:
    (told,) = _told("db-3", **changes)
    assert told.code == "tank-contradicts"
    assert words in told.message
