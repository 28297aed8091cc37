from __future__ import annotations

from typing import Any

import pytest

from tenderwright.calculations.alone import run_alone
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.renewal.bad_spaces import METHOD, WHY, bad_spaces

SHELL: dict[str, Any] = {
    "frames": [12.0, 12.6, 13.2, 13.8],
    "seams": [[0.1] * 3, [1.1] * 3, [2.1] * 3],
    "strakes": [{"strake": name, "thickness": [0.010] * 3, "butts": []} for name in ("B", "C")],
}


def forecast(*shots: tuple[str, float, float, float], interval: float = 5.0) -> dict[str, Any]:
    """Make a forecast of readings to port: strake, place, and mm at two surveys ten years apart."""
    readings = [
        {"survey": n, "date": day, "strake": s, "side": "port", "at": x, "as_built": 0.010, "measured": mm / 1e3}
        for s, x, first, last in shots
        for n, day, mm in ((1, "2015-10-06", first), (2, "2025-10-06", last))
    ]
    plates = [{"strake": name, "ends": [12.0, 12.6, 13.2, 13.8]} for name in ("B", "C")]
    zones = [{"strakes": ["B", "C"], "allowable": 0.25}]
    survey = {"readings": readings, "plates": plates, "zones": zones}
    return {
        "survey": survey,
        "frames": SHELL["frames"],
        "docking": "2025-10-06",
        "interval": interval * 365.25 * 86400.0,
    }


def test_a_space_is_bad_now_before_the_next_docking_or_for_a_pit() -> None:
    """Limit 7.5 mm: 7.4 is beyond it; 7.9 losing 0.1 mm a year is in five years; 9.0 is not."""
    ahead = forecast(("B", 12.3, 7.4, 7.4), ("B", 12.9, 8.9, 7.9), ("C", 12.3, 9.5, 9.0), ("C", 13.5, 9.5, 9.4))
    found = bad_spaces(SHELL, ahead, [{"strake": "C", "side": "port", "at": 13.4}])
    assert [(one["strake"], round(one["at"], 2), one["why"]) for one in found.spaces()] == [
        ("B", 12.3, WHY[3]),
        ("B", 12.9, WHY[2]),
        ("C", 13.5, WHY[1]),
    ]
    counts = {one["strake"]: one for one in found.by_strake()}
    assert counts["B"] == {"strake": "B", "sampled": 2, "bad": 2, "renewed": 2, "unsampled": 4}
    assert counts["C"] == {"strake": "C", "sampled": 2, "bad": 0, "renewed": 1, "unsampled": 4}


def test_the_time_to_the_next_docking_decides() -> None:
    ahead = [("B", 12.9, 8.9, 7.9)]
    assert METHOD.run(shell=SHELL, forecast=forecast(*ahead, interval=3.9))["spaces"] == 0.0
    assert METHOD.run(shell=SHELL, forecast=forecast(*ahead, interval=4.1))["next"] == 1.0


def test_an_item_of_its_own_renews_the_whole_of_its_stretch_and_counts_apart() -> None:
    apart = [{"item": "335", "strake": "B", "side": "port", "from": 12.0, "to": 13.2}]
    found = METHOD.run(shell=SHELL, forecast=forecast(("B", 12.3, 7.4, 7.4), ("B", 13.5, 7.4, 7.4)), apart=apart)
    assert (found["spaces"], found["apart"]) == (1.0, 2.0)
    assert [one["item"] for one in found["list"]] == ["", "335", "335"]
    both = [{"item": "335", "strake": "B", "from": 12.0, "to": 13.2}]
    assert METHOD.run(shell=SHELL, forecast=forecast(("B", 12.3, 7.4, 7.4)), apart=both)["apart"] == 4.0


def test_its_example_has_each_reason_and_a_strange_strake_is_refused() -> None:
    found = {output.symbol.name: output.si for output in run_alone(METHOD, METHOD.example)}
    assert (found["now"], found["pits"], found["apart"]) == (2.0, 1.0, 2.0)
    with pytest.raises(OutOfRange, match="strakes"):
        bad_spaces(SHELL, forecast(("B", 12.3, 9.0, 9.0)), [{"strake": "Q", "side": "port", "at": 12.3}])
