"""A source is a standard, a statute, a book or a paper, or it is said to be none; a web site is never one."""

from __future__ import annotations

import re
from pathlib import Path

from .tree import REPOSITORY, tracked

SITE = re.compile(r"\b[a-z0-9][a-z0-9-]*\.(?:com|net|org|edu|gov|co\.uk)\b", re.I)
NO_SOURCE = re.compile(
    r"example\.(?:com|org|net)|json-schema\.org|(?:www\.)?w3\.org|schemas\.(?:openxmlformats|microsoft)\.(?:org|com)|"
    r"purl\.org|creativecommons\.org|(?:oasis-open|openoffice)\.org",
    re.I,
)
"""Names that formats are known by, and those kept for examples."""
NO_WORK = re.compile(
    r"techtalk|homework|question-and-answer|web cop(?:y|ies)|secondary pages?|public site|copy read|"
    r"as (?:quoted|summarised) (?:in|by)|instrument not identified|was not seen;|\bunverified\b|course notes",
    re.I,
)
"""Words of one who has not read a work, or of no work at all: such a figure is `from memory`, or has no source."""


def _named(path: Path) -> list[str]:
    lines = path.read_text("utf-8").splitlines()
    return [
        f"{number}: {line.strip()[:100]}"
        for number, line in enumerate(lines, 1)
        if SITE.search(NO_SOURCE.sub("", line))
    ]


def test_no_site_stands_as_a_source() -> None:
    texts = [p for p in tracked() if p.suffix in (".py", ".md", ".yaml") and p != Path(__file__).resolve()]
    found = [f"{path.relative_to(REPOSITORY)}:{line}" for path in texts for line in _named(path)]
    assert found == []


def test_no_note_of_the_work_stands_in_a_source() -> None:
    texts = [p for p in tracked() if p.suffix in (".py", ".yaml") and p != Path(__file__).resolve()]
    lines = ((path, line) for path in texts for line in path.read_text("utf-8").splitlines())
    assert [(path.name, line.strip()) for path, line in lines if NO_WORK.search(line)] == []
