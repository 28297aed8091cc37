"""Inputs written for `reckon` read back to the last bit."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.alone import to_si
from tenderwright.calculations.written import as_written

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
