"""Questions of bidders and their answers, which every yard gets; who asked is not told."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Facts, Heading, Inline, Paragraph, Part, inline
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
    words = (
        "Every answer is given to all yards alike, and who asked is not told. An answer explains the tender; what it "
        "changes is changed in the item or clause itself."
    )
    blocks: list[Block] = [Paragraph(inline(words))]
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
    facts: list[tuple[str, Inline]] = [("Asked", inline(day(one.asked)))]
    if one.answered:
        facts.append(("Answered", inline(day(one.answered))))
    if one.about:
        facts.append(("About", desk.refs(one.about)))
    issued = f"Addendum {one.addendum}" if one.addendum else "Not yet in an addendum"
    facts.append(("Issued in", inline(issued)))
    blocks: list[Block] = [
        Heading(f"Question {one.number}{mark}", 2, desk.anchor("question", one.number)),
        Facts(tuple(facts)),
        Heading("Asked", 3),
        desk.prose(one.ask),
    ]
    if one.answer is not None:
        blocks += [Heading("Answer", 3), desk.prose(one.answer)]
    return blocks
