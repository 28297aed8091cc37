from __future__ import annotations

import pytest

from tenderwright.model.item import Line
from tenderwright.model.tender import CONTINGENT, OPTIONS, POOL
from tenderwright.notices import Place
from tenderwright.pricing.sections import BY_CODE, SECTIONS, section_of
from tenderwright.reading.package import Files
from tests.model.packages import load
from tests.replacing import replace


@pytest.mark.parametrize(
    ("number", "kind", "own", "price", "code"),
    [
        (110, "definite", "", "lump", "A"),
        (199, "measured", "", "rate", "A"),
        (200, "definite", "", "lump", "B"),
        (420, "definite", "", "lump", "B"),
        (420, "measured", "", "rate", "C"),
        (420, "measured", "contingent", "rate", "D"),
        (110, "definite", "contingent", "day", "D"),
        (165, "contingent", "", "hours", "E"),
        (165, "contingent", "", "markup", "E"),
        (820, "option", "", "lump", "F"),
        (820, "option", "credit", "lump", "G"),
        (820, "option", "contingent", "rate", "F"),
        (930, "provisional", "", "fixed", "H"),
    ],
)
def test_each_line_stands_in_one_section(
    starter: Files, number: int, kind: str, own: str, price: str, code: str
) -> None:
    package, _ = load(starter)
    assert package.tender is not None
    item = replace(package.items[0], item=number, kind=kind)
    line = Line(line="a", text="Text", price=price, here=Place("items/x.yaml"), kind=own)
    assert section_of(item, line, package.tender).code == code


def test_sections_are_lettered_in_order_and_what_is_in_the_base_is_definite() -> None:
    assert [section.code for section in SECTIONS] == list("ABCDEFGHI")
    assert list(BY_CODE) == list("ABCDEFGHI")
    assert {section.code for section in SECTIONS if section.in_base} == set("ABCGH")
    assert [section.code for section in SECTIONS if not section.counted({CONTINGENT, POOL, OPTIONS})] == ["I"]
