"""The anodes: each stands where the package says, with what was left of it."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.steps.outcome import NotAsked
from tenderwright.documents.drawings.anode_plan import anode_plan
from tests.replacing import replace

from .ship import LACKING, altered, figure, marram, of_kind, texts

DRAWN = "anode-plan"


def test_every_anode_is_named_once_with_what_was_left() -> None:
    package, _ = marram()
    named = of_kind(figure(DRAWN), "anode")
    assert sorted(named) == sorted(f"{anode.anode.upper()} {anode.left}" for anode in package.anodes)


def test_labels_of_one_side_do_not_overlap() -> None:
    labels = [text for text in texts(figure(DRAWN)) if text.kind == "anode"]
    assert not [(a.content, b.content) for i, a in enumerate(labels) for b in labels[i + 1 :] if a.overlaps(b)]


def test_the_wasted_part_is_left_white() -> None:
    """The black part of the box is as long as the share left: 35 % of the box of p7."""
    package, calculated = marram()
    full = anode_plan(replace(package, anodes=tuple(replace(a, left=None) for a in package.anodes)), calculated)
    assert full.svg != figure(DRAWN).svg
    assert of_kind(full, "anode").count("P7") == 1


@pytest.mark.parametrize("part", ["anodes", "form"])
def test_none_is_drawn_without_anodes_or_a_hull(part: str) -> None:
    package, calculated = marram()
    if part == "anodes":
        assert isinstance(anode_plan(replace(package, anodes=()), calculated), NotAsked)
    else:
        assert anode_plan(package, altered({hull_outline: LACKING})) == LACKING
