"""Quantities and chances are said so that a trustee understands them."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.documents.parts.bids_words import (
    break_even_sentence,
    chance,
    passed_quantity,
    percent,
    quantity,
    rate,
    running,
)
from tests.fixtures.returned_bids import compared_bids
from tests.replacing import replace


@pytest.mark.parametrize(
    ("probability", "words"),
    [
        (0.0, "next to no chance"),
        (0.01, "less than one chance in sixty"),
        (1 / 20, "about one chance in twenty"),
        (0.1, "about one chance in ten"),
        (1 / 8, "about one chance in eight"),
        (1 / 6, "about one chance in six"),
        (0.2, "about one chance in five"),
        (0.25, "about one chance in four"),
        (1 / 3, "about one chance in three"),
        (0.5, "about an even chance"),
        (2 / 3, "about two chances in three"),
        (0.8, "about four chances in five"),
        (0.9, "about nine chances in ten"),
        (1.0, "hardly a doubt"),
    ],
)
def test_a_chance_in_words(probability: float, words: str) -> None:
    assert chance(probability) == words


@given(st.floats(0.0, 1.0))
def test_every_chance_has_words(probability: float) -> None:
    assert chance(probability)


def test_figures_of_quantities_follow_their_size() -> None:
    assert [quantity(number, "kg") for number in (1239.6, 99.44, 3.5, 0.125)] == [
        "1 240 kg",
        "99.4 kg",
        "3.5 kg",
        "0.12 kg",
    ]
    assert quantity(Decimal(40), "m2") == "40 m²"
    assert quantity(Decimal(30000), "EUR") == "30 000 EUR"


def test_shares_rates_and_texts() -> None:
    assert [percent(share) for share in (None, 0.0, 0.004, 0.126)] == ["–", "0 %", "< 1 %", "13 %"]
    assert [rate(one) for one in (None, Decimal("12.5"), Decimal("0.3625"), Decimal(46500))] == [
        "–",
        "12.50",
        "0.3625",
        "46 500.00",
    ]


def test_within_a_sentence_only_the_first_letter_is_lowered() -> None:
    assert [running(text) for text in ("Sub-total of section C", "Line 420.a", "")] == [
        "sub-total of section C",
        "line 420.a",
        "",
    ]


def test_the_sentence_on_a_break_even_quantity() -> None:
    _, found = compared_bids()
    assert break_even_sentence(found.break_evens[0], found) == (
        "If line 320.a (renew one rivet) comes to more than 67 no., Ostrey Dock becomes dearer than Wrackness Yard; by "
        "the owner's least and most there is about one chance in four of that. 40 no. were tendered."
    )


def test_of_pieces_the_last_whole_one_is_named() -> None:
    _, found = compared_bids()
    first = found.break_evens[0]
    assert first.line.unit == "each"
    assert 67 < first.quantity < 68
    assert passed_quantity(first, "EUR") == "67 no."
    assert passed_quantity(replace(first, more=False), "EUR") == "68 no."
