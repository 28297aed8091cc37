"""Hold the rows of photographs.csv against the files of the folder: each names one that is there, and none twice."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from tenderwright.model.photograph import Photograph
from tenderwright.notices import Note, Notice, Place
from tenderwright.notices.suggest import did_you_mean
from tenderwright.reading.photograph_files import PhotographFile
from tenderwright.reading.source import Source

_NAMED = 5
"""Files without a row that are named; of more, how many there are."""


def photographs_there(
    rows: Sequence[Photograph], files: Mapping[str, PhotographFile], folder: str, source: Source | None
) -> Iterator[Notice]:
    """Yield a notice for each row without a picture of its own, and one for all files that no row names."""
    within = f"{folder}photographs/"
    there = {path.removeprefix(within): one for path, one in files.items() if path.startswith(within)}
    written = source.data["photographs"] if source is not None and source.data else ()
    left = sorted(there.keys() - {str(row.get("file", "")) for row in written})
    first: dict[str, Place] = {}
    for row in rows:
        found = there.get(row.file)
        if row.file in first:
            notes = (Note("the first stands here", first[row.file]),)
            hint = "keep one row, and say in its caption what the other said"
            yield Notice("photograph-twice", row.here, f"`{row.file}` has a row already", notes, (hint,))
        elif found is None:
            hints = did_you_mean(row.file, left, 0.8) or (f"put the file into {within}, or take the row away",)
            yield Notice("photograph-missing", row.here, f"`{row.file}` is not in {within}", hints=hints)
        elif not found.is_picture:
            hint = "save it as JPEG under a name that ends in .jpg, and write that name here"
            yield Notice("photograph-kind", row.here, f"`{row.file}` is not a JPEG or PNG picture", hints=(hint,))
        first.setdefault(row.file, row.here)
    if left:
        yield _unlisted(left, within, f"{folder}photographs.csv", there=source is not None)


def _unlisted(left: Sequence[str], within: str, table: str, *, there: bool) -> Notice:
    named = [name.encode("utf-8", "backslashreplace").decode() for name in left[:_NAMED]]
    listed = ", ".join(f"`{name}`" for name in named)
    more = f" and {len(left) - _NAMED} more" if len(left) > _NAMED else ""
    one = len(left) == 1
    message = f"{listed}{more} in {within} {'has' if one else 'have'} no row in {table}: no paper shows {'it' if one else 'them'}"
    begin = () if there else (f"begin {table} with `file,date,caption` on its first line",)
    hints = (*begin, "write a row for each, or keep what no paper is to show under owner/documents/")
    return Notice("photograph-unlisted", Place(table if there else within), message, hints=hints)
