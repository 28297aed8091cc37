"""What to do next: the first chapter of the trade's order that is wanting, and what it would bring."""

from __future__ import annotations

from tenderwright.commands.record import groups_of
from tenderwright.model.owner import OwnerPapers
from tenderwright.pipeline import Compiled
from tenderwright.shapes.todos import by_file

_HULL = "vessel/offsets.yaml"
_FORMS = (_HULL, "vessel/curves.yaml", "vessel/sections.yaml")
_ORDER = {
    "vessel/particulars.yaml": "particulars",
    "vessel/frames.yaml": "frames",
    **dict.fromkeys(_FORMS, ""),
    "vessel/tanks.yaml": "tanks",
    "vessel/lightship.yaml": "lightship",
    "vessel/openings.yaml": "openings",
    "vessel/docking-plan.yaml": "docking-plan",
    "facilities/": "facility NAME",
    "items/": "",
    "vessel/zones.yaml": "zones",
    "vessel/timber.yaml": "timber",
    "vessel/strakes.yaml": "strakes",
    "surveys/": "survey NAME",
    "history/": "history NAME",
    "vessel/condition.yaml": "condition",
    "vessel/anodes.yaml": "anodes",
    "drawings.yaml": "drawings",
    "package.yaml": "package",
    "owner/rates.yaml": "rates",
    "owner/": "",
}
"""Files and folders in the order in which they are best filled, with what `tenderwright add` writes of each."""


def next_paper(compiled: Compiled, papers: OwnerPapers | None = None) -> str:
    """Say in a line what to do next; empty where nothing is wanting. Without the owner's papers none is asked for."""
    wanting: dict[str, list[str]] = {}
    for name, why in compiled.record.missing.items():
        named = [place for place in _ORDER if place in why]
        if named:
            wanting.setdefault(min(named, key=why.index), []).append(name)
    todos = by_file((*compiled.package.todos, *(papers.todos if papers is not None else ())))
    has_form = any(file in compiled.files.sources and file not in todos for file in _FORMS)
    for place in sorted(_ORDER, key=lambda one: has_form and one == _HULL):
        word = _ORDER[place]
        files = [file for file in todos if file.startswith(place)]
        brings = wanting.get(place, [])
        what = ""
        if files:
            count = sum(len(todos[file]) for file in files)
            what = f"answer the {count} `todo` in {files[0] if len(files) == 1 else place}"
        elif place == "items/" and not compiled.package.items:
            what = "add work items: `tenderwright add` lists some seventy usual ones"
        elif place == "facilities/" and not compiled.package.facilities:
            what = "describe a dock that could take her: `tenderwright add facility NAME`"
        elif place == "owner/rates.yaml" and papers is not None and papers.rates is None and compiled.package.items:
            what = "price the lines for yourself: `tenderwright add rates`"
        elif brings and place not in compiled.files.sources:
            what = _absent(place, word, compiled.record.missing[brings[0]])
        elif brings:
            wants = compiled.record.missing[brings[0]].replace(f" in {place}", "")
            what = f"add to {place}, for {wants}"
        if what:
            return f"next: {what}" + (
                f"; it would bring {', '.join(groups_of(brings))} ({len(brings)})" if brings else ""
            )
    return ""


def _absent(place: str, word: str, why: str) -> str:
    if place == _HULL:
        return f"give her form, for {why}"
    return f"`tenderwright add {word}`" if word and "/" in place else why
