"""Check the shape of every file of a package."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.notices import Notice
from tenderwright.reading.format_version import format_unsaid
from tenderwright.reading.layout import schema_of
from tenderwright.reading.package import Files
from tenderwright.reading.source import Path
from tenderwright.shapes.validate import validate

Mistakes = Mapping[str, list[Path]]
"""For each file, the paths at which its shape is wrong; the empty path where it could not be read."""


READ_ALL_THE_SAME = {"duplicate-key", "lost-comment", "row-too-long"}
"""Mistakes after which a file is still read whole, so that what else is wrong in it can be told too."""


def shape(files: Files) -> tuple[Mistakes, list[Notice]]:
    """Validate every file that has a schema; gives where the mistakes are, and the notices."""
    unread = {n.place.path for n in files.notices if n.severity == "error" and n.code not in READ_ALL_THE_SAME}
    mistakes: dict[str, list[Path]] = {path: [()] for path in unread}
    unsaid = format_unsaid(files.sources)
    notices = [unsaid] if unsaid else []
    for path, source in files.sources.items():
        schema = schema_of(path)
        if schema is None or path in unread:
            continue
        found = validate(source, schema)
        wrong = [*(at for at, _ in found), *source.twice]
        if wrong:
            mistakes.setdefault(path, []).extend(wrong)
            notices += [notice for at, notice in found if not any(at[: len(key)] == key for key in source.twice)]
    return mistakes, notices
