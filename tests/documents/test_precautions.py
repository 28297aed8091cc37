"""The standing texts that hazards bring into an item hold no figures of their own: the clauses do."""

from __future__ import annotations

import re

import pytest

from tenderwright.documents.desk import CAUTION
from tenderwright.documents.precautions import PRECAUTIONS

_FIGURE = re.compile(r"\d|\b(?:one|two|three|five|ten|fifteen|thirty|sixty) (?:minutes?|hours?|days?|metres?)\b")


@pytest.mark.parametrize("hazard", PRECAUTIONS)
def test_a_precaution_holds_no_figure(hazard: str) -> None:
    text, clause = PRECAUTIONS[hazard]
    assert not _FIGURE.search(text)
    assert clause


def test_the_search_finds_what_it_looks_for() -> None:
    assert _FIGURE.search("a watch for at least 30 minutes after")
    assert _FIGURE.search("a watch for thirty minutes after")


def test_the_caution_holds_no_figure() -> None:
    assert not _FIGURE.search(CAUTION)
