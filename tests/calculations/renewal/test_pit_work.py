from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import box
from shapely.ops import unary_union

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.renewal.pit_work import METHOD, pit_work

SHELL: dict[str, Any] = {
    "frames": [19.2, 19.8, 20.4, 21.0, 21.6],
    "seams": [[1.0] * 4, [2.0] * 4],
    "strakes": [{"strake": "B", "thickness": [0.011] * 4, "butts": []}],
}


def stretch(aft: float, forward: float, *pits: tuple[float, str], share: float = 0.1) -> dict[str, Any]:
    judged = [{"at": at, "treatment": treatment} for at, treatment in pits]
    return {"strake": "B", "side": "port", "from": aft, "to": forward, "share": share, "pits": judged}


def insert(aft: float, forward: float) -> dict[str, Any]:
    return {"strakes": ["B"], "side": "port", "from": aft, "to": forward}


def test_mouths_are_shared_as_the_pits_outside_the_inserts_are() -> None:
    """1.2 m of a strake 1 m broad stays; a tenth of it is pits, of which half are welded and half filled."""
    pits = ((20.0, "local insert"), (20.6, "weld"), (21.2, "fill with epoxy"))
    found = pit_work(SHELL, [stretch(19.8, 21.6, *pits)], [insert(19.8, 20.4)])
    assert [found["weld"], found["fill"], found["watch"], found["inserted"]] == [1.0, 1.0, 0.0, 1.0]
    assert found["weld_area"] == pytest.approx(0.06)
    assert found["weld_measures"] == pytest.approx(60.0)
    assert found["fill_area"] == pytest.approx(0.06)
    assert found["worked_area"] == pytest.approx(1.2)


@given(st.floats(19.2, 21.6), st.floats(19.2, 21.6), st.lists(st.tuples(st.floats(19, 22), st.floats(0.1, 1.5))))
def test_the_area_outside_inserts_is_that_of_plane_geometry(
    one: float, other: float, cuts: list[tuple[float, float]]
) -> None:
    """Against shapely: the stretch less the union of the inserts."""
    aft, forward = sorted((one, other))
    inserts = [insert(at, at + long) for at, long in cuts]
    pits = [stretch(aft, forward, (aft, "fill with epoxy"))]
    area = box(aft, 1, forward, 2).difference(unary_union([box(i["from"], 1, i["to"], 2) for i in inserts])).area
    covered = any(i["from"] <= aft <= i["to"] for i in inserts)
    assert pit_work(SHELL, pits, inserts)["worked_area"] == pytest.approx(0.0 if covered else area, abs=1e-9)


def test_an_insert_of_the_other_side_or_strake_takes_nothing() -> None:
    pits = [stretch(19.8, 21.6, (20.0, "weld"))]
    alone = pit_work(SHELL, pits)
    assert pit_work(SHELL, pits, [{**insert(19.8, 20.4), "side": "starboard"}]) == alone
    assert pit_work(SHELL, pits, [{**insert(19.8, 20.4), "strakes": ["C"]}]) == alone


def test_refuses_a_strange_strake_and_a_measure_of_nothing() -> None:
    with pytest.raises(OutOfRange, match="strakes"):
        pit_work(SHELL, [{**stretch(19.8, 21.6, (20.0, "weld")), "strake": "Q"}])
    with pytest.raises(OutOfRange, match="measure"):
        pit_work(SHELL, [], measure=0.0)


def test_method_gives_its_outputs() -> None:
    assert set(METHOD.run(shell=SHELL, stretches=[stretch(19.8, 21.6, (20.0, "weld"))])) == {
        symbol.name for symbol in METHOD.outputs
    }
