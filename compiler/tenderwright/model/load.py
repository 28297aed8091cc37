"""Build the package from files whose shape has been checked; what is broken is left out, and its name kept."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, TypeVar

from tenderwright.model import facility, history, item, owner, tender, vessel
from tenderwright.model.build import Builder, Prose
from tenderwright.model.frame_table import frame_table
from tenderwright.model.package import Broken, Clause, Package
from tenderwright.model.survey import Survey, read_survey
from tenderwright.notices import Notice, Place
from tenderwright.quantities.position import FrameTable
from tenderwright.reading.layout import schema_of
from tenderwright.reading.package import Files
from tenderwright.reading.source import Path, Source

T = TypeVar("T")
Mistakes = Mapping[str, Iterable[Path]]
"""For each file, the paths at which its shape is wrong."""

LISTS = ("tanks", "openings", "appendages", "strakes", "zones", "schemes", "anodes", "drawings")
_NAMES = {
    **{name: name.removesuffix("s") for name in LISTS},
}
_WHOLE = {"item": "item", "history": "docking", "facility": "facility"}


class _Loader:
    def __init__(self, files: Files, mistakes: Mistakes) -> None:
        self.files = files
        self.mistakes = {path: [tuple(at) for at in paths] for path, paths in mistakes.items()}
        self.frames: FrameTable | None = None
        self.notices: list[Notice] = []
        self.broken_names: set[tuple[str, str]] = set()
        self.broken_files: set[str] = set()

    def usable(self, path: str) -> dict[str, Any] | None:
        """Give a file's data without the entries that have mistakes, or None where the file as a whole is wrong."""
        source = self.files.sources.get(path)
        if source is None:
            return None
        wrong = self.mistakes.get(path, [])
        entries = {
            (at[0], at[1])
            for at in wrong
            if (len(at) > 2 and at[0] in LISTS) or (len(at) == 2 and at[0] in LISTS)
        }
        if not isinstance(source.data, dict) or any(at[:2] not in entries for at in wrong):
            self.broken_files.add(path)
            self.keep_names(source)
            return None
        data = dict(source.data)
        for key in {key for key, _ in entries}:
            kept: list[Any] = []
            for index, entry in enumerate(data[key]):
                if (key, index) in entries:
                    self.keep_name(_NAMES[str(key)], entry)
                    self.broken_files.add(path)
                    kept.append(None)
                else:
                    kept.append(entry)
            data[key] = kept
        return data

    def keep_names(self, source: Source) -> None:
        data = source.data if isinstance(source.data, dict) else {}
        for key, name in _NAMES.items():
            entries = data.get(key)
            for entry in entries if isinstance(entries, list) else ():
                self.keep_name(name, entry)
        kind = _WHOLE.get(schema_of(source.path) or "")
        if kind:
            self.keep_name(kind, data)
            number = source.path.rsplit("/", 1)[-1].split("-")[0]
            if kind == "item" and number.isdigit():
                self.broken_names.add(("item", number))

    def keep_name(self, kind: str, entry: object) -> None:
        if isinstance(entry, dict) and isinstance(entry.get(kind), (str, int)):
            self.broken_names.add((kind, str(entry[kind])))

    def file(self, path: str, cls: type[T]) -> T | None:
        """Build the dataclass of one file, or None."""
        data = self.usable(path)
        if data is None:
            return None
        builder = Builder(self.files.sources[path], self.frames)
        built = builder.build(cls, data)
        self.notices += builder.notices
        if builder.notices:
            self.broken_files.add(path)
        return built

    def entries(self, path: str, key: str, cls: type[T]) -> tuple[T, ...]:
        """Build the entries of one list of a file that have no mistake."""
        data = self.usable(path) or {}
        source = self.files.sources.get(path)
        built: list[T] = []
        for index, entry in enumerate(data.get(key, ())):
            if source is None or entry is None:
                continue
            builder = Builder(source, self.frames)
            made = builder.build(cls, entry, (key, index))
            if builder.notices:
                self.notices += builder.notices
                self.keep_name(_NAMES[key], entry)
            else:
                built.append(made)
        return tuple(built)

    def folder(self, name: str, cls: type[T]) -> list[tuple[str, T]]:
        """Build the dataclass of every file of a folder."""
        paths = [
            path for path in self.files.sources if path.startswith(f"{name}/") and path.endswith(".yaml")
        ]
        built = ((path, self.file(path, cls)) for path in sorted(paths))
        return [(path, made) for path, made in built if made is not None]

    def read_in(self, folder: str) -> list[str]:
        """List the files of a folder that could be read."""
        return sorted(p for p, s in self.files.sources.items() if p.startswith(folder) and s.data is not None)

    def clauses(self) -> tuple[Clause, ...]:
        return tuple(_clause(self.files.sources[path]) for path in self.read_in("clauses/"))

    def surveys(self) -> tuple[Survey, ...]:
        read = []
        for path in self.read_in("surveys/"):
            survey, notices = read_survey(self.files.sources[path])
            self.notices += notices
            read.append(survey)
        return tuple(read)


