"""The tanks twice: soundings on docking and at undocking, what differs, and what is to be sounded."""

from __future__ import annotations

import pytest

from tenderwright.documents.drawings.tank_states import tank_states
from tests.replacing import replace

from .ship import figure, marram, of_kind, paths, scale, texts

DRAWN = "tank-states"


def test_every_tank_is_listed_once_with_both_soundings_and_volumes() -> None:
    package, _, results = marram()
    listed = of_kind(figure(DRAWN), "tank-list")
    for tank in package.tanks:
        assert listed.count(tank.name) == 1
        for states in (results.docking.tanks, results.docking.tanks_undocking):
            state = states[tank.tank]
            if state.volume > 0 and state.sounding is not None:
                assert f"{state.volume:.2f}" in listed
                assert f"{state.sounding:.2f}" in listed


def test_both_plans_number_every_tank_and_have_one_size() -> None:
    drawn = figure(DRAWN)
    numbers = [str(n) for n in range(1, len(marram()[0].tanks) + 1)]
    assert sorted(of_kind(drawn, "plan-number"), key=int) == sorted(numbers * 2, key=int)
    outlines = paths(drawn, stroke_width="0.55")
    spans = [max(y for _, y in shape) - min(y for _, y in shape) for shape in outlines]
    assert spans[0] == pytest.approx(spans[1], abs=0.02)
    assert spans[0] == pytest.approx(2 * 4.54 * 1000 / scale(drawn), abs=0.1)


def test_both_conditions_say_how_she_floats() -> None:
    docking = marram()[2].docking
    assert docking.position is not None
    assert docking.undocking is not None
    said = of_kind(figure(DRAWN), "floating")
    assert f"{docking.position.loading.mass / 1000:.1f} t" in said
    assert f"{docking.undocking.position.loading.mass / 1000:.1f} t" in said


def test_tanks_to_be_sounded_before_flooding_are_marked() -> None:
    undocking = marram()[2].docking.undocking
    assert undocking is not None
    assert of_kind(figure(DRAWN), "tank-list").count("S") == len(undocking.sound_before_flooding) > 0


def test_only_tanks_that_differ_are_in_the_alternative() -> None:
    package, _, results = marram()
    same = replace(results.docking, tanks_undocking=results.docking.tanks)
    drawn = tank_states(package, replace(results, docking=same))
    assert drawn is not None
    assert drawn.alternative.endswith("They differ: nowhere.")
    assert "Oil fuel, port" in figure(DRAWN).alternative


def test_a_tank_of_which_nothing_is_known_is_not_invented() -> None:
    package, _, results = marram()
    name = package.tanks[0].tank
    left = {tank: state for tank, state in results.docking.tanks.items() if tank != name}
    drawn = tank_states(package, replace(results, docking=replace(results.docking, tanks=left)))
    assert drawn is not None
    row = next(text.baseline for text in texts(drawn) if text.content == package.tanks[0].name)
    cells = [text for text in texts(drawn) if text.kind == "tank-list" and abs(text.baseline - row) < 0.01]
    assert [text.content for text in sorted(cells, key=lambda text: text.left)][2:4] == ["–", "–"]


def test_there_is_no_drawing_without_both_conditions() -> None:
    package, _, results = marram()
    for lacking in (replace(results.docking, tanks={}), replace(results.docking, tanks_undocking={})):
        assert tank_states(package, replace(results, docking=lacking)) is None
