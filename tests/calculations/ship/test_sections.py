"""The hull of a ship whose papers hold a few sections and no table of offsets."""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.buoyancy import buoyancy
from tenderwright.calculations.ship.docking_condition import docking
from tenderwright.calculations.ship.how_sure import how_sure
from tenderwright.calculations.ship.hull import hull
from tenderwright.calculations.ship.hydrostatics import stated_hydrostatics
from tenderwright.calculations.ship.landing import landing
from tenderwright.calculations.ship.sections import lofted
from tenderwright.calculations.ship.shell_plan import shell_plan
from tenderwright.calculations.steps.again import different
from tenderwright.calculations.steps.outcome import Absent, Failed, Lacking, Resting
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.model.package import Broken, Package
from tenderwright.model.sections import EndProfile, HullSection, Sections
from tenderwright.notices import Place
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity
from tests.calculations.hydrostatics.sectioned import sectioned
from tests.calculations.ship.test_buoyancy import metric
from tests.outcomes import result_of
from tests.replacing import replace

from .marram import found, length, package, ship

HERE = Place("vessel/sections.yaml", 1, 1)
PLACES = np.array([2.5, 8.0, 15.0, 24.0, 33.0, 40.0, 46.0])


def read_sections() -> Sections:
    """Give seven sections of the demonstration ship, as scaled from a plan at 1:100 to the nearest half millimetre."""
    read = sectioned(found(hull).form, PLACES)
    sections = tuple(
        HullSection(at=_at(one["x"]), heights=_row(one["heights"]), half_breadths=_row(one["half_breadths"]), here=HERE)
        for one in read["sections"]
    )
    stern, stem = (_end(read[name]) for name in ("stern", "stem"))
    return Sections(source="a docking plan", scale=100, sections=sections, stern=stern, stem=stem, here=HERE)


def _end(one: dict[str, Any]) -> EndProfile:
    return EndProfile(
        at=tuple(_at(x) for x in one["x"]),
        heights=_row(one["heights"]),
        deck_half_breadth=_row([one["deck_half_breadth"]])[0],
        here=HERE,
    )


def _at(x: float) -> Position:
    return Position(f"{x:.2f} m", round(x, 2), HERE)


def _row(values: list[float]) -> tuple[Quantity, ...]:
    return tuple(length(f"{round(20 * value) / 20:.2f} m") for value in values)


def with_sections(**changes: Any) -> Package:
    return replace(package(), offsets=None, sections=read_sections(), **changes)


@cache
def on_sections() -> Calculated:
    return calculate(with_sections())


def test_she_floats_as_by_her_offsets_within_what_is_said() -> None:
    at, true = result_of(on_sections(), stated_hydrostatics), found(stated_hydrostatics)
    values = on_sections().record.values
    u = {name: values[f"uncertainty.lofted.{name}"].si for name in ("volume", "centre", "metacentre")}
    assert at["displacement"] == pytest.approx(true["displacement"], rel=2 * u["volume"])
    assert at["lcb"] == pytest.approx(true["lcb"], abs=2 * u["centre"])
    assert at["km_transverse"] == pytest.approx(true["km_transverse"], abs=2 * u["metacentre"])
    assert u["volume"] < 0.025
    assert u["centre"] < 0.10
    assert u["metacentre"] < 0.06


def test_the_record_says_that_the_hull_is_lofted_and_each_figure_comes_out_again() -> None:
    record = on_sections().record
    given = record.values["hydrostatics.stated.displacement"].working.inputs["offsets"]
    assert given.text == "lofted from 7 sections (a docking plan)"
    assert given.origin == "hull.lofted.residual"
    assert "hull.lofted.residual" in {one.name for one in record.chain("docking.landing.upthrust")}
    assert record.values["hull.lofted.residual"].si < 0.05
    assert [value.name for value, _ in different(record)] == []


def test_docking_rests_on_it_and_is_less_sure() -> None:
    calculated = on_sections()
    assert result_of(calculated, landing).exact.settling.upthrust == pytest.approx(
        found(landing).exact.settling.upthrust, abs=2 * (result_of(calculated, how_sure).u("upthrust") or 0.0)
    )
    for figure in ("trim", "draft_aft", "gm", "upthrust"):
        assert (result_of(calculated, how_sure).u(figure) or 0.0) > (found(how_sure).u(figure) or 0.0)


def test_offsets_go_before_sections() -> None:
    calculated = calculate(replace(package(), sections=read_sections()))
    assert result_of(calculated, hull).drawn_from == "the table of offsets"
    assert isinstance(calculated.outcome(lofted), Absent)
    assert calculated.record.values.keys() == ship().record.values.keys()
    assert result_of(calculated, docking) == found(docking)


def test_without_either_the_hull_says_what_it_needs_and_a_mistake_is_waited_for() -> None:
    without = calculate(replace(package(), offsets=None))
    assert without.outcome(hull) == Lacking("it needs vessel/offsets.yaml or vessel/sections.yaml")
    assert result_of(without, shell_plan).words.endswith("girths of amidships everywhere, for want of her form")
    assert "amidships" not in result_of(on_sections(), shell_plan).words
    for file in ("vessel/sections.yaml", "vessel/offsets.yaml"):
        broken = replace(package(), offsets=None, broken=Broken(files=frozenset({file})))
        assert isinstance(calculate(broken).outcome(hull), Resting)


def test_rows_that_do_not_pair_are_told_at_the_section() -> None:
    sections = read_sections()
    short = replace(sections.sections[2], half_breadths=sections.sections[2].half_breadths[:-1])
    changed = replace(sections, sections=(*sections.sections[:2], short, *sections.sections[3:]))
    calculated = calculate(replace(package(), offsets=None, sections=changed))
    outcome = calculated.outcome(lofted)
    assert isinstance(outcome, Failed)
    assert outcome.notice.message == "8 half-breadths for 9 heights"
    assert isinstance(calculated.outcome(hull), Resting)


def test_curves_of_form_float_her_before_sections_which_give_her_form() -> None:
    calculated = calculate(with_sections(curves=metric()))
    assert not result_of(calculated, buoyancy).known_by_form
    assert result_of(calculated, hull).drawn_from == "7 sections"
    assert "from 7 sections (a docking plan)" in result_of(on_sections(), buoyancy).source
