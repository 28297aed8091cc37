"""What a file of a package is about, in the words of the trade."""

from __future__ import annotations

from typing import Any

from tenderwright.comparing.change import Subject
from tenderwright.comparing.data import PackageData
from tenderwright.reading.photograph_files import FOLDERS
from tenderwright.reading.travelling import FOLDER


def subject_of(file: str, before: PackageData, after: PackageData) -> Subject:
    """Find what a file is about from what stands in it, or stood."""
    data = after.get(file, before.get(file))
    folder, _, name = file.rpartition("/")
    stem = name.rpartition(".")[0] or name
    if folder == "items":
        return Subject("item", _text(data, "item", stem.partition("-")[0]), _text(data, "title", stem))
    if folder == "questions":
        number = _text(data, "question", stem)
        return Subject("question", number, f"Question {number}")
    if folder == "clauses":
        number, dash, rest = stem.partition("-")
        return Subject("clause", rest if dash and number.isdigit() else stem, _heading(data) or _words(rest or stem))
    if file == "package.yaml":
        return Subject("tender", file, "The tender")
    if file == "contract.yaml":
        return Subject("other", file, "The contract")
    if file == "tow.yaml":
        return Subject("other", file, "The dead ship in dock")
    if file == "drawings.yaml":
        return Subject("drawing", file, "Reference documents")
    if folder == "surveys":
        return Subject("other", file, f"Survey {stem}")
    if file.startswith(FOLDER):
        return Subject("other", file, f"Reference document {name}")
    if file == "photographs.csv":
        return Subject("other", file, "Photographs")
    if file.startswith(FOLDERS):
        return Subject("other", file, f"Photograph {name}")
    if folder == "history":
        return Subject("other", file, f"Earlier docking {stem.removeprefix('docking-')}")
    return Subject("other", file, f"Ship's data: {_words(stem).lower()}" if folder == "vessel" else file)


def _text(data: Any, key: str, otherwise: str) -> str:
    value = data.get(key) if isinstance(data, dict) else None
    return str(value) if isinstance(value, (str, int)) else otherwise


def _heading(data: Any) -> str:
    first = data.strip().partition("\n")[0] if isinstance(data, str) else ""
    return first.removeprefix("# ").strip() if first.startswith("# ") else ""


def _words(stem: str) -> str:
    return stem.replace("-", " ").capitalize()
