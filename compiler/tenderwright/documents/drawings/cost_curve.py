"""The cost curve: in what share of the trials the work costs no more than an amount, with the levels to plan by."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, floor

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.axis import round_step
from tenderwright.documents.drawings.chart import Field
from tenderwright.documents.drawings.chart import written as written_at
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.drawings.sheet import OWNERS, TITLE_HEIGHT, sheet_of
from tenderwright.documents.drawings.view import PORTRAIT
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.planning.outlook import CostOutlook
from tenderwright.pricing.money import rounding, written
from tenderwright.quantities.display import show

_LEFT, _TOP, _RIGHT, _HIGH, _FOOT = 12.0, 8.0, 7.0, 78.0, 9.0
_TICK = 14.0
"""The least distance of two ticks of the axis of cost, mm."""
_ROW = pen.NORMAL * 1.3
_OF = {0.50: "as likely as not enough", 0.80: "enough in four cases of five"}


def cost_curve(package: Package, cost: CostOutlook, currency: str) -> Figure:
    """Draw the curve through the levels of the trials, with P50, P80 and the sum of likely dropped to both axes."""
    field, step = _field([float(cost.point), *map(float, cost.levels.values())])
    unit, unit_name = (1000, f"thousand {currency}") if step >= 1000 else (1, currency)
    made = sheet_of(
        package, "cost-curve", "What it may cost", PORTRAIT.width, field.foot + _FOOT + TITLE_HEIGHT, OWNERS
    )
    across = field.x(field.across[0] + step) - _LEFT
    sheet = replace(
        made, unscaled=f"{written_at(step / unit, step / unit)} {unit_name} = {show(across / 1000, 'paper')}"
    )
    curve = [field.at(float(amount), level) for level, amount in sorted(cost.levels.items())]
    marks = [
        pen.text((_LEFT, 4.2), "How often the work costs no more, of 100 trials", pen.NORMAL, bold=True),
        field.box(),
        field.beside(0.1, lambda share: f"{100 * share:.0f}" if round(share * 10) % 2 == 0 else ""),
        field.below(step, lambda figure: written_at(figure / unit, step / unit)),
        pen.text((field.right, field.foot + 8.0), unit_name, pen.SMALL, "end", kind="axis-title"),
        pen.curve(curve, pen.HEAVY, colour=pen.BLUE),
        *_marked(cost, field, currency),
    ]
    told = "; ".join(
        f"P{level:.0%}".rstrip("%") + f" {written(amount)}" for level, amount in sorted(cost.levels.items())
    )
    words = (
        f"Curve of the cost in {currency} against the share of the trials that cost no more: {told}. The sum of the "
        f"likely prices, {written(cost.point)}, is enough in {100 * cost.point_at:.0f} % of the trials."
    )
    caption = (
        "Options left out. Both axes are to scale; the curve is drawn straight between the levels of the table below. "
        "The higher the curve stands over an amount, the surer that amount is to be enough."
    )
    return Figure(sheet.name, sheet.svg(marks, words), caption, words, title=sheet.title)


def _field(amounts: list[float]) -> tuple[Field, float]:
    """Choose the ends of the axis of cost at round figures about all amounts, and the step of its ticks."""
    low, high = min(amounts), max(amounts)
    spread = (high - low) or max(abs(high), 1.0)
    step = round_step(spread * 1.1 * _TICK / (PORTRAIT.width - _LEFT - _RIGHT))
    start, end = floor((low - 0.02 * spread) / step) * step, ceil((high + 0.02 * spread) / step) * step
    return Field(_LEFT, PORTRAIT.width - _RIGHT, _TOP, _TOP + _HIGH, (start, end), (0.0, 1.0)), step


def _marked(cost: CostOutlook, field: Field, currency: str) -> list[str]:
    """Mark the levels to plan by and the sum of likely, each with lines to both axes and its amount beside it."""
    about = rounding(currency, cost.levels.values())
    chosen = [(f"{words} (P{100 * at:.0f})", at, cost.levels[at]) for at, words in _OF.items()]
    chosen.append(("sum of likely prices", cost.point_at, cost.point))
    drops, labels = [], []
    for name, share, amount in chosen:
        x, y = field.at(float(amount), share)
        drops += [((_LEFT, y), (x, y)), ((x, y), (x, field.foot))]
        labels.append(((f"{name}:", about.money(amount)), (x, y)))
    return [pen.strokes(drops, pen.FINE, pen.HIDDEN), *_labels(labels, field)]


def _labels(wanted: list[tuple[tuple[str, str], Point]], field: Field) -> list[str]:
    """Write each label above its line, in one row or two, where there is room left of the curve; else beside it."""
    marks: list[str] = []
    taken: list[float] = []
    for (name, amount), (x, y) in wanted:
        marks.append(pen.circle((x, y), 0.9, 0, pen.INK))
        words = f"{name} {amount}"
        rows = next((rows for rows in ((words,), (name, amount)) if _clear(rows, x, y, taken)), None)
        if rows is not None:
            taken.append(y)
            for up, row in enumerate(reversed(rows)):
                at = (_LEFT + 1.5, y - 2.0 - up * _ROW)
                marks.append(pen.label(at, row, pen.NORMAL, "start", True, kind="level"))
            continue
        down = min(y + 3.0, field.foot - 2.0)
        fits = x + 2.0 + pen.text_width(words, pen.NORMAL, True) <= field.right - 1.0
        at, anchor = ((x + 2.0, down), "start") if fits else ((field.right - 1.0, down), "end")
        marks.append(pen.label(at, words, pen.NORMAL, anchor, True, kind="level"))
    return marks


def _clear(rows: tuple[str, ...], x: float, y: float, taken: list[float]) -> bool:
    """Tell whether rows stand free above the line at a level: of the curve, of the frame and of other labels."""
    wide, high = max(pen.text_width(row, pen.NORMAL, True) for row in rows), len(rows) * _ROW
    free = all(y - other >= high or other - y >= 2 * _ROW for other in taken)
    return free and _LEFT + 1.5 + wide + 3.0 <= x and y - high - 0.5 > _TOP
