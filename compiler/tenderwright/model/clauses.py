"""Clauses of the general requirements, from their files."""

from __future__ import annotations

from tenderwright.model.build import Prose
from tenderwright.model.package import Clause
from tenderwright.notices import Place
from tenderwright.reading.source import Source


def clause_of(source: Source) -> Clause:
    """Make a clause of a file of CommonMark: its number from its name, its title from its first heading."""
    stem = source.path.rsplit("/", 1)[-1].removesuffix(".md")
    number, _, name = stem.partition("-")
    first, _, rest = source.text.strip().partition("\n")
    title = first.removeprefix("# ").strip() if first.startswith("# ") else name.replace("-", " ").capitalize()
    text = rest if first.startswith("# ") else source.text
    return Clause(
        clause=name or stem,
        number=number.lstrip("0") if number.isdigit() else "",
        title=title,
        text=Prose(text.strip(), Place(source.path), source, ()),
        here=Place(source.path),
    )
