"""The page of a hull of wood says what it lacks where its figures would stand, and no figure of another hull."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.documents.desk import Desk
from tenderwright.documents.parts.condition import condition
from tenderwright.model.particulars import Hull
from tenderwright.model.timber import Timber
from tenderwright.pipeline import compile_package, read
from tests.documents.composed import words
from tests.replacing import replace

WITHY = Path(__file__).parents[2] / "packages" / "withy"


@cache
def desk() -> Desk:
    compiled = compile_package(read(WITHY))
    return Desk(compiled.package, compiled.links, compiled.calculated)


def told(**changes: Any) -> str:
    """Give the words of the page of Withy with changes of her survey."""
    timber = desk().package.timber
    assert timber is not None
    return told_of(timber=replace(timber, **changes))


def told_of(**changes: Any) -> str:
    package = replace(desk().package, **changes)
    part = condition(replace(desk(), package=package, calculated=calculate(package)))
    assert part is not None
    return words(part)


def hull(**changes: Any) -> dict[str, Any]:
    particulars = desk().package.particulars
    assert particulars is not None
    assert isinstance(particulars.hull, Hull)
    return {"particulars": replace(particulars, hull=replace(particulars.hull, **changes))}


def test_without_a_survey_the_page_says_what_it_needs() -> None:
    assert "Not calculated: it needs the survey of her timber." in told_of(timber=None)


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"practice": None}, "Not calculated: it needs the rules for judging wood in the survey of her timber."),
        ({"practice": None}, "Not judged: the survey of her timber has no rules for judging wood."),
        ({"planks": ()}, "Not calculated: it needs the planks in the survey of her timber."),
        ({"seams": ()}, "Not calculated: it needs the seams in the survey of her timber."),
        ({"hog": None}, "Not measured: the survey of her timber has no hog."),
    ],
)
def test_what_is_missing_is_told_where_it_would_stand(changes: dict[str, Any], said: str) -> None:
    assert said in told(**changes)


@pytest.mark.parametrize(
    ("field", "words_of_it"),
    [
        ("waste", "it needs the allowance for waste under the rules for judging wood"),
        ("unsound", "it needs what counts as unsound under the rules for judging wood"),
        ("moisture", "it needs the moisture of the wood under the rules for judging wood"),
        ("fastening_loss", "it needs the loss that condemns a fastening under the rules for judging wood"),
        ("days_dry", "it needs the days that she may stand dry under the rules for judging wood"),
    ],
)
def test_a_limit_that_nobody_gave_is_asked_for_and_not_assumed(field: str, words_of_it: str) -> None:
    timber = desk().package.timber
    assert isinstance(timber, Timber)
    assert timber.practice is not None
    assert words_of_it in told(practice=replace(timber.practice, **{field: None}))


def test_of_a_composite_hull_nothing_is_reckoned() -> None:
    said = told_of(**hull(material="composite"))
    assert "Not calculated: her hull is composite, planks on frames of metal, which is not supported." in said
    values = calculate(replace(desk().package, **hull(material="composite"))).record.values
    assert [name for name in values if name.startswith(("timber.", "shell.", "anodes."))] == []


def test_a_hull_that_sags_is_not_called_hogged() -> None:
    timber = desk().package.timber
    assert timber is not None
    assert timber.hog is not None
    line = [replace(one, height=replace(one.height, si=-one.height.si)) for one in timber.hog.keel]
    assert "sagged by 33.7 mm" in told(hog=replace(timber.hog, keel=tuple(line)))
