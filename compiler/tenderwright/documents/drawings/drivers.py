"""What drives the spread of the cost: the lines and risks with the greatest shares in its variance, as bars."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.legend import ROW as KEY_ROW
from tenderwright.documents.drawings.legend import Entry, legend
from tenderwright.documents.drawings.sheet import OWNERS, TITLE_HEIGHT, sheet_of
from tenderwright.documents.drawings.view import PORTRAIT
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.planning.outlook import CostOutlook, Driver
from tenderwright.quantities.display import decimals, show

SHOWN = 12
"""How many are drawn."""
LINE = Hatch((45,), 1.3, 0.15)
RISK = Hatch((45, 135), 0.75, 0.25, "", pen.RED)
_ROW, _BAR, _TOP, _NAME, _VALUE = 5.2, 3.4, 7.0, 78.0, 12.0


def drivers(package: Package, cost: CostOutlook, names: Mapping[str, str]) -> Figure | None:
    """Draw the greatest shares as bars to one scale, `names` by line and risk; None where nothing spreads."""
    shown = [one for one in cost.drivers if one.share > 0][:SHOWN]
    if not shown:
        return None
    per = (PORTRAIT.width - _NAME - _VALUE) / shown[0].share
    foot = _TOP + len(shown) * _ROW
    high = foot + 2 * KEY_ROW + 1.0 + TITLE_HEIGHT
    made = sheet_of(package, "drivers", "What makes the cost uncertain", PORTRAIT.width, high, OWNERS)
    sheet = replace(made, unscaled=f"1 % = {show(per / 1e5, 'paper')}")
    marks = [pen.text((0.5, 4.2), "How much each makes the cost uncertain, of 100", pen.NORMAL, bold=True)]
    marks += [_bar(one, names, _TOP + index * _ROW, per) for index, one in enumerate(shown)]
    marks.append(pen.line((_NAME, _TOP - 0.6), (_NAME, foot), pen.MEDIUM))
    marks += [_rest(cost, shown, foot), _key(foot + KEY_ROW + 2.4)]
    told = "; ".join(f"{_named(one, names)} {_percent(one.share)}" for one in shown)
    words = f"Bars of the share of lines and risks in the variance of the cost, the greatest first: {told}."
    caption = (
        "To know more of those at the top, or to shut them out by contract, makes the cost surer than anything else. "
        "Calculated as the covariance of each line or risk with the whole, over the variance of the whole."
    )
    return Figure(sheet.name, sheet.svg(marks, words), caption, words, title=sheet.title)


def _bar(one: Driver, names: Mapping[str, str], top: float, per: float) -> str:
    middle, end = top + _ROW / 2, _NAME + one.share * per
    box = [
        (_NAME, middle - _BAR / 2),
        (end, middle - _BAR / 2),
        (end, middle + _BAR / 2),
        (_NAME, middle + _BAR / 2),
    ]
    name = pen.shortened(_named(one, names), pen.NORMAL, _NAME - 2.5, one.is_risk)
    return "".join(
        (
            pen.text((_NAME - 1.5, middle + 1.0), name, pen.NORMAL, "end", one.is_risk, kind="driver"),
            (RISK if one.is_risk else LINE).over([box]),
            pen.polygon(box, pen.MEDIUM if one.is_risk else pen.FINE),
            pen.text((end + 1.2, middle + 0.9), _percent(one.share), pen.SMALL, kind="share"),
        )
    )


def _rest(cost: CostOutlook, shown: list[Driver], foot: float) -> str:
    others = [one for one in cost.drivers if one not in shown]
    if not others:
        return ""
    share = _percent(sum(one.share for one in others))
    words = f"the other {len(others)} lines and risks together {share}"
    return pen.text((_NAME + 1.2, foot + 3.2), words, pen.SMALL, kind="rest")


def _key(middle: float) -> str:
    entries = [
        Entry("a price or a quantity that may run over", _sample(LINE, pen.FINE), 8.0),
        Entry("a mishap that may happen or not", _sample(RISK, pen.MEDIUM), 8.0),
    ]
    return legend(entries, 0.5, middle, PORTRAIT.width)


def _sample(hatch: Hatch, width: float) -> str:
    box = [(-4.0, -1.3), (4.0, -1.3), (4.0, 1.3), (-4.0, 1.3)]
    return hatch.over([box]) + pen.polygon(box, width)


def _named(one: Driver, names: Mapping[str, str]) -> str:
    return names.get(one.part, one.part)


def _percent(share: float) -> str:
    return f"{decimals(100 * share, 1)} %"
