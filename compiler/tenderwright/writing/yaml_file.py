"""Writes plain data as YAML that the compiler reads back the same: keys in the order given, no comments."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from datetime import date
from decimal import Decimal

from tenderwright.reading.scalars import read_block, read_scalar

Plain = None | bool | int | float | str | Decimal | date | Sequence["Plain"] | Mapping[str, "Plain"]

WIDTH = 110
"""Lists and mappings that fit into this many characters stand on one line."""

_SAFE = re.compile(r"[A-Za-z0-9](?:[^\x00-\x1f\x7f-\xa0\u2028\u2029\ufeff]*[^\s\x00-\x1f\x7f-\xa0\u2028\u2029\ufeff])?")
"""Text that begins with a letter or digit and holds no control character."""
_UNSAFE = re.compile(r": |:$| #|^---|^\.\.\.")
_IN_FLOW = re.compile(r"[,\[\]{}]|:(?=[\[\]{},\"'])")
_BLOCK = re.compile(r"[^\x00-\x09\x0b-\x1f\x7f-\xa0\u2028\u2029\ufeff\ud800-\udfff\ufffe\uffff]*")
"""Text without control characters other than ends of lines."""


def yaml_text(data: Mapping[str, Plain]) -> str:
    """Write a mapping as a YAML file; `read_yaml` gives the same data from it. Raises TypeError for other types."""
    return "".join(f"{line}\n" for line in _mapping(data, 0) or ["{}"])


def one_line(value: Plain) -> str:
    """Write a value on one line, as it stands after its key. Raises ValueError where it holds text of several lines."""
    written = _flow(value) if isinstance(value, (Mapping, list, tuple)) else _scalar(value, flow=False)
    if written is None:
        raise ValueError("text of several lines does not stand on one")
    return written


def _mapping(data: Mapping[str, Plain], indent: int) -> list[str]:
    lines: list[str] = []
    for key, value in data.items():
        lines += _entry(f"{' ' * indent}{_word(key, flow=False)}:", value, indent)
    return lines


def _entry(head: str, value: Plain, indent: int) -> list[str]:
    """Write a value after its key or dash."""
    if isinstance(value, str) and _fits_block(value):
        return _block(head, value, indent + 2)
    if not isinstance(value, (Mapping, list, tuple)):
        return [f"{head} {_scalar(value, flow=False)}"]
    flow = _flow(value)
    simple = not value or not any(isinstance(one, (Mapping, list, tuple)) for one in _values(value))
    if flow is not None and simple and len(head) + len(flow) < WIDTH:
        return [f"{head} {flow}"]
    if isinstance(value, Mapping):
        return [head, *_mapping(value, indent + 2)]
    return [head, *_sequence(value, indent + 2)]


def _values(value: Mapping[str, Plain] | Sequence[Plain]) -> Sequence[Plain]:
    return list(value.values()) if isinstance(value, Mapping) else value


def _sequence(data: Sequence[Plain], indent: int) -> list[str]:
    lines: list[str] = []
    dash = f"{' ' * indent}-"
    for value in data:
        written = _entry(dash, value, indent)
        if isinstance(value, Mapping) and len(written) > 1:
            first, *rest = written[1:]
            written = [f"{dash} {first[indent + 2 :]}", *rest]
        lines += written
    return lines


def _flow(value: Plain) -> str | None:
    """Write a value on one line; None where it holds text that needs several."""
    if isinstance(value, Mapping):
        parts = [(key, _flow(one)) for key, one in value.items()]
        if any(one is None for _, one in parts):
            return None
        inner = ", ".join(f"{_word(key, flow=True)}: {one}" for key, one in parts)
        return f"{{ {inner} }}" if inner else "{}"
    if isinstance(value, (list, tuple)):
        entries = [_flow(one) for one in value]
        return None if any(one is None for one in entries) else f"[{', '.join(str(one) for one in entries)}]"
    return None if isinstance(value, str) and "\n" in value else _scalar(value, flow=True)


def _scalar(value: object, *, flow: bool) -> str:
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return _word(value, flow=flow)
    if isinstance(value, Decimal):
        return format(value, "f")
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, int):
        return str(value) if abs(value) < 10**17 else f'"{value}"'
    if isinstance(value, float):
        return repr(value)
    raise TypeError(f"{type(value).__name__} cannot be written as YAML")


def _word(text: str, *, flow: bool) -> str:
    """Write text plainly where it reads back as itself, in quotes where it would not."""
    plain = _SAFE.fullmatch(text) and not _UNSAFE.search(text) and not (flow and _IN_FLOW.search(text))
    if plain and read_scalar(text, plain=True).__class__ is text.__class__:
        return text
    quoted = json.dumps(text, ensure_ascii=False)
    return re.sub(
        r"[\x7f-\xa0\u2028\u2029\ufeff\ud800-\udfff\ufffe\uffff]", lambda found: f"\\u{ord(found[0]):04x}", quoted
    )


def _fits_block(text: str) -> bool:
    """Tell whether text of several lines may stand as a block, its lines as they are."""
    lines = text.split("\n")
    return (
        len(lines) > 1
        and text[0] not in "\n \t"
        and not text.endswith("\n")
        and not any(line != line.rstrip(" ") or line.isspace() for line in lines)
        and _BLOCK.fullmatch(text) is not None
        and read_block(text).__class__ is text.__class__
    )


def _block(head: str, text: str, indent: int) -> list[str]:
    return [f"{head} |-", *(f"{' ' * indent}{line}" if line else "" for line in text.split("\n"))]
