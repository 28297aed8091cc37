"""Inputs written for `reckon` read back to the last bit."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.alone import to_si
from tenderwright.calculations.verdict import LIMITS_INPUT
from tenderwright.calculations.written import as_written
from tenderwright.shapes.keywords import validator_class

DIMENSIONS = ("length", "area", "volume", "mass", "density", "fraction", "angle", "temperature", "salinity", "time",
              "line_load", "force", "pressure", "speed", "rate_of_loss", "moment")  # fmt: skip
FIGURES = st.floats(min_value=-1e12, max_value=1e12, allow_subnormal=False)


@given(st.sampled_from(DIMENSIONS), FIGURES)
def test_any_figure_of_any_dimension_comes_back(dimension: str, figure: float) -> None:
    schema = {"type": "string", "quantity": dimension}
    assert to_si(schema, as_written(schema, figure)) == figure


def test_lists_records_and_words_are_followed() -> None:
    schema = {
        "type": "array",
        "items": {
            "properties": {"at": {"quantity": "length"}, "name": {"type": "string"}, "flag": {"type": "boolean"}}
        },
    }
    data = [{"at": 1.5, "name": "first", "flag": True}, {"at": -0.1}]
    assert as_written(schema, data) == [{"at": "1.5 m", "name": "first", "flag": True}, {"at": "-0.1 m"}]
    assert to_si(schema, as_written(schema, data)) == data


def test_limits_are_written_in_the_unit_of_what_each_measures() -> None:
    data = [
        {"name": "haul", "dimension": "force", "demand": 564259.2982980331, "limit": 9.8e5, "uncertainty": 0.1},
        {"name": "cars", "dimension": "each", "demand": 7.0, "limit": 6.0, "strict": True},
        {"name": "lift", "dimension": "mass", "limit": 3.5e6},
    ]
    written = as_written(LIMITS_INPUT, data)
    assert written[0]["demand"] == "564259.2982980331 N"
    assert written[2] == {"name": "lift", "dimension": "mass", "limit": "3500000.0 kg"}
    assert to_si(LIMITS_INPUT, written) == data


def test_a_limit_of_another_dimension_than_it_says_is_told() -> None:
    validator = validator_class()(LIMITS_INPUT)
    right = {"name": "haul", "dimension": "force", "demand": "800 kN", "limit": "900 kN"}
    assert list(validator.iter_errors([right])) == []
    (error,) = validator.iter_errors([{**right, "demand": "80 t"}])
    assert (error.validator, error.validator_value, list(error.path)) == ("quantity", "force", [0, "demand"])
