"""A small package that a test may spoil: the one that `start` writes."""

from __future__ import annotations

from pathlib import Path

from tenderwright.linking.link import link, link_values
from tenderwright.model.load import load_package
from tenderwright.model.package import Package
from tenderwright.notices import Notice
from tenderwright.reading.package import Files, read_package
from tenderwright.reading.source import Source
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.shapes.shape import shape


def change(files: Files, path: str, old: str, new: str) -> Files:
    """Give the same files with one text in one of them changed at its first place."""
    text = files.sources[path].text
    assert old in text, f"{path} does not hold {old!r}"
    return put(files, path, text.replace(old, new, 1))


def put(files: Files, path: str, text: str) -> Files:
    """Give the same files with one file written anew."""
    if path.endswith(".yaml"):
        source, notices = read_yaml(path, text)
    else:
        source, notices = Source(path, text, text, {(): (1, 1, 0)}), []
    return Files(files.root, {**files.sources, path: source}, (*files.notices, *notices))


def load(files: Files) -> tuple[Package, list[Notice]]:
    """Take files through shape and model."""
    files = files.without_owner()
    mistakes, found = shape(files)
    package, notices = load_package(files, mistakes)
    return package, [*files.notices, *found, *notices]


def linked(files: Files) -> list[Notice]:
    """Take files through shape, model and link, with the values that the starter's items take taken as known."""
    package, notices = load(files)
    links, found = link(package)
    known = {"coating.underwater-spot.area", "tank.bilge-oil.volume", "tank.bilge-oil.capacity", "zone.underwater.area"}
    return [*notices, *found, *link_values(links, known, {})]


def told(notices: list[Notice]) -> list[tuple[str, str]]:
    """Give the place and code of each notice."""
    return [(str(notice.place), notice.code) for notice in notices]


def read(root: Path) -> Files:
    """Read the files of a package."""
    files = read_package(root)
    assert files.notices == ()
    return files
