"""A method: one calculation with its formula, source, range, inputs and outputs, and the kernel that does it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Generic, Literal, TypeVar

from msgspec import Struct, field

R = TypeVar("R")

Standing = Literal["published", "derived", "from memory", "common practice, no source"]


class OutOfRange(ValueError):
    """Inputs lie outside the range in which a method is valid; the message says which and why."""


class Citation(Struct, frozen=True):
    """Where a formula or figure comes from, and how well that is known."""

    title: str
    clause: str = ""
    standing: Standing = "published"

    def __str__(self) -> str:
        """Give the citation as one line of text."""
        where = f"{self.title}, {self.clause}" if self.clause else self.title
        return where if self.standing == "published" else f"{where} ({self.standing})"


BY_ROW = "as the row says"
"""The dimension of a column whose rows each name their own under `dimension`."""


class Symbol(Struct, frozen=True):
    """One output of a method: its name, meaning, dimension and the SI-family unit it is shown in."""

    name: str
    meaning: str
    dimension: str
    unit: str
    columns: tuple[Symbol, ...] = ()
    """Of a table, whose figure is a list of rows: each key of a row."""


def _as_they_are(result: Any) -> Mapping[str, Any]:
    """Take a result that is a mapping of outputs as it is."""
    outputs: Mapping[str, Any] = result
    return outputs


class Method(Struct, Generic[R], frozen=True):
    """One calculation that the compiler uses and that `reckon` runs alone."""

    name: str
    """Dotted identifier, such as `coating.paint-volume`."""
    title: str
    formula: str
    source: Citation
    valid: str
    """The range of validity in words."""
    inputs: Mapping[str, Mapping[str, Any]]
    """Per argument of the kernel, a JSON Schema; strings carry the keyword `quantity: DIMENSION`."""
    outputs: tuple[Symbol, ...]
    kernel: Callable[..., R]
    """Takes the inputs by name as SI floats (arrays as lists of floats) and gives the result."""
    example: Mapping[str, Any]
    """A valid input file, as data; a test runs it."""
    optional: frozenset[str] = frozenset()
    """Inputs that may be left out; the kernel has a default for each."""
    cautions: tuple[str, ...] = field(default=())
    figures: Callable[[R], Mapping[str, Any]] = _as_they_are
    """Gives each output by name, in SI, from the result of the kernel."""

    def run(self, **inputs: Any) -> Mapping[str, Any]:
        """Calculate the outputs from the inputs, all in SI; raises OutOfRange."""
        return self.figures(self.kernel(**inputs))
