"""The photographs in the order of their places, numbered in it, with the words for each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Paragraph, Picture, Pictures, Span, inline, plain
from tenderwright.documents.smaller_picture import smaller
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.model.photograph import Photograph
from tenderwright.model.tank import Tank
from tenderwright.quantities.customs import day
from tenderwright.reading.photograph_files import PhotographFile

SHELL, TANKS, OPENINGS, ANODES, OTHER = "Hull", "Tanks and voids", "Openings", "Anodes", "Other places"
YARDS, OWNERS = "P", "O"
"""Letters before the numbers of the photographs that go along with the tender, and of the owner's own."""
GROUPS = (SHELL, TANKS, OPENINGS, ANODES, OTHER)
_SIDES = ("port", "both", "centreline", "", "starboard")


@dataclass(frozen=True)
class Numbered:
    """A photograph with its number in the order of places, and where it is."""

    number: str
    photograph: Photograph
    group: str
    place: str
    """In words, such as `strake C, Fr 40, port`."""
    x: float | None
    """Forward of the after perpendicular, m; None where it is not told."""
    side: str


def numbered(package: Package, photographs: Sequence[Photograph], letter: str = YARDS) -> tuple[Numbered, ...]:
    """Put photographs in order: the hull by strake and frame, then tanks, openings, anodes and other places."""
    found = sorted((_order(package, one), index) for index, one in enumerate(photographs))
    return tuple(
        Numbered(f"{letter}{number}", one, group, *_place(package, one))
        for number, ((at, *_), index) in enumerate(found, start=1)
        for one, group in [(photographs[index], GROUPS[at])]
    )


def _order(package: Package, one: Photograph) -> tuple[int, int, float, int, str]:
    strakes = [strake.strake for strake in package.strakes]
    names: tuple[Sequence[str], str]
    if one.tank is not None:
        group, names = 1, ([tank.tank for tank in package.tanks], one.tank.name)
    elif one.opening is not None:
        group, names = 2, ([opening.opening for opening in package.openings], one.opening.name)
    elif one.anode is not None:
        group, names = 3, ([anode.anode for anode in package.anodes], one.anode.name)
    elif one.strake is not None or (one.frame is not None and not one.space):
        group, names = 0, (strakes, one.strake.name if one.strake is not None else "")
    else:
        group, names = 4, ((), "")
    known, name = names
    rank = known.index(name) if name in known else len(known)
    return group, rank, one.frame.x if one.frame is not None else 0.0, _SIDES.index(one.side), one.space


def _place(package: Package, one: Photograph) -> tuple[str, float | None, str]:
    """Give the words for where a photograph is, how far along the ship, and on which side."""
    words = [f"strake {one.strake}"] if one.strake is not None else []
    x, side = (one.frame.x if one.frame is not None else None), one.side
    for tank in package.tanks:
        if one.tank is not None and tank.tank == one.tank.name:
            words.append(tank.name)
            x = _middle(tank) if x is None else x
    for opening in package.openings:
        if one.opening is not None and opening.opening == one.opening.name:
            words.append(opening.name)
            x, side = opening.at.x, side or opening.side
    for anode in package.anodes:
        if one.anode is not None and anode.anode == one.anode.name:
            words.append(f"anode {anode.anode.upper()}")
            x, side = anode.at.x, side or anode.side
    words += [one.space] if one.space else []
    words += [str(one.frame)] if one.frame is not None else []
    named = ", ".join(words)
    words += [one.side] if one.side and one.side not in named else []
    return ", ".join(words) or "place not told", x, side


def _middle(tank: Tank) -> float | None:
    return 0.5 * (tank.bounds.from_.x + tank.bounds.to.x) if tank.bounds is not None else None


def caption(desk: Desk, one: Numbered) -> str:
    """Say of a photograph where it is, what it shows, when and by whom it was taken, and what it bears on."""
    shown = one.photograph
    where = capital(one.place + (f", looking {shown.looking}" if shown.looking else ""))
    taken = day(shown.day) if shown.day is not None else "day unknown"
    about = [capital(f"{taken}, {shown.stage}"), f"item {shown.item}" if shown.item is not None else "", shown.finding]
    credit = ", ".join(word for word in (shown.by, shown.rights) if word)
    said = plain(desk.words(shown.caption)).rstrip(".")
    return ". ".join(word for word in (where, said, "; ".join(filter(None, about)), capital(credit)) if word) + "."


def pictures(
    desk: Desk, shown: Sequence[Numbered], files: dict[str, PhotographFile], *, small: bool = False
) -> Iterator[Block]:
    """Yield photographs set in a grid; those that cannot be opened are told after it."""
    made, broken = [], []
    for one in shown:
        file = files.get(one.photograph.file)
        content = smaller(file) if file is not None else "its file is not there"
        words = caption(desk, one)
        if isinstance(content, str):
            broken.append(Paragraph(inline(Span(f"{one.number} ", strong=True), f"{words} Not shown: {content}.")))
        else:
            stem = one.photograph.file.rpartition(".")[0]
            made.append(Picture(f"{stem}.jpg", content, words, words, one.number))
    if made:
        yield Pictures(tuple(made), large=not small)
    yield from broken


def files_by_name(files: Sequence[PhotographFile]) -> dict[str, PhotographFile]:
    """Give the files of a folder by the names that rows have for them."""
    return {one.name: one for one in files}


def shown_of(desk: Desk, item: Item) -> list[str]:
    """Give the numbers of the photographs that bear on an item."""
    shown = numbered(desk.package, desk.package.photographs)
    return [one.number for one in shown if one.photograph.item is not None and one.photograph.item.name == item.number]
