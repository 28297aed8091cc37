"""The units of a line's quantity and rate, by the form of its price."""

import pytest

from tenderwright.pricing.amount import units


@pytest.mark.parametrize(
    ("form", "unit", "expected"),
    [
        ("lump", "lump sum", ("lump sum", "EUR")),
        ("rate", "m2", ("m2", "EUR/m2")),
        ("hours", "h", ("h", "EUR/h")),
        ("credit", "t", ("t", "EUR/t")),
        ("markup", "", ("EUR", "%")),
        ("percent", "", ("EUR", "%")),
    ],
)
def test_units(form: str, unit: str, expected: tuple[str, str]) -> None:
    assert units(form, unit, "EUR") == expected
