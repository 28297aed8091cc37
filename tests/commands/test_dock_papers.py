"""A mistake in the award or in the papers from the dock stops only what rests on them."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.pricing.in_dock.sandling import AWARD, WEEK, write_docked

from .run import Runner

APART = "1 mistake in the papers from the dock, on which this does not rest"
SLIPS = {
    "a line that is none": {
        "week_1": WEEK.replace(
            "line: 320.a\n    quantity: 48 each\n    cause", "line: 390.a\n    quantity: 48 each\n    cause"
        )
    },
    "a broken file": {"week_1": WEEK.replace("until: 2028-04-09", "until: [")},
    "another sum": {"award": AWARD.replace("36760", "36770")},
}


@pytest.fixture(params=SLIPS.values(), ids=list(SLIPS))
def root(request: pytest.FixtureRequest, tmp_path: Path) -> Path:
    return write_docked(tmp_path / "s", **request.param)


def test_bids_are_compared_and_a_grant_is_written(run: Runner, root: Path, tmp_path: Path) -> None:
    for words in (("bids", "compare", root), ("grant", root, "capital-activity")):
        ran = run(*words, "--out", tmp_path / "made")
        assert ran.code == 0, ran.err
        assert APART in ran.err
        assert "owner/award.yaml:" in ran.err or "owner/in-dock/week-1.yaml:" in ran.err


def test_the_owners_papers_are_built(run: Runner, tmp_path: Path) -> None:
    root = write_docked(tmp_path / "s", **SLIPS["a line that is none"])
    ran = run("build", root, "--only", "owner", "--out", tmp_path / "made")
    assert ran.code == 0, ran.err
    assert APART in ran.err


def test_what_rests_on_them_is_not(run: Runner, root: Path, tmp_path: Path) -> None:
    assert run("check", root).code == 1
    ran = run("statement", root, "--out", tmp_path / "made")
    assert ran.code == 1
    assert "nothing was written" in ran.err
    assert not (tmp_path / "made").exists()


def test_a_mistake_elsewhere_stops_them_still(run: Runner, tmp_path: Path) -> None:
    root = write_docked(tmp_path / "s")
    rates = root / "owner" / "rates.yaml"
    rates.write_text(rates.read_text("utf-8").replace("160.a:", "390.a:"), "utf-8")
    for words in (("bids", "compare", root), ("grant", root, "capital-activity")):
        assert run(*words, "--out", tmp_path / "made").code == 1
