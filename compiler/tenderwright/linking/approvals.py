"""Resolve what the register of approvals names: the sources of money whose word an approval is."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.model.owner import OwnerPapers
from tenderwright.notices import Note, Notice, Place
from tenderwright.notices.suggest import did_you_mean

FUNDING = "owner/funding.yaml"


def link_approvals(papers: OwnerPapers) -> Iterator[Notice]:
    """Report a source of money that nobody wrote down, and an approval that stands twice."""
    known = [one.source for one in papers.funding.sources] if papers.funding is not None else []
    first: dict[str, Place] = {}
    for one in papers.approvals.approvals if papers.approvals is not None else ():
        if one.approval in first:
            notes = (Note("it is first listed here", first[one.approval]),)
            message = f"approval `{one.approval}` is listed twice"
            hint = "give one of them another identifier"
            yield Notice("duplicate-name", one.here, message, notes, (hint,))
        first.setdefault(one.approval, one.here)
        source = one.source
        if source is None or source.name in known or FUNDING in papers.broken.files:
            continue
        message = f"there is no source `{source}`"
        hints = did_you_mean(source.name, known) or (f"name one of the sources of {FUNDING}",)
        yield Notice("dead-reference", source.at, message, hints=hints, cause=message)
