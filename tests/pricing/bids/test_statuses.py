"""Empty, 0, included and no bid stay four different things, in the words that yards use."""

from __future__ import annotations

import pytest

from tenderwright.pricing.bids.statuses import is_dash, status_said


@pytest.mark.parametrize(
    ("text", "status"),
    [
        ("", "empty"),
        ("  ", "empty"),
        ("Priced", "priced"),
        ("included", "included"),
        ("Incl.", "included"),
        ("inc", "included"),
        ("INCL", "included"),
        ("incl. in 110.a", "included"),
        ("included in item 150", "included"),
        ("Included (see 110 a)", "included"),
        ("No bid", "no bid"),
        ("nobid", "no bid"),
        ("n/a", "no bid"),
        ("N.A.", "no bid"),
        ("not offered", "no bid"),
        ("Not quoted", "no bid"),
        ("excluded", "no bid"),
        ("nil", "zero"),
        ("Free of charge", "zero"),
        ("F.O.C.", "zero"),
        ("incl. VAT 1200", None),
        ("included 1200 m", None),
        ("on request", None),
        ("about 900", None),
        ("...", None),
        ("420.a", None),
    ],
)
def test_words(text: str, status: str | None) -> None:
    assert status_said(text) == status


@pytest.mark.parametrize(("text", "dash"), [("-", True), ("–", True), ("- -", True), ("-5", False), ("", False)])
def test_dashes(text: str, dash: bool) -> None:
    assert is_dash(text) is dash
