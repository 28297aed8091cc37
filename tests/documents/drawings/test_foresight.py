"""The drawings of what the owner foresees: to scale, within their sheets, no words over words."""

from __future__ import annotations

import re
from decimal import Decimal
from functools import cache
from itertools import combinations, pairwise

import pytest

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.bar_chart import MOST, bar_chart
from tenderwright.documents.drawings.cost_curve import cost_curve
from tenderwright.documents.drawings.drivers import SHOWN, drivers
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.planning.durations import Duration
from tenderwright.planning.network import Network, Node
from tenderwright.planning.outlook import LEVELS, CostOutlook, Driver
from tenderwright.planning.schedule import Schedule
from tenderwright.planning.schedule import schedule as laid_out
from tenderwright.writing.figures import figure_size
from tests.documents.composed import composed
from tests.documents.parts_owner.seen import figures, foreseen, marram_part
from tests.replacing import replace

from .ship import of_kind, paths, root, texts


def outlook(amounts: list[str], point: str = "1000.00", point_at: float = 0.22) -> CostOutlook:
    levels = dict(zip(LEVELS, map(Decimal, amounts), strict=True))
    found = tuple(Driver(f"{n}.a", str(n), share, Decimal(1), n % 3 == 0) for n, share in _shares())
    return CostOutlook(Decimal(point), point_at, Decimal(1), Decimal(1), levels, found, {})


def _shares() -> list[tuple[int, float]]:
    raw = [1 / (3 + n) for n in range(20)]
    return [(100 + n, share / sum(raw)) for n, share in enumerate(raw)]


STEADY = [f"{900 + 25 * n}.00" for n in range(11)]
CASES = {
    "steady": outlook(STEADY),
    "point at P50": outlook(STEADY, STEADY[5], 0.50),
    "point under all": outlook(STEADY, "700.00", 0.0),
    "point over all": outlook(STEADY, "1400.00", 1.0),
    "no spread": outlook(["5000.00"] * 11, "5000.00", 1.0),
    "millions": outlook([f"{10_000_000 + 900_000 * n}.55" for n in range(11)], "11000000.00", 0.12),
    "money back": outlook([f"{-500 + 90 * n}.00" for n in range(11)], "-300.00", 0.2),
}


def package() -> Package:
    return foreseen().compiled.package


def small() -> Schedule:
    found = foreseen().owner.schedule
    assert found is not None
    return found


def marram() -> Schedule:
    found = composed("marram").owner.schedule
    assert found is not None
    return found


def curve(name: str) -> Figure:
    return cost_curve(package(), CASES[name], "EUR")


def bars() -> Figure:
    found = drivers(
        package(), CASES["steady"], {f"{n}.a": f"{n}.a " + "Plating of the shell " * 4 for n, _ in _shares()}
    )
    assert found is not None
    return found


def many(count: int) -> Schedule:
    """Lay out many activities one after another, without dates."""
    given = small().network
    docking, undocking = given.nodes[given.of_kind("docking")], given.nodes[given.of_kind("undocking")]
    work = [Node(f"work-{n}", f"Work {n}", None, "work", "dry", Duration.fixed(0.5)) for n in range(count)]
    nodes = (given.nodes[0], given.nodes[1], docking, *work, undocking, given.nodes[-1])
    links = tuple(replace(given.links[0], before=before, after=after) for before, after in pairwise(range(len(nodes))))
    made = laid_out(Network(nodes, links), package())
    return replace(made, arrival=None)


SHEETS = ("bar-chart-1", "bar-chart-2", "bar-chart-3")
NAMES = [
    *(f"curve, {name}" for name in CASES),
    "drivers",
    "bar-chart",
    *(f"many {name}" for name in SHEETS),
    *(f"marram {name}" for name in ("cost-curve", "drivers", *SHEETS)),
]
EVERY = pytest.mark.parametrize("name", NAMES)


@cache
def drawn_as(name: str) -> Figure:
    """Draw one of them; only when a test asks, since the demonstration takes its trials."""
    whose, _, which = name.partition(" ")
    if whose == "curve,":
        return curve(which)
    if whose == "many":
        return next(one for one in bar_chart(package(), many(100)) if one.name == which)
    if whose == "marram":
        found = [one for part in ("cost-risk", "owner-programme") for one in figures(marram_part(part))]
        return next(one for one in found if one.name == which)
    return bars() if name == "drivers" else bar_chart(package(), small())[0]


@EVERY
def test_no_text_overlaps_another(name: str) -> None:
    drawn = drawn_as(name)
    assert [(a.content, b.content) for a, b in combinations(texts(drawn), 2) if a.overlaps(b)] == []


@EVERY
def test_text_stays_on_the_sheet_and_is_large_enough_to_read(name: str) -> None:
    drawn = drawn_as(name)
    width, height = figure_size(drawn)
    for text in texts(drawn):
        assert text.size >= 2.2
        assert text.left >= -0.01, text
        assert text.right <= width + 0.01, text
        assert text.top >= 0, text
        assert text.baseline <= height, text


@EVERY
def test_it_fits_its_page_says_its_scale_and_has_words_in_its_place(name: str) -> None:
    drawn = drawn_as(name)
    width, height = figure_size(drawn)
    assert (width, height) <= (165, 182) or (width <= 239 and height <= 125)
    assert re.search(r"(day|%|EUR) = [\d.]+ mm", drawn.svg)
    assert "Not to scale" not in drawn.svg
    assert len(drawn.alternative) > 80
    assert "not for the yard" in drawn.svg


