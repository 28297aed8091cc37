from __future__ import annotations

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.shots import METHOD, Extent, plate_shots


@pytest.mark.parametrize(
    ("plates", "extent", "shots"),
    [
        (0, "all plates", 0),
        (1, "selected plates", 1),
        (9, "selected plates", 3),
        (10, "selected plates", 4),
        (164, "all plates", 328),
        (3, "substantial corrosion", 15),
    ],
)
def test_readings_of_plates(plates: int, extent: Extent, shots: int) -> None:
    # IMO ESP Code, tables of interpretation: one plate in three; two a plate; a pattern of five a panel.
    assert plate_shots(plates, extent) == shots


def test_readings_of_members() -> None:
    # IMO ESP Code: a girder 3 + 1, a longitudinal in way of substantial corrosion 3 + 3.
    outputs = METHOD.run(plates=2, extent="all plates", girders=3, longitudinals=2)
    assert outputs == {"plates": 4.0, "members": 24.0, "shots": 28.0}


def test_refuses_fewer_than_no_plates() -> None:
    with pytest.raises(OutOfRange, match="plates"):
        plate_shots(-1, "all plates")
    with pytest.raises(OutOfRange, match="members"):
        METHOD.run(plates=2, extent="all plates", girders=-3)
