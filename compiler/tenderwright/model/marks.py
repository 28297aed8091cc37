"""The marks by which a field declares itself: what it means, how it is written, and its bounds."""

from __future__ import annotations

from msgspec import Struct


class Key:
    """What a key means, in sentences for the person who writes it, and examples."""

    def __init__(self, says: str, *examples: object) -> None:
        self.says = says
        self.examples = examples


class Measures(Struct, frozen=True):
    """A quantity of a dimension, and the words that may stand instead of one; `signed` where it may be negative."""

    dimension: str
    words: tuple[str, ...] = ()
    signed: bool = False


class Measured(Struct, frozen=True):
    """A quantity that may be followed by `± ...`, and its usual standard uncertainty where it is not."""

    usual: str
    """As a quantity, or as a share of the figure."""
    source: str


class Amount(Struct, frozen=True):
    """An amount of money; `signed` where it may be negative."""

    signed: bool = False


class Refers(Struct, frozen=True):
    """The name of a thing of this kind elsewhere in the package."""

    kind: str


class OneOf:
    """One of some words."""

    def __init__(self, *words: str) -> None:
        self.words = words


class Form:
    """Text of one form, with what it is called and examples of it."""

    def __init__(self, pattern: str, title: str, *examples: str, longest: int | None = None) -> None:
        self.pattern = pattern
        self.title = title
        self.examples = examples
        self.longest = longest


class Either(Struct, frozen=True):
    """A date, or text of another form or word."""

    other: Form | str


class Within(Struct, frozen=True, kw_only=True):
    """Bounds of a number, or of a quantity with its unit, in place of those of its kind."""

    least: float | str | None = None
    most: float | str | None = None
    above: float | None = None


class Count(Struct, frozen=True):
    """The least number of entries."""

    least: int


class Keys(Struct, frozen=True):
    """What the keys are that a person chooses."""

    are: OneOf | Form


class Needs(Struct, frozen=True):
    """A rule of a noun: an entry of a list is needed where another key is one of some words."""

    key: str
    where: str
    among: OneOf


class Kept(Struct, frozen=True):
    """Nothing reads it but people, and no paper prints it: why it is kept all the same."""

    why: str


class MayWait(Struct, frozen=True):
    """A list that stands without an entry in which something is still `todo`: nothing is summed over it."""

    orders: bool = False
    """Whether the order of the work follows from it, so that what is judged by that waits too."""


class AbsentMeans(Struct, frozen=True):
    """Left out, the key says something of its own, so that a `todo` is not as if it were left out."""

    what: str
