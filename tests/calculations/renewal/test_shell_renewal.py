from __future__ import annotations

import math
from typing import Any

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.plain import plain
from tenderwright.calculations.renewal.found_later import METHOD as FOUND_LATER
from tenderwright.calculations.renewal.found_later import found_later
from tenderwright.calculations.renewal.joints import Joint, joint_at
from tenderwright.calculations.renewal.shell_plan import shell_from_input
from tenderwright.calculations.renewal.shell_renewal import METHOD, plan_renewal

SHELL: dict[str, Any] = {
    "frames": [24.0, 24.6, 25.2, 25.8, 26.4],
    "seams": [[0.1] * 4, [1.1] * 4, [2.1] * 4],
    "strakes": [
        {"strake": "A", "thickness": [0.011] * 4, "butts": []},
        {"strake": "B", "thickness": [0.009, 0.009, 0.010, 0.0], "butts": [25.2]},
    ],
}
RIVETS: dict[str, Any] = {"rivet": 0.020, "seam_rows": 1, "butt_rows": 2}


def bad(strake: str, at: float, side: str = "port", **item: str) -> dict[str, Any]:
    return {"strake": strake, "side": side, "at": at, **item}


def test_one_bad_space_is_one_insert_of_its_plate() -> None:
    """0.600 by 1.000 m of 11 mm; two seams of 0.6 m at 90 mm, two frames of 1.0 m at 140 mm, and welded ends."""
    found = METHOD.run(shell=SHELL, bad=[bad("A", 24.9)], mill_tolerance=0.0, ends="weld", **RIVETS)
    area = 0.6 - (4 - math.pi) * 0.055**2
    assert found["inserts"] == 1.0
    assert found["area"] == pytest.approx(area)
    assert found["mass"] == pytest.approx(area * 0.011 * 7850)
    assert found["rivets"] == 2 * math.ceil(600 / 90) + 2 * math.ceil(1000 / 140)
    assert found["joint"] == pytest.approx(1.2 + 2.0)


def test_each_seam_is_riveted_as_its_strake_says_and_changes_where_it_does() -> None:
    """Seam A has two rows forward of 24.6 m: 7 rivets at 90 mm abaft it, and two rows of 7 forward; B has one."""
    joints = [{"joint": "seam", "strakes": ["A"], "kind": "lap", "rows": 2, "rivet": 0.020, "from": 24.6}]
    spaces = [bad("A", 24.3), bad("A", 24.9)]
    usual = METHOD.run(shell=SHELL, bad=spaces, ends="weld", **RIVETS)
    found = METHOD.run(shell=SHELL, bad=spaces, ends="weld", joints=joints, **RIVETS)
    assert usual["rivets"] == 2 * 14 + 3 * 8
    assert found["rivets"] == 14 + (7 + 2 * 7) + 3 * 8
    assert found["seam"] == usual["seam"]


def test_an_end_on_an_existing_butt_is_no_new_butt_and_a_strap_has_rows_on_both_sides() -> None:
    """B has a butt at 25.2 m: an insert from 24.6 m to it has one new end; under a strap that is twice the rows."""
    lap = plan_renewal(SHELL, [bad("B", 24.9)], ends="riveted lap", **RIVETS).inserts[0].made.rivets
    strap = plan_renewal(SHELL, [bad("B", 24.9)], ends="riveted strap", **RIVETS).inserts[0].made.rivets
    row = math.ceil(1000 / 90)
    assert lap.removed == strap.removed == 2 * 7 + 2 * 8 + 2 * row
    assert (lap.renewed - lap.removed, strap.renewed - strap.removed) == (2 * row, 4 * row)
    assert lap.butt == strap.butt == pytest.approx(2.0)
    straps = [{"joint": "butt", "strakes": ["B"], "kind": "strap", "rows": 3, "rivet": 0.022, "pitch": 0.1}]
    found = plan_renewal(SHELL, [bad("B", 24.9)], joints=straps, ends="weld", **RIVETS).inserts[0].made.rivets
    assert found.removed == 2 * 7 + 2 * 8 + 2 * 3 * 10
    assert found.by_diameter == ((0.020, 30), (0.022, 60))


def test_the_seam_to_the_keel_is_the_lower_seam_of_the_lowest_strake() -> None:
    joints = [{"joint": "lower seam", "strakes": ["A"], "kind": "lap", "rows": 2, "rivet": 0.022, "pitch": 0.1}]
    found = plan_renewal(SHELL, [bad("A", 24.3)], joints=joints, ends="weld", **RIVETS).inserts[0].made.rivets
    assert found.by_diameter == ((0.020, 7 + 2 * 8), (0.022, 2 * 6))


def test_an_insert_over_a_butt_opens_it_and_is_as_thick_as_its_thickest_plate() -> None:
    plan = plan_renewal(SHELL, [bad("B", 24.9), bad("B", 25.5)], **RIVETS)
    (one,) = plan.inserts
    assert (one.thickness, plan.total.butt) == (0.010, pytest.approx(1.0 + 2.0))


