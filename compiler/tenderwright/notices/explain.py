"""Explain a notice code: what it means, why it matters, a wrong and a right example, how to mend it."""

from __future__ import annotations

from pathlib import Path

from tenderwright.notices.codes import CODES
from tenderwright.notices.suggest import did_you_mean

EXPLANATIONS = Path(__file__).resolve().parent / "explanations"


class UnknownCode(ValueError):
    """There is no notice code of this name; `hints` may name the one that was meant."""

    def __init__(self, code: str) -> None:
        super().__init__(f"there is no notice code `{code}`")
        self.hints = did_you_mean(code, CODES)


def explanation(code: str) -> str:
    """Give the explanation of a code as CommonMark; raises UnknownCode."""
    if code not in CODES:
        raise UnknownCode(code)
    return (EXPLANATIONS / f"{code}.md").read_text("utf-8")
