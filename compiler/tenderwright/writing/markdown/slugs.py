"""Finds what a reader of Markdown calls each heading, so that references can lead there.

The rule is that of GitHub's own pages, as common readers follow it (common practice, no source): lower case, letters,
digits, hyphens and underscores kept, each space a hyphen, and a counter after a name that came before.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

_DROPPED = re.compile(r"[^\w\- ]")


def heading_slugs(headings: Iterable[tuple[str, str]]) -> dict[str, str]:
    """Give the slug of every heading that has an anchor, from anchors and texts in the order of the document."""
    slugs: dict[str, str] = {}
    taken: dict[str, int] = {}
    for anchor, text in headings:
        slug = base = _DROPPED.sub("", " ".join(text.split()).lower()).replace(" ", "-")
        while slug in taken:
            taken[base] += 1
            slug = f"{base}-{taken[base]}"
        taken[slug] = 0
        if anchor and slug:
            slugs.setdefault(anchor, slug)
    return slugs
