"""The field of a chart: its box on paper, with ticks and figures at its edges that look alike on every chart."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil, floor, log10

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.axis import round_step
from tenderwright.documents.drawings.pen import Point
from tenderwright.quantities.customs import apart

Shown = Callable[[float], str]
"""Writes the figure at a tick; nothing where the tick has none."""


@dataclass(frozen=True)
class Field:
    """Where figures across and upwards lie on paper."""

    left: float
    right: float
    top: float
    foot: float
    across: tuple[float, float]
    """The figures at its left and right edges."""
    up: tuple[float, float]
    """The figures at its foot and top."""

    def x(self, figure: float) -> float:
        """Place a figure across."""
        low, high = self.across
        return self.left + (figure - low) / (high - low) * (self.right - self.left)

    def y(self, figure: float) -> float:
        """Place a figure upwards."""
        low, high = self.up
        return self.foot - (figure - low) / (high - low) * (self.foot - self.top)

    def at(self, across: float, up: float) -> Point:
        """Place a pair of figures."""
        return self.x(across), self.y(up)

    def box(self) -> str:
        """Draw its edges."""
        corners = [(self.left, self.top), (self.right, self.top), (self.right, self.foot), (self.left, self.foot)]
        return pen.polygon(corners, pen.FINE)

    def step_across(self, apart: float, least: float = 0.0) -> float:
        """Give the round step, no less than `least`, of ticks that stand at least so many mm apart."""
        return round_step(max(least, apart * (self.across[1] - self.across[0]) / (self.right - self.left)))

    def step_up(self, apart: float, least: float = 0.0) -> float:
        """Give the same for the ticks beside it."""
        return round_step(max(least, apart * (self.up[1] - self.up[0]) / (self.foot - self.top)))

    def below(self, step: float, shown: Shown | None = None) -> str:
        """Draw the ticks below it, each with its figure."""
        marks = []
        for figure in ticks(*self.across, step):
            x, words = self.x(figure), shown(figure) if shown else written(figure, step)
            marks.append(pen.line((x, self.foot), (x, self.foot + 1.0), pen.FINE))
            marks += [pen.text((x, self.foot + 3.9), words, pen.SMALL, "middle", kind="axis")] if words else []
        return "".join(marks)

    def beside(self, step: float, shown: Shown | None = None, *, lines: bool = False) -> str:
        """Draw the ticks at its left, each with its figure, and where asked a faint line across from each."""
        marks = []
        for figure in ticks(*self.up, step):
            y, words = self.y(figure), shown(figure) if shown else written(figure, step)
            marks.append(pen.line((self.left - 1.0, y), (self.left, y), pen.FINE))
            marks += [pen.line((self.left, y), (self.right, y), pen.FINE, "0.6 1.2", pen.FAINT)] if lines else []
            marks += [pen.text((self.left - 1.6, y + 0.9), words, pen.SMALL, "end", kind="axis")] if words else []
        return "".join(marks)


def ticks(low: float, high: float, step: float) -> list[float]:
    """Give the multiples of a step from one figure to another, both included."""
    return [count * step for count in range(ceil(low / step - 1e-9), floor(high / step + 1e-9) + 1)]


def written(figure: float, step: float) -> str:
    """Write the figure at a tick with the decimals of its step, thousands apart."""
    places = max(0, -floor(log10(step) + 1e-9))
    text = apart(f"{figure:,.{places}f}", " ")
    return text.removeprefix("-") if float(f"{figure:.{places}f}") == 0 else text.replace("-", "−")
