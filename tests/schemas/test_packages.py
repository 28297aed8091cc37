"""The two packages that come with the compiler have the shape that the schemas say."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.reading.layout import schema_of
from tenderwright.reading.package import read_package
from tenderwright.shapes.schemas import load_schema
from tenderwright.shapes.shape import shape
from tenderwright.shapes.validate import validator_of
from tenderwright.starter.write import write_starter

REPOSITORY = Path(__file__).parents[2]


@pytest.fixture(scope="module", params=["package_src", "starter"])
def root(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    if request.param == "package_src":
        return REPOSITORY / "package_src"
    folder = tmp_path_factory.mktemp("package")
    write_starter(folder)
    return folder


def test_every_file_fits_its_schema_by_the_full_validator(root: Path) -> None:
    files = read_package(root)
    checked = 0
    for path, source in files.sources.items():
        name = schema_of(path)
        if name is not None:
            assert [error.message for error in validator_of(name).iter_errors(source.data)] == [], path
            checked += 1
    assert checked > 15
    assert shape(files) == ({}, [])


def test_editors_are_pointed_to_the_schema_of_the_file(root: Path) -> None:
    """A first line `# yaml-language-server: $schema=…` names the schema that the compiler uses."""
    for path, source in read_package(root).sources.items():
        first = source.text.partition("\n")[0]
        if first.startswith("# yaml-language-server: $schema="):
            assert first.endswith(f"/{schema_of(path)}.schema.json"), path
            assert load_schema(str(schema_of(path)))
