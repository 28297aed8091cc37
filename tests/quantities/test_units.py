"""Units, against the documents that define them."""

from __future__ import annotations

import json
import math

import pytest

from tenderwright.calculations.registry import methods
from tenderwright.quantities.bounds import MOST
from tenderwright.quantities.spellings import AMBIGUOUS, AmbiguousUnit, spelled
from tenderwright.quantities.units import (
    EVERYDAY,
    UnknownUnit,
    dimension_of,
    everyday_units,
    known_units,
    unit,
    worked_out,
)


def test_the_table_of_everyday_units_is_what_pint_makes_of_the_definitions() -> None:
    """If this fails, `python -m tenderwright.quantities.units` writes the table anew."""
    assert EVERYDAY.read_text("utf-8") == everyday_units()


@pytest.mark.parametrize("name", known_units())
def test_a_known_unit_is_the_same_from_the_table_and_from_pint(name: str) -> None:
    assert unit(name) == worked_out(spelled(name))


@pytest.mark.parametrize(
    ("name", "factor"),
    [
        ("in", 0.0254),  # yard and pound agreement, 1959
        ("ft", 0.3048),
        ("lb", 0.45359237),
        ("nmi", 1852.0),  # SI Brochure, 9th edition, section 4 and its predecessors
        ("long_ton", 1016.0469088),  # NIST Handbook 44, Appendix C
        ("short_ton", 907.18474),
        ("US_gal", 0.003785411784),
        ("imp_gal", 0.00454609),
        ("bar", 1e5),
        ("lbf", 0.45359237 * 9.80665),
        ("mph", 1609.344 / 3600),  # NIST Handbook 44, Appendix C: a mile of 5280 feet
        ("fathom", 1.8288),  # 6 feet
        ("long_cwt", 50.80234544),
        ("oz", 0.028349523125),
        ("psi", 0.45359237 * 9.80665 / 0.0254**2),  # pound-force at standard gravity, 9.80665 m/s2
        ("deg", math.pi / 180),
        ("yr", 365.25 * 86400),
    ],
)
def test_factors(name: str, factor: float) -> None:
    assert unit(name).factor == pytest.approx(factor, rel=1e-12)


@pytest.mark.parametrize(
    ("name", "plain"),
    [("kg/m²", "kg/m2"), ("N/mm^2", "MPa"), ("t/m2", "t/m**2"), ("m^3/h", "m3/h"), ("long_ton/ft2", "long_ton/ft**2")],
)
def test_powers_are_written_in_several_ways(name: str, plain: str) -> None:
    assert unit(name).factor == pytest.approx(unit(plain).factor, rel=1e-12)
    assert unit(name).signature == unit(plain).signature


@pytest.mark.parametrize("name", ["parsec", "Nm", "m22", "m/0", "m**m", "__import__('os')", "((((", "kilofoot"])
def test_what_is_no_unit_is_refused(name: str) -> None:
    with pytest.raises(UnknownUnit):
        unit(name)


@pytest.mark.parametrize("name", sorted(AMBIGUOUS))
def test_a_unit_of_several_meanings_names_units_that_there_are(name: str) -> None:
    with pytest.raises(AmbiguousUnit) as caught:
        unit(name)
    assert caught.value.choices == AMBIGUOUS[name]
    assert {dimension_of(unit(choice)) for choice in caught.value.choices} in ({"mass"}, {"volume"}, {"length"})
    with pytest.raises(AmbiguousUnit) as caught:
        unit(f"{name}/h")
    assert [unit(choice).signature for choice in caught.value.choices]


def test_counts_and_hours_of_work_measure_something_of_their_own() -> None:
    assert {dimension_of(unit(name)) for name in ("each", "pcs", "no", "set", "shots")} == {"each"}
    assert dimension_of(unit("person_hour")) == "person_hour"
    assert unit("person_hour").signature != unit("h").signature


def test_every_unit_that_the_product_itself_writes_is_an_everyday_one() -> None:
    written = {MOST[dimension].partition(" ")[2] for dimension in MOST}
    written |= {symbol.unit for method in methods().values() for symbol in method.outputs}
    kept = json.loads(EVERYDAY.read_text("utf-8"))
    assert {name for name in written if name and name not in kept} == {"degC"}  # read without a unit's factor
