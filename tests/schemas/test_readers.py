"""Every field that the format declares has a reader, or says that it is kept for the record."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path
from typing import get_type_hints

import tenderwright
from tenderwright.calculations.ship import survey_readings
from tenderwright.model import care
from tenderwright.model import format as declared
from tenderwright.model.marks import Kept
from tenderwright.model.noun import Noun, keys_of
from tenderwright.model.survey_row import COLUMNS

COMPILER = Path(tenderwright.__file__).parent
ELSEWHERE = {
    "Tender.format": "reading/format_version.py reads it before there is a noun",
    "DockOffered.block_spacing": "pricing/dock_figures.py reads each figure of a dock by its path",
    "Anodes.families": "model/load.py reads each list of a file by its key",
} | {f"SurveyRow.{column}": "rows are read into arrays, or row by row, and never made nouns" for column in COLUMNS}
ELSEWHERE |= {f"CareRow.{column}": "model/care_readings.py reads each cell by its column" for column in care.COLUMNS}


def nouns(noun: type[Noun] = Noun) -> Iterator[type[Noun]]:
    for below in noun.__subclasses__():
        if below.__module__.startswith("tenderwright.model"):
            yield below
        yield from nouns(below)


def is_kept(hint: object) -> bool:
    return any(isinstance(mark, Kept) for mark in getattr(hint, "__metadata__", ()))


def attributes_read() -> set[str]:
    trees = [ast.parse(path.read_text("utf-8")) for path in COMPILER.rglob("*.py")]
    nodes = (node for tree in trees for node in ast.walk(tree))
    return {node.attr for node in nodes if isinstance(node, ast.Attribute) and isinstance(node.ctx, ast.Load)}


def test_every_field_has_a_reader() -> None:
    """Names alone are looked for here; `make laws` tells the fields of one name apart by their classes."""
    assert declared.NOUNS
    read = attributes_read()
    unread = []
    for noun in nouns():
        hints = get_type_hints(noun, include_extras=True)
        for name, _ in keys_of(noun):
            if name not in read and not is_kept(hints[name]) and f"{noun.__name__}.{name}" not in ELSEWHERE:
                unread.append(f"{noun.__name__}.{name}")
    assert unread == []


def test_what_is_kept_for_the_record_says_so() -> None:
    account = declared.schemas()["closing"]["properties"]["lines"]["items"]["properties"]
    assert ". Kept for the record, no paper prints it: " in account["bid"]["description"]


def test_a_survey_has_the_columns_that_are_declared() -> None:
    row = declared.schemas()["survey-row"]
    assert set(row["required"]) == set(COLUMNS) - {"strake", "frame", "side", *survey_readings.OPTIONAL}
