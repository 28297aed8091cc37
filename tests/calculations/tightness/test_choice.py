from __future__ import annotations

import itertools

import pytest

from tenderwright.calculations.method import Citation, OutOfRange
from tenderwright.calculations.tightness.choice import BOUNDARIES, METHOD, Boundary, Structure, tightness_test
from tenderwright.calculations.tightness.figures import TestFigure

LETTER = Citation("naval architect's letter")


@pytest.mark.parametrize(
    ("boundary", "structure", "by_air", "test", "bar"),
    [
        ("tank", "welded", False, "head", 0.2354),  # 2.4 m above the tank top, fresh water
        ("tank", "welded", True, "air", 0.15),  # IACS UR S14
        ("tank", "riveted", False, "head", 0.0981),  # Lloyd's Register, inland: 1 m
        ("tank", "riveted", True, "air", 0.07),  # Lloyd's Register, inland: 0.007 N/mm²
        ("dry space", "riveted", False, "hose", 2.0),  # BV NR600, Ch. 6, Sec. 3, 1.6.3
        ("dry space", "welded", False, "hose", 2.0),
        ("weathertight closure", "welded", False, "hose", 2.0),
        ("fillet weld", "welded", False, "air", 0.15),
        ("double-plate rudder", "welded", False, "air", 0.10),  # Lloyd's Register, inland: 0.01 N/mm²
    ],
)
def test_published_pressures(boundary: Boundary, structure: Structure, by_air: bool, test: str, bar: float) -> None:
    found = tightness_test(boundary, structure, by_air=by_air)
    assert found.test == test
    assert found.pressure is not None
    assert found.pressure / 1e5 == pytest.approx(bar, abs=0.0001)
    assert found.source.title


def test_where_no_hose_can_play() -> None:
    # LR Naval Survey Guidance, Ch. 14, 2: a dry space by vacuum box; BV NR600: dye penetrant or ultrasonic.
    assert tightness_test("dry space", "welded", hose_possible=False).test == "vacuum box"
    assert tightness_test("dry space", "riveted", hose_possible=False).test == "dye penetrant or ultrasonic"
    assert tightness_test("weathertight closure", "welded", hose_possible=False).pressure is None


@pytest.mark.parametrize(("by_air", "hose"), list(itertools.product((False, True), repeat=2)))
def test_riveted_tanks_always_need_the_naval_architect(by_air: bool, hose: bool) -> None:
    found = tightness_test("tank", "riveted", hose, by_air)
    assert found.sign_off
    assert any("naval architect" in caution for caution in found.cautions)
    assert found.pressure is not None
    assert found.pressure < 0.1e5


@pytest.mark.parametrize(("boundary", "structure"), list(itertools.product(BOUNDARIES, ("welded", "riveted"))))
def test_air_comes_with_a_u_tube_of_its_height(boundary: Boundary, structure: Structure) -> None:
    found = tightness_test(boundary, structure, by_air=True)
    if found.test == "air":
        assert found.u_tube is not None
        assert found.pressure == pytest.approx(9806.65 * found.u_tube)
    else:
        assert found.u_tube is None


def test_an_agreed_figure_takes_the_place_of_the_published_one() -> None:
    found = tightness_test("tank", "riveted", agreed=TestFigure("as agreed", LETTER, head=0.6))
    assert (found.head, found.source, found.sign_off) == (0.6, LETTER, True)
    assert any("naval architect" in caution for caution in found.cautions)
    low = tightness_test("tank", "riveted", by_air=True, agreed=TestFigure("as agreed", LETTER, pressure=5e3))
    assert low.u_tube == pytest.approx(0.51, abs=0.005)


def test_refuses_an_agreed_figure_that_is_too_much_or_of_the_wrong_kind() -> None:
    class_air = TestFigure("as agreed", LETTER, pressure=0.15e5)
    with pytest.raises(OutOfRange, match="safe to plan"):
        tightness_test("tank", "riveted", by_air=True, agreed=class_air)
    with pytest.raises(OutOfRange, match="safe to plan"):
        tightness_test("double-plate rudder", "welded", agreed=TestFigure("as agreed", LETTER, pressure=0.16e5))
    with pytest.raises(OutOfRange, match="agreed by head"):
        tightness_test("tank", "welded", agreed=class_air)
    with pytest.raises(OutOfRange, match="no pressure"):
        tightness_test("dry space", "riveted", hose_possible=False, agreed=class_air)
    with pytest.raises(OutOfRange, match="and not both"):
        tightness_test("tank", "welded", agreed=TestFigure("none", LETTER))
    with pytest.raises(OutOfRange, match="source"):
        METHOD.run(boundary="tank", structure="riveted", head=0.5)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(boundary="tank", structure="riveted", head=0.5, source="naval architect's letter")
    by_air = METHOD.run(boundary="tank", structure="riveted", by_air=True)
    assert {*outputs, *by_air} == {symbol.name for symbol in METHOD.outputs}
    assert outputs["head"] == 0.5
    assert outputs["figure"] == "above the tank top, as agreed"
    assert outputs["source"] == "naval architect's letter"


def test_a_test_has_no_figure_that_is_not_of_its_kind() -> None:
    assert "u_tube" not in METHOD.run(boundary="tank", structure="riveted")
    assert "head" not in METHOD.run(boundary="tank", structure="riveted", by_air=True)
    looked_at = METHOD.run(boundary="weathertight closure", structure="riveted", hose_possible=False)
    assert not {"pressure", "head", "u_tube"} & set(looked_at)
