"""Questions of bidders are printed with their answers, for every yard alike, and without who asked."""

from __future__ import annotations

from pathlib import Path

from tenderwright.pipeline import compile_package, compose_yard, read
from tests.pipeline.packages import starter

from .composed import ISSUED, changed, composed, part, targets, words

ANSWERED = """question: 3
asked: 2027-11-20
about: ["320"]
ask: Who supplies the rivets of <item:320>?
answer: The yard.
answered: 2027-11-22
"""
OPEN = """question: 4
asked: 2027-11-23
about: ["320"]
ask: Is staging wanted?
"""
ASKED_BY = "asked_by:\n  3: { yard: Zanzibar Dock Company }\n"


def _ask(root: Path) -> None:
    (root / "questions").mkdir()
    (root / "questions" / "3-rivets.yaml").write_text(ANSWERED, "utf-8")
    (root / "questions" / "4-staging.yaml").write_text(OPEN, "utf-8")
    (root / "owner" / "questions.yaml").write_text(ASKED_BY, "utf-8")


def test_an_answer_is_printed_and_the_item_it_is_about_leads_to_it() -> None:
    edition = changed(_ask).edition("yard")
    answers = part(edition, "questions")
    assert "Question 3" in words(answers)
    assert "The yard." in words(answers)
    assert "not yet in an addendum" in words(answers)
    assert "question-3" in targets(part(edition, "item-320"))


def test_a_question_without_an_answer_and_who_asked_are_printed_nowhere() -> None:
    both = changed(_ask)
    for name in ("yard", "owner"):
        text = words(both.edition(name))
        assert "Question 4" not in text
        assert "question 4" not in text
        assert "Zanzibar" not in text


def test_there_is_no_such_part_where_nothing_was_asked() -> None:
    assert "questions" not in [one.anchor for one in composed("starter").edition("yard").parts]


def test_the_yards_side_never_sees_who_asked(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    _ask(root)
    compiled = compile_package(read(root))
    assert not [path for path in compiled.files.sources if path.startswith("owner/")]
    assert "Zanzibar" not in words(compose_yard(compiled, ISSUED)[0])
