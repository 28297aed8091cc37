"""Every question has its answer when the addendum that issues it goes out, or the last one before bids close.

Ground: what one bidder is told all are told, in writing and before bids close; an answer that never comes leaves each
bidder to guess (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "question-unanswered"


def check(context: Context) -> Iterator[Notice]:
    """Report each question without an answer that an addendum issues, or that is open after the last day to ask."""
    tender = context.package.tender
    until = tender.dates.questions_until if tender else None
    last = max((addendum.date for addendum in tender.addenda), default=None) if tender else None
    for question in context.package.questions:
        if question.answer is not None:
            continue
        if question.addendum is not None:
            place = question.ask.source.place(("addendum",))
            message = f"question {question.number} has no answer, and addendum {question.addendum} is to issue it"
            yield Notice(CODE, place, message, hints=("write `answer`, or delete `addendum`",))
        elif until is not None and last is not None and question.asked <= until < last:
            message = (
                f"question {question.number} has no answer: questions ended on {until}, the last addendum is of {last}"
            )
            yield Notice(CODE, question.here, message, hints=("write `answer`, and in `addendum` which one issues it",))
