"""Plain scalars by the YAML 1.2 core schema: what people write stays what they wrote."""

from __future__ import annotations

import re

_INT = re.compile(r"[-+]?[0-9]+")
_FLOAT = re.compile(r"[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?")
_TODO = re.compile(r"todo(?:\s*[,:;.(–-].*)?", re.IGNORECASE | re.DOTALL)
_SPECIAL = re.compile(r"[-+]?\.(?:inf|Inf|INF)|\.(?:nan|NaN|NAN)")


class Todo(str):
    """A value that somebody has still to find: `todo`, or `todo, ask the yard`."""

    __slots__ = ()


def read_scalar(text: str, *, plain: bool) -> str | int | float | bool | None:
    """Read one scalar (YAML 1.2.2 section 10.3.2, without octal and hexadecimal, and infinities left as text)."""
    if not plain:
        return text
    if text in ("", "~", "null", "Null", "NULL"):
        return None
    if text in ("true", "True", "TRUE"):
        return True
    if text in ("false", "False", "FALSE"):
        return False
    if text[0] not in "+-.0123456789":
        return read_block(text) if text[0] in "tT" else text
    if _INT.fullmatch(text) and len(text) <= 18:
        return text if len(text.lstrip("+-")) > 1 and text.lstrip("+-").startswith("0") else int(text)
    if _FLOAT.fullmatch(text) and not _SPECIAL.fullmatch(text) and len(text) <= 40:
        return float(text) if abs(float(text)) < 1e300 else text
    return text


def read_block(text: str) -> str:
    """Read text on lines of its own."""
    return Todo(text) if _TODO.fullmatch(text.strip()) else text
