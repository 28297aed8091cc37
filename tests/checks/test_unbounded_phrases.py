"""Unbounded words are found whole, in any case, and not where something bounds them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.checks.unbounded_phrases import PHRASES, find_unbounded


def _found(text: str) -> list[str]:
    return [found.words for found in find_unbounded(text, 0, len(text))]


@pytest.mark.parametrize("phrase", PHRASES)
def test_every_phrase_is_found_alone_and_in_capitals(phrase: str) -> None:
    assert _found(f"Do it, {phrase}, and close up.")[0].lower() == phrase.lower()
    assert _found(f"DO IT, {phrase.upper()}, AND CLOSE UP.")


@pytest.mark.parametrize(
    "text",
    [
        "Similarly dissimilar.",
        "Fetch the etcher.",
        "Renew gaskets as needed, up to 12 each.",
        "Renew as necessary, to 3/8 in at most.",
        "Cut out approximately 20 m2 ± 2 m2.",
        "Ventilate as required by <clause:hot-work>.",
        "Ventilate as required by [the clause](clause:hot-work).",
        "The words “as required” are not used here.",
        "Fit covers if any is off.",
    ],
)
def test_what_is_bounded_or_spoken_of_is_let_be(text: str) -> None:
    assert _found(text) == []


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("Renew as required. The pipe is 20 mm wide.", "as required"),
        ("The pipe is 20 mm wide. Renew as required.", "as required"),
        ("The pipe is 20 mm wide\n\nRenew as required", "as required"),
        ("Renew as\n  required and close up.", "as required"),
        ("Cut out approximately 20 m2.", "approximately"),
        ("Renew 3 in the way as needed.", "as needed"),
        ("Ventilate as required by the yard.", "as required"),
        ("Refit bolts, nuts, etc.", "etc."),
        ("Renew zincs, if any.", "if any"),
        ('"as required"', "as required"),
    ],
)
def test_what_bounds_nothing_is_found(text: str, words: str) -> None:
    assert _found(text) == [words]


def test_offsets_point_at_the_words() -> None:
    text = "Close up. Renew as needed here."
    (found,) = find_unbounded(text, 0, len(text))
    assert text[found.start :].startswith("as needed")
    assert found.on_first_line == "as needed"


@given(st.text(alphabet="abc 0123456789.,;\n<>[]():'\"", max_size=80), st.sampled_from(PHRASES))
def test_found_words_are_always_words_of_the_text(noise: str, phrase: str) -> None:
    text = f"{noise} {phrase} {noise}"
    for found in find_unbounded(text, 0, len(text)):
        assert text.startswith(found.written, found.start)
        assert found.words.lower() in {one.lower() for one in PHRASES}
        assert found.hint