def test_what_an_item_of_its_own_renews_is_named_last_and_is_in_no_sum() -> None:
    spaces = [bad("A", 24.3, item="335"), bad("A", 25.5), bad("A", 25.5, "starboard")]
    plan = plan_renewal(SHELL, spaces, **RIVETS)
    assert [(one.name, one.side, one.apart) for one in plan.inserts] == [
        ("R1", "port", ""),
        ("R2", "starboard", ""),
        ("R3", "port", "335"),
    ]
    assert plan.total.inserts == 2


def test_an_insert_says_why_its_spaces_are_renewed() -> None:
    spaces = [bad("A", 24.3, why="thin now"), bad("A", 24.9, why="a pit"), bad("B", 24.9, why="thin now")]
    (one,) = plan_renewal(SHELL, spaces[:2], **RIVETS).inserts
    assert one.why == ("thin now", "a pit")


def test_the_greatest_factor_of_its_strakes_is_taken() -> None:
    work = [{"strakes": ["A"], "place": "garboard"}, {"strakes": ["B"], "place": "bottom shell", "curvature": "single"}]
    plain_hours = METHOD.run(shell=SHELL, bad=[bad("A", 24.3)], **RIVETS)["hours"]
    assert METHOD.run(shell=SHELL, bad=[bad("A", 24.3)], work=work, **RIVETS)["hours"] == pytest.approx(
        1.25 * plain_hours
    )
    both = [bad("A", 24.3), bad("B", 24.3)]
    ratio = METHOD.run(shell=SHELL, bad=both, work=work, **RIVETS)["hours"]
    assert ratio == pytest.approx(METHOD.run(shell=SHELL, bad=both, **RIVETS)["hours"] * 1.12 * 1.2, rel=0.03)


def test_nothing_bad_is_nothing_to_renew() -> None:
    assert set(METHOD.run(shell=SHELL, bad=[], **RIVETS).values()) == {0.0}


def test_a_joint_of_which_nothing_is_said_is_refused() -> None:
    only = (Joint("seam", ("B",), "lap", 1, 0.02, 0.09),)
    with pytest.raises(OutOfRange, match="nothing says how the seam of strake A"):
        joint_at(only, "seam", "A", 24.3)


@pytest.mark.parametrize("space", [bad("Q", 24.3), bad("A", 99.0), bad("B", 26.1)])
def test_a_space_that_the_shell_has_not_is_refused(space: dict[str, Any]) -> None:
    with pytest.raises(OutOfRange):
        plan_renewal(SHELL, [space], **RIVETS)


def test_the_plan_comes_back_and_a_ragged_one_is_refused() -> None:
    made = shell_from_input(SHELL)
    assert plain(made) == SHELL
    assert made.exists.sum() == 7
    assert shell_from_input(made) is made
    with pytest.raises(OutOfRange, match="one figure for each frame space"):
        shell_from_input({**SHELL, "seams": [[0.1] * 4, [1.1] * 3, [2.1] * 4]})
    with pytest.raises(OutOfRange, match="at either edge"):
        shell_from_input({**SHELL, "seams": [[0.1] * 4, [1.1] * 4]})


STRAKES = [
    {"strake": "A", "sampled": 24, "bad": 2, "renewed": 3, "unsampled": 60},
    {"strake": "B", "sampled": 20, "bad": 0, "renewed": 0, "unsampled": 9},
]


def test_what_is_found_later_weighs_as_what_is_named_does() -> None:
    found = FOUND_LATER.run(strakes=STRAKES, shell=SHELL, renewed_area=4.0, renewed_mass=320.0, renewed_joint=18.0)
    assert (found["gauged"], found["bad"], found["not_gauged"]) == (44.0, 2.0, 69.0)
    assert found["mass"] == pytest.approx(80.0 * found["area"])
    assert found["mass_p80"] == pytest.approx(80.0 * found["area_p80"])
    assert found["joint"] == pytest.approx(4.5 * found["area"])


def test_a_bad_space_found_later_grows_as_those_named_did() -> None:
    """Spaces of strake A are 0.6 m2; the three renewed became 4 m2, so that one space found takes 1.33 m2."""
    found = found_later(STRAKES, SHELL, 4.0, 320.0, 18.0)
    assert found.gauged.area[0] == pytest.approx(4.0 / 3.0)


def test_where_no_plate_is_named_the_shell_gives_its_mass() -> None:
    """Four spaces of 11 mm, two of 9 mm and one of 10 mm."""
    none = [{**one, "renewed": 0} for one in STRAKES]
    found = FOUND_LATER.run(strakes=none, shell=SHELL)
    assert found["mass"] == pytest.approx((4 * 11 + 2 * 9 + 10) / 7 * 7.85 * found["area"])
    assert found["joint"] == 0.0
    with pytest.raises(OutOfRange):
        FOUND_LATER.run(strakes=none, shell=SHELL, renewed_area=-1.0)
    with pytest.raises(OutOfRange, match="every strake"):
        FOUND_LATER.run(strakes=none[:1], shell=SHELL)
