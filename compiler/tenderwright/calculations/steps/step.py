"""A step: one calculation of this ship, with what it takes and the one result that it gives.

A step is a function whose parameters name what it takes: a part of the package (`lightship`, `docking_plan`), the
result of another step, by that step's name, or `package` itself. A parameter that may be None is given None where the
package lacks the data for it; one that may be Absent is given what came out, whatever that is; any other makes the step
lacking too, or rest on what failed.

`step_of(METHOD, ...)` declares a step that uses a method: its function gives the inputs, and the runner calls the
method's kernel with those very inputs and keeps them in the record. `step()` declares one that arranges things and
needs no working of its own; its function gives the result. Where such a result has `notices`, they tell of data that
were left out of it.

With `each="tanks"` a step is done once for each tank: its first parameter is the tank. `each` may also name a step
whose result is a mapping.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Generic, TypeVar, overload

from msgspec import Struct

from tenderwright.calculations.method import Method
from tenderwright.calculations.steps.outcome import Absent, Each
from tenderwright.calculations.value import Given
from tenderwright.notices import Place

R = TypeVar("R")
R_co = TypeVar("R_co", covariant=True)
K = TypeVar("K", bound=Callable[..., Any])


class Uses(Struct, frozen=True):
    """What a step puts into its method."""

    about: str
    """What this use of the method is about, such as `on arrival, in the dock's water`."""
    inputs: Mapping[str, Given]
    at: Place
    """Where a notice stands when the inputs lie outside the method's range."""
    of: str = ""
    """What such a notice begins with, such as the name of the tank."""
    by: Method[Any] | None = None
    """Another method than the step's own, with the same outputs, where the data are of another kind."""


class Take(Struct, frozen=True):
    """One parameter of a step."""

    name: str
    optional: bool
    """Whether None may stand for it where the package lacks the data."""
    whole: bool
    """Whether all results of a calculation done for each thing are taken, not only that for the same thing."""
    either: bool = False
    """Whether it is taken as it came out, so that the step itself says what becomes of it without a result."""


class Step(Struct, Generic[R_co], frozen=True, eq=False):
    """A calculation of this ship."""

    name: str
    function: Callable[..., Any]
    method: Method[Any] | None = None
    values: str = ""
    """What the names of its values begin with; `{}` stands for the name of the thing that it is done for."""
    names: Mapping[str, str] | None = None
    """Those outputs of the method that are kept, each with the last word of its value's name; None keeps all."""
    each: str = ""
    thing: str = ""
    """The parameter that takes the thing, where it is done for each of several."""
    takes: tuple[Take, ...] = ()
    lazy: bool = False
    """Whether it is done only when asked for; such a step keeps no values and tells no mistakes."""
    kept: bool = False
    """Whether the result of its method is kept between runs: it takes milliseconds, and its type says all of it."""

    def value_names(self, key: str = "") -> dict[str, str]:
        """Give the name of the value that each kept output of the method becomes."""
        if self.method is None or not self.values:
            return {}
        prefix = self.values.format(key)
        kept = self.names or {symbol.name: symbol.name.replace("_", "-") for symbol in self.method.outputs}
        return {output: f"{prefix}.{last}" for output, last in kept.items()}


@overload
def step(*, lazy: bool = False) -> Callable[[Callable[..., R | Absent]], Step[R]]: ...
@overload
def step(*, each: str, lazy: bool = False) -> Callable[[Callable[..., R | Absent]], Step[Each[R]]]: ...
def step(*, each: str = "", lazy: bool = False) -> Callable[[Callable[..., Any]], Step[Any]]:
    """Declare a step whose function gives its result."""
    return lambda function: _declared(function, each, lazy=lazy)


@overload
def step_of(
    method: Method[R], values: str, *, names: Mapping[str, str] | None = None, kept: bool = False
) -> Callable[[Callable[..., Uses | Absent]], Step[R]]: ...
@overload
def step_of(
    method: Method[R], values: str, *, names: Mapping[str, str] | None = None, each: str, kept: bool = False
) -> Callable[[Callable[..., Uses | Absent]], Step[Each[R]]]: ...
def step_of(
    method: Method[Any],
    values: str,
    *,
    names: Mapping[str, str] | None = None,
    each: str = "",
    kept: bool = False,
) -> Callable[[Callable[..., Uses | Absent]], Step[Any]]:
    """Declare a step that uses a method; its function gives what goes in."""
    return lambda function: _declared(function, each, method, values, names, kept=kept)


def _declared(
    function: Callable[..., Any],
    each: str,
    method: Method[Any] | None = None,
    values: str = "",
    names: Mapping[str, str] | None = None,
    lazy: bool = False,
    kept: bool = False,
) -> Step[Any]:
    # Read as text, for only these words matter, and making types of them takes its time at each start.
    types = {name: kind for name, kind in function.__annotations__.items() if name != "return"}
    parameters = list(types)
    thing = parameters.pop(0) if each else ""
    takes = tuple(
        Take(
            name,
            types[name].endswith("| None"),
            whole=types[name].startswith("Each["),
            either=types[name].endswith("| Absent"),
        )
        for name in parameters
    )
    return Step(function.__name__, function, method, values, names, each, thing, takes, lazy, kept)
