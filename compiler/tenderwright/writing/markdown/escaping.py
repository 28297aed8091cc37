"""Escapes text so that CommonMark reads it back as the very same text.

Source of the rules: CommonMark Spec 0.31.2, sections 2.4 and 2.5 (escapes and references), 4 (what begins a block),
6.1 (code spans); GitHub Flavored Markdown Spec 0.29, sections 4.10 (pipes in tables) and 6.5 (strikethrough).
"""

from __future__ import annotations

import re

_ALWAYS = re.compile(r"[\\`*\[\]~$]")
_UNDERSCORES = re.compile(r"(?<![^\W_]{2})_+|_+(?![^\W_]{2})")
"""Underscores but those well inside a word, where they stress nothing even if its ends are written as references."""
_ENTITY = re.compile(r"&(?=#?\w*(?:;|$))")
_TAG = re.compile(r"<(?=[A-Za-z/!?]|$)")
_RULE = re.compile(r"[-:|=\s]+")
_BLOCK = re.compile(r"(?=(?:#{1,6}|[-+])(?:\s|$)|>)")
_NUMBERED = re.compile(r"(\d{1,9})([.)])(?=\s|$)")
_CLOSING = re.compile(r"(^|\s)(#+)$")


def escaped(text: str) -> str:
    """Escape text that stands inside a paragraph, a heading or a cell."""
    text = _ALWAYS.sub(r"\\\g<0>", text)
    text = _UNDERSCORES.sub(lambda match: r"\_" * len(match[0]), text)
    return _TAG.sub(r"\\<", _ENTITY.sub(r"\\&", text))


def escaped_start(line: str) -> str:
    """Escape what would make a block of a line of text: a heading, a list, a quotation, a rule, a row of dashes."""
    if _RULE.fullmatch(line) or _BLOCK.match(line):
        return "\\" + line
    return _NUMBERED.sub(r"\1\\\2", line, count=1) if _NUMBERED.match(line) else line


def escaped_heading_end(line: str) -> str:
    """Escape number signs that would close a heading and be lost."""
    return _CLOSING.sub(r"\1\\\2", line)


def escaped_pipes(line: str) -> str:
    """Escape what would end a cell."""
    return line.replace("|", r"\|")


def code_span(text: str) -> str:
    """Give text as a code span, fenced by more backticks than it holds in a row."""
    fence = "`" * (longest_run(text, "`") + 1)
    padded = text.startswith(("`", " ")) or text.endswith(("`", " "))
    pad = " " if padded and text.strip(" ") else ""
    return f"{fence}{pad}{text}{pad}{fence}"


def longest_run(text: str, letter: str) -> int:
    """Give how many times a letter stands in a row at most."""
    return max((len(found) for found in re.findall(f"{re.escape(letter)}+", text)), default=0)


def reference(letter: str) -> str:
    """Give a character as a numeric character reference."""
    return f"&#{ord(letter)};"
