"""Random edits of the data of a package: whatever hands may do to files of YAML, text and readings."""

from __future__ import annotations

import copy
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from hypothesis import strategies as st

from tenderwright.comparing.data import package_data
from tenderwright.pipeline import read
from tests.pipeline.packages import starter

Data = dict[str, Any]

texts = st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), max_size=20)
scalars = st.none() | st.booleans() | st.integers(-(10**6), 10**6) | st.floats(-1e6, 1e6) | texts
values = st.recursive(
    scalars,
    lambda below: st.lists(below, max_size=3) | st.dictionaries(st.sampled_from(["line", "text", "a", "b"]), below),
    max_leaves=6,
)


@cache
def _starter() -> Data:
    with TemporaryDirectory() as folder:
        data = package_data(read(starter(Path(folder) / "sandling")))
    data["surveys/thickness-2021.csv"] = (
        "strake,at,side,reading\nA,1.0 m,port,8.1\nA,2.0 m,port,8.0\nB,1.0 m,port,7.9\n"
    )
    return data


def package() -> Data:
    """Give the data of the starter, with a survey."""
    return copy.deepcopy(_starter())


def _holders(node: Any) -> list[Any]:
    found = [node] if isinstance(node, (dict, list)) and node else []
    children = node.values() if isinstance(node, dict) else node if isinstance(node, list) else ()
    for child in children:
        found += _holders(child)
    return found


def _words(draw: st.DrawFn, text: str) -> str:
    """Change a text as an editor would: words gone, come and written anew."""
    lines = text.split("\n")
    index = draw(st.integers(0, len(lines) - 1))
    lines[index : index + draw(st.integers(0, 2))] = draw(st.lists(texts, max_size=2))
    return "\n".join(lines)


def _edit_mapping(draw: st.DrawFn, holder: dict[str, Any]) -> None:
    key = draw(st.sampled_from(sorted(holder)))
    how = draw(st.sampled_from(["set", "words", "drop", "add", "turn", "rename"]))
    if how == "set":
        holder[key] = draw(values)
    elif how == "words" and isinstance(holder[key], str):
        holder[key] = _words(draw, holder[key])
    elif how == "drop":
        del holder[key]
    elif how == "add":
        holder[draw(st.sampled_from(["new", "line", "notes", "where"]))] = draw(values)
    elif how == "turn":
        entries = draw(st.permutations(list(holder.items())))
        holder.clear()
        holder.update(entries)
    elif how == "rename":
        holder["renamed"] = holder.pop(key)


def _edit_list(draw: st.DrawFn, holder: list[Any]) -> None:
    index = draw(st.integers(0, len(holder) - 1))
    how = draw(st.sampled_from(["set", "words", "drop", "add", "turn", "twice", "swap"]))
    if how == "set":
        holder[index] = draw(values)
    elif how == "words" and isinstance(holder[index], str):
        holder[index] = _words(draw, holder[index])
    elif how == "drop":
        del holder[index]
    elif how == "add":
        holder.insert(index, draw(values))
    elif how == "turn":
        holder.reverse()
    elif how == "twice":
        holder.insert(index, copy.deepcopy(holder[index]))
    elif how == "swap":
        other = draw(st.integers(0, len(holder) - 1))
        holder[index], holder[other] = holder[other], holder[index]


def _edit_files(draw: st.DrawFn, data: Data, path: str) -> None:
    how = draw(st.sampled_from(["drop", "move", "copy", "new", "replace"]))
    folder = path.rpartition("/")[0]
    free = [f"{folder}/{name}".lstrip("/") for name in ("900-x.yaml", "08-x.md", "x.csv")]
    target = draw(st.sampled_from(free))
    if how == "drop":
        del data[path]
    elif how == "move":
        data[target] = data.pop(path)
    elif how == "copy":
        data[target] = copy.deepcopy(data[path])
    elif how == "new":
        data[target] = draw(values)
    else:
        data[path] = draw(values)


@st.composite
def edited(draw: st.DrawFn) -> tuple[Data, Data]:
    """Give the package and what a few edits made of it."""
    before, after = package(), package()
    for _ in range(draw(st.integers(0, 5))):
        path = draw(st.sampled_from(sorted(after)))
        holders = _holders(after[path])
        if draw(st.integers(0, 5)) == 0:
            _edit_files(draw, after, path)
        elif isinstance(after[path], str):
            after[path] = _words(draw, after[path])
        elif holders:
            holder = draw(st.sampled_from(holders))
            if isinstance(holder, dict):
                _edit_mapping(draw, holder)
            else:
                _edit_list(draw, holder)
    return (before, after) if draw(st.booleans()) else (after, before)
