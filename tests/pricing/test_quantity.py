from __future__ import annotations

from decimal import Decimal
from types import MappingProxyType

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.value import Record, Value, Working
from tenderwright.model.build import Reference
from tenderwright.model.item import Line
from tenderwright.notices import Place
from tenderwright.pricing.quantity import line_quantity, quantity_mistakes, written_number
from tenderwright.quantities.quantity import parse_quantity
from tenderwright.reading.package import Files
from tests.model.packages import change, load
from tests.replacing import replace

HERE = Place("items/420.yaml")
METHOD = Method("test.area", "Area", "A", Citation("none"), "any", {}, (), lambda: MappingProxyType({}), {})


def record(si: object, dimension: str = "area", unit: str = "m2") -> Record:
    symbol = Symbol("area", "Area", dimension, unit)
    return Record({"zone.a.area": Value("zone.a.area", si, symbol, Working(METHOD, "", {}))})


def line(**fields: object) -> Line:
    made = Line(line="a", text="Text", price="rate", here=HERE, takes=Reference("value", "zone.a.area", HERE))
    return replace(made, **fields)  # type: ignore[arg-type]


def step(text: str) -> object:
    return parse_quantity(text, "any")


def number(made: Line, si: float, **shown: str) -> str:
    quantity = line_quantity(made, record(si, **shown))
    assert quantity is not None
    return str(quantity)


@pytest.mark.parametrize(
    ("si", "by", "text"),
    [
        (459.2, "5 m2", "460 m2"),
        (460.0, "5 m2", "460 m2"),  # an exact multiple does not go up
        (460.0 + 1e-10, "5 m2", "460 m2"),  # nor what is one but for the last bit of a float
        (460.01, "5 m2", "465 m2"),
        (0.0, "5 m2", "0 m2"),
        (0.3, "0.1 m2", "0.3 m2"),  # 3 x 0.1 is more than 0.3 in floats
        (0.7, "0.1 m2", "0.7 m2"),
        (10.0, "2.5 m2", "10 m2"),
        (9.0, "100 ft2", "100 ft2"),
    ],
)
def test_rounding_up_keeps_exact_multiples(si: float, by: str, text: str) -> None:
    assert number(line(round_up=step(by)), si) == text


@given(st.integers(0, 10**6), st.sampled_from(["5 m2", "0.1 m2", "2.5 m2", "0.25 m2", "1 m2"]))
def test_every_exact_multiple_stays(count: int, by: str) -> None:
    size = Decimal(by.split()[0])
    quantity = line_quantity(line(round_up=step(by)), record(float(count * size)))
    assert quantity is not None
    assert quantity.number == count * size


@given(st.floats(0, 1e6), st.sampled_from(["5 m2", "0.1 m2", "1 m2"]))
def test_rounding_up_is_up_by_less_than_one_step(si: float, by: str) -> None:
    quantity = line_quantity(line(round_up=step(by)), record(si))
    assert quantity is not None
    over = quantity.number - Decimal(si)
    size = Decimal(by.split()[0])
    assert -Decimal("1e-6") <= over < size


@pytest.mark.parametrize(
    ("fields", "text"),
    [
        ({}, "459 m2"),  # three digits where nothing says otherwise
        ({"unit": "ft2"}, "4944 ft2"),
        ({"share": parse_quantity("50 %", "fraction")}, "230 m2"),
        ({"share": parse_quantity("50 %", "fraction"), "round_up": step("5 m2")}, "230 m2"),
        ({"round_up": step("5 m2"), "unit": "m²"}, "460 m2"),
    ],
)
def test_a_taken_quantity_is_in_the_unit_of_the_line(fields: dict[str, object], text: str) -> None:
    assert number(line(**fields), 459.3) == text


def test_a_written_quantity_is_as_written() -> None:
    made = line_quantity(line(takes=None, quantity=step("12.50 m2"), basis="surveyed"), Record())
    assert made is not None
    assert (str(made), made.basis, made.value) == ("12.50 m2", "surveyed", None)


def test_a_line_without_a_quantity_is_one_lump() -> None:
    made = line_quantity(line(takes=None, price="lump"), Record())
    assert made is not None
    assert str(made) == "1 lump sum"


@pytest.mark.parametrize("si", [None, "text"])
def test_a_value_that_is_no_number_gives_no_quantity(si: object) -> None:
    assert line_quantity(line(), record(si)) is None
    assert line_quantity(line(), Record()) is None


@pytest.mark.parametrize(
    ("fields", "code"),
    [
        ({"unit": "kg"}, "wrong-dimension"),
        ({"unit": "acre"}, "bad-quantity"),
        ({"unit": "ton"}, "ambiguous-unit"),
        ({"round_up": step("5 kg")}, "wrong-dimension"),
        ({"unit": "m2", "round_up": step("5 kg")}, "wrong-dimension"),
        ({"round_up": step("0 m2")}, "bad-quantity"),
        ({"round_up": step("0.0000001 m2")}, "bad-quantity"),  # nothing to a millionth of the unit
    ],
)
def test_a_unit_or_step_that_does_not_fit_gives_a_notice_and_no_quantity(
    starter: Files, fields: dict[str, object], code: str
) -> None:
    package, _ = load(starter)
    item = package.items[-1]
    spoilt = replace(package, items=(replace(item, lines=(line(**fields),)),))
    values = record(459.0)
    (notice,) = quantity_mistakes(spoilt, values)
    assert (notice.code, notice.place) == (code, HERE)
    assert notice.message.startswith("line 420.a: ")
    assert line_quantity(line(**fields), values) is None
    assert quantity_mistakes(replace(spoilt, items=(replace(spoilt.items[0], withdrawn=True),)), values) == []


def test_a_step_of_nothing_in_a_package_is_told(starter: Files) -> None:
    package, notices = load(change(starter, "items/420-underwater-shell-coat.yaml", "round_up: 5 m2", "round_up: 0 m2"))
    assert notices == []
    value = record(100.0).values["zone.a.area"]
    found = quantity_mistakes(package, Record({"coating.underwater-spot.area": value}))
    assert [notice.code for notice in found] == ["bad-quantity"]


def test_a_whole_number_is_written_without_decimals_and_another_with_its_own() -> None:
    assert [written_number(Decimal(text)) for text in ("26.0", "30000.00", "1E+2", "0.50")] == [
        "26",
        "30\N{NO-BREAK SPACE}000",
        "100",
        "0.50",
    ]
