"""Read the item files that earlier issues of a tender held, from git's objects, without checking anything out."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path as FilePath

from tenderwright.reading.git import Repository, repository_of
from tenderwright.reading.issued import issued, one_line
from tenderwright.reading.package import text_of
from tenderwright.reading.scalars import Todo
from tenderwright.reading.source import Source
from tenderwright.reading.yaml_file import MAX_BYTES, read_yaml

_ITEMS = "items/"


def issued_sources(root: FilePath, now: Mapping[str, Source]) -> dict[str, dict[str, Source]]:
    """Read the items of each earlier issue of the tender that the package holds now, by tag, the first issue first.

    `now` are the files of the package; a file that is the same now is not read again. What cannot be read is left
    out, since it was sound when it was issued. Without tags of issues git is asked two questions and no more. Raises
    `Refused` where git does not read the repository.
    """
    tender = tender_number(now)
    issues = [issue for issue in issued(root) if tender and issue.tender == one_line(tender)]
    repository = repository_of(root) if issues else None
    if repository is None:
        return {}
    trees = {issue.tag: _tree(repository, f"{issue.commit}:{repository.path_of(root)}") for issue in issues}
    contents = _contents(repository, {name for tree in trees.values() for name in tree.values()})
    read: dict[tuple[str, str], Source] = {}
    for path, name in {pair for tree in trees.values() for pair in tree.items()}:
        source = _source(path, contents.get(name), now.get(path))
        if source is not None:
            read[path, name] = source
    return {tag: {pair[0]: read[pair] for pair in tree.items() if pair in read} for tag, tree in trees.items()}


def tender_number(sources: Mapping[str, Source]) -> str:
    """Give the number of the tender, or nothing where the package does not say it."""
    data = sources["package.yaml"].data if "package.yaml" in sources else None
    tender = data.get("tender") if isinstance(data, dict) else None
    number = tender.get("number") if isinstance(tender, dict) else None
    return number if isinstance(number, str) and not isinstance(number, Todo) else ""


def _tree(repository: Repository, package: str) -> dict[str, str]:
    """Give the item files of a package as it stood at a commit, each with the name of its content."""
    listed = repository.answer("ls-tree", "-z", "--long", "--full-tree", f"{package}{_ITEMS}") or ""
    found = {}
    for entry in listed.split("\0"):
        about, _, path = entry.partition("\t")
        mode, _, name, size = about.split() if path else ("", "", "", "")
        if mode.startswith("100") and path.endswith(".yaml") and size.isdigit() and int(size) <= MAX_BYTES:
            found[_ITEMS + path] = name
    return found


def _contents(repository: Repository, names: set[str]) -> dict[str, bytes]:
    """Fetch contents by name, all in one answer of git; one that is missing is left out."""
    if not names:
        return {}
    out = repository.ask("cat-file", "--batch", given="".join(f"{name}\n" for name in sorted(names)).encode()).out
    found: dict[str, bytes] = {}
    at = 0
    while at < len(out):
        end = out.index(b"\n", at)
        name, kind, *size = out[at:end].decode().split()
        at = end + 1
        if kind == "blob":
            found[name] = out[at : at + int(size[0])]
            at += int(size[0]) + 1
    return found


def _source(path: str, content: bytes | None, now: Source | None) -> Source | None:
    if content is None:
        return None
    try:
        text = text_of(content)
    except UnicodeDecodeError:
        return None
    return now if now is not None and now.text == text else read_yaml(path, text)[0]
