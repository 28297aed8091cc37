from __future__ import annotations

import pytest

from tenderwright.calculations.coatings.immersed_area import METHOD, immersed_area, immersed_area_rough
from tenderwright.calculations.method import OutOfRange


def test_the_published_example() -> None:
    # Nicholls's Seamanship and Nautical Knowledge, p. 482: 400 by 54 by 15 ft, Cb 0.8: 27 480 ft²;
    # roughly 27 600 ft².
    assert immersed_area(400, 54, 15, 0.8) == pytest.approx(27_480, abs=1e-6)
    assert immersed_area_rough(400, 54, 15) == 27_600


def test_without_a_block_coefficient_the_area_is_rough() -> None:
    found = METHOD.run(length=46.0, beam=9.2, draught=3.2)
    assert found == {"immersed": None, "rough": pytest.approx(46.0 * 12.4)}


@pytest.mark.parametrize("changed", [{"length": 0.0}, {"beam": 60.0}, {"draught": -1.0}, {"block_coefficient": 1.2}])
def test_what_is_no_hull_is_refused(changed: dict[str, float]) -> None:
    with pytest.raises(OutOfRange):
        METHOD.run(**{"length": 46.0, "beam": 9.2, "draught": 3.2, "block_coefficient": 0.5} | changed)
