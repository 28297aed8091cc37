"""Questions of bidders and their answers, which every yard gets; who asked is not told."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Heading, Inline, Paragraph, Part, Span, inline
from tenderwright.documents.parts.front import ANNEXES
from tenderwright.model.question import Question
from tenderwright.quantities.customs import day


def answered(desk: Desk, number: str) -> bool:
    """Tell whether a question is printed: one without an answer is not."""
    return any(one.number == number and one.answer is not None for one in desk.package.questions)


def questions(desk: Desk, new_in: int = 0) -> Part | None:
    """Compose the questions that have answers; those of the addendum `new_in` are marked as new."""
    printed = [one for one in desk.package.questions if one.answer is not None]
    if not printed:
        return None
    words = "An answer explains the tender; how questions are put is said in "
    blocks: list[Block] = [Paragraph(inline(words, desk.part("revision-record"), "."))]
    changed: list[int] = []
    for one in printed:
        found = _question(desk, one, new_in)
        if new_in and one.addendum == new_in:
            changed += range(len(blocks), len(blocks) + len(found))
        blocks += found
    anchor, title = "questions", "Questions and answers"
    return Part(
        anchor, "", title, "front", ANNEXES, tuple(blocks), caution=True, changed=tuple(changed), audience="yard"
    )


def _question(desk: Desk, one: Question, new_in: int) -> list[Block]:
    mark = " (new in this addendum)" if new_in and one.addendum == new_in else ""
    answered = f", answered {day(one.answered)}" if one.answered else ""
    issued = f"addendum {one.addendum}" if one.addendum else "not yet in an addendum"
    about: Inline = (Span("; about "), *desk.refs(one.about)) if one.about else ()
    blocks: list[Block] = [
        Heading(f"Question {one.number}{mark}", 2, desk.anchor("question", one.number)),
        Paragraph((Span(f"Asked {day(one.asked)}{answered}, {issued}"), *about, Span("."))),
        desk.prose(one.ask),
    ]
    if one.answer is not None:
        blocks += [Heading("Answer", 3), desk.prose(one.answer)]
    return blocks
