"""The addendum that issues an answer is one of those that the tender lists.

Ground: bidders acknowledge addenda by number, and an answer in one that is not listed reaches nobody (common
practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Report each question whose addendum is not listed in package.yaml."""
    tender = context.package.tender
    if tender is None:
        return
    listed = {addendum.number for addendum in tender.addenda}
    for question in context.package.questions:
        if question.addendum is not None and question.addendum not in listed:
            message = f"question {question.number} is issued in addendum {question.addendum}, which is not listed"
            hint = f"add `- {{ number: {question.addendum}, date: …, summary: … }}` to `addenda` in package.yaml"
            yield Notice("addendum-not-listed", question.ask.source.place(("addendum",)), message, hints=(hint,))
