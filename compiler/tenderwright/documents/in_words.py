"""What a calculation lacks, said in words: a yard knows neither the files of the package nor their fields."""

from __future__ import annotations

import re

_FILES = {
    "package": "the dates and rules of the tender",
    "particulars": "the ship's particulars",
    "frames": "the table of frames",
    "offsets": "the table of offsets",
    "curves": "the curves of form",
    "sections": "sections of the hull",
    "lightship": "the account of her weights",
    "condition": "the account of her condition",
    "timber": "the survey of her timber",
    "tanks": "the list of tanks",
    "zones": "the list of coating zones",
    "strakes": "the list of strakes",
    "openings": "the list of openings",
    "appendages": "the list of appendages",
    "anodes": "the list of anodes",
}
"""What is in a file of the package, by its name; another is said by its name, with the article."""
_FOLDERS = {"surveys": "the surveys", "history": "the records of earlier dockings", "facilities": "the list of docks"}
_FIELDS = {
    "todo": "to be written",
    "allowable": "the pressure allowed on the caps",
    "anodes": "the rules for anodes",
    "block_height": "the height of the blocks",
    "borings": "borings",
    "capacity": "the capacity",
    "climate": "the climate at the dock",
    "days_dry": "the days that she may stand dry",
    "displacement": "the displacement",
    "docking": "the docking condition",
    "drawn": "the fastenings drawn",
    "earthquake": "earthquake",
    "fastening_loss": "the loss that condemns a fastening",
    "fastenings": "the fastenings drawn",
    "fitted": "the day fitted",
    "friction": "the friction under the side blocks",
    "gauging": "the rules for gauging",
    "girder": "the stiffness of her hull girder",
    "girths": "the girths",
    "hog": "the hog measured",
    "hull_at_side_blocks": "what shell and frames can take at the side blocks",
    "keel": "the line of the keel",
    "keel_blocks": "the keel blocks",
    "layers": "the layers",
    "least_gm": "the metacentric height asked for",
    "left": "what is left",
    "members": "the members inside her tanks",
    "moisture": "the moisture of the wood",
    "off_centre": "the distance from the centreline",
    "planks": "the planks",
    "practice": "the rules for judging wood",
    "programme": "the programme",
    "renewal": "the rules for renewing plate",
    "seams": "the seams",
    "seen": "the day seen",
    "side_blocks": "the side blocks",
    "strip": "the strip in which anodes may stand",
    "surface: shell band": "a band of the shell as its surface",
    "table": "a sounding table",
    "tightness": "the tests of tightness",
    "unsound": "what counts as unsound",
    "waste": "the allowance for waste",
    "zones": "the zones of the shell",
}
"""What a field of the package holds, by its name; another is said by its name."""
_NAMED = re.compile(r"\b(tank|zone|scheme|shaft|strake|facility) `[^`]+`")
_FILE = re.compile(r"(?:\w+/)?([\w-]+)\.yaml\b")
_FOLDER = re.compile(r"\bunder (\w+)/")
_FIELD = re.compile(r"`([^`]+)`")


def in_words(text: str) -> str:
    """Say in words what a text names by file and field: `girder` in vessel/docking-plan.yaml."""
    text = _NAMED.sub(r"that \1", text)
    text = _FILE.sub(lambda found: _FILES.get(found[1], f"the {found[1].replace('-', ' ')}"), text)
    text = _FOLDER.sub(lambda found: f"in {_FOLDERS.get(found[1], f'the {found[1]}')}", text)
    return _FIELD.sub(lambda found: _FIELDS.get(found[1], found[1].replace("_", " ")), text)
