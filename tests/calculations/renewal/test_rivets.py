from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.renewal.rivets import METHOD, Riveting, default_riveting, insert_rivets, rivets_in

RIVETING = Riveting(seam_pitch=0.08, seam_rows=2, butt_rows=3, frame_pitch=0.13)


def test_pitches_in_diameters() -> None:
    # Rules of shell riveting (from memory): 4 to 4.5 d watertight, 7 d at frames.
    usual = default_riveting(0.020, 2, 2)
    assert [usual.seam_pitch, usual.frame_pitch] == pytest.approx([0.09, 0.14])


def test_count_by_hand() -> None:
    # Derived: two seams of 1.6 m (2 rows of 20), three frames of 1.3 m (10 each), one butt of 1.2 m (3 rows of 15).
    found = insert_rivets(1.6, 1.3, 2, 3, [1.2], RIVETING)
    assert found.removed == found.renewed == 2 * 40 + 3 * 10 + 45
    assert found.near_welds == 0
    assert [found.seam, found.butt] == pytest.approx([3.2, 1.2])


def test_welded_edges_drive_frames_only_and_leave_rivets_near_the_weld() -> None:
    # US Navy manual 14119: 6 in from a riveted joint; at a pitch of 80 mm that is two rivets in each of two rows.
    found = insert_rivets(1.6, 1.3, 2, 3, [1.2], RIVETING, "welded edges")
    assert found.removed == 155
    assert found.renewed == 30
    assert found.near_welds == 2 * 2 * (2 * 2)


@given(st.floats(0, 20), st.floats(0, 20), st.floats(0.03, 0.3), st.integers(1, 4))
def test_rivets_of_two_lengths_are_no_fewer_than_of_both_together(a: float, b: float, pitch: float, rows: int) -> None:
    together = rivets_in(a + b, pitch, rows)
    apart = rivets_in(a, pitch, rows) + rivets_in(b, pitch, rows)
    assert together <= apart <= together + rows


def test_refuses_what_is_no_joint() -> None:
    with pytest.raises(OutOfRange, match="pitch"):
        Riveting(0.0, 1, 1, 0.1)
    with pytest.raises(OutOfRange, match="rows"):
        Riveting(0.1, -1, 1, 0.1)
    with pytest.raises(OutOfRange, match="joint"):
        rivets_in(-1.0, 0.1, 1)
    with pytest.raises(OutOfRange, match="seams or frames"):
        insert_rivets(1.0, 1.0, -1, 2, [], RIVETING)


def test_method_gives_its_outputs() -> None:
    sizes = {"length": 1.6, "breadth": 1.3, "diameter": 0.019, "seam_pitch": 0.08, "frame_pitch": 0.13}
    outputs = METHOD.run(**sizes, seams=2, frames=3, seam_rows=2, butt_rows=3, butts=[1.2])
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["removed"] == 155.0
