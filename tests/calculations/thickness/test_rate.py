from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.rate import METHOD, Rate, rates, verdict_of

YEAR = 365.25 * 86400.0


def one_plate(years: list[float], readings: list[list[float]], sigma: float = 1e-4) -> Rate:
    sizes = [len(survey) for survey in readings]
    measured = np.array([reading for survey in readings for reading in survey])
    survey = np.repeat(np.arange(len(years)), sizes)
    plate = np.zeros(measured.size, np.int64)
    return rates(plate, 1, survey, np.repeat(years, sizes), np.full(measured.size, 0.02), measured, sigma)


def test_published_rate() -> None:
    # NAVFAC P-1010: 0.704 in to 0.500 in over 4 years is 0.051 in (51 mil) a year.
    found = one_plate([2000.0, 2004.0], [[0.704 * 0.0254], [0.500 * 0.0254]])
    assert found.rate[0] / 0.0254 == pytest.approx(0.051)


def test_two_surveys_are_uncertain_by_root_two_over_the_years() -> None:
    # Common practice: ±0.1 mm a reading, so ±0.14 mm over the years between.
    found = one_plate([2010.0, 2020.0], [[0.0110], [0.0105]])
    assert 1e3 * found.uncertainty[0] == pytest.approx(0.014142, abs=1e-5)
    assert found.span[0] == pytest.approx(10.0)


def test_three_surveys_agree_with_a_general_fit() -> None:
    # numpy.polyfit as an independent fit.
    years, means = np.array([1988.0, 2007.0, 2025.0]), np.array([0.0108, 0.0101, 0.0098])
    found = one_plate(years.tolist(), [[mean] for mean in means.tolist()])
    slope, cut = np.polyfit(years, means, 1)
    assert found.rate[0] == pytest.approx(-slope)
    residual = means - (slope * years + cut)
    scatter = max(1e-4, math.sqrt((residual**2).sum()))
    assert found.uncertainty[0] == pytest.approx(scatter / math.sqrt(((years - years.mean()) ** 2).sum()))


def test_conservative_pair_is_greatest_loss_last_less_least_loss_before() -> None:
    # HSE guide: losses 3.0 and 2.0 mm at the last survey, 1.0 and 1.5 mm at the one before, ten years apart.
    found = one_plate([2000.0, 2010.0, 2020.0], [[0.0195], [0.0190, 0.0185], [0.0170, 0.0180]])
    assert 1e3 * found.conservative[0] == pytest.approx(0.2)
    assert found.surveys.tolist() == [3]


def test_each_plate_stands_alone_and_one_survey_gives_no_rate() -> None:
    plate = np.array([0, 0, 1, 2, 2, -1])
    survey = np.array([0, 2, 1, 0, 1, 1])
    year = np.array([2000.0, 2020.0, 2010.0, 2000.0, 2010.0, 2010.0])
    measured = np.array([11.0, 10.0, 9.0, 10.0, 10.2, 1.0]) / 1e3
    found = rates(plate, 4, survey, year, np.full(6, 0.011), measured)
    assert 1e3 * found.rate[[0, 2]] == pytest.approx([0.05, -0.02])
    assert np.isnan(found.rate).tolist() == [False, True, False, True]
    assert found.measurable.tolist() == [True, False, False, False]
    assert found.certain.tolist() == [True, False, False, False]
    assert found.span[0] == pytest.approx(20.0)


def test_words_for_a_rate() -> None:
    assert [verdict_of(rate, 0.1) for rate in (0.2, 0.05, 0.0, -0.3)] == [
        "loss",
        "loss within its uncertainty",
        "no measurable loss",
        "no measurable loss",
    ]


@given(st.floats(-0.2, 0.4), st.lists(st.floats(1900, 2030), min_size=2, max_size=6, unique_by=lambda y: round(y)))
def test_a_straight_line_is_found_again(slope: float, years: list[float]) -> None:
    years = sorted(years)
    found = one_plate(years, [[0.2 - 1e-3 * slope * (year - 1900.0)] for year in years])
    assert 1e3 * found.rate[0] == pytest.approx(slope, abs=1e-6)


@given(st.floats(1.5, 4.0))
def test_longer_spans_make_rates_surer(stretch: float) -> None:
    short = one_plate([2000.0, 2005.0], [[0.011], [0.010]])
    long = one_plate([2000.0, 2000.0 + 5.0 * stretch], [[0.011], [0.010]])
    assert long.uncertainty[0] * stretch == pytest.approx(short.uncertainty[0])


def test_a_mistyped_number_of_a_survey_does_not_fill_the_memory() -> None:
    one = np.array([0.0])
    with pytest.raises(OutOfRange, match="up to 1000"):
        rates(np.array([0]), 1, np.array([10**15]), one, one, one)


def test_refuses_surveys_out_of_order() -> None:
    with pytest.raises(OutOfRange, match="order of time"):
        one_plate([2020.0, 2010.0], [[0.011], [0.010]])
    with pytest.raises(OutOfRange, match="uncertainty"):
        one_plate([2010.0, 2020.0], [[0.011], [0.010]], sigma=0.0)


def test_method_gives_its_outputs() -> None:
    surveys = [{"date": "2014-01-01", "measured": [0.0095]}, {"date": "2004-01-01", "measured": [0.0105]}]
    outputs = METHOD.run(as_built=0.0111, surveys=surveys)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert 1e3 * YEAR * outputs["rate"] == pytest.approx(0.1, rel=1e-3)
    assert outputs["verdict"] == "loss"
    with pytest.raises(OutOfRange, match="YYYY"):
        METHOD.run(as_built=0.0111, surveys=[{"date": "1 May", "measured": [0.0095]}])
