"""The commands of README run as printed, in their order; those that lay out whole editions run in tests/laws."""

from __future__ import annotations

import re

import pytest

from .run import Ran, fences, run_readme, runnable

LONG = re.compile(r"make package|tenderwright (build|issue|verify|diff|addendum|bids compare|grant|statement|close)\b")


@pytest.fixture(scope="module")
def ran(tmp_path_factory: pytest.TempPathFactory) -> Ran:
    return run_readme(tmp_path_factory.mktemp("readme"), lambda command: not LONG.match(command))


def test_every_command_succeeds(ran: Ran) -> None:
    assert ran.code == 0, list(ran.said.items())[-1]
    assert {fence.line for fence in fences() if fence.kind == "sh"} <= set(ran.said)


def test_the_notice_it_shows_is_what_comes(ran: Ran) -> None:
    shown = [fence for fence in fences() if fence.kind == "text" and "error[" in fence.text]
    assert shown
    assert all(fence.text in ran.said[fence.line] for fence in shown)


def test_only_tests_and_what_does_not_end_are_left_out() -> None:
    commands = [command for fence in fences() if fence.kind == "sh" for command in fence.commands]
    left = [command.split("#")[0].strip() for command in commands if not runnable(command)]
    assert left == ["make test", "tenderwright build ../my-ship --out ../my-ship/build --watch"]


def test_a_bid_is_read_in_her_life(ran: Ran) -> None:
    assert (ran.copy / "cars.yaml").is_file()
    assert any("149 lines: 149 priced" in said for said in ran.said.values())
