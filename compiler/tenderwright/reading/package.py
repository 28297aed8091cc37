"""Read a whole package: every file in it, with a notice for each that cannot be read."""

from __future__ import annotations

import hashlib
import os
import re
from collections.abc import Iterator, Mapping
from pathlib import Path as FilePath

from msgspec import Struct, field
from msgspec.structs import replace

from tenderwright.notices import Notice, Place
from tenderwright.notices.suggest import did_you_mean
from tenderwright.reading.archived import changed_archives
from tenderwright.reading.csv_rows import read_rows
from tenderwright.reading.format_version import another_format
from tenderwright.reading.layout import NEEDED, OWNER, ROWS, UNFINISHED, YAML_FILES, is_ignored, is_other, schema_of
from tenderwright.reading.photograph_files import FOLDERS, MOST_IN_PHOTOGRAPH, PhotographFile, photograph_file
from tenderwright.reading.scalars import Todo, read_block
from tenderwright.reading.source import Source
from tenderwright.reading.travelling import FOLDER, MOST, Travelling
from tenderwright.reading.unreadable import no_file, unreadable
from tenderwright.reading.yaml_file import MAX_BYTES, MAX_SURVEY_BYTES, read_yaml

_LINE_ENDS = "\r\u0085\u2028\u2029"
"""What ends a line for the parser besides a line feed (YAML 1.1, section 4.2), so that all count lines alike."""
_LINE_END = re.compile(f"\r\n|[{_LINE_ENDS}]")


class Files(Struct, frozen=True):
    """The files of a package as read, by path."""

    root: FilePath
    sources: Mapping[str, Source]
    notices: tuple[Notice, ...]
    issued: Mapping[str, Mapping[str, Source]] = field(default_factory=dict)
    """The item files of each earlier issue of the tender, by its tag, the first issue first."""
    travelling: Mapping[str, Travelling] = field(default_factory=dict)
    """The files that go along with the tender as they are, by path."""
    photographs: Mapping[str, PhotographFile] = field(default_factory=dict)
    """The files that lie among the photographs, by path."""
    goes_along_to: str = ""
    """The remote of the repository that keeps owner/ together with the rest."""

    @property
    def paths(self) -> tuple[str, ...]:
        """Name every file that the compiler reads; of the photographs, those that have a row."""
        return (*self.sources, *self.travelling, *self.photographs_listed)

    @property
    def photographs_listed(self) -> list[str]:
        """Give the paths of the photographs that rows name."""
        listed = set()
        for table, name in ROWS.items():
            source = self.sources.get(table)
            rows = source.data[name] if source is not None and source.data is not None else ()
            listed |= {f"{table.removesuffix('.csv')}/{row.get('file', '')}" for row in rows}
        return sorted(listed & self.photographs.keys())

    @property
    def texts(self) -> dict[str, str]:
        """Give the text of each file, for rendering notices."""
        return {path: source.text for path, source in self.sources.items()}

    def without_owner(self) -> Files:
        """Give the same files without anything confidential."""
        kept = {path: source for path, source in self.sources.items() if not path.startswith(OWNER)}
        notices = tuple(n for n in self.notices if not n.place.path.startswith(OWNER))
        photographs = {path: one for path, one in self.photographs.items() if not path.startswith(OWNER)}
        return replace(self, sources=kept, notices=notices, photographs=photographs)

    def owner_only(self) -> Files:
        """Give only what lies under owner/."""
        kept = {path: source for path, source in self.sources.items() if path.startswith(OWNER)}
        notices = tuple(n for n in self.notices if n.place.path.startswith(OWNER))
        photographs = {path: one for path, one in self.photographs.items() if path.startswith(OWNER)}
        return replace(self, sources=kept, notices=notices, photographs=photographs)


def papers_hash(files: Files, within: tuple[str, ...] = (OWNER,)) -> str:
    """Give one checksum of the owner's papers, or of some of them, which the commit does not cover."""
    found = hashlib.sha256()
    for path, source in sorted(files.owner_only().sources.items()):
        if path.startswith(within):
            found.update(f"{path}\0{len(source.text.encode())}\0{source.text}".encode())
    return found.hexdigest()


