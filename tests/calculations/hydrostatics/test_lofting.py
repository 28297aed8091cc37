"""A hull lofted from five to nine of her sections is the hull of her full table of offsets, within stated figures."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tenderwright.calculations.hydrostatics.band_area import band_area
from tenderwright.calculations.hydrostatics.fairing import faired
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.lofting import lofting
from tenderwright.calculations.hydrostatics.upright import hydrostatics
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.hull import hull
from tests.calculations.hydrostatics.hulls import barge, coaster, wigley
from tests.calculations.hydrostatics.sectioned import sectioned, spread
from tests.calculations.ship.marram import found


def marram() -> HullForm:
    return found(hull).form


HULLS: dict[str, tuple[Callable[[], HullForm], float]] = {
    "Marram": (marram, 3.2),
    "Wigley": (wigley, 5.0),
    "coaster with bluff ends": (coaster, 3.0),
}
# Displacement, LCB by length, KM, wetted surface, shell above water: what may be off.
WITHIN = {
    ("Marram", 5): (0.005, 0.001, 0.011, 0.012, 0.002),
    ("Marram", 7): (0.002, 0.0005, 0.004, 0.009, 0.002),
    ("Marram", 9): (0.001, 0.0005, 0.003, 0.009, 0.003),
    ("Wigley", 5): (0.004, 0.0001, 0.004, 0.002, 0.001),
    ("Wigley", 7): (0.001, 0.0001, 0.001, 0.001, 0.001),
    ("Wigley", 9): (0.0005, 0.0001, 0.001, 0.001, 0.001),
    ("coaster with bluff ends", 5): (0.016, 0.002, 0.002, 0.024, 0.010),
    ("coaster with bluff ends", 7): (0.009, 0.0025, 0.004, 0.020, 0.011),
    ("coaster with bluff ends", 9): (0.008, 0.0015, 0.006, 0.019, 0.010),
}


def figures(form: HullForm, draft: float) -> list[float]:
    at = hydrostatics(form, draft)
    return [at.displacement, at.lcb, at.km_transverse, band_area(form, None, draft), band_area(form, draft, None)]


@pytest.mark.parametrize(("name", "count"), WITHIN)
def test_a_few_sections_give_the_hull_of_all_her_stations(name: str, count: int) -> None:
    make, draft = HULLS[name]
    form = make()
    true, drawn = figures(form, draft), figures(lofting(**sectioned(form, spread(form, count))).form, draft)
    scale = [true[0], form.length, *true[2:]]
    off = [abs(b - a) / by for a, b, by in zip(true, drawn, scale, strict=True)]
    assert all(one <= most for one, most in zip(off, WITHIN[name, count], strict=True)), off


@settings(max_examples=20)
@given(st.sampled_from(list(HULLS)), st.integers(5, 9), st.floats(0.0, 0.08), st.integers(0, 1000))
def test_what_is_lofted_is_a_hull_and_no_reading_moves_far(name: str, count: int, out: float, seed: int) -> None:
    form = HULLS[name][0]()
    read = sectioned(form, spread(form, count), out, seed)
    lofted = lofting(**read)
    before = [np.array(one["half_breadths"]) for one in read["sections"]]
    moved = np.concatenate([new.half_breadths - old for new, old in zip(lofted.sections, before, strict=True)])
    assert moved == pytest.approx(np.concatenate(lofted.residuals))
    assert np.sqrt(np.mean(moved**2)) <= 1.1 * out + 1e-9
    assert lofted.form.half_breadths.max() <= max(float(y.max()) for y in before) + 3 * out + 1e-9


def test_a_hull_of_flat_ends_needs_no_profile() -> None:
    form = barge()
    read = sectioned(form, np.linspace(0.0, 40.0, 5))
    drawn = lofting(length=40.0, sections=read["sections"], reading=0.0).form
    assert hydrostatics(drawn, 3.0).volume == pytest.approx(40 * 8 * 3, rel=1e-9)
    assert band_area(drawn, None, 3.0) == pytest.approx(band_area(form, None, 3.0), rel=1e-9)


def test_a_keel_that_drops_aft_is_followed() -> None:
    form = wigley(40.0, 8.0, 4.0)
    level = sectioned(form, spread(form, 7))
    dropped = {
        **level,
        "sections": [
            one | {"heights": [z - 0.02 * (40 - one["x"]) for z in one["heights"]]} for one in level["sections"]
        ],
        **{
            end: level[end] | {"heights": [z - 0.02 * (40 - x) for x, z in zip(*_points(level[end]), strict=True)]}
            for end in ("stern", "stem")
        },
    }
    drawn = lofting(**dropped).form
    assert drawn.keel_at(0.0) == pytest.approx(-0.8)
    assert drawn.keel_at(20.0) == pytest.approx(-0.4, abs=1e-6)
    at = hydrostatics(drawn, 2.6, 0.8)  # the same water over the keel fore and aft as the level hull has
    assert at.volume == pytest.approx(hydrostatics(lofting(**level).form, 3.0).volume, rel=0.006)


def _points(end: dict[str, Any]) -> tuple[list[float], list[float]]:
    return end["x"], end["heights"]


def test_readings_of_a_parabola_stay_and_others_come_nearer_to_it() -> None:
    x = np.array([0.0, 1.0, 2.5, 4.0, 6.0, 8.0, 9.0])
    parabola = x * (10 - x) / 5
    assert faired([x], [parabola], 0.05)[0] == pytest.approx(parabola, abs=1e-6)
    out = np.array([0.0, 0.05, -0.04, 0.06, -0.05, 0.04, 0.0])
    fair = faired([x], [parabola + out], 0.05)[0]
    assert np.abs(fair - parabola).max() < np.abs(out).max()
    assert np.sqrt(np.mean((fair - parabola - out)[1:-1] ** 2)) <= 0.05


def _changed(path: str, value: Any) -> dict[str, Any]:
    read = sectioned(wigley(), spread(wigley(), 5))
    *way, last = path.split("/")
    at: Any = read
    for step in way:
        at = at[int(step) if step.isdigit() else step]
    at[last] = value
    return read


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        ("sections", [], "at least 3 sections"),
        ("sections/1/x", 6.0, "two sections stand at"),
        ("sections/1/heights", [0.0, 1.0], "9 half-breadths for 2 heights"),
        ("sections/0/heights", [6.0, *range(8)], "must rise"),
        ("stern/x", [50.0] * 2, "beyond the end of her profile"),
        ("stem/heights", [0.0] * 2, "the profile of the stem"),
    ],
)
def test_what_cannot_be_lofted_is_said(path: str, value: Any, words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        lofting(**_changed(path, value))


_FIGURES = st.floats(-60.0, 60.0)
_ROWS = st.lists(st.tuples(_FIGURES, _FIGURES), min_size=0, max_size=6)


@settings(max_examples=150)
@given(
    st.lists(st.tuples(_FIGURES, _ROWS), max_size=7),
    st.none() | _ROWS,
    st.none() | _ROWS,
    st.floats(0, 5),
    st.booleans(),
)
def test_whatever_is_read_it_is_a_hull_or_it_is_said_why_not(
    sections: list[Any], stern: Any, stem: Any, reading: float, tidy: bool
) -> None:
    def row(points: list[tuple[float, float]], name: str, way: int = 1) -> dict[str, Any]:
        a, b = [p[0] for p in points], [abs(p[1]) if tidy and way == 1 else p[1] for p in points]
        if tidy:
            a, b = sorted(a), (b if name == "half_breadths" else [way * one for one in sorted(way * two for two in b)])
        return {"heights": a, name: b}

    read = [{"x": x, **row(points, "half_breadths")} for x, points in sections]
    ends = {"stern": stern and row(stern, "x", -1), "stem": stem and row(stem, "x")}
    ends = {name: end or None for name, end in ends.items()}
    try:
        form = lofting(40.0, read, reading, **ends).form
    except OutOfRange:
        return
    assert np.all(np.isfinite(form.half_breadths))
