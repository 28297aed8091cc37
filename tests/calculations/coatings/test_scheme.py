from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from tenderwright.calculations.coatings.scheme import METHOD, Coat, coat_row, paint_scheme
from tenderwright.calculations.method import OutOfRange

PRIMER = Coat(
    product="primer",
    volume_solids=0.71,
    dry_film=125e-6,
    loss=0.3,
    thinning=0.05,
    stripe_length=340.0,
    stripe_width=0.08,
    stripe_coats=2,
    stripe_loss=0.1,
    profile=60e-6,
    container=0.02,
)
SECOND = replace(PRIMER, profile=0.0, stripe_length=0.0)
ANTIFOULING = Coat("antifouling", 0.55, 100e-6, 0.3)


def test_one_coat_is_the_sum_of_its_parts() -> None:
    # Derived, by hand in litres from L = A DFT / (10 VS (1 - LF)).
    row = coat_row(620.0, PRIMER)
    film, stripe, profile = 620 * 125 / 497, 2 * 27.2 * 125 / 639, 620 * 60 / 497
    assert 1000 * row.coat == pytest.approx(film)
    assert 1000 * row.stripe == pytest.approx(stripe)
    assert 1000 * row.profile == pytest.approx(profile)
    assert 1000 * row.paint == pytest.approx(film + stripe + profile)
    assert 1000 * row.thinner == pytest.approx(0.05 * (film + stripe + profile))
    assert row.containers == 13  # 241.43 L in sets of 20 L
    assert row.wet_film == pytest.approx(125e-6 * 1.05 / 0.71)


def test_stripe_loss_is_that_of_the_coat_unless_given() -> None:
    given_none = coat_row(620.0, replace(PRIMER, stripe_loss=None))
    assert given_none.stripe == pytest.approx(coat_row(620.0, PRIMER).stripe * 0.9 / 0.7)


def test_totals_and_containers_by_product() -> None:
    scheme = paint_scheme(620.0, [PRIMER, SECOND, ANTIFOULING])
    assert scheme.dry_film == pytest.approx(350e-6)
    assert scheme.paint == pytest.approx(sum(row.paint for row in scheme.rows))
    assert scheme.thinner == pytest.approx(0.05 * (scheme.rows[0].paint + scheme.rows[1].paint))
    # 241.43 L and 155.94 L, each rounded up to sets of 20 L; no container size is known for the antifouling.
    assert scheme.containers == {"primer": 13 + 8, "antifouling": None}
    assert scheme.rows[2].left_over is None


def test_unknown_container_leaves_the_product_unknown() -> None:
    scheme = paint_scheme(10.0, [PRIMER, replace(SECOND, container=None), SECOND])
    assert scheme.containers == {"primer": None}


def test_only_the_first_coat_fills_the_profile() -> None:
    with pytest.raises(OutOfRange, match="coat 2"):
        paint_scheme(620.0, [PRIMER, PRIMER])


def test_refuses_a_scheme_without_coats() -> None:
    with pytest.raises(OutOfRange, match="at least one coat"):
        paint_scheme(620.0, [])


def test_refuses_an_area_below_nothing() -> None:
    with pytest.raises(OutOfRange, match="area"):
        paint_scheme(-1.0, [ANTIFOULING])


coats = st.builds(
    Coat,
    product=st.sampled_from(["a", "b", "c"]),
    volume_solids=st.floats(0.2, 1.0),
    dry_film=st.floats(2e-5, 5e-4),
    loss=st.floats(0.0, 0.6),
    thinning=st.floats(0.0, 0.3),
    container=st.floats(0.001, 0.1),
)


@given(st.lists(coats, min_size=1, max_size=5), st.floats(0, 5000))
def test_totals_do_not_depend_on_the_order_of_coats(chosen: list[Coat], area: float) -> None:
    there = paint_scheme(area, chosen)
    back = paint_scheme(area, chosen[::-1])
    assert back.paint == pytest.approx(there.paint)
    assert back.thinner == pytest.approx(there.thinner)
    assert back.containers == there.containers


@given(coats, st.floats(0, 5000))
def test_containers_hold_the_paint(coat: Coat, area: float) -> None:
    row = coat_row(area, coat)
    assert row.containers is not None
    assert coat.container is not None
    assert row.containers * coat.container >= row.paint - 1e-8


def test_method_gives_its_outputs() -> None:
    coat = {"product": "primer", "volume_solids": 0.5, "dry_film": 1e-4, "loss": 0.2, "container": 0.02}
    outputs = METHOD.run(area=100.0, coats=[coat, coat])
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    # 25 L a coat, so two sets of 20 L each.
    assert outputs["containers"] == [{"product": "primer", "containers": 4}]
    assert outputs["coats"][0]["paint"] == pytest.approx(0.025)
