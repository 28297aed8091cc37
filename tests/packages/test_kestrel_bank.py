"""*Kestrel Bank*: twin screws, US units, frames from forward, curves of form and a capacity plan, and no offsets."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from tenderwright.pipeline import Compiled, compile_package, read

PACKAGE = Path(__file__).with_name("kestrel-bank")
FOOT, LONG_TON = 0.3048, 1016.0469088


@cache
def compiled() -> Compiled:
    """Compile her once."""
    return compile_package(read(PACKAGE))


def value(name: str) -> float:
    """Give a calculated figure in SI."""
    return float(compiled().calculated.record.values[name].si)


def test_her_package_has_no_mistakes() -> None:
    assert [f"{one.at}: {one.message}" for one in compiled().notices] == []


def test_she_floats_on_her_curves_of_form_as_her_drafts_were_read() -> None:
    assert value("condition.arrival.draft-aft") / FOOT == pytest.approx(11 + 10 / 12, abs=0.35)
    assert value("condition.arrival.draft-forward") / FOOT == pytest.approx(10 + 4 / 12, abs=0.35)
    assert value("condition.docking.displacement") / LONG_TON == pytest.approx(2900, abs=100)


@pytest.mark.parametrize(
    "name",
    [
        "condition.docking.gm-fluid",
        "docking.landing.upthrust",
        "blocks.first.pressure",
        "cradle.gannet-point-shiplift.cars",
        "facility.gannet-point-shiplift.drafts.over-blocks",
        "uncertainty.displacement",
    ],
)
def test_docking_is_calculated_on_curves_alone(name: str) -> None:
    assert name in compiled().calculated.record.values


def test_one_dock_takes_her_and_the_other_cannot() -> None:
    values = compiled().calculated.record.values
    assert values["facility.gannet-point-shiplift.result"].si == "pass"
    assert values["facility.lower-basin-floating-dock.result"].si == "fail"
