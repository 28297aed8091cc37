"""A paper under owner/ that names its tender is a paper of this one.

Ground: common practice, no source. Rates, money, bids, an award and orders in dock are of one tender, and its item
numbers may mean other work in the next one.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.notices import Notice
from tenderwright.reading.issued_items import tender_number

CODE = "paper-of-another-tender"


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each paper that names another tender than that of the package."""
    number, papers = tender_number(context.sources), context.papers
    if not number:
        return
    alone = {
        "owner/rates.yaml": papers.rates,
        "owner/funding.yaml": papers.funding,
        "owner/scope.yaml": papers.scope,
        "owner/risks.yaml": papers.risks,
        "owner/approvals.yaml": papers.approvals,
        "owner/contract.yaml": papers.taken_away,
        "owner/questions.yaml": papers.questions,
        "owner/evaluation.yaml": papers.evaluation,
        "owner/award.yaml": papers.award,
    }
    for path, paper in (*alone.items(), *papers.bids.items(), *papers.in_dock.items(), *papers.grants.items()):
        if paper is not None and paper.tender and paper.tender != number:
            message = f"this is a paper of tender {paper.tender}, and the package is that of {number}"
            hints = (
                "a paper of a closed tender lies in its archive, where `tenderwright next` puts it",
                f"where this is one of {number}, write that",
            )
            yield Notice(CODE, context.at(path, "tender"), message, hints=hints)
