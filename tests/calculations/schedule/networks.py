"""Networks for the tests: published ones, and random ones without a circle."""

from __future__ import annotations

from hypothesis import strategies as st

Links = list[tuple[int, int]]


def named(table: dict[str, tuple[float, str]]) -> tuple[list[str], list[float], Links]:
    """Turn a table of durations and names before, apart by spaces, into names, durations and links."""
    names = list(table)
    links = [(names.index(before), at) for at, (_, text) in enumerate(table.values()) for before in text.split()]
    return names, [days for days, _ in table.values()], links


TAYLOR = named(
    {
        "1-2": (7, ""),
        "1-3": (10, ""),
        "2-4": (6, "1-2"),
        "3-4": (5, "1-3"),
        "3-5": (4, "1-3"),
        "4-5": (3, "2-4 3-4"),
        "5-6": (2, "3-5 4-5"),
    }
)
"""Taylor, Introduction to Management Science, ch. 8, problem 1, with its arrows as activities."""

HOUSE = named(
    {
        "A": (2, ""),
        "B": (4, "A"),
        "C": (10, "B"),
        "D": (6, "C"),
        "E": (4, "C"),
        "F": (5, "E"),
        "G": (7, "D"),
        "H": (9, "E G"),
        "I": (7, "C"),
        "J": (8, "F I"),
        "K": (4, "J"),
        "L": (5, "J"),
        "M": (2, "H"),
        "N": (6, "K L"),
    }
)
"""Hillier and Lieberman, Introduction to Operations Research, the Reliable Construction Co. example (from memory)."""


@st.composite
def random_networks(draw: st.DrawFn, most: int = 10) -> tuple[list[float], Links]:
    count = draw(st.integers(1, most))
    whole = st.integers(0, 8).map(float)
    durations = draw(st.lists(st.one_of(whole, st.floats(0.01, 50.0)), min_size=count, max_size=count))
    labels = draw(st.permutations(range(count)))
    pairs = [(i, j) for j in range(count) for i in range(j)]
    chosen = draw(st.lists(st.sampled_from(pairs), max_size=2 * count)) if pairs else []
    return durations, [(labels[i], labels[j]) for i, j in chosen]