def _clause(source: Source) -> Clause:
    stem = source.path.rsplit("/", 1)[-1].removesuffix(".md")
    number, _, name = stem.partition("-")
    first, _, rest = source.text.strip().partition("\n")
    title = (
        first.removeprefix("# ").strip() if first.startswith("# ") else name.replace("-", " ").capitalize()
    )
    text = rest if first.startswith("# ") else source.text
    return Clause(
        name or stem, number.lstrip("0") if number.isdigit() else "", title,
        Prose(text.strip(), Place(source.path), source, ()), Place(source.path),
    )  # fmt: skip


def load_package(files: Files, mistakes: Mistakes) -> tuple[Package, list[Notice]]:
    """Build everything but the owner's papers."""
    loader = _Loader(files, mistakes)
    frames = loader.file("vessel/frames.yaml", vessel.Frames)
    if frames is not None:
        loader.frames, notices = frame_table(frames)
        loader.notices += notices
    items = [
        made for path, made in loader.folder("items", item.Item) if _numbered(path, made, loader.notices)
    ]
    package = Package(
        tender=loader.file("package.yaml", tender.Tender),
        particulars=loader.file("vessel/particulars.yaml", vessel.Particulars),
        frames=loader.frames,
        offsets=loader.file("vessel/offsets.yaml", vessel.Offsets),
        lightship=loader.file("vessel/lightship.yaml", vessel.Lightship),
        drawings=loader.entries("drawings.yaml", "drawings", tender.Drawing),
        tanks=loader.entries("vessel/tanks.yaml", "tanks", vessel.Tank),
        openings=loader.entries("vessel/openings.yaml", "openings", vessel.Opening),
        appendages=loader.entries("vessel/appendages.yaml", "appendages", vessel.Appendage),
        strakes=loader.entries("vessel/strakes.yaml", "strakes", vessel.Strake),
        zones=loader.entries("vessel/zones.yaml", "zones", vessel.Zone),
        schemes=loader.entries("vessel/zones.yaml", "schemes", vessel.Scheme),
        anodes=loader.entries("vessel/anodes.yaml", "anodes", vessel.Anode),
        history=tuple(sorted((m for _, m in loader.folder("history", history.EarlierDocking)), key=lambda d: d.docked, reverse=True)),
        facilities=tuple(made for _, made in loader.folder("facilities", facility.Facility)),
        items=tuple(sorted(items, key=lambda made: made.item)),
        clauses=loader.clauses(),
        surveys=loader.surveys(),
        broken=Broken(frozenset(loader.broken_names), frozenset(loader.broken_files)),
    )  # fmt: skip
    return package, list(dict.fromkeys(loader.notices))


def load_owner(files: Files, mistakes: Mistakes) -> tuple[owner.OwnerPapers, list[Notice]]:
    """Build the owner's papers from the files under owner/."""
    loader = _Loader(files, mistakes)
    papers = owner.OwnerPapers(
        rates=loader.file("owner/rates.yaml", owner.Rates),
        funding=loader.file("owner/funding.yaml", owner.Funding),
        risks=loader.file("owner/risks.yaml", owner.Risks),
        bids=dict(loader.folder("owner/bids", owner.Bid)),
    )
    return papers, loader.notices


def _numbered(path: str, made: item.Item, notices: list[Notice]) -> bool:
    name = path.rsplit("/", 1)[-1]
    if name.split("-")[0].removesuffix(".yaml") == made.number:
        return True
    notices.append(
        Notice(
            "file-number",
            made.here,
            f"the file is named `{name}` and holds item {made.item}",
            hints=(f"name it `{made.item}-….yaml`, or mend the number",),
        )  # fmt: skip
    )
    return True
