from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.renewal.rivets import METHOD, InsertJoints, Line, insert_rivets, rivets_in

SEAM = Line(1.6, 2, 0.08, 0.019)
JOINTS = InsertJoints(
    seams=((SEAM,), (SEAM,)),
    frames=(Line(1.3, 1, 0.13, 0.019),) * 3,
    butts=(Line(1.2, 3, 0.08, 0.022),),
)
"""Two seams of 1.6 m (2 rows of 20), three frames of 1.3 m (10 each), one butt of 1.2 m (3 rows of 15)."""


def test_count_by_hand() -> None:
    found = insert_rivets(JOINTS)
    assert found.removed == found.renewed == 2 * 40 + 3 * 10 + 45
    assert found.near_welds == 0
    assert [found.seam, found.butt, found.joint] == pytest.approx([3.2, 1.2, 4.4])
    assert found.by_diameter == ((0.019, 110), (0.022, 45))


def test_new_riveted_ends_are_driven_and_tested_and_none_is_removed_for_them() -> None:
    """Two straps of 1.3 m with two rows on either side: 4 rows of 17."""
    ends = InsertJoints(JOINTS.seams, JOINTS.frames, JOINTS.butts, (Line(1.3, 4, 0.08, 0.019),) * 2)
    found = insert_rivets(ends)
    assert found.removed == 155
    assert found.renewed == 155 + 2 * 4 * 17
    assert [found.butt, found.end_weld, found.joint] == pytest.approx([1.2 + 2.6, 0.0, 3.2 + 3.8])


def test_welded_ends_leave_rivets_near_the_weld_and_the_seams_are_driven() -> None:
    # US Navy manual 14119: 6 in from a riveted joint; at a pitch of 80 mm that is two rivets in each of two rows.
    found = insert_rivets(InsertJoints(JOINTS.seams, JOINTS.frames, JOINTS.butts, weld=2.6))
    assert found.renewed == 155
    assert found.near_welds == 2 * 2 * (2 * 2)
    assert found.joint == pytest.approx(3.2 + 1.2 + 2.6)


def test_welded_edges_drive_frames_only() -> None:
    found = insert_rivets(InsertJoints(JOINTS.seams, JOINTS.frames, JOINTS.butts, weld=2.6), "welded edges")
    assert (found.removed, found.renewed, found.near_welds) == (155, 30, 16)
    with pytest.raises(OutOfRange, match="ends welded"):
        insert_rivets(InsertJoints((), (), ends=(SEAM,)), "welded edges")


@given(st.floats(0, 20), st.floats(0, 20), st.floats(0.03, 0.3), st.integers(1, 4))
def test_rivets_of_two_lengths_are_no_fewer_than_of_both_together(a: float, b: float, pitch: float, rows: int) -> None:
    together = rivets_in(a + b, pitch, rows)
    apart = rivets_in(a, pitch, rows) + rivets_in(b, pitch, rows)
    assert together <= apart <= together + rows


def test_refuses_what_is_no_joint() -> None:
    with pytest.raises(OutOfRange, match="pitch"):
        Line(1.0, 1, 0.0, 0.019)
    with pytest.raises(OutOfRange, match="rows"):
        Line(1.0, -1, 0.1, 0.019)
    with pytest.raises(OutOfRange, match="joint"):
        rivets_in(-1.0, 0.1, 1)
    with pytest.raises(OutOfRange, match="clearance"):
        insert_rivets(JOINTS, clearance=-1.0)


SIZES = {"length": 1.6, "breadth": 1.3, "diameter": 0.019, "seam_pitch": 0.08, "frame_pitch": 0.13}
MORE = {"seams": 2, "frames": 3, "seam_rows": 2, "butt_rows": 3, "butts": [1.2]}


def test_method_gives_its_outputs_for_each_way_to_join_the_ends() -> None:
    outputs = METHOD.run(**SIZES, **MORE, ends="weld")
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert (outputs["removed"], outputs["renewed"], outputs["end_weld"]) == (155.0, 155.0, pytest.approx(2.6))
    assert METHOD.run(**SIZES, **MORE, ends="riveted lap")["renewed"] == 155.0 + 2 * 3 * 17
    assert METHOD.run(**SIZES, **MORE, ends="riveted strap")["renewed"] == 155.0 + 2 * 6 * 17
    assert METHOD.run(**SIZES, **MORE) == METHOD.run(**SIZES, **MORE, ends="riveted lap")


def test_pitches_in_diameters() -> None:
    # Rules of shell riveting (from memory): 4 to 4.5 d watertight, 7 d at frames: 90 mm and 140 mm for 20 mm.
    sizes = {"length": 0.9, "breadth": 1.4, "diameter": 0.020, "seams": 1, "frames": 1, "seam_rows": 1, "butt_rows": 2}
    assert METHOD.run(**sizes)["removed"] == 10.0 + 10.0


@pytest.mark.parametrize("crossed", [{"seams": -1}, {"frames": -1}, {"seams": 10**15}, {"frames": 1001}])
def test_an_insert_crosses_no_more_than_a_hull_has(crossed: dict[str, int]) -> None:
    given = {"length": 1.68, "breadth": 1.15, "diameter": 0.019, "seam_rows": 2, "butt_rows": 2}
    with pytest.raises(OutOfRange, match="crosses from none to 1000"):
        METHOD.run(**given, **{"seams": 2, "frames": 4} | crossed)
