"""Read the profiles of funders' forms that come with the compiler."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from tenderwright.reading.source import Source
from tenderwright.reading.yaml_file import read_yaml

_FOLDER = Path(__file__).resolve().parents[1] / "profiles"


@cache
def shipped_profile_sources() -> tuple[Source, ...]:
    """Read every profile beside the compiler; one that cannot be read is our own mistake and raises RuntimeError."""
    sources = []
    for path in sorted(_FOLDER.glob("*.yaml")):
        source, notices = read_yaml(f"profiles/{path.name}", path.read_text("utf-8"))
        if notices:
            raise RuntimeError(f"{path.name} cannot be read: {notices[0].message}")
        sources.append(source)
    return tuple(sources)
