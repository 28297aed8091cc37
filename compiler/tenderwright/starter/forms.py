"""A form for every kind of file of the format: the file with `todo` in it, made from its schema."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any

from msgspec import Struct

from tenderwright.model import care
from tenderwright.model.noun import keys_of
from tenderwright.model.photograph import Photograph
from tenderwright.model.survey_row import COLUMNS
from tenderwright.reading.layout import YAML_FILES
from tenderwright.shapes.schemas import load_schema
from tenderwright.starter.fitted import PAPERS, Ship, fills
from tenderwright.starter.template import TODO, Fill, Row, template
from tenderwright.starter.usual_approvals import register_form
from tenderwright.starter.usual_contract import contract_form

NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


class Facts(Struct, frozen=True):
    """What a new file takes from the package that it goes into."""

    units: str = "metric"
    currency: str = ""
    files: frozenset[str] = frozenset()
    tender: str = ""
    """Number of the tender."""
    lines: tuple[str, ...] = ()
    """The lines that the items ask a price for."""
    paid: Mapping[str, Mapping[str, str]] = {}
    """Of these, what the last docking paid for the same work: `docking` and `work`, as `history` of a rate has them."""
    index: str = ""
    """Of owner/indices.yaml, the first index, by which that is brought to today."""

    @property
    def system(self) -> str:
        """Give the system of units in which forms are written."""
        return "us" if self.units == "us" else "metric"


def kinds() -> dict[str, str]:
    """Give every kind of file by the word that asks for it, with its path; `*` stands for the name to be given."""
    return {word: path for path, word in YAML_FILES.items()} | {
        "clause": "clauses/*.md",
        "survey": "surveys/*.csv",
        "care-readings": "care/*.csv",
        "photographs": "photographs.csv",
    }


def says(word: str) -> str:
    """Say what a kind of file holds, in a sentence."""
    if word == "clause":
        return "A clause of the general requirements, in CommonMark."
    if word == "survey":
        return "Thickness readings, a row for each; the first row names the columns."
    if word == "care-readings":
        return "What was read and done aboard between dockings, a row for each; the first row names the columns."
    return str(load_schema(word).get("description", ""))


def form(word: str, name: str, facts: Facts) -> tuple[str, str]:
    """Give path and text of a new file; `name` is left empty where the kind has one path."""
    path = kinds()[word]
    if word == "clause":
        number = _next(path, facts.files)
        return path.replace("*", f"{number:02}-{name}"), f"# {_words(name)}\n\ntodo\n"
    if word == "survey":
        return path.replace("*", name), ",".join(_columns(facts.system)) + "\n"
    if word == "care-readings":
        return path.replace("*", name), ",".join(care.COLUMNS) + "\n"
    if word == "photographs":
        return path, ",".join(key for _, key in keys_of(Photograph)) + "\n"
    number = _next(path, facts.files, *_NUMBERED[word]) if word in _NUMBERED else 0
    stem = {"item": f"{number}-{name}", "question": f"{number:02}-{name}"}.get(word, name)
    path = path.replace("*", stem)
    schema = f"{'../' * path.count('/')}.schemas/{word}.schema.json"
    if word == "approvals":
        return path, register_form(facts.tender, schema)
    if word == "contract":
        return path, contract_form(schema)
    fill = _fill(word, name, number, facts)
    return path, template(word, fill, facts.system, (says(word),), schema)


_NUMBERED = {"item": (5, 100), "question": (1, 0)}
"""Kinds of file that are numbered: the step from one number to the next, and what comes before the first."""


def _rates(facts: Facts) -> dict[str, Any]:
    """Take the prices of the last docking where they can be brought to today, and ask the others."""
    paid = facts.paid if facts.index else {}
    lines = {line: {"history": paid[line]} if line in paid else {"rate": TODO} for line in facts.lines}
    return {"lines": lines, "index": facts.index} if paid else {"lines": lines}


_TOW: dict[str, Any] = {
    "towed": TODO,
    **{key: [Row()] for key in ("out", "tugs", "points", "compartments", "closures")},
    **dict.fromkeys(("limits", "resistance", "propeller", "rudder", "riding_crew", "boarding_time"), TODO),
}
"""What the tow surveyor asks first."""


def _next(pattern: str, files: Iterable[str], step: int = 1, before: int = 0) -> int:
    folder = pattern.partition("/")[0]
    names = [path.partition("/")[2] for path in files if path.startswith(f"{folder}/")]
    used = [int(found[0]) for name in names if (found := re.match("[0-9]+", name))]
    return max(used, default=before) // step * step + step


def _words(name: str) -> str:
    return name.replace("-", " ").capitalize()


def _columns(system: str) -> list[str]:
    return [one.replace("_mm", "_in") if system == "us" else one for one in COLUMNS]


def _fill(word: str, name: str, number: int, facts: Facts) -> Fill:
    """Say what is known of a new file, and which keys that may be left out are asked all the same."""
    priced = [{"line": "a", "quantity": TODO}]
    by_word: Mapping[str, dict[str, Any]] = {
        "item": {
            "item": number,
            "title": TODO,
            "where": {"text": TODO},
            "requirements": TODO,
            "lines": priced,
        },
        "question": {"question": number, "answer": TODO},
        "history": {"docking": name, "findings": TODO, "lessons": TODO},
        "facility": {
            "facility": name,
            "place": TODO,
            "limits": dict.fromkeys(("length", "beam", "sill", "blocks", "lift", "line_load"), TODO),
            "certificate": TODO,
            "water": {"density": TODO},
        },
        "tow": _TOW,
        "rates": _rates(facts),
        "in-dock": {"conditions": TODO, "changes": TODO},
        "profile": {"name": name},
        "closing": {"docking": name, "currency": facts.currency or TODO},
    }
    fill = by_word.get(word) or fills(Ship(units=facts.units, papers=frozenset(PAPERS))).get(word, {})
    schema = load_schema(word)
    if not fill and not schema.get("required"):
        fill = {next(key for key in schema["properties"] if key != "tender"): TODO}
    of_one_tender = kinds()[word].startswith("owner/") and "tender" in schema["properties"]
    return {"tender": facts.tender, **fill} if of_one_tender and facts.tender else fill