def read_package(root: FilePath, *, owner: bool = True, kept: Mapping[str, Source] | None = None) -> Files:
    """Read every file of the package at root; `kept` are sources of an earlier run, used again where text is equal."""
    sources: dict[str, Source] = {}
    travelling: dict[str, Travelling] = {}
    photographs: dict[str, PhotographFile] = {}
    notices: list[Notice] = []
    real = root.resolve()
    for path in sorted(_walk(real, "", notices, owner=owner)):
        if is_ignored(path):
            continue
        if path.startswith(FOLDER):
            if (content := _read_bytes(real, path, MOST, notices)) is not None:
                travelling[path] = Travelling(path, content)
            continue
        if path.startswith(FOLDERS):
            if (one := _photograph(real, path, notices)) is not None:
                photographs[path] = one
            continue
        schema = schema_of(path)
        if schema is None and not is_other(path):
            notices.append(_unknown(path))
            continue
        text = _read_text(real, path, notices)
        if text is None:
            sources[path] = Source(path, "")
            continue
        source, found = _read_source(path, text, kept or {}, yaml=schema is not None)
        sources[path] = source
        notices += found
    notices += changed_archives(real) if owner else ()
    if (real / UNFINISHED).exists():
        notices.append(_unfinished())
    for path in NEEDED:
        if path not in sources:
            notices.append(
                Notice(
                    "missing-file",
                    Place(path),
                    f"a package needs `{path}`",
                    hints=(_how_to_begin(path),),
                )
            )
    other = another_format(sources)
    if other is not None:
        return Files(root, {other.place.path: sources[other.place.path]}, (other,))
    return Files(root, sources, tuple(notices), travelling=travelling, photographs=photographs)


def _how_to_begin(path: str) -> str:
    if path == "package.yaml":
        return "copy it from a new package, which `tenderwright start spare` writes"
    return f"`tenderwright add {YAML_FILES[path]}` writes one to fill in"


def _read_source(path: str, text: str, kept: Mapping[str, Source], *, yaml: bool) -> tuple[Source, list[Notice]]:
    old = kept.get(path)
    if old is not None and old.text == text and old.data is not None:
        return old, []
    if path in ROWS:
        return read_rows(path, text, ROWS[path])
    if yaml:
        return read_yaml(path, text)
    lines = text.split("\n") if path.endswith(".md") else ()
    todo = next((number for number, line in enumerate(lines, start=1) if read_block(line).__class__ is Todo), 0)
    return Source(path, text, text, {(): (todo or 1, 1, 0)}, todos=((),) if todo else ()), []


def read_one(file: FilePath) -> tuple[Source | None, list[Notice]]:
    """Read one YAML file by itself, named in notices as it was given."""
    notices: list[Notice] = []
    name = str(file)
    if not file.is_file():
        return None, [no_file(file, name, Place(name))]
    text = _read_text(FilePath(), name, notices)
    if text is None:
        return None, notices
    return read_yaml(name, text)


def read_beside(file: FilePath, name: str, at: Place) -> tuple[Source | None, list[Notice]]:
    """Read a text file named in another one, which must lie in that one's folder; `at` is where it is named."""
    folder = file.parent.resolve()
    target = (folder / name).resolve()
    if not target.is_relative_to(folder):
        hints = ("put the file beside the one that names it",)
        return None, [Notice("outside-package", at, f"`{name}` leads out of the folder of `{file.name}`", hints=hints)]
    if not target.is_file():
        return None, [no_file(target, name, at)]
    notices: list[Notice] = []
    shown = str(file.parent / name)
    text = _read_text(FilePath(), shown, notices)
    return (None if text is None else Source(shown, text, text, {(): (1, 1, 0)})), notices


def _target(entry: os.DirEntry[str]) -> FilePath | None:
    """Give where an entry is in the end, following links; None where they lead round in a circle."""
    if not entry.is_symlink():
        return FilePath(entry.path)
    try:
        return FilePath(os.path.realpath(entry.path, strict=True))
    except FileNotFoundError:
        return FilePath(os.path.realpath(entry.path))
    except OSError:
        return None


