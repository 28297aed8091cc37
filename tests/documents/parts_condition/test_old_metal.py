from __future__ import annotations

from tenderwright.documents.edition import Heading, Table, plain
from tenderwright.documents.parts.condition import condition
from tests.calculations.ship.condition.test_regimes import analysis, of_iron
from tests.replacing import replace

from .parts import desk, text


def test_a_ship_of_mild_steel_has_no_such_heading() -> None:
    assert "Old metal" not in text("condition")


def test_strakes_of_old_metal_say_how_their_repairs_are_joined() -> None:
    package, calculated = of_iron(analyses=analysis(phosphorus="0.21 %"))
    made = condition(replace(desk(), package=package, calculated=calculated))
    assert made is not None
    assert "Analysis of shell plate" in [block.text for block in made.blocks if isinstance(block, Heading)]
    rows = [
        [plain(cell) for cell in row.cells] for block in made.blocks if isinstance(block, Table) for row in block.rows
    ]
    strake = next(cells for cells in rows if "wrought iron" in cells)
    assert strake[2].startswith("20 %: ")
    assert strake[3] == "not tested"
    assert strake[4] == "riveted only: its analysis does not pass"
    sample = next(cells for cells in rows if "phosphorus" in cells)
    assert sample[-1] == "riveted only"
    assert sample[5] == "0.210"
