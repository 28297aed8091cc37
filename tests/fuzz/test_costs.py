"""What a changed number costs is measured in a process of its own, and ends with it."""

from __future__ import annotations

import pytest

from tests.fuzz import costs as module
from tests.fuzz.breaks import NUMBERED, Break
from tests.fuzz.broken_package import BrokenPackage
from tests.fuzz.costs import cost_of, costs
from tests.pipeline.packages import starter

ONE = Break("package.yaml", 1, NUMBERED, 0)


@pytest.fixture(scope="module")
def package(tmp_path_factory: pytest.TempPathFactory) -> BrokenPackage:
    return BrokenPackage(starter(tmp_path_factory.mktemp("costs") / "sandling"))


def test_a_run_goes_on_where_another_with_its_seed_ended(
    package: BrokenPackage, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    done: list[str] = []

    def kept(_: BrokenPackage, one: Break) -> module.Cost:
        done.append(str(one))
        return module.Cost("", 1, 0.1, 2**20)

    monkeypatch.setattr(module, "cost_of", kept)
    assert costs([package], 7, float("inf"), 6) == 0
    whole, done = done, []
    assert costs([package], 7, float("inf"), 2, skip=4) == 0
    assert done == whole[4:]
    assert "2 numbers changed, 0 failures" in capsys.readouterr().out


def test_a_sound_change_costs_little_and_leaves_the_package_as_it_was(package: BrokenPackage) -> None:
    cost = cost_of(package, ONE)
    assert (cost.fault, cost.seconds < module.MOST_SECONDS, cost.memory > 0) == ("", True, True)
    assert (package.root / "package.yaml").read_bytes().decode() == package.texts["package.yaml"]


@pytest.mark.parametrize(
    ("work", "fault"),
    [("1 // 0", "ZeroDivisionError"), ("bytes(8 * 2**30)", "MemoryError"), ("__import__('os')._exit(9)", "ended")],
)
def test_what_goes_wrong_is_told(
    package: BrokenPackage, monkeypatch: pytest.MonkeyPatch, work: str, fault: str
) -> None:
    monkeypatch.setattr(module, "_notices", lambda *_: eval(work))
    assert fault in cost_of(package, ONE).fault


def test_what_takes_too_long_is_broken_off_where_it_stands(
    package: BrokenPackage, monkeypatch: pytest.MonkeyPatch
) -> None:
    def forever(*_: object) -> int:
        while True:
            pass

    monkeypatch.setattr(module, "MOST_SECONDS", 0.1)
    monkeypatch.setattr(module, "_notices", forever)
    monkeypatch.setattr(module.resource, "setrlimit", lambda *_: None)
    fault = cost_of(package, ONE).fault
    assert "more than" in fault
    assert "forever" in fault
