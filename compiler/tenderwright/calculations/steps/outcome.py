"""What becomes of a calculation: its result, or why there is none."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Generic, TypeVar

from msgspec import Struct

from tenderwright.model.package import Package
from tenderwright.notices import Notice

R = TypeVar("R")


class Absent(Struct, frozen=True):
    """There is no result."""

    why: str
    """In words that go on from "not calculated: "."""

    def passed_on(self) -> Absent:
        """Give what becomes of a calculation that rests on this one."""
        return self


class Lacking(Absent, frozen=True):
    """The package has not the data; `why` says what would supply it."""


class Waiting(Lacking, frozen=True):
    """The package has the file, and something in it is still `todo`."""


class NotAsked(Absent, frozen=True):
    """Nothing in the package asks for it."""


class Failed(Absent, frozen=True):
    """The data cannot be calculated with; the notice stands at their place."""

    notice: Notice
    more: tuple[Notice, ...] = ()
    """Further notices, where several places are at fault."""

    def passed_on(self) -> Absent:
        """Give what becomes of a calculation that rests on this one."""
        return Resting(f"what it rests on could not be calculated: {self.why}")


class Resting(Absent, frozen=True):
    """What it rests on has a mistake that is told where it was made."""


def without_file(package: Package, file: str) -> Lacking | Resting:
    """Give what becomes of a calculation for want of a file: it is not there, waits for something, or has a mistake."""
    broken = package.broken
    if file in broken.waiting_files:
        return Waiting(broken.waiting_files[file])
    return Resting(f"{file} has a mistake") if file in broken.files else Lacking(f"it needs {file}")


class Each(Mapping[str, R], Generic[R]):
    """The results of a calculation done for each of several things, by their names; iterates over those there are."""

    def __init__(self, outcomes: Mapping[str, R | Absent]) -> None:
        self.outcomes = dict(outcomes)
        self._results: dict[str, R] = {k: o for k, o in outcomes.items() if not isinstance(o, Absent)}

    def __getitem__(self, name: str) -> R:
        return self._results[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._results)

    def __len__(self) -> int:
        return len(self._results)

    @property
    def absent(self) -> Mapping[str, Absent]:
        """Give those without a result."""
        return {name: outcome for name, outcome in self.outcomes.items() if isinstance(outcome, Absent)}

    def first_absent(self) -> Absent | None:
        """Give why what needs every one of them cannot be calculated; None where all are there."""
        told = [(name, outcome) for name, outcome in self.absent.items() if not isinstance(outcome, NotAsked)]
        for name, outcome in told:
            if not isinstance(outcome, Lacking):
                return Resting(f"`{name}` could not be calculated")
        return next((outcome for _, outcome in told), None)
