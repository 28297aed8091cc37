"""The verdict over the potentials as last read."""

from __future__ import annotations

from typing import Any

from tenderwright.calculations.care.potentials import potentials


def read(place: str, reading: float, day: str = "2026-05-04", **more: Any) -> dict[str, Any]:
    return {"day": day, "place": place, "reading": reading, "cell": "silver", **more}


def test_the_least_protected_place_governs() -> None:
    found = potentials([read("aft", -0.84), read("forward", -0.93), read("midships", -0.77)])
    assert found.judged.met is False
    assert found.worst.place == "midships"
    assert [limit.name for limit in found.judged.passed] == ["protected, midships"]


def test_only_the_last_reading_of_a_place_is_judged_and_a_jump_is_told() -> None:
    found = potentials([read("aft", -0.92, "2026-05-04"), read("aft", -0.70, "2025-05-04")])
    assert found.judged.met is True
    assert found.worst.jumped


def test_a_pass_within_the_uncertainty_of_the_cell_is_not_known() -> None:
    assert potentials([read("aft", -0.805)]).judged.met is None


def test_brackish_water_fails_what_would_have_passed() -> None:
    assert potentials([read("aft", -0.82)]).judged.met is True
    assert potentials([read("aft", -0.82, salinity=3.5)]).judged.met is False


def test_on_wood_protection_can_be_too_much() -> None:
    assert potentials([read("rudder", -0.57)], "wood").judged.met is True
    assert potentials([read("rudder", -0.95)], "wood").judged.met is False
