"""The tanks twice: soundings on docking and at undocking, what differs, and what is to be sounded."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.docking_condition import docking as docking_step
from tenderwright.calculations.ship.docking_condition import docking_tank_states
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.undocking import undocking as undocking_step
from tenderwright.calculations.ship.undocking import undocking_tank_states
from tenderwright.calculations.steps.outcome import Lacking
from tenderwright.documents.drawings.tank_marks import NO_TANKS
from tenderwright.documents.drawings.tank_states import tank_states
from tests.outcomes import result_of

from .ship import LACKING, altered, figure, marram, of_kind, paths, scale, texts

DRAWN = "tank-states"


def test_every_tank_is_listed_once_with_both_soundings_and_volumes() -> None:
    package, calculated = marram()
    listed = of_kind(figure(DRAWN), "tank-list")
    for tank in package.tanks:
        assert listed.count(tank.name) == 1
        for states in (result_of(calculated, docking_tank_states), result_of(calculated, undocking_tank_states)):
            state = states[tank.tank]
            if state.volume > 0 and state.sounding is not None:
                assert f"{state.volume:.2f}" in listed
                assert f"{state.sounding:.2f}" in listed


def test_both_plans_number_every_tank_and_have_one_size() -> None:
    drawn = figure(DRAWN)
    numbers = [str(n) for n in range(1, len(marram()[0].tanks) + 1)]
    assert sorted(of_kind(drawn, "plan-number"), key=int) == sorted(numbers * 2, key=int)
    outlines = paths(drawn, stroke_width="0.5")
    spans = [max(y for _, y in shape) - min(y for _, y in shape) for shape in outlines]
    assert spans[0] == pytest.approx(spans[1], abs=0.02)
    assert spans[0] == pytest.approx(2 * 4.54 * 1000 / scale(drawn), abs=0.1)


def test_both_conditions_say_how_she_floats() -> None:
    said = of_kind(figure(DRAWN), "floating")
    assert f"{result_of(marram()[1], docking_step).loading.mass / 1000:.0f} t" in said
    assert f"{result_of(marram()[1], undocking_step).position.loading.mass / 1000:.0f} t" in said


def test_tanks_to_be_sounded_before_flooding_are_marked() -> None:
    undocking = result_of(marram()[1], undocking_step)
    assert of_kind(figure(DRAWN), "tank-list").count("S") == len(undocking.sound_before_flooding) > 0


def test_only_tanks_that_differ_are_in_the_alternative() -> None:
    package, calculated = marram()
    drawn = tank_states(package, altered({undocking_tank_states: result_of(calculated, docking_tank_states)}))
    assert drawn.alternative.endswith("They differ: nowhere.")
    assert "Oil fuel, port" in figure(DRAWN).alternative


def test_a_tank_of_which_nothing_is_known_is_not_invented() -> None:
    package, calculated = marram()
    name = package.tanks[0].tank
    left = {tank: state for tank, state in result_of(calculated, docking_tank_states).items() if tank != name}
    drawn = tank_states(package, altered({docking_tank_states: left}))
    row = next(text.baseline for text in texts(drawn) if text.content == package.tanks[0].name)
    cells = [text for text in texts(drawn) if text.kind == "tank-list" and abs(text.baseline - row) < 0.01]
    assert [text.content for text in sorted(cells, key=lambda text: text.left)][2:4] == ["–", "–"]


def test_there_is_no_drawing_without_both_conditions() -> None:
    for step in (docking_tank_states, undocking_tank_states, hull_outline):
        assert tank_states(marram()[0], altered({step: LACKING})) == LACKING
    assert tank_states(marram()[0], altered({docking_tank_states: {}})) == Lacking(NO_TANKS)
