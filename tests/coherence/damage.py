"""Put one mistake into a file of the demonstration, and see what the rules of coherence say."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

import yaml

from tenderwright.checks.coherence.owner.registry import OWNER_COHERENCE
from tenderwright.checks.coherence.registry import COHERENCE
from tenderwright.checks.context import Context
from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.load import load_owner, load_package
from tenderwright.notices import Notice, sort_notices
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read
from tenderwright.planning.schedule import plan
from tenderwright.pricing.in_dock.ledger import ledger
from tenderwright.pricing.price import price
from tenderwright.reading.package import Files
from tenderwright.reading.source import Source
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.shapes.shape import shape
from tests.replacing import replace

MARRAM = Path(__file__).parents[2] / "package_src"


@dataclass(frozen=True)
class Sound:
    """The demonstration as it is, compiled once; what a mistake does not touch is taken from it."""

    files: Files
    compiled: Compiled
    owner: OwnersSide


@cache
def sound() -> Sound:
    """Compile the demonstration."""
    files = read(MARRAM)
    compiled = compile_package(files)
    return Sound(files, compiled, compile_owner(files, compiled))


def damaged(files: Files, file: str, keys: str, value: str) -> Files:
    """Put a value in place of that at a path of keys, or words in place of those of a text."""
    text = files.sources[file].text
    if file.endswith(".yaml"):
        node = yaml.compose(text, Loader=yaml.CSafeLoader)
        for key in keys.split("/"):
            if isinstance(node, yaml.MappingNode):
                node = next(held for name, held in node.value if name.value == key)
            else:
                node = _entry(node, key)
        start, end = node.start_mark.index, node.end_mark.index
        line_end = "\n" if text[:end].endswith("\n") else ""
        source, notices = read_yaml(file, text[:start] + value + line_end + text[end:])
        assert notices == []
    else:
        assert text.count(keys) == 1
        changed = text.replace(keys, value)
        source = Source(file, changed, changed, {(): (1, 1, 0)})
    return replace(files, sources={**files.sources, file: source})


def _entry(node: yaml.SequenceNode, key: str) -> yaml.Node:
    """Find an entry of a list by its place in it, or by the name with which it begins."""
    if key.isdigit():
        return node.value[int(key)]
    return next(one for one in node.value if one.value[0][1].value == key)


def told_of(files: Files) -> list[Notice]:
    """Give what the rules of coherence say of damaged files, by what was calculated of the sound ones."""
    base = sound()
    mine, theirs = files.without_owner(), files.owner_only()
    package, calculated, found = base.compiled.package, base.compiled.calculated, list[Notice]()
    if mine.sources != base.compiled.files.sources:
        mistakes, notices = shape(mine)
        assert notices == []
        package, _ = load_package(mine, mistakes)
        found += (
            notice
            for check in COHERENCE
            for notice in check(Context(package, base.compiled.links, calculated, sources=mine.sources))
        )
    mistakes, notices = shape(theirs)
    assert notices == []
    papers, _ = load_owner(theirs, mistakes)
    estimate, _ = price(papers, package, calculated.record)
    schedule, _ = plan(papers, package, calculated.record)
    dock, _ = ledger(papers, package, calculated, estimate, theirs.sources)
    context = OwnerContext(package, papers, calculated, estimate, schedule, dock, files.sources)
    found += (notice for check in OWNER_COHERENCE for notice in check(context))
    return sort_notices(found)
