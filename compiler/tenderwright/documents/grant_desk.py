"""The desk at which an application for a grant is composed: the package, and the application in figures."""

from __future__ import annotations

import re
from dataclasses import dataclass

from msgspec.structs import replace

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Inline
from tenderwright.linking.prose import parse_prose
from tenderwright.model.build import Prose
from tenderwright.model.funding import Worth
from tenderwright.model.item import Item
from tenderwright.model.owner import OwnerPapers, Risk
from tenderwright.planning.application import Application
from tenderwright.planning.outlook import CostOutlook
from tenderwright.planning.schedule import Schedule
from tenderwright.pricing.price import Estimate

_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[A-Z<\[])")


def _first(prose: Prose) -> str:
    """Give the first paragraph of a text as written; nothing where it begins with a table or a list."""
    text = prose.text.strip()
    tokens = parse_prose(text)
    lines = tokens[0].map if tokens and tokens[0].type == "paragraph_open" else None
    return "\n".join(text.split("\n")[: lines[1]]) if lines else ""


@dataclass(frozen=True, kw_only=True)
class ApplicationDesk(Desk):
    """A desk for a paper that stands by itself: only its own items are linked, everything else is named in words."""

    estimate: Estimate
    applied: Application
    outlook: CostOutlook
    papers: OwnerPapers
    schedule: Schedule | None

    @property
    def items(self) -> tuple[Item, ...]:
        """Give the chosen items in order."""
        return tuple(one.item for one in self.applied.chosen.work)

    @property
    def describes_work(self) -> bool:
        """Tell whether the paper has a heading under which each item is described."""
        return any("work" in heading.takes for heading in self.applied.profile.headings)

    def anchor(self, kind: str, name: str) -> str:
        """Give the anchor of a chosen item; nothing else of the specification is in the paper."""
        inside = kind == "item" and self.describes_work and any(item.number == name for item in self.items)
        return f"item-{name}" if inside else ""

    def worth(self, item: Item) -> Worth | None:
        """Give what the owner says of an item's worth."""
        return self.papers.scope.items.get(item.number) if self.papers.scope is not None else None

    def first_sentence(self, prose: Prose) -> Inline:
        """Give the first sentence of a text."""
        return self.words(replace(prose, text=_SENTENCE.split(_first(prose), maxsplit=1)[0]))

    def first_paragraph(self, prose: Prose) -> Inline:
        """Give the first paragraph of a text, for a cell or a fact."""
        return self.words(replace(prose, text=_first(prose)))

    def after_first_paragraph(self, prose: Prose) -> list[Block]:
        """Give what follows the first paragraph of a text, tables as tables; nothing where it is one paragraph."""
        more = prose.text.strip()[len(_first(prose)) :].strip()
        return [self.prose(replace(prose, text=more))] if more else []

    @property
    def risks(self) -> tuple[Risk, ...]:
        """Give the risks that are told: those the application names, else those of its items."""
        known = self.papers.risks.risks if self.papers.risks is not None else ()
        named = self.applied.grant.risks
        if named is not None:
            return tuple(risk for risk in known if risk.risk in {one.name for one in named})
        numbers = {item.number for item in self.items}
        return tuple(risk for risk in known if risk.item is not None and risk.item.name in numbers)
