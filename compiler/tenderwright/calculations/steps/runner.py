"""Runs the steps: each once, in the order in which they rest on each other, and keeps outcome and working together."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from graphlib import TopologicalSorter
from typing import Any, TypeVar

from tenderwright.calculations.method import Method, OutOfRange
from tenderwright.calculations.steps.kept import Kept
from tenderwright.calculations.steps.outcome import Absent, Each, Failed, Lacking, NotAsked, Waiting, without_file
from tenderwright.calculations.steps.step import Step, Take, Uses
from tenderwright.calculations.value import Record, Value, Working
from tenderwright.model.package import Package
from tenderwright.notices import Notice, Place
from tenderwright.quantities.customs import telling_in

R = TypeVar("R")

FILES = {
    "tender": "package.yaml",
    "particulars": "vessel/particulars.yaml",
    "frames": "vessel/frames.yaml",
    "offsets": "vessel/offsets.yaml",
    "curves": "vessel/curves.yaml",
    "sections": "vessel/sections.yaml",
    "lightship": "vessel/lightship.yaml",
    "docking_plan": "vessel/docking-plan.yaml",
    "condition": "vessel/condition.yaml",
    "timber": "vessel/timber.yaml",
    "tow": "tow.yaml",
    "care": "care/plan.yaml",
}
"""The parts of a package that a step may take, each with the file that holds it."""

NAMED = {
    "tanks": ("tank", "vessel/tanks.yaml"),
    "zones": ("zone", "vessel/zones.yaml"),
    "schemes": ("scheme", "vessel/zones.yaml"),
    "facilities": ("facility", "facilities/"),
    "strakes": ("strake", "vessel/strakes.yaml"),
}
"""The lists of a package that a step may be done for each of: the field that names an entry, and where it is kept."""


OF_METAL = frozenset(
    {
        "anode_life",
        "anode_need",
        "anodes",
        "condition_of_shell",
        "gauging",
        "known_rivets",
        "members",
        "pitting",
        "plate_values",
        "regimes",
        "renewals",
        "shell_plan",
        "shell_zones",
        "survey_readings",
        "works",
    }
)
"""Modules of `ship/` whose steps are of plates, rivets and anodes, for which nothing asks where her hull has none."""
NOT_OF_METAL = NotAsked("her hull is not of metal, and has no plating, rivets or anodes of such a hull")


class Calculated:
    """What was calculated of a ship."""

    def __init__(self, package: Package, steps: Sequence[Step[Any]], kept: Kept | None = None) -> None:
        """Run the steps; with `kept`, what was found before by the same inputs is not found again."""
        self.record = Record()
        self._package = package
        self._kept = kept
        hull = package.particulars.hull if package.particulars is not None else None
        self._of_metal = hull is None or hull.of_metal
        self._steps = {step.name: step for step in steps}
        self._outcomes: dict[str, Any] = {}
        for name in order_of(steps):
            if not self._steps[name].lazy:
                self._of(name)

    def outcome(self, step: Step[R]) -> R | Absent:
        """Give the outcome of a step."""
        found: R | Absent = self._of(step.name)
        return found

    def found(self, step: Step[R]) -> R | None:
        """Give the result of a step, or None where there is none."""
        outcome = self.outcome(step)
        return None if isinstance(outcome, Absent) else outcome

    def each(self, step: Step[Each[R]]) -> Mapping[str, R]:
        """Give the results there are of a step done for each of several things, by name."""
        return self.found(step) or {}

    def _of(self, name: str) -> Any:
        if name not in self._outcomes:
            step = self._steps[name]
            with telling_in(self._package.units, american=self._package.american):
                self._outcomes[name] = self._for_each(step) if step.each else self._once(step, "", None)
        return self._outcomes[name]

    def _for_each(self, step: Step[Any]) -> Each[Any] | Absent:
        things = self._things(step.each)
        if isinstance(things, Absent):
            return things
        done = {key: self._once(step, key, thing) for key, thing in things.items()}
        return Each(done | {key: self._absent(step, key, waits) for key, waits in self._waiting(step.each)})

    def _waiting(self, each: str) -> Iterator[tuple[str, Waiting]]:
        """Yield the things that are left out since something in them is still `todo`."""
        kind = NAMED[each][0] if each in NAMED else ""
        for (waiting, name), why in self._package.broken.waiting.items():
            if waiting == kind:
                yield name, Waiting(why)

    def _things(self, each: str) -> Mapping[str, Any] | Absent:
        if each in self._steps:
            outcome: Mapping[str, Any] | Absent = self._of(each)
            return outcome
        field = NAMED[each][0]
        return {getattr(entry, field): entry for entry in getattr(self._package, each)}

    def _once(self, step: Step[Any], key: str, thing: Any) -> Any:
        if not self._of_metal and step.function.__module__.rpartition(".")[2] in OF_METAL:
            return NOT_OF_METAL
        place = getattr(thing, "here", None)
        given: dict[str, Any] = {step.thing: thing} if step.thing else {}
        waiting: Waiting | None = None
        for take in step.takes:
            taken = self._taken(take, step, key)
            if isinstance(taken, (Lacking, NotAsked)) and take.optional:
                waiting = taken if isinstance(taken, Waiting) else waiting
                taken = None
            if isinstance(taken, Absent) and not take.either:
                return self._absent(step, key, taken.passed_on())
            given[take.name] = taken
            place = place or getattr(taken, "here", None)
        try:
            made = step.function(**given)
        except OutOfRange as error:
            return self._fail(step, key, str(error), place or Place("package.yaml"))
        if isinstance(made, Absent):
            return self._absent(step, key, waiting if waiting and isinstance(made, Lacking) else made)
        if step.method is None:
            self._tell(getattr(made, "notices", ()))
            return made
        return self._use(step, step.method, key, made)

    def _taken(self, take: Take, step: Step[Any], key: str) -> Any:
        if take.name == "package":
            return self._package
        if take.name in self._steps:
            outcome = self._of(take.name)
            of_same = isinstance(outcome, Each) and self._steps[take.name].each == step.each and not take.whole
            return outcome.outcomes[key] if of_same else outcome
        part = getattr(self._package, take.name)
        waits = self._package.broken.awaits(take.name.removesuffix("s")) if isinstance(part, tuple) else ""
        if waits:
            return Waiting(waits)
        if part is not None:
            return part
        return without_file(self._package, FILES[take.name])

    def _use(self, step: Step[Any], own: Method[Any], key: str, uses: Uses) -> Any:
        method = uses.by or own
        inputs = {name: given.si for name, given in uses.inputs.items()}
        try:
            result = self._kept.run(method, inputs) if self._kept and step.kept else method.kernel(**inputs)
        except OutOfRange as error:
            return self._fail(step, key, f"{uses.of}: {error}" if uses.of else str(error), uses.at)
        figures = method.figures(result)
        working = Working(method, uses.about, uses.inputs)
        symbols = {symbol.name: symbol for symbol in method.outputs}
        for output, name in step.value_names(key).items():
            if output in figures:
                self.record.values[name] = Value(name, figures[output], symbols[output], working)
        return result

    def _fail(self, step: Step[Any], key: str, why: str, at: Place) -> Failed:
        title = step.method.title if step.method else step.name.replace("_", " ")
        notice = Notice("out-of-range", at, f"{title[0].lower()}{title[1:]}: {why}")
        failed = Failed(why, notice)
        self._absent(step, key, failed)
        return failed

    def _absent(self, step: Step[Any], key: str, outcome: Absent) -> Absent:
        if isinstance(outcome, NotAsked):
            return outcome
        kept = self.record.missing if isinstance(outcome, Lacking) else self.record.failed
        kept.update(dict.fromkeys(step.value_names(key).values(), outcome.why))
        if isinstance(outcome, Failed):
            self._tell((outcome.notice, *outcome.more))
        return outcome

    def _tell(self, notices: Iterable[Notice]) -> None:
        self.record.notices += [notice for notice in notices if notice not in self.record.notices]


def order_of(steps: Sequence[Step[Any]]) -> Iterator[str]:
    """Give the names of the steps so that each comes after all that it takes; raises graphlib.CycleError."""
    names = {step.name for step in steps}
    sorter: TopologicalSorter[str] = TopologicalSorter()
    for step in steps:
        sorter.add(step.name, *(take.name for take in step.takes if take.name in names))
        if step.each in names:
            sorter.add(step.name, step.each)
    yield from sorter.static_order()
