"""Results that were kept are those that would be calculated, to the last bit and in every type."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import array_shapes, arrays
from msgspec import Struct
from msgspec.structs import replace
from numpy.typing import NDArray

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.steps.kept import Kept, _decoder, _result
from tenderwright.calculations.steps.registry import steps
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.pipeline import compile_package, read
from tenderwright.starter.write import write_starter
from tests.calculations.ship import marram

FIGURES = st.floats(allow_nan=True, allow_infinity=True)


class Part(Struct, frozen=True):
    figure: float
    words: str | None
    pairs: tuple[tuple[float, int], ...] = ()


class Found(Struct, frozen=True, eq=False):
    part: Part
    many: NDArray[np.float64]
    marks: NDArray[np.bool_]


class Counted:
    """A method whose kernel counts how often it is run."""

    def __init__(self, found: Found | None = None) -> None:
        self.runs = 0

        def kernel(figure: float, **_: Any) -> Found:
            self.runs += 1
            if figure < 0:
                raise OutOfRange(f"{figure} is less than nothing")
            return found or Found(Part(figure, None), np.array([figure]), np.array([True]))

        self.method: Method[Found] = Method(
            name="test.counted",
            title="A figure in a record",
            formula="a",
            source=Citation("Arithmetic", standing="derived"),
            valid="from nothing up",
            inputs={},
            outputs=(Symbol("figure", "the figure", "", ""),),
            kernel=kernel,
            example={},
        )


def differences(one: Any, other: Any, path: str = "") -> Iterator[str]:
    """Tell where two things are not the same in type and to the last bit."""
    if type(one) is not type(other):
        yield f"{path}: {type(one)} and {type(other)}"
    elif isinstance(one, np.ndarray):
        states = [(a.dtype, a.shape, a.flags.c_contiguous, a.flags.writeable, a.tobytes()) for a in (one, other)]
        if states[0] != states[1]:
            yield f"{path}: {one} and {other}"
    elif isinstance(one, Struct) or dataclasses.is_dataclass(one):
        names = one.__struct_fields__ if isinstance(one, Struct) else [field.name for field in dataclasses.fields(one)]
        for name in names:
            yield from differences(getattr(one, name), getattr(other, name), f"{path}.{name}")
    elif isinstance(one, Mapping):
        yield from differences(list(one), list(other), f"{path} keys")
        for name in one.keys() & other.keys():
            yield from differences(one[name], other[name], f"{path}[{name}]")
    elif isinstance(one, (list, tuple)):
        if len(one) != len(other):
            yield f"{path}: {len(one)} and {len(other)}"
        for index, (a, b) in enumerate(zip(one, other, strict=False)):
            yield from differences(a, b, f"{path}[{index}]")
    elif not callable(one) and repr(one) != repr(other):
        yield f"{path}: {one} and {other}"


def whole(calculated: Calculated) -> dict[str, Any]:
    record = calculated.record
    outcomes = {step.name: calculated.outcome(step) for step in steps() if not step.lazy}
    return {"outcomes": outcomes, "values": record.values, "failed": record.failed, "missing": record.missing} | {
        "notices": record.notices
    }


@pytest.fixture(scope="module")
def starter(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("kept") / "starter"
    write_starter(root)
    return root


@pytest.mark.parametrize("name", ["marram", "starter"])
def test_a_ship_comes_out_the_same_from_what_was_kept(name: str, starter: Path) -> None:
    package = marram.package() if name == "marram" else compile_package(read(starter)).package
    first = Kept(b"us")
    calculated = calculate(package, first)
    second = Kept(b"us", first.content())
    again = calculate(package, second)
    assert first.new
    assert not second.new
    assert second.content() == first.content()
    assert list(differences(whole(calculated), whole(calculate(package)))) == []
    assert list(differences(whole(calculated), whole(again))) == []


def test_each_kept_step_has_a_method_whose_result_can_be_read_back() -> None:
    kept = [step for step in steps() if step.kept]
    assert len(kept) > 10
    for step in kept:
        assert step.method is not None
        _decoder(_result(step.method.kernel))


@given(
    figure=FIGURES,
    words=st.none() | st.text(),
    pairs=st.lists(st.tuples(FIGURES, st.integers(-(2**63), 2**63 - 1))),
    many=arrays(np.float64, array_shapes(max_dims=3, max_side=4), elements=FIGURES),
)
def test_any_result_is_given_back_to_the_last_bit(
    figure: float, words: str | None, pairs: list[tuple[float, int]], many: NDArray[np.float64]
) -> None:
    result = Found(Part(figure, words, tuple(pairs)), many, many > 0)
    counted = Counted(result)
    kept = Kept(b"us")
    kept.run(counted.method, {"figure": 1.0})
    again = Kept(b"us", kept.content()).run(counted.method, {"figure": 1.0})
    assert counted.runs == 1
    assert list(differences(result, again)) == []


@given(one=FIGURES.filter(lambda figure: figure >= 0), other=FIGURES.filter(lambda figure: figure >= 0))
def test_other_inputs_find_nothing(one: float, other: float) -> None:
    counted = Counted()
    kept = Kept(b"us")
    kept.run(counted.method, {"figure": one})
    Kept(b"us", kept.content()).run(counted.method, {"figure": other})
    assert counted.runs == (1 if repr(one) == repr(other) else 2)


def kept_content() -> bytes:
    kept = Kept(b"us")
    kept.run(Counted().method, {"figure": 1.0, "more": np.arange(3.0)})
    return kept.content()


@settings(max_examples=200)
@given(at=st.integers(0, len(kept_content()) - 1), bit=st.integers(0, 7), cut=st.booleans())
def test_what_is_damaged_is_calculated_anew(at: int, bit: int, cut: bool) -> None:
    content = bytearray(kept_content())
    content[at] ^= 1 << bit
    counted = Counted()
    kept = Kept(b"us", bytes(content[:at] if cut else content))
    kept.run(counted.method, {"figure": 1.0, "more": np.arange(3.0)})
    assert counted.runs == 1
    assert kept.new


@given(st.binary())
def test_what_is_not_ours_holds_nothing(content: bytes) -> None:
    counted = Counted()
    Kept(b"us", content).run(counted.method, {"figure": 1.0})
    assert counted.runs == 1


def test_what_another_compiler_kept_is_not_looked_at() -> None:
    counted = Counted()
    Kept(b"them", kept_content()).run(counted.method, {"figure": 1.0, "more": np.arange(3.0)})
    assert counted.runs == 1


def test_a_result_of_another_type_is_calculated_anew() -> None:
    def text(**_: object) -> dict[str, str]:
        return {"figure": "a text"}

    other = replace(Counted().method, kernel=text)
    kept = Kept(b"us")
    kept.run(other, {"figure": 1.0})
    counted = Counted()
    found = Kept(b"us", kept.content()).run(counted.method, {"figure": 1.0})
    assert counted.runs == 1
    assert found.part.figure == 1.0


def test_what_lies_out_of_range_is_told_each_time() -> None:
    kept = Kept(b"us")
    for _ in range(2):
        with pytest.raises(OutOfRange, match="less than nothing"):
            kept.run(Counted().method, {"figure": -1.0})
        kept = Kept(b"us", kept.content())


def test_only_what_a_run_asked_for_is_kept_on() -> None:
    counted = Counted()
    first = Kept(b"us")
    for figure in (1.0, 2.0):
        first.run(counted.method, {"figure": figure})
    second = Kept(b"us", first.content())
    second.run(counted.method, {"figure": 2.0})
    third = Kept(b"us", second.content())
    third.run(counted.method, {"figure": 1.0})
    assert counted.runs == 3
