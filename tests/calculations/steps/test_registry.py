"""Every step of the ship's calculation is found, has a name of its own, and takes what there is."""

from __future__ import annotations

from collections import Counter
from typing import get_type_hints

from tenderwright.calculations.steps.registry import steps
from tenderwright.calculations.steps.runner import FILES, NAMED, order_of
from tenderwright.calculations.steps.step import Step
from tenderwright.model.package import Package

KNOWN = {*FILES, *Package.__struct_fields__, "package"}


def test_each_name_is_given_once() -> None:
    assert [name for name, count in Counter(step.name for step in steps()).items() if count > 1] == []


def test_each_takes_steps_or_parts_of_the_package() -> None:
    names = {step.name for step in steps()}
    assert [(s.name, t.name) for s in steps() for t in s.takes if t.name not in names | KNOWN] == []
    assert [s.name for s in steps() if s.each and s.each not in {*NAMED, *names}] == []


def test_they_rest_on_each_other_without_circles() -> None:
    assert set(order_of(steps())) == {step.name for step in steps()}


def test_a_step_of_a_method_keeps_only_what_the_method_gives() -> None:
    def unknown(step: Step[object]) -> set[str]:
        assert step.method is not None
        return set(step.names or ()) - {symbol.name for symbol in step.method.outputs}

    assert {step.name: unknown(step) for step in steps() if step.method and unknown(step)} == {}


def test_no_lazy_step_keeps_values() -> None:
    assert [step.name for step in steps() if step.lazy and step.method] == []


def test_each_step_says_what_it_gives() -> None:
    assert [step.name for step in steps() if "return" not in get_type_hints(step.function)] == []
