"""Tanks of which something could not be calculated say so, and what it would take."""

from __future__ import annotations

from tenderwright.documents.edition import Part, Table
from tenderwright.documents.parts.tanks import sounding_tables, tanks
from tests.documents.composed import composed, rows, words
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
    needs = f"it needs the bounds of tank `{dry.tank}` in vessel/tanks.yaml, or its `plan`"
    assert f"{dry.name}. Not calculated: {needs}." in said
    assert _last(part)[0] == "All tanks but those not calculated"
    tables = sounding_tables(desk)
    assert tables is not None
    assert f"Not calculated: it needs the sounding pipe of tank `{wet.tank}` in vessel/tanks.yaml." in words(tables)
    assert len([one for one in tables.blocks if isinstance(one, Table)]) == len(package.tanks) - 2


def test_with_all_that_they_need_nothing_is_said_to_lack() -> None:
    desk = composed("marram").desk()
    tables = sounding_tables(desk)
    assert tables is not None
    assert "Not calculated" not in words(tanks(desk)) + words(tables)
    assert _last(tanks(desk))[0] == "All tanks"


def _last(part: Part) -> list[str]:
    (table,) = (one for one in part.blocks if isinstance(one, Table))
    return rows(table)[-1]