def test_the_curve_runs_through_every_level_to_scale() -> None:
    drawn = curve("steady")
    (line,) = paths(drawn, stroke=pen.BLUE, stroke_width=pen.number(pen.HEAVY))
    assert len(line) == len(LEVELS)
    across = {round(after[0] - before[0], 1) for before, after in pairwise(line)}
    assert len(across) == 1  # the amounts lie 25 apart
    ten = (line[1][1] - line[2][1]) / 10
    for (_, y), level in zip(line, LEVELS, strict=True):
        assert line[0][1] - y == pytest.approx(100 * ten * (level - LEVELS[0]), abs=0.05)
    ticks = {t.content: t.middle for t in texts(drawn) if t.kind == "axis" and "%" not in t.content}
    per = (ticks["1 100"] - ticks["1 000"]) / 100
    assert line[0][0] == pytest.approx(ticks["1 000"] - 100 * per, abs=0.05)


def test_p50_p80_and_the_sum_of_likely_are_marked_with_their_amounts() -> None:
    labels = [one.replace("\N{NO-BREAK SPACE}", " ") for one in of_kind(curve("steady"), "level")]
    assert labels == [
        "as likely as not enough (P50): EUR 1 030",
        "enough in four cases of five (P80): EUR 1 100",
        "sum of likely prices: EUR 1 000",
    ]
    drawn = curve("steady")
    dots = list(root(drawn).iter("{http://www.w3.org/2000/svg}circle"))
    assert len(dots) == len(labels)
    (line,) = paths(drawn, stroke=pen.BLUE, stroke_width=pen.number(pen.HEAVY))
    assert (float(dots[1].attrib["cx"]), float(dots[1].attrib["cy"])) == line[LEVELS.index(0.80)]


def test_bars_are_as_long_as_their_shares_and_risks_are_drawn_heavier() -> None:
    drawn = bars()
    shares = [share for _, share in _shares()][:SHOWN]
    fine = paths(drawn, fill="none", stroke_width=pen.number(pen.FINE))
    heavy = paths(drawn, fill="none", stroke_width=pen.number(pen.MEDIUM))
    boxes = sorted((one for one in [*fine, *heavy] if one[0][0] > 50), key=lambda box: box[0][1])
    lengths = [box[1][0] - box[0][0] for box in boxes]
    assert len(lengths) == SHOWN
    for length, share in zip(lengths, shares, strict=True):
        assert length / lengths[0] == pytest.approx(share / shares[0], abs=0.001)
    assert len([one for one in heavy if one[0][0] > 50]) == 4
    (rest,) = of_kind(drawn, "rest")
    assert rest == f"the other 8 lines and risks together {100 * (1 - sum(shares)):.1f} %"


def test_there_are_no_bars_where_nothing_spreads() -> None:
    assert drivers(package(), replace(CASES["steady"], drivers=()), {}) is None


def boxes(drawn: Figure, fill: str) -> list[tuple[float, float]]:
    """Give start and end of the filled bars among the rows."""
    found = [box for box in paths(drawn, fill=fill) if len(box) == 4 and box[0][0] > 60 and box[0][1] == box[1][1]]
    return [(box[0][0], box[1][0]) for box in found]


def test_critical_activities_are_solid_and_to_scale() -> None:
    drawn = drawn_as("marram bar-chart-2")
    shown = of_kind(drawn, "activity")
    critical = [one for one in marram().activities if one.critical and one.node.title in shown]
    critical = [one for one in critical if one.node.kind != "decision"]
    solid = boxes(drawn, pen.INK)[: len(critical)]
    first, last = critical[0], critical[-1]
    per = (solid[-1][0] - solid[0][0]) / (last.start - first.start)
    for (start, end), one in zip(solid, critical, strict=True):
        assert start == pytest.approx(solid[0][0] + per * (one.start - first.start), abs=0.02)
        assert end - start == pytest.approx(per * (one.finish - one.start), abs=0.02)
    mondays = [text.left for text in texts(drawn) if text.kind == "week"]
    assert mondays[1] - mondays[0] == pytest.approx(7 * per, abs=0.02)


def test_every_activity_stands_once_and_weeks_have_their_dates() -> None:
    sheets = [drawn_as(f"marram {name}") for name in SHEETS]
    shown = [title for sheet in sheets for title in of_kind(sheet, "activity")]
    wanted = [one.node.title for one in marram().activities if one.node.name not in ("arrival", "redelivery")]
    assert shown == wanted
    assert all(len(of_kind(sheet, "activity")) <= MOST for sheet in sheets)
    assert of_kind(sheets[0], "week")[:2] == ["Mon 3 May", "Mon 10 May"]
    assert of_kind(sheets[0], "milestone") == ["arrival", "redelivery"]
    assert of_kind(sheets[0], "on-blocks") == ["on blocks 27.4 d"]
    assert {figure_size(sheet)[0] for sheet in sheets} == {239.0}


def test_without_a_date_of_arrival_days_are_counted() -> None:
    assert of_kind(drawn_as("many bar-chart-1"), "week")[:3] == ["day 0", "day 7", "day 14"]


def test_floats_decisions_and_what_hardens_are_told_apart_without_colour() -> None:
    (drawn,) = bar_chart(package(), small())
    assert of_kind(drawn, "legend") == [
        "holds her: late here is late home",
        "work that may wait",
        "hardening or waiting, solid where it holds her",
        "owner's answer",
        "how long it may wait",
        "on blocks",
    ]
