"""Notices speak plain English, as far as a machine can tell: words that a reader would stumble over are found here."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

import tenderwright
from tenderwright.notices.codes import CODES
from tenderwright.notices.explain import explanation
from tenderwright.notices.suggest import did_you_mean

SOURCE = Path(tenderwright.__file__).parent
RAISED = ("checks", "linking", "reading", "shapes", "pricing", "planning", "calculations/ship")
"""The folders in which notices are made; those of the model are among what it says of its fields."""

_UNUSUAL = re.compile(
    r"\b(reckon(?:s|ed)?|anew|thereof|whereof|herein|hereof|whilst|lay by|laid by|for want of|parted by|"
    r"adders?|parser|held against|hold against|take away|taken away|slip of the pen|"
    r"is come|are come|runs? no more|ought to|swell|slip of the point)\b"
    r"|\bis told\b|\bare told\b|\btold (?:as|at|by|here|in|once|of|twice|with)\b|\bstands? (?:here|twice|first)\b"
)
"""Words that are archaic, or jargon that the package does not use itself; `adders` in backticks is a key of it."""


@cache
def _sentences() -> tuple[tuple[str, int, str], ...]:
    """Give the texts of several words in the code that makes notices, with file and line."""
    return tuple((path.relative_to(SOURCE).as_posix(), line, text) for path in _files() for line, text in _texts(path))


def _files() -> Iterator[Path]:
    for folder in RAISED:
        yield from sorted((SOURCE / folder).rglob("*.py"))


def _texts(path: Path) -> Iterator[tuple[int, str]]:
    """Give the messages, hints and notes of a module: texts in functions, and named texts of the module itself."""
    for node in ast.parse(path.read_text("utf-8")).body:
        if isinstance(node, ast.FunctionDef | ast.Assign | ast.AnnAssign):
            docs = {id(one.value) for one in ast.walk(node) if isinstance(one, ast.Expr)}
            for one in ast.walk(node):
                if id(one) not in docs and isinstance(one, ast.Constant | ast.JoinedStr):
                    text = _said(one)
                    if " " in text and "\\b" not in text and "(?" not in text:
                        yield one.lineno, text


def _said(node: ast.Constant | ast.JoinedStr) -> str:
    if isinstance(node, ast.Constant):
        return node.value if isinstance(node.value, str) else ""
    return "".join(str(one.value) if isinstance(one, ast.Constant) else "…" for one in node.values)


def _plain(text: str) -> str:
    """Leave out what is quoted from the package."""
    return re.sub(r"`[^`]*`", "…", text)


def test_no_notice_uses_words_that_a_reader_stumbles_over() -> None:
    found = [(path, line, text) for path, line, text in _sentences() if _UNUSUAL.search(_plain(text))]
    assert found == []


@pytest.mark.parametrize("code", CODES)
def test_no_explanation_uses_words_that_a_reader_stumbles_over(code: str) -> None:
    prose = re.sub(r"```.*?```", "", explanation(code), flags=re.DOTALL)
    assert _UNUSUAL.search(_plain(prose)) is None


@pytest.mark.parametrize("code", CODES)
def test_an_explanation_is_whole_sentences_under_the_title_of_its_code(code: str) -> None:
    title, *paragraphs = re.sub(r"```.*?```", "", explanation(code), flags=re.DOTALL).split("\n\n")
    assert title.removeprefix("# ").replace("’", "'").lower() == CODES[code].title.lower()
    prose = [part.strip() for part in paragraphs if part.strip() and not part.startswith("## ")]
    assert all(part[-1] in ".:" for part in prose)


@pytest.mark.parametrize("code", CODES)
def test_how_to_mend_it_says_what_to_do(code: str) -> None:
    mend = explanation(code).split("## How to mend it\n\n")[1]
    assert len(mend.split()) >= 5


def test_a_number_is_never_proposed_as_a_spelling_of_another() -> None:
    items = ["110", "140", "320", "crane"]
    assert did_you_mean("130", items) == ("nearest: `110`, `140`",)
    assert did_you_mean("105", items) == ("nearest: `110`",)
    assert did_you_mean("1300", items) == ("nearest: `320`",)
    assert did_you_mean("310.b", ["310.a", "310.c", "1000.a"]) == ("nearest: `310.a`, `310.c`",)
    assert did_you_mean("-7", ["-9", "-2", "0"]) == ("nearest: `-9`, `-2`",)
    assert did_you_mean("crain", items) == ("did you mean `crane`?",)
    assert did_you_mean("130", ["crane"]) == ()
