"""Every code is explained, has a fixture that fails, and is emitted somewhere."""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path

import pytest

import tenderwright
from tenderwright.notices.codes import CHECK_CODES, CODES, OWNER_CHECK_CODES
from tenderwright.notices.explain import EXPLANATIONS
from tests.coherence.tender.mistakes import MISTAKES
from tests.fixtures.overlay import cases, expected
from tests.notices.test_closing_fixtures import CLOSED, OPEN
from tests.notices.test_compared_fixtures import COMPARED
from tests.notices.test_grant_fixtures import APPLIED
from tests.notices.test_reading_fixtures import SPOILT
from tests.notices.test_returned_fixtures import RETURNED

SOURCE = Path(tenderwright.__file__).parent
TESTS = Path(__file__).parents[1]
ELSEWHERE = {
    "unreadable-file": "pipeline/test_bad_input.py",
    "price-by-formula": "pricing/bids/test_prices.py",
    "credit-with-minus": "pricing/bids/test_prices.py",
}
"""Codes whose mistake no file of a fixture can hold, each with the test that brings it about."""
_LISTED = SOURCE / "notices" / "codes.py"
"""Names codes without emitting them."""


@cache
def _texts_in_source() -> frozenset[str]:
    texts: set[str] = set()
    for path in SOURCE.rglob("*.py"):
        if path != _LISTED:
            tree = ast.parse(path.read_text("utf-8"))
            texts |= {n.value for n in ast.walk(tree) if isinstance(n, ast.Constant) and isinstance(n.value, str)}
    return frozenset(texts)


@pytest.mark.parametrize("code", CODES)
def test_every_code_is_emitted(code: str) -> None:
    assert code in _texts_in_source()


def test_every_code_has_an_explanation_and_no_explanation_is_left_over() -> None:
    assert {path.stem for path in EXPLANATIONS.iterdir()} == set(CODES)


def test_every_code_has_a_fixture_that_fails() -> None:
    written = {code for case in cases("notices") for _, _, code in expected(case)}
    kinds = ("checks", "owner-checks")
    checked = {code for kind in kinds for case in cases(kind, "negative") for _, _, code in expected(case)}
    coherent = {code for *_, code in MISTAKES}
    others = set(SPOILT) | set(RETURNED) | set(COMPARED) | set(APPLIED) | set(CLOSED) | set(OPEN)
    assert written | checked | coherent | others | set(ELSEWHERE) == set(CODES)
    assert all(code in (TESTS / path).read_text("utf-8") for code, path in ELSEWHERE.items())


def test_a_check_does_not_borrow_the_code_of_another_stage() -> None:
    assert {*CHECK_CODES, *OWNER_CHECK_CODES} <= set(CODES)
    for code in (*CHECK_CODES, *OWNER_CHECK_CODES):
        folder = SOURCE / "checks" / ("owner" if code in OWNER_CHECK_CODES else "")
        module = folder / f"{code.replace('-', '_')}.py"
        assert f'"{code}"' in module.read_text("utf-8")


@pytest.mark.parametrize("code", CODES.values(), ids=lambda code: code.name)
def test_titles_are_lowercase_clauses(code: object) -> None:
    title = CODES[getattr(code, "name", "")].title
    assert title[0].islower()
    assert not title.endswith(".")
