"""Outputs that cannot be made are told at the line where they stand."""

from __future__ import annotations

from tenderwright.model.grant import GrantOutput
from tenderwright.planning.grant_outputs import output_mistakes
from tenderwright.quantities.quantity import parse_quantity
from tests.replacing import replace

from .applications import HERE, grant, marram, name, profiles


def told(output: GrantOutput) -> list[tuple[str, str]]:
    made = marram().work_out(
        replace(grant("capital-activity", "310", "315"), outputs=(output,)), profiles()["capital-activity"]
    )
    return [(notice.code, notice.message) for notice in output_mistakes(made.grant, made.chosen)]


def test_an_output_states_a_quantity_or_sums_lines() -> None:
    neither = told(GrantOutput(output="joy", here=HERE))
    both = told(
        GrantOutput(output="rivets", here=HERE, quantity=parse_quantity("5 each", "any"), lines=(name("315.a"),))
    )
    assert [neither[0][0], both[0][0]] == ["missing-key", "missing-key"]
    assert "neither `quantity` nor `lines`" in neither[0][1]
    assert "both `quantity` and `lines`" in both[0][1]
    assert told(GrantOutput(output="rivets", here=HERE, lines=(name("315.a"), name("315.b")))) == []


def test_lines_are_of_the_chosen_items_and_measure_alike() -> None:
    assert told(GrantOutput(output="paint", here=HERE, lines=(name("420.a"),)))[0][0] == "dead-reference"
    assert told(GrantOutput(output="steel", here=HERE, lines=(name("310.a"), name("315.a"))))[0][0] == "wrong-dimension"
    assert told(GrantOutput(output="gang", here=HERE, lines=(name("315.a"), name("315.d"))))[0][0] == "wrong-dimension"
