"""*Kestrel Bank*: twin screws, US units, frames from forward, curves of form and a capacity plan, and no offsets."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from tenderwright.calculations.ship.coming_out import coming_out_as_she_is
from tenderwright.cli import main
from tenderwright.commands.bids_compare import compared
from tenderwright.pipeline import Compiled, compile_package, read
from tests.fixtures.returned_bids import both_sides
from tests.outcomes import result_of
from tests.packages import walk

PACKAGE = Path(__file__).with_name("kestrel-bank")
LIFE = Path(__file__).with_name("kestrel-bank-life")
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


def test_her_tender_goes_through_addendum_bids_award_dock_and_close(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    root = walk.laid(tmp_path / "ship", PACKAGE)
    issued = walk.compiled(root)
    amended = walk.compiled(walk.laid(root, LIFE / "addendum-1"))
    told = walk.between(issued, amended)
    assert {line.number: line.manner for line in told.lines} == {"210.b": "changed"}
    assert told.bears_on_price

    assert walk.returned(root, "Gannet Point Ship Repair", 1.04, "2028-05-03") == 0
    assert walk.returned(root, "Lower Basin Dry Dock", 0.93, "2028-05-04") == 0
    for bid, dock in (
        ("gannet-point-ship-repair", "gannet-point-shiplift"),
        ("lower-basin-dry-dock", "lower-basin-floating-dock"),
    ):
        # The yards have the names of docks in facilities/, so that nobody has to say which dock is meant.
        assert f"facility: {dock}\n" in (root / "owner" / "bids" / f"{bid}.yaml").read_text("utf-8")
    _, comparison, _ = compared(*both_sides(root))
    assert [one.bid.yard for one in comparison.bids] == ["Lower Basin Dry Dock", "Gannet Point Ship Repair"]
    assert {name: fit.state for name, fit in comparison.fits.items()} == {
        "gannet-point-ship-repair": "pass",
        "lower-basin-dry-dock": "fail",
    }

    walk.compiled(walk.laid(root, LIFE / "dock"))
    capsys.readouterr()
    assert main(["statement", str(root), "--out", str(tmp_path)]) == 0
    assert main(["close", str(root), str(LIFE / "findings.yaml"), "--out", str(tmp_path)]) == 0
    walk.compiled(root)
    history = (root / "history" / "docking-2028.yaml").read_text("utf-8")
    assert "11 ft 8 in" in history
    assert " mm" not in history

    before = result_of(walk.compiled(root).calculated, coming_out_as_she_is)
    after = result_of(walk.compiled(walk.laid(root, LIFE / "afloat")).calculated, coming_out_as_she_is)
    assert before.governs.ground.startswith("coating of the underwater shell")
    assert before.governs.early.startswith("2035")
    assert after.governs.ground == "water in shaft alley", "five readings move her next docking by years"
    assert after.governs.early < after.governs.likely < "2032"
