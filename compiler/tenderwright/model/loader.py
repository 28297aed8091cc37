"""Build the nouns of files one by one; what is broken is left out, and its name kept."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any, TypeVar

from tenderwright.model import survey_columns
from tenderwright.model.build import Awaited, Builder
from tenderwright.model.clauses import clause_of
from tenderwright.model.delivered_survey import survey_of
from tenderwright.model.noun import Noun
from tenderwright.model.package import ANY, Broken, Clause
from tenderwright.model.photograph import Photograph
from tenderwright.model.photographs_there import photographs_there
from tenderwright.model.survey import Survey, survey_name
from tenderwright.notices import Notice, Place
from tenderwright.quantities.position import FrameTable
from tenderwright.reading.layout import schema_of
from tenderwright.reading.package import Files
from tenderwright.reading.scalars import Todo
from tenderwright.reading.source import Path, Source

N = TypeVar("N", bound=Noun)
Mistakes = Mapping[str, Iterable[Path]]
"""For each file, the paths at which its shape is wrong."""
Wanted = tuple[tuple[str, Path], ...]
"""The file and path of values that are still `todo`."""

LISTS = {
    "drawings.yaml": ("drawings",),
    "vessel/tanks.yaml": ("tanks",),
    "vessel/openings.yaml": ("openings",),
    "vessel/appendages.yaml": ("appendages",),
    "vessel/strakes.yaml": ("strakes",),
    "vessel/zones.yaml": ("zones", "schemes"),
    "vessel/anodes.yaml": ("anodes", "families"),
    "photographs.csv": ("photographs",),
    "owner/photographs.csv": ("photographs",),
}
"""Files that hold lists of named things, of which a broken one is left out by itself."""
_NAMES = {key: key.removesuffix("s") for keys in LISTS.values() for key in keys} | {"families": "anode"}
FILES = {_NAMES[key]: path for path, keys in LISTS.items() for key in keys}
"""By kind, the file that holds the things of that kind."""
_NAME = re.compile(r"[A-Za-z0-9]+(?:[-.][A-Za-z0-9]+)*")
_WHOLE = {"item": "item", "history": "docking", "facility": "facility", "question": "question"}


def still(wanted: Wanted) -> str:
    """Say that values are still `todo`: `beam` and 2 more in vessel/particulars.yaml."""
    (file, at), *more = dict.fromkeys(wanted)
    key = next((one for one in reversed(at) if isinstance(one, str)), "")
    what = f"`{key}`" if key else "all"
    also = f" and {len(more)} more" if more else ""
    return f"{what}{also} in {file} {'are' if more else 'is'} still `todo`"


class Loader:
    """Builds the nouns of files, and keeps what could not be built."""

    def __init__(self, files: Files, mistakes: Mistakes) -> None:
        self.files = files
        self.mistakes = {path: [tuple(at) for at in paths] for path, paths in mistakes.items()}
        self.frames: FrameTable | None = None
        self.notices: list[Notice] = []
        self.broken_names: set[tuple[str, str]] = set()
        self.broken_files: set[str] = set(mistakes)
        self.waiting: dict[tuple[str, str], str] = {}
        self.waiting_files: dict[str, str] = {}
        self.wanted_of_frames: Wanted = ()

    def broken(self) -> Broken:
        """Give the names and files that are left out."""
        names, files = frozenset(self.broken_names), frozenset(self.broken_files)
        return Broken(names, files, self.waiting, self.waiting_files).told(self.notices)

    def usable(self, path: str) -> dict[str, Any] | None:
        """Give a file's data without the entries that have mistakes, or None where the file as a whole is wrong."""
        source = self.files.sources.get(path)
        if source is None:
            if path in self.mistakes:
                self.keep_names(Source(path, ""))
            return None
        wrong = self.mistakes.get(path, [])
        entries = {(at[0], at[1]) for at in wrong if len(at) > 1 and at[0] in LISTS.get(path, ())}
        if source.data.__class__ is Todo:
            self.wait(source, ((path, ()),))
            return None
        if not isinstance(source.data, dict) or any(at[:2] not in entries for at in wrong):
            self.broken_files.add(path)
            self.keep_names(source)
            return None
        data = dict(source.data)
        for key in {key for key, _ in entries}:
            kept: list[Any] = []
            for index, entry in enumerate(data[key]):
                if (key, index) in entries:
                    name = _NAMES[str(key)]
                    swallowed = any(at[:2] == (key, index) for at in source.twice)
                    self.keep_name(name, entry if (key, index, name) not in wrong and not swallowed else None)
                    self.broken_files.add(path)
                    kept.append(None)
                else:
                    kept.append(entry)
            data[key] = kept
        return data

    def keep_names(self, source: Source) -> None:
        """Keep the names of all things of a file that is left out."""
        data = source.data if isinstance(source.data, dict) else {}
        for key in LISTS.get(source.path, ()):
            if key == "families" and key not in data:
                continue  # most ships have none
            name = _NAMES[key]
            if not isinstance(data.get(key), list):
                self.broken_names.add((name, ANY))
            entries = data.get(key)
            for entry in entries if isinstance(entries, list) else ():
                self.keep_name(name, entry)
        kind = _WHOLE.get(schema_of(source.path) or "")
        number = source.path.rsplit("/", 1)[-1].removesuffix(".yaml").split("-")[0]
        readable = isinstance(data.get(str(kind)), int | str) and (kind,) not in self.mistakes.get(source.path, ())
        if kind in ("item", "question") and number.isdigit():
            self.broken_names.add((kind, str(int(number))))
            if not readable:
                return
        if kind:
            self.keep_name(kind, data if readable else None)

    def keep_name(self, kind: str, entry: object) -> None:
        """Keep the name of a thing that is left out."""
        name = entry.get(kind, "") if isinstance(entry, dict) else ""
        name = "" if name.__class__ is Todo else str(name)
        self.broken_names.add((kind, name if _NAME.fullmatch(name) else ANY))

    def wait(self, source: Source, wanted: Wanted) -> None:
        """Leave a file out since something that it needs is still `todo`."""
        before = set(self.broken_names)
        self.keep_names(source)
        self.waiting_files[source.path] = still(wanted)
        self.waiting |= dict.fromkeys(self.broken_names - before, still(wanted))
        self.broken_files.add(source.path)
        if source.path == "vessel/frames.yaml":
            self.wanted_of_frames = wanted

    def wait_for(self, source: Source, kind: str, entry: object, wanted: Wanted) -> None:
        """Leave an entry of a list out since something that it needs is still `todo`."""
        before = set(self.broken_names)
        self.keep_name(kind, entry)
        self.waiting |= dict.fromkeys(self.broken_names - before, still(wanted))
        self.waiting_files.setdefault(source.path, still(wanted))
        self.broken_files.add(source.path)

    def file(self, path: str, noun: type[N]) -> N | None:
        """Build the noun of one file, or None."""
        data = self.usable(path)
        if data is None:
            return None
        builder = Builder(self.files.sources[path], self.frames, self.wanted_of_frames)
        try:
            built = builder.build(noun, data)
        except Awaited as awaited:
            self.wait(self.files.sources[path], awaited.wanted)
            return None
        if builder.left_out:
            self.broken_files.add(path)
        if builder.notices:
            self.notices += builder.notices
            self.broken_files.add(path)
            self.keep_names(self.files.sources[path])
            return None
        return built

    def entries(self, path: str, key: str, noun: type[N]) -> tuple[N, ...]:
        """Build the entries of one list of a file that have no mistake."""
        data = self.usable(path) or {}
        source = self.files.sources.get(path)
        built: list[N] = []
        listed = data.get(key, ())
        if source is not None and listed.__class__ is Todo:
            self.wait_for(source, _NAMES[key], None, ((path, (key,)),))
            return ()
        for index, entry in enumerate(listed):
            if source is None or entry is None:
                continue
            builder = Builder(source, self.frames, self.wanted_of_frames)
            try:
                made = builder.value(lambda b, given, at: b.build(noun, given, at), entry, (key, index))
            except Awaited as awaited:
                self.wait_for(source, _NAMES[key], entry, awaited.wanted)
                continue
            if builder.notices:
                self.notices += builder.notices
                self.broken_files.add(path)
                self.keep_name(_NAMES[key], entry)
            else:
                built.append(made)
        return tuple(built)

    def folder(self, name: str, noun: type[N]) -> list[tuple[str, N]]:
        """Build the noun of every file of a folder."""
        paths = [path for path in self.files.sources if path.startswith(f"{name}/") and path.endswith(".yaml")]
        built = ((path, self.file(path, noun)) for path in sorted(paths))
        return [(path, made) for path, made in built if made is not None]

    def read_in(self, folder: str) -> list[str]:
        """List the files of a folder that could be read."""
        return sorted(p for p, s in self.files.sources.items() if p.startswith(folder) and s.data is not None)

    def clauses(self) -> tuple[Clause, ...]:
        """Give the clauses, in the order of their files."""
        return tuple(clause_of(self.files.sources[path]) for path in self.read_in("clauses/"))

    def photographs(self, folder: str = "") -> tuple[Photograph, ...]:
        """Build the photographs of a folder, and hold their rows against its files."""
        path = f"{folder}photographs.csv"
        rows = self.entries(path, "photographs", Photograph)
        self.notices += photographs_there(rows, self.files.photographs, folder, self.files.sources.get(path))
        return rows

    def surveys(self) -> tuple[Survey, ...]:
        """Give the surveys that could be read."""
        return tuple(filter(None, map(self.survey, self.read_in("surveys/"))))

    def survey(self, path: str) -> Survey | None:
        """Read a survey, by what the file of the same name beside it says of its columns, where there is one."""
        if path.endswith(".yaml"):
            if f"{path.removesuffix('.yaml')}.csv" not in self.files.sources:
                message = f"there is no survey surveys/{survey_name(path)}.csv whose columns this would say"
                self.notices.append(Notice("delivered-columns", Place(path), message))
            return None
        beside = f"{path.removesuffix('.csv')}.yaml"
        there = beside in self.files.sources or beside in self.mistakes
        columns = self.file(beside, survey_columns.SurveyColumns) if there else None
        if there and columns is None:
            return None
        if columns is not None and (todos := self.files.sources[beside].todos):
            self.wait(self.files.sources[beside], tuple((beside, at) for at in todos))
            return None
        survey, notices = survey_of(self.files.sources[path], columns)
        self.notices += notices
        return survey
