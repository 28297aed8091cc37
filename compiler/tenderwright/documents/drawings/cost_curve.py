"""The cost curve: in what share of the trials the work costs no more than an amount, with the levels to plan by."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import ceil, floor

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.axis import round_step
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.drawings.sheet import OWNERS, TITLE_HEIGHT, sheet_of
from tenderwright.documents.drawings.view import PORTRAIT
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.planning.outlook import CostOutlook
from tenderwright.pricing.money import written

_LEFT, _TOP, _RIGHT, _HIGH, _FOOT = 12.0, 8.0, 7.0, 78.0, 9.0
_TICK = 14.0
"""The least distance of two ticks of the axis of cost, mm."""
_OF = {0.50: "half the trials", 0.80: "four of five"}


@dataclass(frozen=True)
class _Field:
    """The field of the curve: costs across, shares of the trials upwards."""

    low: float
    high: float
    step: float

    @property
    def right(self) -> float:
        return PORTRAIT.width - _RIGHT

    @property
    def foot(self) -> float:
        return _TOP + _HIGH

    def at(self, cost: float, share: float) -> Point:
        across = (cost - self.low) / (self.high - self.low)
        return _LEFT + across * (self.right - _LEFT), self.foot - share * _HIGH


def cost_curve(package: Package, cost: CostOutlook, currency: str) -> Figure:
    """Draw the curve through the levels of the trials, with P50, P80 and the sum of likely dropped to both axes."""
    field = _field([float(cost.point), *map(float, cost.levels.values())])
    unit, unit_name = (1000, f"thousand {currency}") if field.step >= 1000 else (1, currency)
    made = sheet_of(
        package, "cost-curve", "What it may cost", 0, PORTRAIT.width, field.foot + _FOOT + TITLE_HEIGHT, OWNERS
    )
    across = field.at(field.low + field.step, 0.0)[0] - _LEFT
    sheet = replace(made, unscaled=f"{_figure(field.step / unit)} {unit_name} = {across:.1f} mm")
    curve = [field.at(float(amount), level) for level, amount in sorted(cost.levels.items())]
    marks = [
        pen.text((_LEFT, 4.2), "Share of the trials that cost no more", pen.NORMAL, bold=True),
        *_frame(field, unit),
        pen.text((field.right, field.foot + 8.0), unit_name, pen.SMALL, "end", kind="axis-title"),
        pen.curve(curve, pen.HEAVY, colour=pen.BLUE),
        *_marked(cost, field, currency),
    ]
    told = "; ".join(
        f"P{level:.0%}".rstrip("%") + f" {written(amount)}" for level, amount in sorted(cost.levels.items())
    )
    words = (
        f"Curve of the cost in {currency} against the share of the trials that cost no more: {told}. The sum of the "
        f"likely prices, {written(cost.point)}, is enough in {cost.point_at:.0%} of the trials."
    )
    caption = (
        "Options left out. Both axes are to scale; the curve is drawn straight between the levels of the table below. "
        "The higher the curve stands over an amount, the surer that amount is to be enough."
    )
    return Figure(sheet.name, sheet.svg(marks, words), caption, words, title=sheet.title)


def _field(amounts: list[float]) -> _Field:
    """Choose the ends of the axis of cost at round figures about all amounts."""
    low, high = min(amounts), max(amounts)
    spread = (high - low) or max(abs(high), 1.0)
    step = round_step(spread * 1.1 * _TICK / (PORTRAIT.width - _LEFT - _RIGHT))
    start, end = floor((low - 0.02 * spread) / step) * step, ceil((high + 0.02 * spread) / step) * step
    return _Field(start, end, step)


def _frame(field: _Field, unit: int) -> list[str]:
    (left, foot), (right, top) = field.at(field.low, 0.0), field.at(field.high, 1.0)
    marks = [pen.polygon([(left, foot), (right, foot), (right, top), (left, top)], pen.FINE)]
    for percent in range(0, 101, 10):
        y = field.at(field.low, percent / 100)[1]
        marks.append(pen.line((left - 1.0, y), (left, y), pen.FINE))
        if percent % 20 == 0:
            marks.append(pen.text((left - 1.6, y + 0.9), f"{percent} %", pen.SMALL, "end", kind="axis"))
    for count in range(round((field.high - field.low) / field.step) + 1):
        cost = field.low + count * field.step
        x = field.at(cost, 0.0)[0]
        marks.append(pen.line((x, foot), (x, foot + 1.0), pen.FINE))
        marks.append(pen.text((x, foot + 3.9), _figure(cost / unit), pen.SMALL, "middle", kind="axis"))
    return marks


def _figure(number: float) -> str:
    places = 0 if abs(number - round(number)) < 1e-9 else 1
    return f"{number:,.{places}f}".replace(",", " ").replace("-", "−")


def _marked(cost: CostOutlook, field: _Field, currency: str) -> list[str]:
    """Mark the levels to plan by and the sum of likely, each with lines to both axes and its amount beside it."""
    chosen = [(f"P{level:.0%}".rstrip("%") + f", {words}", level, cost.levels[level]) for level, words in _OF.items()]
    chosen.append(("sum of likely", cost.point_at, cost.point))
    drops, labels = [], []
    for name, share, amount in chosen:
        x, y = field.at(float(amount), share)
        drops += [((_LEFT, y), (x, y)), ((x, y), (x, field.foot))]
        labels.append((f"{name}: {currency} {written(amount)}", (x, y)))
    return [pen.strokes(drops, pen.FINE, pen.HIDDEN), *_labels(labels, field)]


def _labels(wanted: list[tuple[str, Point]], field: _Field) -> list[str]:
    """Write each label above its line where there is room left of the curve, else right of its point."""
    marks: list[str] = []
    taken: list[float] = []
    for words, (x, y) in wanted:
        marks.append(pen.circle((x, y), 0.9, 0, pen.INK))
        wide = pen.text_width(words, pen.NORMAL, True)
        free = all(abs(y - other) >= pen.NORMAL * 1.3 for other in taken)
        if free and _LEFT + 1.5 + wide + 3.0 <= x and y - 4.0 > _TOP:
            at, anchor = (_LEFT + 1.5, y - 2.0), "start"
            taken.append(y)
        else:
            down = min(y + 3.0, field.foot - 2.0)
            anchor = "start" if x + 2.0 + wide <= field.right - 1.0 else "end"
            at = (x + 2.0, down) if anchor == "start" else (field.right - 1.0, down)
        marks.append(pen.label(at, words, pen.NORMAL, anchor, True, kind="level"))
    return marks
