"""The rate of loss by zone: mean diminution at each survey, and what is expected by the next docking."""

from __future__ import annotations

from collections.abc import Callable

from tenderwright.calculations.ship.condition_of_shell import shell_forecast
from tenderwright.calculations.ship.shell_zones import zone_rates
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.thickness.limits import SUBSTANTIAL_SHARE
from tenderwright.calculations.thickness.shell_forecast import ShellCondition
from tenderwright.calculations.thickness.zone_rate import ZoneSummary
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.chart import Field
from tenderwright.documents.drawings.framed import Cell, framed
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.legend import ROW, Entry, legend, rows
from tenderwright.documents.drawings.shell_expansion import REPAIR
from tenderwright.documents.edition import Figure
from tenderwright.documents.parts.condition import a_year, rate_of_loss
from tenderwright.model.package import Package
from tenderwright.model.shell_condition import WastageZone
from tenderwright.quantities.display import decimals

TITLE = "Loss of plate by zone, with forecast"
At = Callable[[float, float], pen.Point]
"""Places a year and a share of loss on paper."""
SPREAD = Hatch((45,), 0.8, pen.FINE, "", pen.BLUE)
_LEFT, _TOP, _FOOT, _RIGHT = 9.0, 8.0, 6.0, 2.0


def loss_plot(package: Package, calculated: Calculated) -> Figure | Absent:
    """Plot the loss of every zone, or say why not."""
    shell, found, condition = calculated.outcome(shell_forecast), calculated.outcome(zone_rates), package.condition
    if isinstance(shell, Absent):
        return shell
    if isinstance(found, Absent):
        return found
    if condition is None or not found:
        return Lacking("it needs readings in a zone of vessel/condition.yaml")
    written = {zone.zone: zone for zone in condition.zones}
    sheet = framed(package, "loss-by-zone", TITLE, "thickness readings of every survey", REPAIR)
    key = _key()
    foot = ROW * len(rows(key, sheet.beside - 4)) + 1.0
    sizes = (one for one in range(120, 20, -1) if len(sheet.cells(one, 0.7 * one, foot)) >= len(found))
    cells = sheet.cells(wide := next(sizes), 0.7 * wide, foot)
    marks = [
        mark
        for cell, (name, zone) in zip(cells, found.items(), strict=False)
        for mark in _panel(shell, zone, written[name], cell)
    ]
    marks.append(legend(key, 4.0, sheet.foot - foot + 2.5, sheet.beside - 4))
    alternative = "; ".join(
        f"{written[name].name}: mean loss {decimals(100 * zone.mean_loss, 1)} %, "
        f"{decimals(100 * zone.mean_at_next, 1)} % expected at the next docking"
        for name, zone in found.items()
    )
    words = f"Plots of loss against time for {len(found)} zones of the shell. {alternative}."
    caption = (
        "Mean diminution of the frame spaces that two surveys or more gauged, and of all latest readings at the last "
        "one; carried on at the zone's rate to the docking after the one planned. The hatched wedge is how far the "
        f"mean may be off at {100 * shell.outlook.confidence:g} % confidence, one-sided. The triangle is the worst "
        "reading."
    )
    return sheet.figure(marks, caption, words)


def _panel(shell: ShellCondition, zone: ZoneSummary, written: WastageZone, cell: Cell) -> list[str]:
    left, top, wide, high = cell.left, cell.top, cell.width, cell.height
    limit, last = written.allowable.si, float(shell.readings.year[shell.analysis.latest].max())
    begin = min([last - 5.0, *(year for year, _ in zone.means)]) - 1.0
    end = shell.outlook.docking + shell.outlook.interval + 1.0
    greatest = 1.25 * max(limit, zone.greatest_loss, zone.upper_at_next)
    edges = left + _LEFT, left + wide - _RIGHT, top + _TOP, top + high - _FOOT
    field = Field(*edges, (begin, end), (0.0, greatest))
    at = field.at
    name = pen.shortened(written.name[:1].upper() + written.name[1:], pen.NORMAL, wide - 4, True)
    rate = "gauged once"
    if zone.bays:
        rate = f"{rate_of_loss(zone.rate)} ± {rate_of_loss(zone.uncertainty)} {a_year()}"
    planned = shell.outlook.docking
    return [
        pen.text((left + 2, top + 4.2), name, pen.NORMAL, bold=True, kind="zone"),
        field.box(),
        field.beside(0.1, lambda share: f"{100 * share:.0f} %" if share > 0.05 else "0"),
        field.below(1.0, lambda year: f"{year:.0f}" if round(year) % 10 == 0 else ""),
        pen.line(at(begin, limit), at(end, limit), pen.MEDIUM, pen.LIMIT),
        pen.line(at(begin, SUBSTANTIAL_SHARE * limit), at(end, SUBSTANTIAL_SHARE * limit), pen.FINE, pen.HIDDEN),
        pen.line(at(planned, 0.0), at(planned, greatest), pen.FINE, pen.CHAIN, pen.FAINT),
        *_found(zone, last, at),
        *(_forecast(zone, last, end - 1.0, at) if zone.bays else ()),
        pen.circle(at(last, zone.mean_loss), 0.8, pen.FINE, pen.INK),
        pen.label((field.left + 1.5, field.top + 2.8), rate, pen.SMALL, "start", kind="rate"),
    ]


def _found(zone: ZoneSummary, last: float, at: At) -> list[str]:
    """Draw what each survey found, and the worst reading of the latest."""
    points = [at(year, loss) for year, loss in zone.means]
    marks = [pen.curve(points, pen.MEDIUM, "", pen.BLUE)] if len(points) > 1 else []
    marks += [pen.circle(point, 0.8, pen.FINE, pen.PAPER) for point in points]
    x, y = at(last, zone.greatest_loss)
    marks.append(pen.polygon([(x - 0.9, y + 0.8), (x + 0.9, y + 0.8), (x, y - 0.9)], pen.FINE, fill=pen.INK))
    return marks


def _forecast(zone: ZoneSummary, last: float, following: float, at: At) -> list[str]:
    """Draw the mean carried on at the rate, in a wedge as wide as the rate is uncertain."""
    start = at(last, zone.mean_loss)
    under = max(2 * zone.mean_at_next - zone.upper_at_next, zone.mean_loss)
    wedge = [start, at(following, zone.upper_at_next), at(following, under)]
    return [
        SPREAD.over([wedge]) + pen.polygon(wedge, pen.FINE, "", pen.BLUE),
        pen.line(start, at(following, zone.mean_at_next), pen.MEDIUM, "1.6 0.8", pen.BLUE),
    ]


def _key() -> list[Entry]:
    return [
        Entry("spaces gauged twice", pen.circle((0, 0), 0.8, pen.FINE, pen.PAPER), 2.0),
        Entry("all latest readings", pen.circle((0, 0), 0.8, pen.FINE, pen.INK), 2.0),
        Entry("worst", pen.polygon([(-0.9, 0.8), (0.9, 0.8), (0, -0.9)], pen.FINE, fill=pen.INK), 2.0),
        Entry("limit", pen.line((-4, 0), (4, 0), pen.MEDIUM, pen.LIMIT), 9.0),
        Entry("substantial", pen.line((-4, 0), (4, 0), pen.FINE, pen.HIDDEN), 9.0),
        Entry("docking planned", pen.line((-4, 0), (4, 0), pen.FINE, pen.CHAIN, pen.FAINT), 9.0),
        Entry("forecast", pen.line((-4, 0), (4, 0), pen.MEDIUM, "1.6 0.8", pen.BLUE), 9.0),
    ]
