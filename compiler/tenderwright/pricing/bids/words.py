"""Text as people type it, brought to one form for comparing."""

from __future__ import annotations

import re
import unicodedata

_ODD = str.maketrans({"‘": "'", "’": "'", "´": "'", "`": "'", "“": '"', "”": '"', "„": '"', "−": "-", "‑": "-"})
_DASHES = str.maketrans({"–": "-", "—": "-", "―": "-"})


def plain(text: str) -> str:
    """Bring text to one form: full-width letters, odd blanks, quotes and dashes made ordinary, blanks single."""
    return " ".join(unicodedata.normalize("NFKC", text).translate(_ODD).translate(_DASHES).split())


def folded(text: str) -> str:
    """Bring text to one form in which case does not count either."""
    return plain(text).casefold()


def bare(text: str) -> str:
    """Give only the letters and figures of a text, lower-case, words apart by single blanks."""
    return " ".join(re.findall(r"[^\W_]+", folded(text)))
