"""`tenderwright build --watch`: compile again on each save, laying out only what changed."""

from __future__ import annotations

import gc
import sys
from collections.abc import Mapping
from pathlib import Path
from time import perf_counter

from tenderwright.commands.dock_papers import stopping
from tenderwright.commands.edition_outputs import PREVIEW, notices_for, write_editions
from tenderwright.commands.exits import CLEAN
from tenderwright.commands.folder import WrongUse
from tenderwright.commands.kept_parts import kept_parts
from tenderwright.commands.kept_results import kept_results
from tenderwright.notices.render import as_text, summary
from tenderwright.pipeline import compile_owner, compile_package, compose_yard, read, stamp_of
from tenderwright.reading.package import Files
from tenderwright.reading.source import Source
from tenderwright.writing.edition_files import PAGE
from tenderwright.writing.errors import WritingError
from tenderwright.writing.html import screen_page
from tenderwright.writing.manifest import MANIFEST_NAME, manifest
from tenderwright.writing.outputs import write_outputs
from tenderwright.writing.pdf import Typesetter
from tenderwright.writing.typesetting.collection import paused_collection


def watch(root: Path, out: Path, only: str | None, *, priced: bool = False) -> int:
    """Build, then build again whenever a file of the package changes, until stopped."""
    from watchfiles import watch as changes_of

    rounds = Rounds(root, out, only, priced=priced)
    rounds.once()
    ours = out.resolve()
    print(f"watching {root}; stop with Ctrl-C", flush=True)
    for changes in changes_of(root, raise_interrupt=False):
        if any(not Path(path).resolve().is_relative_to(ours) for _, path in changes):
            rounds.once()
    return CLEAN


class Rounds:
    """Rounds of one long-lived compiler, which keeps what it read and laid out."""

    def __init__(self, root: Path, out: Path, only: str | None, *, priced: bool = False) -> None:
        self.root, self.out, self.only, self.priced = root, out, only, priced
        self.typesetter = Typesetter(kept_parts())
        self.kept: Mapping[str, Source] = {}

    def once(self) -> None:
        """Compile once: notices and a page to look at first, then the editions whole."""
        with paused_collection():
            self._once()
        gc.collect()  # over all the pages held: while nobody waits

    def _once(self) -> None:
        start = perf_counter()
        files = read(self.root, self.kept)
        changed = _changed(files, self.kept)
        self.kept = files.sources
        with kept_results(self.root) as kept:
            compiled = compile_package(files, kept)
        owner = compile_owner(files, compiled)
        notices = notices_for(compiled, owner, self.only)
        sys.stderr.write(as_text(notices, files.texts))
        print(f"{changed}: {summary(notices)}")
        if stopping(notices):
            print(f"  nothing written, {perf_counter() - start:.2f} s", flush=True)
            return
        try:
            yard = compose_yard(compiled, stamp_of(compiled))
            page = {PAGE: screen_page(yard[0]).encode()}
            preview = write_outputs(self.out, PREVIEW, {**page, MANIFEST_NAME: manifest(yard[0], page)})
            print(f"  page to look at: {preview / PAGE}, {perf_counter() - start:.2f} s", flush=True)
            write_editions(compiled, owner, self.out, self.only, self.typesetter, yard, priced=self.priced)
        except (WritingError, WrongUse, OSError) as error:
            print(f"  not written: {error}, {perf_counter() - start:.2f} s", file=sys.stderr, flush=True)
            return
        print(f"  all written, {perf_counter() - start:.2f} s", flush=True)


def _changed(files: Files, before: Mapping[str, Source]) -> str:
    if not before:
        return "first build"
    names = [path for path, source in files.sources.items() if path not in before or before[path].text != source.text]
    gone = [f"{path} gone" for path in before if path not in files.sources]
    return ", ".join([*names, *gone]) or "nothing changed"
