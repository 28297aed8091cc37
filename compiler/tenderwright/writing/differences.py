"""Says where the files of an edition differ from those of another."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import PurePosixPath

from tenderwright.reading.unpack import BadArchive, unpack
from tenderwright.writing.pdf_pages import page_at

_TEXT = (".html", ".csv", ".json", ".svg", ".xml", ".rels")
_ARCHIVE = (".xlsx", ".zip")
_BEFORE, _AFTER = 24, 40
"""Characters shown around a difference."""


def differences(given: Mapping[str, bytes | None], made: Mapping[str, bytes | None]) -> dict[str, list[str]]:
    """Say by path where files that were given differ from those that were made; nothing where none does."""
    found = {}
    for path in sorted(given.keys() | made.keys()):
        if path not in made:
            found[path] = ["is not among the files that the commit gives"]
        elif path not in given:
            found[path] = ["is missing"]
        elif said := list(_difference(path, given[path], made[path])):
            found[path] = said
    return found


def first_different_byte(one: bytes, other: bytes) -> int:
    """Give the offset of the first byte at which two contents differ, which is the end of one where it goes on."""
    low, high = 0, min(len(one), len(other))
    while low < high:
        middle = (low + high + 1) // 2
        low, high = (middle, high) if one[:middle] == other[:middle] else (low, middle - 1)
    return low


def _difference(path: str, given: bytes | None, made: bytes | None) -> Iterator[str]:
    if given == made:
        return
    if given is None or made is None:
        yield "is damaged and cannot be unpacked"
        return
    ending = PurePosixPath(path).suffix
    at = first_different_byte(given, made)
    if ending in _ARCHIVE:
        yield from _in_archive(given, made, at)
    elif ending in _TEXT and (said := _in_text(given, made)):
        yield said
    elif ending == ".pdf":
        page = page_at(made, at)
        where = f"page {page}" if page is not None else "no page by itself, but to fonts, structure or data"
        yield f"differs first at byte {at}, which belongs to {where}"
    else:
        yield f"differs first at byte {at}"


def _in_archive(given: bytes, made: bytes, at: int) -> Iterator[str]:
    try:
        inside = differences(unpack(given), unpack(made))
    except BadArchive as error:
        yield f"differs first at byte {at}; it cannot be looked into: {error}"
        return
    if not inside:
        yield f"holds the same parts and is packed otherwise, first at byte {at}"
    for part, said in inside.items():
        yield from (f"part {part} {one}" for one in said)


def _in_text(given: bytes, made: bytes) -> str:
    """Say at which line two texts differ first; nothing where one is no text."""
    try:
        lines, others = given.decode().split("\n"), made.decode().split("\n")
    except UnicodeDecodeError:
        return ""
    number = next((n for n, pair in enumerate(zip(lines, others, strict=False)) if pair[0] != pair[1]), None)
    if number is None:
        said = "goes on after" if len(lines) > len(others) else "ends with"
        return f"{said} line {min(len(lines), len(others))}, and what the commit gives does not"
    line, other = lines[number], others[number]
    column = next((n for n, pair in enumerate(zip(line, other, strict=False)) if pair[0] != pair[1]), None)
    at = column if column is not None else min(len(line), len(other))
    return f"differs first in line {number + 1}: it says {_around(line, at)}, and the commit gives {_around(other, at)}"


def _around(line: str, at: int) -> str:
    """Show a piece of a line, without any character that a terminal might act on."""
    start, end = max(0, at - _BEFORE), at + _AFTER
    piece = "".join(
        letter if letter.isprintable() else letter.encode("unicode_escape").decode() for letter in line[start:end]
    )
    return f"`{'…' if start else ''}{piece}{'…' if end < len(line) else ''}`"
