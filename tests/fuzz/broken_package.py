"""A package held in a folder of its own, broken and mended again, and what is told of each break."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from tenderwright.notices import Notice, sort_notices
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read
from tenderwright.reading.layout import OWNER, is_ignored
from tests.fuzz.breaks import Break


@dataclass(frozen=True)
class Told:
    """What a break brings: the notices that were not there before it."""

    breaks: tuple[Break, ...]
    notices: tuple[Notice, ...]
    compiled: Compiled
    owner: OwnersSide

    @property
    def errors(self) -> list[Notice]:
        """Give the mistakes among the notices."""
        return [notice for notice in self.notices if notice.severity == "error"]

    @property
    def warnings(self) -> list[Notice]:
        """Give the warnings among the notices."""
        return [notice for notice in self.notices if notice.severity == "warning"]


class BrokenPackage:
    """A copy of a package that is broken in place, told, and mended."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.files = read(root)
        self.texts = {path: source.text for path, source in self.files.sources.items() if not is_ignored(path)}
        self.compiled = compile_package(self.files)
        owner = compile_owner(self.files, self.compiled)
        self.before = Counter(_said(one) for one in [*self.compiled.notices, *owner.notices])

    def told(self, *breaks: Break) -> Told:
        """Break the package, compile it and mend it again."""
        for one in breaks:
            self._break(one)
        try:
            files = read(self.root, self.files.sources)
            yard = any(not one.path.startswith(OWNER) for one in breaks)
            compiled = compile_package(files) if yard else self.compiled
            owner = compile_owner(files, compiled)
        finally:
            self.mend(*breaks)
        notices = sort_notices([*compiled.notices, *owner.notices])
        new = Counter(_said(one) for one in notices) - self.before
        added = []
        for notice in notices:
            if new[_said(notice)] > 0:
                new[_said(notice)] -= 1
                added.append(notice)
        for notice in notices:
            require_place(notice, files.texts)
        return Told(breaks, tuple(added), compiled, owner)

    def mend(self, *breaks: Break) -> None:
        """Write the files as they were before these breaks."""
        for one in breaks:
            self._write(one.path, self.texts[one.path])

    def _break(self, one: Break) -> None:
        now = (self.root / one.path).read_bytes().decode() if (self.root / one.path).is_file() else None
        if now is not None and one.line <= now.count("\n") + 1:
            self._write(one.path, one.of(now))

    def _write(self, path: str, text: str | None) -> None:
        if text is None:
            (self.root / path).unlink()
        else:
            (self.root / path).write_bytes(text.encode())


def _said(notice: Notice) -> tuple[str, str, str]:
    return notice.code, notice.place.path, notice.message


def require_place(notice: Notice, texts: dict[str, str]) -> None:
    """Hold that a notice and each of its notes stands in a file that is there, on a line that it has."""
    for place in [notice.place, *notice.also, *(note.place for note in notice.notes if note.place is not None)]:
        if place.path not in texts:
            assert notice.code in ("missing-file",), f"{notice} stands in no file"
            continue
        lines = texts[place.path].split("\n")
        assert 1 <= place.line <= len(lines), f"{notice} stands beyond the end of its file"
        assert 1 <= place.column <= len(lines[place.line - 1]) + 1, f"{notice} stands beyond the end of its line"


def spread(counts: Sequence[int]) -> str:
    """Write how often each number came, such as `0: 12, 1: 80, 2: 3`."""
    return ", ".join(f"{number}: {times}" for number, times in sorted(Counter(counts).items()))
