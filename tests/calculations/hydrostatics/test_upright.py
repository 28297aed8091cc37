from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import astuple
from scipy.integrate import quad
from scipy.optimize import brentq

from tenderwright.calculations.hydrostatics.hull_form import END_PARTS, HullForm, hull_form
from tenderwright.calculations.hydrostatics.upright import hydrostatic_table, hydrostatics
from tenderwright.calculations.method import OutOfRange
from tests.calculations.hydrostatics.hulls import barge, coaster, cylinder, prism, wigley

COASTER = coaster()


def test_box_is_exact():
    """Derrett, Ship Stability for Masters and Mates: box KB T/2, BM B^2/12T, BM_L L^2/12T."""
    found = hydrostatics(barge(), 2.3, 0.0, 1000.0)
    assert found.volume == pytest.approx(40 * 8 * 2.3, rel=1e-13)
    assert found.kb == pytest.approx(1.15, rel=1e-13)
    assert found.bm_transverse == pytest.approx(64 / (12 * 2.3), rel=1e-13)
    assert found.bm_longitudinal == pytest.approx(1600 / (12 * 2.3), rel=1e-12)
    assert found.lcb == pytest.approx(20, rel=1e-13)
    assert found.displacement == pytest.approx(736e3, rel=1e-13)


def test_box_trimmed_is_exact():
    """Derived: the mean draft of a box gives its volume; LCB moves aft by L t/(12 T)."""
    found = hydrostatics(barge(), 2.3, 0.8)
    assert found.volume == pytest.approx(40 * 8 * 2.3, rel=1e-13)
    assert found.lcb == pytest.approx(20 - 40 * 0.8 / (12 * 2.3), rel=1e-12)
    assert (found.draft_aft, found.draft_forward) == pytest.approx((2.7, 1.9))


def test_triangular_prism_is_exact():
    """Derrett: triangular prism V LBT/2, KB 2T/3, BM B^2/6T."""
    found = hydrostatics(prism(), 3.0)
    breadth = 6.0
    assert found.volume == pytest.approx(40 * breadth * 3 / 2, rel=1e-13)
    assert found.kb == pytest.approx(2.0, rel=1e-13)
    assert found.bm_transverse == pytest.approx(breadth**2 / 18, rel=1e-13)


@pytest.mark.parametrize("draft", [1.5, 3.0, 4.4])
def test_cylinder_keeps_its_metacentre_on_the_axis(draft):
    """Derived: every buoyant force on a cylinder passes through its axis, so KM = r; 64 waterlines give 0.5
    %."""
    found = hydrostatics(cylinder(), draft)
    assert found.km_transverse == pytest.approx(3.0, rel=5e-3)
    segment = 9 * np.arccos((3 - draft) / 3) - (3 - draft) * np.sqrt(9 - (3 - draft) ** 2)
    assert found.volume == pytest.approx(30 * segment, rel=2e-3)


def test_wigley_is_exact_where_simpson_is():
    """Wigley hull, integrated exactly (derived): V 4/9 LBT, Aw 2/3 LB, KB 5/8 T; 100 x 10 x 6.25 m."""
    found = hydrostatics(wigley(), 6.25)
    assert found.volume == pytest.approx(2777.7777777777778, rel=1e-14)
    assert found.kb == pytest.approx(3.90625, rel=1e-14)
    assert found.waterplane_area == pytest.approx(666.6666666666667, rel=1e-14)
    assert found.lcf == pytest.approx(50, rel=1e-14)
    assert found.lcb == pytest.approx(50, rel=1e-14)
    assert found.mass_per_immersion / 1e5 == pytest.approx(6.8333, abs=5e-5)


def test_wigley_inertias_converge():
    """Wigley hull (derived): I_T 4/105 LB^3, BM 3/35 B^2/T, BM_L 3/40 L^2/T."""
    found = hydrostatics(wigley(intervals=40), 6.25)
    assert found.inertia_transverse == pytest.approx(3809.524, rel=5e-6)
    assert found.bm_transverse == pytest.approx(1.371429, rel=5e-6)
    assert found.bm_longitudinal == pytest.approx(120.0, rel=1e-5)


@pytest.mark.parametrize("draft", [0.5, 1.1, 3.7, 5.9])
def test_wigley_between_waterlines_follows_the_same_parabola(draft):
    """Derived: integral of 1-(1-z/T)^2 is z^2/T - z^3/(3 T^2)."""
    found = hydrostatics(wigley(), draft)
    assert found.volume == pytest.approx(2 / 3 * 100 * 10 * (draft**2 / 6.25 - draft**3 / (3 * 6.25**2)), rel=1e-13)


