from __future__ import annotations

import json
from pathlib import Path

import pytest

from tenderwright.calculations.cost.classes import CLASSES, EVIDENCE_CLASSES, METHOD, class_factors
from tenderwright.calculations.method import OutOfRange


@pytest.mark.parametrize(
    ("number", "below", "above", "defined"),
    [(5, 50, 100, (0, 2)), (4, 30, 50, (1, 15)), (3, 20, 30, (10, 40)), (2, 15, 20, (30, 75)), (1, 10, 15, (50, 100))],
)
def test_published_bounds(number: int, below: float, above: float, defined: tuple[float, float]) -> None:
    # AACE International, Recommended Practice 18R-97, widest bounds (from memory); process plants.
    entry = CLASSES[number]
    assert (100 * entry.below, 100 * entry.above) == pytest.approx((below, above))
    assert (100 * entry.defined_from, 100 * entry.defined_to) == pytest.approx(defined)
    assert class_factors(number) == pytest.approx((1 - below / 100, 1 + above / 100))


def test_better_defined_work_has_the_narrower_bounds() -> None:
    for number in (5, 4, 3, 2):
        (low, high), (better_low, better_high) = class_factors(number), class_factors(number - 1)
        assert low < better_low < 1.0 < better_high < high


def test_better_evidence_makes_a_better_class() -> None:
    # Common practice, no source.
    ranked = ["earlier docking", "survey", "specification", "quotation", "opened up"]
    assert [EVIDENCE_CLASSES[evidence] for evidence in ranked] == [5, 4, 3, 2, 1]
    assert set(EVIDENCE_CLASSES.values()) == set(CLASSES)


def test_each_kind_of_evidence_that_can_be_written_has_its_class() -> None:
    schema = json.loads((Path(__file__).parents[3] / "schemas" / "rates.schema.json").read_text("utf-8"))
    line = schema["properties"]["lines"]["additionalProperties"]
    assert set(line["properties"]["evidence"]["enum"]) == set(EVIDENCE_CLASSES)


@pytest.mark.parametrize("number", [0, 6])
def test_no_other_class(number: int) -> None:
    with pytest.raises(OutOfRange, match="1 to 5"):
        class_factors(number)


def test_method_gives_low_and_high_also_of_a_credit() -> None:
    assert METHOD.run(likely=26000.0, estimate_class=4) == pytest.approx({"low": 18200.0, "high": 39000.0})
    assert METHOD.run(likely=-1000.0, estimate_class=5) == pytest.approx({"low": -2000.0, "high": -500.0})
