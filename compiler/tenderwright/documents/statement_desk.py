"""The desk at which the statement for trustees is composed: the package, and how the docking stands."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from tenderwright.documents.desk import Desk
from tenderwright.model.build import Prose
from tenderwright.model.owner import OwnerPapers
from tenderwright.planning.in_dock.standing import Standing
from tenderwright.pricing.money import written

LINES = "statement-lines"
"""File stem of the table beside the statement."""


@dataclass(frozen=True, kw_only=True)
class StatementDesk(Desk):
    """A desk for a page that holds none of the parts of the specification, so that nothing is linked to them."""

    standing: Standing
    papers: OwnerPapers | None = None
    """Whose photographs from the work are shown behind it."""
    papers_hash: str = ""
    """Checksum of the owner's papers that it rests on."""

    def anchor(self, kind: str, name: str) -> str:
        """Give no anchor."""
        return ""

    @property
    def currency(self) -> str:
        """Give the currency of the contract."""
        return self.standing.account.ledger.contract.currency

    def brief(self, written: Prose | None, most: int) -> str:
        """Give the first lines of a text as one, cut at a word where they are longer than so many characters."""
        return cut(self.plain(written).replace("\n", " "), most) if written is not None else ""


def sum_of(amount: Decimal) -> str:
    """Write an amount for running text, so that no line breaks inside it."""
    return written(amount).replace(" ", "\N{NO-BREAK SPACE}")


def cut(text: str, most: int) -> str:
    """Cut a text at a word where it is longer than so many characters; a whole first sentence is not marked as cut."""
    if len(text) <= most:
        return text
    sentence = text[: most + 1].rfind(". ")
    if sentence >= most // 3:
        return text[: sentence + 1]
    return text[: text.rfind(" ", 0, most)].rstrip(" ,;:(") + " …"
