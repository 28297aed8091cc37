"""A method: one calculation with its formula, source, range, inputs and outputs, and the kernel that does it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

Standing = Literal["published", "derived", "from memory", "common practice, no source"]


class OutOfRange(ValueError):
    """Inputs lie outside the range in which a method is valid; the message says which and why."""


@dataclass(frozen=True)
class Citation:
    """Where a formula or figure comes from, and how well that is known."""

    title: str
    clause: str = ""
    standing: Standing = "published"

    def __str__(self) -> str:
        """Give the citation as one line of text."""
        where = f"{self.title}, {self.clause}" if self.clause else self.title
        return where if self.standing == "published" else f"{where} ({self.standing})"


@dataclass(frozen=True)
class Symbol:
    """One output of a method: its name, meaning, dimension and the SI-family unit it is shown in."""

    name: str
    meaning: str
    dimension: str
    unit: str


@dataclass(frozen=True)
class Method:
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
    kernel: Callable[..., Mapping[str, Any]]
    """Takes the inputs by name as SI floats (arrays as lists of floats) and returns each output by name, in SI."""
    example: Mapping[str, Any]
    """A valid input file, as data; a test runs it."""
    optional: frozenset[str] = frozenset()
    """Inputs that may be left out; the kernel has a default for each."""
    cautions: tuple[str, ...] = field(default=())
