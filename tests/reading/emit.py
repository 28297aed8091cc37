"""A simple writer of YAML, in several styles, for reading back."""

from __future__ import annotations

import json
from typing import Any

from hypothesis import strategies as st

words = st.text(
    alphabet=st.characters(codec="utf-8", exclude_categories=["Cc", "Cs", "Cn", "Co"],
    exclude_characters="\u2028\u2029\ufeff"),
    max_size=12,
)  # fmt: skip
keys = st.from_regex(r"[a-z][a-z0-9_-]{0,8}", fullmatch=True)
scalars = st.none() | st.booleans() | st.integers(-(10**9), 10**9) | words
data = st.recursive(
    scalars, lambda below: st.lists(below, max_size=4) | st.dictionaries(keys, below, max_size=4), max_leaves=12
)
documents = st.dictionaries(keys, data, min_size=1, max_size=4)


def _scalar(value: object) -> str:
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    return str(value) if isinstance(value, int) else json.dumps(value, ensure_ascii=False)


def flow(value: Any) -> str:
    """Write data on one line."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key}: {flow(below)}" for key, below in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(flow(below) for below in value) + "]"
    return _scalar(value)


def block(value: Any, indent: int = 0) -> str:
    """Write data in lines; what is empty is written on one line."""
    pad = " " * indent
    if isinstance(value, dict) and value:
        return "".join(f"{pad}{key}:{_below(below, indent)}" for key, below in value.items())
    if isinstance(value, list) and value:
        return "".join(f"{pad}-{_below(below, indent)}" for below in value)
    return f"{pad}{flow(value)}\n"


def _below(value: Any, indent: int) -> str:
    if isinstance(value, (dict, list)) and value:
        return "\n" + block(value, indent + 2)
    return f" {flow(value)}\n"
