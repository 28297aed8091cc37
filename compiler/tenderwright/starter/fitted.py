"""A new package that fits a ship: files that her papers can fill, in her units, and `todo` for what is not known."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from tenderwright.reading.layout import FORMAT, NEEDED, schema_of
from tenderwright.starter.items import HEADINGS
from tenderwright.starter.template import TODO, Fill, Row, template

MATERIALS = {"steel": "mild steel", "iron": "wrought iron", "wood": "wood"}
"""What a ship is built of, in a word, and as the format has it."""
FASTENINGS = {
    "steel": ("riveted", "welded", "riveted and welded"),
    "iron": ("riveted",),
    "wood": ("treenails", "copper clenched", "iron", "yellow metal", "bolts", "of several kinds"),
}
PAPERS = {
    "offsets": "a table of offsets, or a lines plan to lift them from",
    "curves": "curves of form, or a hydrostatic table of the stability booklet",
    "sections": "a few sections on a docking plan or general arrangement",
    "capacity-plan": "a capacity plan of the tanks",
    "tank-bounds": "drawings that give the bounds of the tanks",
    "frames": "a frame table, or a drawing with numbered frames",
    "docking-plan": "a docking plan",
    "survey": "a thickness survey of the shell",
    "history": "the report of an earlier docking",
    "drawings": "a list of drawings",
}
"""The papers that a museum may have of its ship."""


class Ship(Struct, frozen=True):
    """What is asked of a ship before a package is written for her."""

    name: str = ""
    material: str = "steel"
    fastening: str = "riveted"
    shafts: int = 1
    units: str = "metric"
    currency: str = "EUR"
    place: str = ""
    papers: frozenset[str] = frozenset()

    @property
    def system(self) -> str:
        """Give the system of units in which she is measured."""
        return "us" if self.units == "us" else "metric"


def fitted_files(ship: Ship) -> dict[str, str]:
    """Give the YAML files of a package for a ship, by path."""
    return {path: _written(path, fill, head, ship) for path, head, fill in _files(ship) if schema_of(path)}


def fills(ship: Ship) -> dict[str, Fill]:
    """Give what is known or asked in each file of a ship, by the name of its schema."""
    return {schema: fill for path, _, fill in _files(ship) if (schema := schema_of(path))}


def _written(path: str, fill: Fill, head: str, ship: Ship) -> str:
    name = schema_of(path) or ""
    return template(name, fill, ship.system, (head,), f"{'../' * path.count('/')}.schemas/{name}.schema.json")


def _files(ship: Ship) -> Iterator[tuple[str, str, Fill]]:
    """Yield path, what the file is for, and what is known or asked in it."""
    yield "package.yaml", "The tender: number, owner, dates, how it is awarded, and who provides what.", _tender(ship)
    yield "vessel/particulars.yaml", "What the ship is.", _particulars(ship)
    papers = ship.papers
    if "frames" in papers or "vessel/frames.yaml" in NEEDED:
        head = "How frames are numbered. Positions elsewhere are then written `Fr 12`, or `Fr 12 + ` and a distance."
        yield "vessel/frames.yaml", head, {}
    if "curves" in papers:
        head = "The hull by its curves of form, or the hydrostatic table of the stability booklet."
        yield "vessel/curves.yaml", head, {"rows": [_AT_DRAFT] * 3}
    if "sections" in papers:
        yield "vessel/sections.yaml", "The hull by a few sections scaled from a plan, from aft to forward.", {}
    if "offsets" in papers:
        yield "vessel/offsets.yaml", "The hull by half-breadths from the centreline, stations from aft to forward.", {}
    if papers & {"offsets", "curves", "sections"}:
        head = "Her weight without what is aboard, what is aboard, and what is wanted when she is docked."
        fill = {"weights": [Row()], "water": {"density": TODO}, "docking": TODO, "observed": TODO}
        yield "vessel/lightship.yaml", head, fill
    if "capacity-plan" in papers:
        yield (
            "vessel/tanks.yaml",
            "Her tanks, as the capacity plan lists them: one entry for each.",
            _tanks({"plan": {"at": TODO, "height": TODO}}),
        )
    elif "tank-bounds" in papers:
        yield "vessel/tanks.yaml", "Her tanks, each by its bounds: one entry for each.", _tanks({"bounds": TODO})
    if "docking-plan" in papers:
        head = "The blocks on which she is to stand, by her docking plan."
        yield "vessel/docking-plan.yaml", head, {"keel_blocks": [Row()]}
        yield "vessel/openings.yaml", "Openings in the hull below the deck: no block may stand under one.", _OPENINGS
    if ship.material == "wood":
        yield "vessel/timber.yaml", "The condition of her planking, seams and fastenings.", {}
    yield "vessel/zones.yaml", "Parts of the hull that are washed and coated, and how they are coated.", _zones()
    if "survey" in papers:
        yield (
            "vessel/strakes.yaml",
            "Strakes of shell plating from the keel up, with their thickness as built.",
            _strakes(),
        )
    if "history" in papers:
        head = "One file for each earlier docking. What grew in price last time is what bidders fear this time."
        yield "history/last-docking.yaml", head, {"docking": "last-docking", "findings": TODO, "lessons": TODO}
    more = [Row()] if "drawings" in papers else []
    head = "Reference documents. `verified` says when somebody last compared one with the ship, or `none`."
    yield "drawings.yaml", head, {"drawings": [_drawing(number, title) for number, title in _documents(ship)] + more}


def _tender(ship: Ship) -> dict[str, Any]:
    blocks = [{"from": hundred, "to": hundred + 99, "title": title} for hundred, title in HEADINGS.items()]
    return {
        "format": FORMAT,
        "tender": {"title": f"Docking of {ship.name}" if ship.name else TODO},
        "ship": ship.name or TODO,
        "owner": {"place": ship.place or TODO, "address": TODO, "representative": TODO},
        "dates": {"questions_until": TODO, "valid": TODO, "award": TODO},
        "programme": {"dock_days": TODO},
        "currency": ship.currency,
        "page_size": "Letter" if ship.units == "us" else "A4",
        "units": ship.units,
        "award": {"arithmetic": "unit price governs"},
        "sections": blocks,
        "services": TODO,
    }


def _particulars(ship: Ship) -> dict[str, Any]:
    hull: dict[str, Any] = {"material": MATERIALS[ship.material], "fastening": ship.fastening}
    if ship.material == "wood":
        hull["wood"] = TODO
    fill: dict[str, Any] = {
        "name": ship.name or TODO,
        "hull": hull,
        "dimensions": {"air_draft": TODO, "aft_overhang": TODO},
        "displacement": TODO,
        "keel": {"depth": TODO},
        "draft_marks": [{"name": name, "datum": TODO} for name in ("aft", "forward")],
    }
    if ship.shafts:
        fill["shafts"] = [_shaft(side) for side in _SIDES.get(ship.shafts, ("centreline", "port", "starboard"))]
    return fill


_SIDES = {1: ("centreline",), 2: ("port", "starboard")}


def _shaft(side: str) -> dict[str, Any]:
    name = "shaft" if side == "centreline" else f"{side}-shaft"
    off_centre = {} if side == "centreline" else {"off_centre": TODO}
    words = name.replace("-", " ").capitalize()
    return {"shaft": name, "name": words, "side": side, **off_centre, "state": TODO, "propeller": TODO}


_AT_DRAFT = Row(dict.fromkeys(("displacement", "lcf", "km", "immersion", "moment"), TODO))


def _tanks(by: Fill) -> dict[str, Any]:
    if "plan" in by:
        return {"tanks": [Row({**by, "capacity": TODO, "contents": {"liquid": TODO, "full": TODO}})]}
    return {"tanks": [{**by, "contents": TODO}]}


def _strakes() -> dict[str, Any]:
    return {"strakes": [{"name": TODO, "plates": TODO}]}


def _zones() -> dict[str, Any]:
    bands = (("underwater", "Underwater shell", "keel", TODO), ("topside", "Topside", TODO, "deck"))
    return {
        "zones": [
            {"zone": zone, "name": name, "surface": "shell band", "lower": lower, "upper": upper}
            for zone, name, lower, upper in bands
        ],
        "schemes": [{"scheme": "underwater", "name": "Underwater shell", "zone": "underwater", "preparation": TODO}],
    }


_PAPER_TITLES = {
    "offsets": "Lines and offsets",
    "curves": "Curves of form",
    "sections": "Sections",
    "capacity-plan": "Capacity plan",
    "tank-bounds": "Tank plan",
    "frames": "Frame plan",
    "docking-plan": "Docking plan",
    "survey": "Thickness survey",
    "history": "Report of the last docking",
}


def _documents(ship: Ship) -> list[tuple[str, str]]:
    titles = ["General arrangement", *(title for paper, title in _PAPER_TITLES.items() if paper in ship.papers)]
    return [(f"d-{place:02}", title) for place, title in enumerate(titles, start=1)]


_OPENINGS = {"openings": [Row(off_centre=TODO, bore=TODO, state=TODO)]}


def _drawing(number: str, title: str) -> Row:
    return Row({"drawing": number, "title": title, "seen": TODO})
