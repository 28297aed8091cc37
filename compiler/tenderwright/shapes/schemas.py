"""Find and load the JSON Schemas, which are made from the nouns of the model and refer to nothing outside them."""

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


def schema_names() -> list[str]:
    """List the schemas of files."""
    return sorted(path.name.removesuffix(".schema.json") for path in schema_folder().glob("*.schema.json"))


@cache
def load_schema(name: str) -> dict[str, Any]:
    """Load a schema by name."""
    schema: dict[str, Any] = json.loads((schema_folder() / f"{name}.schema.json").read_text("utf-8"))
    return schema
