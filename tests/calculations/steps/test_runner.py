"""The runner: each step once, in order, with outcome and working kept together."""

from __future__ import annotations

from graphlib import CycleError

import pytest

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.steps.outcome import Absent, Each, Failed, Lacking, NotAsked, Resting
from tenderwright.calculations.steps.runner import Calculated, order_of
from tenderwright.calculations.steps.step import Step, Uses, step, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.package import Broken, Package
from tenderwright.notices import Place

HERE = Place("vessel/some.yaml", 3)


def doubled(figure: float) -> dict[str, float]:
    if figure < 0:
        raise OutOfRange(f"{figure} is less than nothing")
    return {"twice": 2 * figure}


DOUBLE: Method[dict[str, float]] = Method(
    name="test.double",
    title="Twice a figure",
    formula="2 a",
    source=Citation("Arithmetic", standing="derived"),
    valid="from nothing up",
    inputs={"figure": {"type": "number"}},
    outputs=(Symbol("twice", "twice the figure", "", ""),),
    kernel=doubled,
    example={"figure": 2},
)


@step_of(DOUBLE, "first")
def first() -> Uses:
    return Uses("three", {"figure": Given(3.0, "3", HERE)}, HERE)


@step_of(DOUBLE, "second")
def second(first: dict[str, float]) -> Uses:
    return Uses("what the first gave", {"figure": Given(first["twice"], "", "first.twice")}, HERE)


@step_of(DOUBLE, "bad")
def bad() -> Uses:
    return Uses("", {"figure": Given(-1.0, "-1", HERE)}, HERE, of="the pump")


@step_of(DOUBLE, "after-bad")
def after_bad(bad: dict[str, float]) -> Uses:
    return Uses("", {"figure": Given(bad["twice"], "", "bad.twice")}, HERE)


@step_of(DOUBLE, "short")
def short() -> Uses | Absent:
    return Lacking("it needs vessel/some.yaml")


@step_of(DOUBLE, "after-short")
def after_short(short: dict[str, float]) -> Uses:
    return Uses("", {"figure": Given(short["twice"], "", "short.twice")}, HERE)


@step()
def either(short: dict[str, float] | None, first: dict[str, float] | None) -> tuple[bool, bool]:
    return short is None, first is None


@step()
def needs_hull(offsets: object) -> str:
    return "made"


@step()
def three() -> dict[str, float]:
    return {"a": 1.0, "b": -2.0, "c": 3.0}


@step_of(DOUBLE, "of.{}", each="three")
def each_of(one: float, three: dict[str, float]) -> Uses | Absent:
    return NotAsked("it is the third") if one == 3.0 else Uses("", {"figure": Given(one, "", HERE)}, HERE)


@step(each="three")
def same(one: float, each_of: dict[str, float]) -> float:
    return each_of["twice"]


@step()
def whole(each_of: Each[dict[str, float]]) -> tuple[list[str], Absent | None]:
    return list(each_of), each_of.first_absent()


CALLS: list[str] = []


@step(lazy=True)
def late() -> int:
    CALLS.append("late")
    return len(CALLS)


def package(broken: frozenset[str] = frozenset()) -> Package:
    return Package(None, None, None, None, None, broken=Broken(files=broken))


def run(*steps: Step[object], broken: frozenset[str] = frozenset()) -> Calculated:
    return Calculated(package(broken), steps)


def test_a_step_is_run_after_what_it_takes_whatever_the_order_of_the_list() -> None:
    found = run(second, first)
    assert found.outcome(second) == {"twice": 12.0}
    assert list(order_of([second, first])) == ["first", "second"]


def test_the_record_keeps_the_very_inputs_of_the_call() -> None:
    value = run(second, first).record.values["second.twice"]
    assert value.si == 12.0
    assert value.working.inputs["figure"] == Given(6.0, "", "first.twice")
    assert value.working.method.run(figure=6.0)["twice"] == value.si


def test_out_of_range_is_a_notice_at_its_place_and_what_rests_on_it_tells_no_second() -> None:
    found = run(bad, after_bad)
    outcome = found.outcome(bad)
    assert isinstance(outcome, Failed)
    assert found.record.notices == [outcome.notice]
    assert (outcome.notice.place, outcome.notice.message) == (
        HERE,
        "twice a figure: the pump: -1.0 is less than nothing",
    )
    assert isinstance(found.outcome(after_bad), Resting)
    assert set(found.record.failed) == {"bad.twice", "after-bad.twice"}


def test_what_lacks_data_says_what_would_supply_it_to_all_that_rests_on_it() -> None:
    found = run(short, after_short)
    assert found.outcome(after_short) == Lacking("it needs vessel/some.yaml")
    assert found.record.missing == {
        "short.twice": "it needs vessel/some.yaml",
        "after-short.twice": "it needs vessel/some.yaml",
    }
    assert found.record.notices == []


def test_a_parameter_that_may_be_none_is_none_only_where_data_are_lacking() -> None:
    assert run(either, short, first).outcome(either) == (True, False)


def test_a_part_of_the_package_that_is_not_there_is_lacking_and_a_broken_one_is_not() -> None:
    assert run(needs_hull).outcome(needs_hull) == Lacking("it needs vessel/offsets.yaml")
    assert isinstance(run(needs_hull, broken=frozenset({"vessel/offsets.yaml"})).outcome(needs_hull), Resting)


def test_a_step_for_each_thing_takes_the_result_for_the_same_thing() -> None:
    found = run(three, each_of, same, whole)
    results = found.found(same)
    assert results is not None
    assert dict(results) == {"a": 2.0}
    assert {name: type(one) for name, one in results.absent.items()} == {"b": Resting, "c": NotAsked}
    assert found.outcome(whole) == (["a"], Resting("`b` could not be calculated"))


def test_what_nobody_asks_for_leaves_no_name() -> None:
    assert run(three, each_of).record.known == {"of.a.twice", "of.b.twice"}


def test_a_lazy_step_waits_until_it_is_asked_for_and_is_run_once() -> None:
    CALLS.clear()
    found = run(late)
    assert CALLS == []
    assert (found.outcome(late), found.outcome(late)) == (1, 1)


@step()
def hen(egg: int) -> int:
    return egg


@step()
def egg(hen: int) -> int:
    return hen


def test_a_circle_is_refused() -> None:
    with pytest.raises(CycleError):
        run(hen, egg)


def test_a_value_is_given_on_by_its_name() -> None:
    value = run(first).record.values["first.twice"]
    assert given(value, "6") == Given(6.0, "6", "first.twice")
