"""The parts of a specification that prose may refer to, as in `<part:blocks>`."""

from __future__ import annotations

from collections.abc import Mapping

PARTS: Mapping[str, str] = {
    "asked": "What is asked",
    "revision-record": "Rules of this tender",
    "schedule": "Schedule of prices",
    "general-requirements": "General requirements",
    "particulars": "Particulars of the ship",
    "fittings": "Openings and appendages",
    "history": "Earlier dockings and surveys",
    "condition": "Condition of the ship",
    "anodes": "Anodes and unlike metals",
    "coating-zones": "Coating zones and schemes",
    "coating-conditions": "Coating conditions",
    "tightness": "Tightness, leaks and clearances",
    "plating": "Shell plating as built",
    "docking-data": "Docking data",
    "landing": "Landing on the blocks",
    "blocks": "Blocks and their loads",
    "footprints": "Blocks against the hull",
    "undocking": "Undocking condition",
    "tanks": "Tanks and their contents",
    "sounding-tables": "Sounding tables",
    "gauging": "Gauging: plates and pits",
    "lists": "Consolidated lists",
    "questions": "Questions and answers",
}
"""By the anchor of each part, the words for it where its number is not known; what a ship has no data for is left out
of her specification."""
