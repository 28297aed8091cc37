from __future__ import annotations

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.renewal.known_rivets import METHOD
from tests.calculations.ship.condition.ship import marram


def test_they_are_counted_by_what_was_done_to_them() -> None:
    rivets = [{"how": how, "number": n} for how, n in (("driven cold", 30), ("ring-welded", 64), ("driven cold", 4))]
    assert METHOD.run(rivets=rivets) == {"cold": 34.0, "ring_welded": 64.0, "bolts": 0.0}
    with pytest.raises(OutOfRange):
        METHOD.run(rivets=[{"how": "driven cold", "number": -1}])


def test_those_of_the_ship_are_what_her_items_take() -> None:
    package, record, _ = marram()
    line = next(line for line in package.item_by_name["315"].lines if line.line == "c")
    assert line.takes is not None
    assert record.values[line.takes.name].si == sum(
        one.number for one in package.condition.rivets if one.how == "ring-welded"
    )