def _walk(root: FilePath, folder: str, notices: list[Notice], *, owner: bool) -> Iterator[str]:
    try:
        entries = sorted(os.scandir(root / folder), key=lambda entry: entry.name)
    except OSError as error:
        notices.append(unreadable(folder or ".", error))
        return
    for entry in entries:
        path = f"{folder}{entry.name}"
        if entry.name.startswith(".") or (not owner and path == OWNER.rstrip("/")):
            continue
        target = _target(entry)
        if target is None:
            message = "a link leads back to itself"
            notices.append(Notice("not-a-file", Place(path), message, hints=("put the file itself here",)))
        elif not target.is_relative_to(root):
            notices.append(
                Notice(
                    "outside-package",
                    Place(path),
                    "a link leads out of the package",
                    hints=("put the file itself here",),
                )
            )
        elif entry.is_dir():
            if schema_of(path) is not None or is_other(path):
                message = "a folder has the name of a file of the package"
                notices.append(
                    Notice("not-a-file", Place(path), message, hints=("rename the folder, or move it away",))
                )
            elif entry.is_symlink():
                notices.append(
                    Notice(
                        "outside-package",
                        Place(path),
                        "a linked folder is not followed",
                        hints=("put the files themselves here",),
                    )
                )
            else:
                yield from _walk(root, f"{path}/", notices, owner=owner)
        elif entry.is_file():
            yield path
        elif not target.exists():
            message = "a link leads to a file that does not exist"
            notices.append(Notice("no-such-file", Place(path), message, hints=("put the file itself here",)))
        else:
            message = "this is neither a file nor a folder"
            notices.append(Notice("not-a-file", Place(path), message, hints=("move it out of the package",)))


def _photograph(root: FilePath, path: str, notices: list[Notice]) -> PhotographFile | None:
    try:
        one = photograph_file(root, path)
    except OSError as error:
        notices.append(Notice("not-a-file", Place(path), f"cannot be read: {error.strerror}"))
        return None
    if one.size > MOST_IN_PHOTOGRAPH:
        message = f"{one.size / 1e6:.0f} MB is more than the limit of {MOST_IN_PHOTOGRAPH // 1_000_000} MB"
        hints = ("put a smaller copy of the photograph here, and keep the original elsewhere",)
        notices.append(Notice("too-large", Place(path), message, hints=hints))
        return None
    return one


def _read_bytes(root: FilePath, path: str, most: int, notices: list[Notice]) -> bytes | None:
    file = root / path
    try:
        if file.stat().st_size > most:
            size = file.stat().st_size / 1e6
            notices.append(
                Notice("too-large", Place(path), f"{size:.0f} MB is more than the limit of {most // 1_000_000} MB")
            )
            return None
        return file.read_bytes()
    except OSError as error:
        notices.append(unreadable(path, error))
        return None


def _read_text(root: FilePath, path: str, notices: list[Notice]) -> str | None:
    raw = _read_bytes(root, path, MAX_SURVEY_BYTES if path.endswith(".csv") else MAX_BYTES, notices)
    if raw is None:
        return None
    try:
        return text_of(raw)
    except UnicodeDecodeError as error:
        before = raw[: error.start]
        line = before.count(b"\n") + 1
        column = len(before) - (before.rfind(b"\n") + 1) + 1
        notices.append(
            Notice(
                "not-utf8",
                Place(path, line, column),
                f"byte 0x{raw[error.start]:02x} is not UTF-8",
                hints=("save the file as UTF-8",),
            )
        )
        return None


def text_of(raw: bytes) -> str:
    """Give the text of a file; raises UnicodeDecodeError where it is not UTF-8."""
    text = raw.decode("utf-8-sig")
    return _LINE_END.sub("\n", text) if any(end in text for end in _LINE_ENDS) else text


def _unfinished() -> Notice:
    message = "`close`, `add` or `bids read` is putting files into the package, or was stopped while it did"
    hint = "when it has stopped, give the same command again: it removes what is half done, and starts afresh"
    return Notice("unfinished-files", Place(UNFINISHED), message, hints=(hint,))


def _unknown(path: str) -> Notice:
    name = path.rsplit("/", 1)[-1]
    hints = did_you_mean(path, YAML_FILES) or ("notes and papers belong in owner/documents/",)
    if path.startswith("items/"):
        hints = ("item files lie in items/ itself and end in `.yaml`; notes belong in owner/documents/",)
    if name.endswith(".yml"):
        hints = (f"name it `{path[:-4]}.yaml`",)
    return Notice("unknown-file", Place(path), f"`{path}` has no place in a package", hints=hints)
