"""A slip in a section scaled from a plan is told, and sections as they are read are not."""

from __future__ import annotations

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.checks.coherence.ship import sections as rule
from tenderwright.checks.coherence.ship.shell import shell_of
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.notices import Notice
from tenderwright.quantities.quantity import parse_quantity
from tests.calculations.ship.test_sections import on_sections, read_sections, with_sections
from tests.replacing import replace


def _told(at: int, point: int, written: str) -> list[Notice]:
    read = read_sections()
    one = read.sections[at]
    breadths = (*one.half_breadths[:point], parse_quantity(written, "length"), *one.half_breadths[point + 1 :])
    changed = replace(
        read, sections=(*read.sections[:at], replace(one, half_breadths=breadths), *read.sections[at + 1 :])
    )
    package = replace(with_sections(), sections=changed)
    calculated = calculate(package)
    return list(rule.check(Ship(package, shell_of(calculated, 9.1), calculated)))


def test_sections_as_they_are_read_are_fair() -> None:
    calculated = on_sections()
    assert list(rule.check(Ship(with_sections(), shell_of(calculated, 9.1), calculated))) == []


@pytest.mark.parametrize(
    ("at", "point", "written"),
    [(3, 3, "2.93 m"), (2, 4, "37.7 m"), (4, 5, "0.38 m"), (1, 6, "5.39 m"), (5, 4, "0.20 m")],
)
def test_a_slip_is_told_at_its_half_breadth(at: int, point: int, written: str) -> None:
    (notice,) = _told(at, point, written)
    read = read_sections().sections[at]
    assert notice.code == "offset-unfair"
    assert f"half-breadth {written} of section {read.at} at {read.heights[point]} is not fair" in notice.message
