"""Tanks of which something could not be calculated say so, and what it would take."""

from __future__ import annotations

import pytest

from tenderwright.documents.edition import Column, Heading, Part, Row, Table, inline
from tenderwright.documents.parts.abreast import in_runs
from tenderwright.documents.parts.tanks import sounding_tables, tanks
from tenderwright.documents.together import together
from tests.documents.composed import composed, rows, walk, words
from tests.documents.composed import tables as all_tables
from tests.replacing import replace

from .test_not_calculated import without

NAMED = "a sounding or an ullage needs a sounding pipe"


def test_a_tank_without_bounds_or_pipe_says_what_its_figures_need() -> None:
    package = composed("marram").compiled.package
    wet = next(tank for tank in package.tanks if tank.contents.sounding is not None and tank.pipe is not None)
    dry = next(tank for tank in package.tanks if tank.contents.liquid == "none")
    changed = {wet.tank: replace(wet, pipe=None), dry.tank: replace(dry, bounds=None, pipe=None)}
    desk = without(tanks=tuple(changed.get(tank.tank, tank) for tank in package.tanks))
    part = tanks(desk)
    said = words(part)
    assert f"{wet.name}. Not calculated: {NAMED}." in said
    needs = "it needs the bounds of that tank in the list of tanks, or its plan"
    assert f"{dry.name}. Not calculated: {needs}." in said
    assert _last(part)[0] == "All tanks but those not calculated"
    tables = sounding_tables(desk)
    assert tables is not None
    assert f"{wet.name}. Not calculated: it needs the sounding pipe of that tank in the list of tanks" in words(tables)
    assert not {wet.name, dry.name} & {heading.text for heading in walk(tables) if isinstance(heading, Heading)}


def test_tanks_that_are_alike_share_one_sounding_table() -> None:
    shared = sounding_tables(composed("marram").desk())
    assert shared is not None
    titles = [heading.text for heading in walk(shared) if isinstance(heading, Heading)]
    assert "Fresh water, port and starboard" in titles
    printed = [tuple(map(tuple, rows(table))) for table in all_tables(shared)]
    assert len(set(printed)) == len(printed) == len(titles) == 11


def test_a_table_longer_than_a_page_goes_on_beside_itself() -> None:
    table = Table((Column("Sounding"),), tuple(Row((inline(str(at)),)) for at in range(100)))
    runs = in_runs(table)
    assert [len(run.rows) for run in runs] == [34, 34, 32]
    assert tuple(row for run in runs for row in run.rows) == table.rows


@pytest.mark.parametrize(
    ("names", "told"),
    [
        (["Oil fuel, port", "Oil fuel, starboard"], "Oil fuel, port and starboard"),
        (["Forepeak"], "Forepeak"),
        (["Forepeak", "Afterpeak", "Void"], "Forepeak, Afterpeak and Void"),
        (["Void", "Void, port"], "Void and Void, port"),
    ],
)
def test_what_names_begin_with_is_said_once(names: list[str], told: str) -> None:
    assert together(names) == told


def test_with_all_that_they_need_nothing_is_said_to_lack() -> None:
    desk = composed("marram").desk()
    tables = sounding_tables(desk)
    assert tables is not None
    assert "Not calculated" not in words(tanks(desk)) + words(tables)
    assert _last(tanks(desk))[0] == "All tanks"


def _last(part: Part) -> list[str]:
    (table,) = (one for one in part.blocks if isinstance(one, Table))
    return rows(table)[-1]
