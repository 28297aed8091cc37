"""Find and load the JSON Schemas, with every `$ref` written out so that validation never resolves one."""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

_HERE = Path(__file__).resolve()


@cache
def schema_folder() -> Path:
    """Find the schemas: beside the package where it is installed, at the top of the tree where it is not."""
    installed = _HERE.parents[1] / "schemas"
    return installed if installed.is_dir() else _HERE.parents[3] / "schemas"


@cache
def _raw(name: str) -> Any:
    return json.loads((schema_folder() / f"{name}.schema.json").read_text("utf-8"))


def schema_names() -> list[str]:
    """List the schemas of files, without the shared definitions."""
    names = (path.name.removesuffix(".schema.json") for path in schema_folder().glob("*.schema.json"))
    return sorted(name for name in names if name != "common")


def _inlined(node: Any) -> Any:
    if isinstance(node, list):
        return [_inlined(child) for child in node]
    if not isinstance(node, dict):
        return node
    reference = node.get("$ref")
    if isinstance(reference, str) and reference.startswith("common.schema.json#/$defs/"):
        shared = _raw("common")["$defs"][reference.rsplit("/", 1)[1]]
        rest = {key: value for key, value in node.items() if key != "$ref"}
        return {**_inlined(shared), **_inlined(rest)}
    return {key: _inlined(value) for key, value in node.items()}


@cache
def load_schema(name: str) -> dict[str, Any]:
    """Load a schema by name with shared definitions written into it."""
    schema: dict[str, Any] = _inlined(_raw(name))
    return schema