def test_moment_to_change_trim():
    """Derived: MCTC = W GM_L/(100 L); the box of 40 m at 2.3 m."""
    found = hydrostatics(barge(), 2.3, 0.0, 1000.0)
    assert found.moment_to_change_trim() == pytest.approx(736e3 * found.bm_longitudinal / 40)
    assert found.moment_to_change_trim(kg=3.0) == pytest.approx(736e3 * (found.km_longitudinal - 3.0) / 40)


def test_unanswered_exercise_on_a_waterplane():
    """A waterplane of nine half-breadths, computed apart (derived): Aw 1507.0 m2, LCF 6.530 m aft, I_L 1232649 m4."""
    half = np.array([3.3, 6.8, 7.6, 8.1, 8.1, 8.0, 6.6, 2.8, 0.0])
    form = hull_form(
        length=120,
        stations=np.linspace(0, 120, 9),
        waterlines=[0, 1, 2],
        half_breadths=np.tile(half, (3, 1)).T,
    )
    found = hydrostatics(form, 1.0)
    assert found.waterplane_area == pytest.approx(1507.0, abs=0.05)
    assert 60 - found.lcf == pytest.approx(6.530, abs=5e-4)
    assert found.inertia_longitudinal == pytest.approx(1232649, abs=1)


def test_table_agrees_with_single_drafts():
    drafts = np.linspace(1.0, 4.0, 12)
    for draft, row in zip(drafts, hydrostatic_table(COASTER, drafts, 0.3, 1025.0), strict=True):
        one = hydrostatics(COASTER, float(draft), 0.3)
        assert astuple(row) == pytest.approx(astuple(one), rel=1e-12)


@given(st.floats(0.8, 4.2), st.floats(0.01, 0.4))
def test_volume_grows_with_draft(draft, more):
    assert hydrostatics(COASTER, draft + more).volume > hydrostatics(COASTER, draft).volume


@given(st.floats(1.2, 4.0), st.floats(-0.1, 0.1))
def test_small_trim_about_the_lcf_keeps_the_volume(draft, trim):
    """Derived: the wedges on either side of the LCF are equal to first order."""
    level = hydrostatics(COASTER, draft)
    trimmed = hydrostatics(COASTER, draft - trim * (0.5 - level.lcf / 40), trim)
    assert trimmed.volume == pytest.approx(level.volume, rel=2e-3)


@given(st.floats(0.1, 20), st.floats(1.0, 4.2), st.floats(-0.5, 0.5))
def test_scaling_lengths_scales_every_particular(scale, draft, trim):
    big = hull_form(
        length=40 * scale,
        stations=COASTER.stations * scale,
        waterlines=COASTER.waterlines * scale,
        half_breadths=COASTER.half_breadths * scale,
        keel_heights=COASTER.keel_heights * scale,
        deck_heights=COASTER.deck_heights * scale,
        deck_half_breadths=COASTER.deck_half_breadths * scale,
        half_sidings=COASTER.half_sidings * scale,
    )
    one, other = hydrostatics(COASTER, draft, trim), hydrostatics(big, draft * scale, trim * scale)
    assert other.volume == pytest.approx(one.volume * scale**3, rel=1e-9)
    assert other.waterplane_area == pytest.approx(one.waterplane_area * scale**2, rel=1e-9)
    assert other.lcb == pytest.approx(one.lcb * scale, rel=1e-9)
    assert other.km_transverse == pytest.approx(one.km_transverse * scale, rel=1e-9)
    assert other.inertia_longitudinal == pytest.approx(one.inertia_longitudinal * scale**4, rel=1e-9)


@given(st.floats(0.5, 6.0), st.floats(-0.5, 0.5))
def test_turning_the_ship_end_for_end_mirrors_lcb(draft, trim):
    x = np.linspace(0, 100, 21)
    z = np.linspace(0, 7, 8)
    half = 5 * np.outer(np.sin(np.pi * x / 100) * (1 + 0.3 * x / 100), np.sqrt(z / 7))
    there = hull_form(length=100, stations=x, waterlines=z, half_breadths=half)
    back = hull_form(length=100, stations=x, waterlines=z, half_breadths=half[::-1])
    one, other = hydrostatics(there, draft, trim), hydrostatics(back, draft, -trim)
    assert other.volume == pytest.approx(one.volume, rel=1e-11)
    assert 100 - other.lcb == pytest.approx(one.lcb, rel=1e-11)
    assert 100 - other.lcf == pytest.approx(one.lcf, rel=1e-11)


def test_waterplane_is_the_rate_of_volume():
    step = 1e-4
    low, high = hydrostatics(COASTER, 2.6 - step), hydrostatics(COASTER, 2.6 + step)
    assert (high.volume - low.volume) / (2 * step) == pytest.approx(
        hydrostatics(COASTER, 2.6).waterplane_area, rel=1e-6
    )


@pytest.mark.parametrize(
    ("draft", "trim", "why"), [(5.2, 0, "deck edge"), (4.6, 2.5, "deck edge"), (-0.1, 0, "nothing")]
)
def test_out_of_range(draft, trim, why):
    with pytest.raises(OutOfRange, match=why):
        hydrostatics(COASTER, draft, trim)


