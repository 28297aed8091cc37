"""What is lacking is said to a yard in words, with no file and no field of the package."""

import ast
from pathlib import Path

import pytest

import tenderwright
from tenderwright.documents.in_words import in_words

COMPILER = Path(tenderwright.__file__).parent
SOURCES = [*(COMPILER / "calculations" / "ship").glob("*.py"), *(COMPILER / "documents" / "drawings").glob("*.py")]


@pytest.mark.parametrize(
    ("said", "words"),
    [
        (
            "it needs `girder` in vessel/docking-plan.yaml",
            "it needs the stiffness of her hull girder in the docking plan",
        ),
        (
            "it needs vessel/offsets.yaml or vessel/sections.yaml",
            "it needs the table of offsets or sections of the hull",
        ),
        ("it needs thickness readings under surveys/", "it needs thickness readings in the surveys"),
        ("it needs readings of zone `topside` under surveys/", "it needs readings of that zone in the surveys"),
        ("`beam` in vessel/particulars.yaml is still `todo`", "beam in the ship's particulars is still to be written"),
        ("it needs `some_thing` in vessel/new-file.yaml", "it needs some thing in the new file"),
    ],
)
def test_files_and_fields_are_said_in_words(said: str, words: str) -> None:
    assert in_words(said) == words


def lacking() -> list[str]:
    """Collect what calculations and drawings say that they lack."""
    texts = [
        node.value
        for source in SOURCES
        for node in ast.walk(ast.parse(source.read_text(encoding="utf-8")))
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and "it needs" in node.value
    ]
    assert len(texts) > 60
    return texts


def test_nothing_that_a_calculation_lacks_names_a_file() -> None:
    told = [in_words(text) for text in lacking()]
    assert [text for text in told if ".yaml" in text or "surveys/" in text or text.count("`") > 1] == []
