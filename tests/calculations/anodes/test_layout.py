from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.layout import METHOD, Taken, anode_layout
from tenderwright.calculations.method import OutOfRange


def test_even_places_on_a_clear_strip() -> None:
    found = anode_layout(0.0, 40.0, 4, 0.4)
    assert found.centres == pytest.approx((5.0, 15.0, 25.0, 35.0))
    assert found.moved == (False,) * 4
    assert found.missing == 0


def test_moves_no_further_than_it_must() -> None:
    found = anode_layout(0.0, 40.0, 4, 0.4, [Taken(14.0, 15.2, "sea chest")], clearance=0.3)
    assert found.centres == pytest.approx((5.0, 15.7, 25.0, 35.0))
    assert found.moved == (False, True, False, False)


def test_says_how_many_found_no_room() -> None:
    found = anode_layout(0.0, 2.0, 5, 0.5, clearance=0.0)
    assert len(found.centres) == 4
    assert found.missing == 1
    assert anode_layout(0.0, 2.0, 3, 0.5, [Taken(-1.0, 3.0, "blocks")]).missing == 3


taken = st.lists(
    st.tuples(st.floats(0, 40), st.floats(0, 3)).map(lambda at: Taken(at[0], at[0] + at[1], "block")), max_size=8
)


@given(taken, st.integers(0, 14), st.floats(0.2, 0.8), st.floats(0, 0.5), st.floats(0, 1.5))
def test_all_lie_clear_and_apart(blocks: list[Taken], number: int, length: float, clear: float, gap: float) -> None:
    found = anode_layout(0.0, 40.0, number, length, blocks, clear, gap)
    assert len(found.centres) + found.missing == number
    for before, after in zip(found.centres, found.centres[1:], strict=False):
        assert after - before >= length + gap - 1e-6
    for centre in found.centres:
        assert 0.5 * length - 1e-6 <= centre <= 40.0 - 0.5 * length + 1e-6
        for block in blocks:
            low, high = centre - 0.5 * length - clear, centre + 0.5 * length + clear
            assert high <= block.start + 1e-6 or low >= block.end - 1e-6


@given(taken, st.integers(1, 8))
def test_none_is_left_out_while_there_is_room_for_all_in_one_gap(blocks: list[Taken], number: int) -> None:
    room = number * 0.5
    edges = [0.0, *sorted({min(b.end + 0.3, 40.0) for b in blocks})]
    clear = any(
        edge + room <= 40.0 and all(b.end + 0.3 <= edge or b.start - 0.3 >= edge + room for b in blocks)
        for edge in edges
    )
    if clear:
        assert anode_layout(0.0, 40.0, number, 0.5, blocks, 0.3).missing == 0


def test_refuses_what_is_no_strip() -> None:
    with pytest.raises(OutOfRange, match="strip"):
        anode_layout(5.0, 5.0, 1, 0.4)
    with pytest.raises(OutOfRange, match="number"):
        anode_layout(0.0, 5.0, -1, 0.4)
    with pytest.raises(OutOfRange, match="length"):
        anode_layout(0.0, 5.0, 1, 0.0)
    with pytest.raises(OutOfRange, match="sea chest"):
        Taken(2.0, 1.0, "sea chest")


def test_method_gives_its_outputs() -> None:
    taken = [{"start": 14.0, "end": 15.2, "what": "sea chest"}]
    outputs = METHOD.run(start=0.0, end=40.0, number=4, length=0.4, taken=taken)
    assert outputs == {"centres": pytest.approx([5.0, 15.7, 25.0, 35.0]), "missing": 0.0}
