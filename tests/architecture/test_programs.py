"""A program that the machine lacks skips a test, but not in CI; what takes long is made once for all workers."""

from __future__ import annotations

from pathlib import Path
from typing import cast

import pytest

from tests.once import once
from tests.programs import lacking


@pytest.mark.parametrize(("in_ci", "outcome"), [(False, pytest.skip.Exception), (True, pytest.fail.Exception)])
def test_what_is_lacking_skips_a_test_but_fails_it_in_ci(
    in_ci: bool, outcome: type[BaseException], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("tests.programs.IN_CI", in_ci)
    with pytest.raises(outcome, match="the printing press is not on this machine"):
        lacking("the printing press")


class _Worker:
    """As much of a worker's factory of folders as is used."""

    def __init__(self, run: Path, name: str) -> None:
        self.base = run / name

    def getbasetemp(self) -> Path:
        return self.base


def test_two_workers_share_what_the_first_made(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PYTEST_XDIST_WORKER", "gw0")
    made: list[Path] = []

    def make(folder: Path) -> Path:
        made.append(folder)
        return folder / "edition"

    one, other = (once(cast(pytest.TempPathFactory, _Worker(tmp_path, name)), "both", make) for name in ("0", "1"))
    assert made == [one.parent]
    assert one == other
    assert one.is_relative_to(tmp_path)
