"""The source files of the following tender, from those of the closed one: what goes along, and what is asked again."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from msgspec import Struct

from tenderwright.linking.link import Links
from tenderwright.model.found import Deferred
from tenderwright.model.package import Package
from tenderwright.reading.layout import schema_of
from tenderwright.reading.source import Path, Source
from tenderwright.starter.following.closed import Closed
from tenderwright.starter.following.edits import Edits
from tenderwright.starter.following.register import REGISTER, register_again
from tenderwright.starter.template import TODO, template

STAYS_BEHIND = ("questions/", "owner/")
"""What belonged to the closed tender alone."""
_GOES_ALONG = (
    REGISTER,
    "owner/indices.yaml",
    "owner/reserve.yaml",
    "owner/programme.yaml",
    "owner/closing/",
    "owner/facilities/",
    "owner/profiles/",
)
"""What of the owner's papers is of the ship, the docks and the funders, and not of one tender."""

_HEADER = re.compile(r"\A(# yaml-language-server: \$schema=)\S+")
_DAYS = (
    *(("dates", key) for key in ("issued", "questions_until", "closing", "award")),
    ("dates", "site_visit", "date"),
    *(("programme", key) for key in ("arrival", "docking", "undocking", "redelivery", "dock_days")),
)
_ASKED: tuple[Path, ...] = (
    ("tender", "title"),
    ("tender", "subtitle"),
    *_DAYS,
    ("award", "day_cost"),
    ("damages", "a_day"),
)


class Following(Struct, frozen=True):
    """The source files of the following tender."""

    same: tuple[str, ...]
    """Those that are as they were."""
    texts: Mapping[str, str]
    """Those that are changed or new, with their text."""
    left: tuple[str, ...]
    """Items that were withdrawn and are left behind."""


def goes_along(path: str) -> bool:
    """Tell whether a file of the closed package is one of the following as well."""
    return path.startswith(_GOES_ALONG) or not path.startswith(STAYS_BEHIND)


def following(number: str, closed: Closed, package: Package, links: Links, sources: Mapping[str, Source]) -> Following:
    """Make the source files of a tender of another number from those of a closed one."""
    same, texts = [], {}
    left = tuple(sorted(item.here.path for item in package.items if item.withdrawn and not _named(item.number, links)))
    became = {item.here.path: closed.became_of(item) for item in package.items if not item.withdrawn}
    for path, source in sources.items():
        if not goes_along(path) or path in left:
            continue
        text = source.text
        if path == "package.yaml":
            text = _tender(number, closed, source)
        elif path.startswith("items/"):
            text = _item(closed, source, became.get(path, ""))
        elif path == "contract.yaml":
            text = _contract(closed, source)
        elif path.startswith("clauses/"):
            text = _clause(closed, text)
        elif path == "vessel/docking-plan.yaml":
            text = _docking_plan(closed, source)
        elif path == "tow.yaml":
            text = _tow(closed, source)
        elif path == REGISTER and not (text := register_again(number, closed, source)):
            continue
        text = _HEADER.sub(rf"\g<1>{'../' * path.count('/')}.schemas/{schema_of(path)}.schema.json", text)
        if text == source.text:
            same.append(path)
        else:
            texts[path] = text
    texts |= dict(_put_off(closed, package))
    return Following(tuple(same), texts, left)


def _named(number: str, links: Links) -> bool:
    """Tell whether anything that goes along names an item."""
    return any(goes_along(use.at.path) for use in links.referred_to_by("item", number))


def _tender(number: str, closed: Closed, source: Source) -> str:
    edits = Edits(source, closed.number)
    edits.put(("tender", "number"), number)
    edits.drop(("addenda",))
    for at in _ASKED:
        edits.ask(at)
    _ask_of_its_time(edits, closed)
    return edits.text


def _docking_plan(closed: Closed, source: Source) -> str:
    edits = Edits(source, closed.number)
    edits.ask(("stability_checked",))
    return edits.text


def _contract(closed: Closed, source: Source) -> str:
    """Ask again for the days of payments and securities that are dates, not counted from an event."""
    edits = Edits(source, closed.number)
    for at in source.ends:
        if at[-1:] in (("valid_to",), ("on",)) and not re.match("[a-z]", _text_at(source, at)):
            edits.ask(at)
    _ask_of_its_time(edits, closed)
    return edits.text


def _tow(closed: Closed, source: Source) -> str:
    """Ask again to which dock she is towed, and for what was said of the last tow."""
    edits = Edits(source, closed.number)
    edits.ask(("dock",))
    _ask_of_its_time(edits, closed)
    return edits.text


def _item(closed: Closed, source: Source, became: str) -> str:
    edits = Edits(source, closed.number)
    edits.put(("revision",), 0)
    lines = source.data.get("lines", ())
    gone = [number for number, line in enumerate(lines) if line.get("withdrawn") is True]
    for number in gone if len(gone) < len(lines) else ():
        edits.drop(("lines", number))
    if became:
        edits.ask(("scope",), became)
    _ask_of_its_time(edits, closed)
    return edits.text


def _ask_of_its_time(edits: Edits, closed: Closed) -> None:
    """Ask again for each value that names the closed tender, or days since its issue."""
    for at in edits.source.ends:
        if not edits.touched(at) and closed.is_of_its_time(_text_at(edits.source, at)):
            edits.ask(at)


def _text_at(source: Source, at: Path) -> str:
    value = source.data
    for key in at:
        value = value[key]
    return value if isinstance(value, str) else ""


def _clause(closed: Closed, text: str) -> str:
    lines = [number for number, line in enumerate(text.split("\n"), start=1) if closed.is_of_its_time(line)]
    if not lines:
        return text
    which = f"line {lines[0]} names" if len(lines) == 1 else f"lines {', '.join(map(str, lines))} name"
    return f"{text.rstrip()}\n\ntodo, {which} days of {closed.number}: put that right, then delete this line\n"


def _put_off(closed: Closed, package: Package) -> Iterator[tuple[str, str]]:
    """Yield a new item for each piece of work that was put off and belongs to none of the items."""
    docking = closed.docking
    number = max((item.item for item in package.items), default=100)
    for one in docking.deferred if docking is not None else ():
        if one.item is None:
            number = number // 5 * 5 + 5
            name = "-".join(re.findall("[a-z0-9]+", one.what.lower())) or "work-put-off"
            yield f"items/{number}-{name}.yaml", _new_item(number, one, closed.number)


def _new_item(number: int, one: Deferred, tender: str) -> str:
    """Write the item with kind, phase and price as most such work has them, so that only its own scope holds it up."""
    known = {"Condition": one.condition, "Why": one.why, "To be done": one.by}
    told = "; ".join(f"{word.lower()}: {text}" for word, text in known.items() if text)
    head = f"Put off in the docking of {tender}. {told[:1].upper()}{told[1:]}"
    fill = {
        "item": number,
        "title": one.what,
        "kind": "measured",
        "phase": "dry",
        "where": {"text": one.where or TODO},
        "requirements": TODO,
        "lines": [{"line": "a", "text": one.what, "price": "lump"}],
    }
    return template("item", fill, "metric", (head,), "../.schemas/item.schema.json")
