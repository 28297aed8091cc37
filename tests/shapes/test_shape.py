from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.reading.package import read_package
from tenderwright.shapes.schemas import load_schema, schema_folder, schema_names
from tenderwright.shapes.shape import shape
from tenderwright.starter.write import write_starter


@pytest.fixture
def root(tmp_path: Path) -> Path:
    write_starter(tmp_path)
    return tmp_path


def spoil(root: Path, path: str, old: str, new: str) -> None:
    text = (root / path).read_text("utf-8")
    assert old in text
    (root / path).write_text(text.replace(old, new, 1), "utf-8")


def test_a_sound_package_has_no_mistakes(root: Path) -> None:
    assert shape(read_package(root)) == ({}, [])


def test_a_mistake_is_kept_with_its_path_and_told_once(root: Path) -> None:
    spoil(root, "vessel/frames.yaml", "direction: forward", "direction: foreward")
    mistakes, (notice,) = shape(read_package(root))
    assert mistakes == {"vessel/frames.yaml": [("direction",)]}
    assert (notice.code, notice.hints[0]) == ("wrong-choice", "did you mean `forward`?")


def test_a_file_that_could_not_be_read_is_marked_and_not_told_again(root: Path) -> None:
    (root / "vessel" / "frames.yaml").write_text("a: b: c\n", "utf-8")
    files = read_package(root)
    assert [notice.code for notice in files.notices] == ["yaml-syntax"]
    assert shape(files) == ({"vessel/frames.yaml": [()]}, [])


def test_an_empty_file_is_told(root: Path) -> None:
    (root / "vessel" / "frames.yaml").write_text("", "utf-8")
    mistakes, (notice,) = shape(read_package(root))
    assert mistakes == {"vessel/frames.yaml": [()]}
    assert notice.message == "expected keys with their values, got nothing"


def test_schemas_are_found_beside_the_tree_and_written_out_whole() -> None:
    assert (schema_folder() / "package.schema.json").is_file()
    assert "package" in schema_names()
    item = load_schema("item")
    side = item["properties"]["where"]["properties"]["side"]
    assert side["enum"] == ["port", "starboard", "both", "centreline"]
    assert item is load_schema("item")


def test_a_description_beside_a_reference_stands_before_the_shared_one() -> None:
    zone = load_schema("zones")["properties"]["zones"]["items"]["properties"]["zone"]
    assert (zone["description"], zone["title"]) == (
        "Identifier, by which schemes and items name the zone.",
        "Identifier",
    )
    assert zone["examples"] == ["underwater"]
