from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.scope.best_scope import best_scope
from tenderwright.calculations.scope.further import Further, least_further, shortfall
from tenderwright.calculations.scope.works import Source, Works

from .cases import choices, sources_for, unpaid, works


@given(st.data())
def test_shortfall_as_by_trying_every_choice(data: st.DataObject) -> None:
    made = data.draw(works())
    sources = data.draw(sources_for(made))
    least = min(unpaid(made, sources, chosen) for chosen in choices(made))
    assert shortfall(made, sources) == Further(least, proven=True)
    assert (best_scope(made, sources) is None) == (least > 0)


@given(st.data())
def test_with_a_match_to_the_cent_of_each_such_source(data: st.DataObject) -> None:
    made = data.draw(works(6))
    sources = data.draw(sources_for(made, (0.0, 1.0, 0.5)))
    value = data.draw(st.integers(0, 12))
    needed = [unpaid(made, sources, chosen) for chosen in choices(made) if made.value(chosen) >= value]
    found = least_further(made, sources, (), value)
    if not needed:
        assert found is None
        return
    assert found is not None
    assert min(needed) <= found.money <= min(needed) + sum(own.match > 0 for own in sources)
    scope = best_scope(made, [*sources, Source(found.money)])
    assert scope is not None
    assert scope.value >= value


def test_must_do_items_with_what_they_need() -> None:
    # Derived: 41 000 and 1500 with 40 000 in hand, of which 5000 may pay for paint only.
    made = Works((4_100_000, 150_000, 900_000), (0, 0, 9), (True, False, False), ((0, 1),))
    sources = [Source(3_500_000), Source(500_000, frozenset({2}))]
    assert shortfall(made, sources) == Further(750_000, proven=True)
    assert best_scope(made, [*sources, Source(749_999)]) is None
    assert best_scope(made, [*sources, Source(750_000)]) is not None
    assert shortfall(made, [Source(4_250_000)]).money == 0


def test_what_cannot_be_whatever_the_money() -> None:
    never = Works((5,), (1,), (False,), (), ((0, 0),))
    assert least_further(never, [], (), 1) is None
    with pytest.raises(OutOfRange, match="exclude"):
        shortfall(never, [], [0])