def pontoon() -> HullForm:
    """A pontoon of 8 m breadth with a flat bottom that rises 3 m over 12 m at either end; stations at the knuckles."""
    z, keel = np.linspace(0.0, 4.0, 9), np.array([3.0, 0.0, 0.0, 0.0, 3.0])
    return hull_form(
        length=48.0,
        stations=[0.0, 12.0, 24.0, 36.0, 48.0],
        waterlines=z,
        half_breadths=np.where(z >= keel[:, None], 4.0, 0.0),
        keel_heights=keel,
        half_sidings=4.0,
    )


@pytest.mark.parametrize(("draft", "trim"), [(1.0, 0.0), (1.7, 0.0), (2.4, 0.5), (2.0, -0.8)])
def test_ends_of_a_pontoon_are_followed_out_of_the_water(draft, trim):
    """Derived: triangles under the ramps, cut by the trimmed waterline; her waterplane is a rectangle."""
    slope, fall = 3.0 / 12.0, trim / 48.0
    aft, forward = draft + trim / 2, draft - trim / 2
    ends = (3.0 - aft) / (slope - fall), 48.0 - (3.0 - forward) / (slope + fall)

    def depth(x: float) -> float:
        return draft + trim * (0.5 - x / 48.0) - max(0.0, 3.0 - slope * x, 3.0 - slope * (48.0 - x))

    volume = 8 * quad(depth, *ends, points=[12.0, 36.0])[0]
    moment = 8 * quad(lambda x: x * depth(x), *ends, points=[12.0, 36.0])[0]
    found, part = hydrostatics(pontoon(), draft, trim), 12.0 / END_PARTS
    assert found.volume == pytest.approx(volume, rel=2e-3)
    assert found.lcb == pytest.approx(moment / volume, abs=0.04)
    assert found.waterplane_area == pytest.approx(8 * (ends[1] - ends[0]), abs=8 * 2 * part)
    assert found.lcf == pytest.approx(sum(ends) / 2, abs=part)


def raked() -> HullForm:
    """A hull of 45 degree vee sections whose stem rises 4 m over the last 6 m of 36 m."""
    z = np.linspace(0.0, 4.0, 9)
    return hull_form(
        length=36.0,
        stations=[0.0, 15.0, 30.0, 36.0],
        waterlines=z,
        half_breadths=[z, z, z, np.zeros(z.size)],
        keel_heights=[0.0, 0.0, 0.0, 4.0],
        deck_heights=4.5,
        deck_half_breadths=[4.5, 4.5, 4.5, 0.5],
    )


@pytest.mark.parametrize(("draft", "trim"), [(1.0, 0.0), (2.3, 0.0), (2.7, 0.6), (1.9, -0.4)])
def test_waterlines_end_on_a_raked_stem(draft, trim):
    """Derived: a waterline at z runs straight from y = z to the stem, so each section keeps its 45 degrees."""

    def height(x: float) -> float:
        """Give the height of the water above the keel line k."""
        return draft + trim * (0.5 - x / 36.0) - max(0.0, (x - 30.0) / 6.0 * 4.0)

    end = brentq(height, 30.0, 36.0)

    def exact(power: int, lever: int) -> float:
        return quad(lambda x: x**lever * height(x) ** power, 0.0, end, points=[30.0])[0]

    found = hydrostatics(raked(), draft, trim)
    assert found.volume == pytest.approx(exact(2, 0), rel=1e-4)
    assert found.lcb == pytest.approx(exact(2, 1) / exact(2, 0), abs=2e-3)
    assert found.waterplane_area == pytest.approx(2 * exact(1, 0), rel=5e-4)
    assert found.lcf == pytest.approx(exact(1, 1) / exact(1, 0), abs=1e-2)
    assert found.inertia_transverse == pytest.approx(2 / 3 * exact(3, 0), rel=1e-4)


@pytest.mark.parametrize(("draft", "trim"), [(1.5, 0.0), (2.5, 0.2), (2.5, -0.5), (3.0, 0.5)])
def test_figures_stand_still_with_more_stations_drawn_in(monkeypatch, draft, trim):
    found = hydrostatics(coaster(), draft, trim)
    monkeypatch.setattr("tenderwright.calculations.hydrostatics.hull_form.END_PARTS", 4 * END_PARTS)
    finer = hydrostatics(coaster(), draft, trim)
    assert found.volume == pytest.approx(finer.volume, rel=2e-5)
    assert found.waterplane_area == pytest.approx(finer.waterplane_area, rel=2e-4)
    assert (found.lcb, found.lcf) == pytest.approx((finer.lcb, finer.lcf), abs=3e-3)


def test_no_stations_are_drawn_in_where_the_keel_is_level():
    form = barge()
    assert form.drawn is form
