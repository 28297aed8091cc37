"""Suggest what was probably meant, for keys, choices, identifiers and units."""

from __future__ import annotations

from collections.abc import Iterable


def did_you_mean(written: str, known: Iterable[str], cutoff: float = 0.6) -> tuple[str, ...]:
    """Give a hint naming the closest known word, or nothing where none is as like as the cutoff, from 0 to 1."""
    from difflib import get_close_matches  # only where something is amiss

    words = {word.lower(): word for word in known}
    close = get_close_matches(written.lower(), list(words), n=1, cutoff=cutoff)
    return (f"did you mean `{words[close[0]]}`?",) if close else ()
