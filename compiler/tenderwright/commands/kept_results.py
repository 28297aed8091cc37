"""Where results of heavy methods are kept between runs: the user's cache folder, which may be emptied at any time."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from tenderwright.calculations.steps.kept import Kept, digest

OURS = Path(__file__).parents[1]
"""Every file of the compiler."""
PACKAGES = 50
"""Packages whose results are kept; those that changed longest ago go."""


@contextmanager
def kept_results(root: Path) -> Iterator[Kept | None]:
    """Give the results kept of a package, and keep in the end what was asked for; None where there is no folder."""
    folder = cache_folder()
    if folder is None:
        yield None
        return
    file = folder / f"{digest(os.fsencode(root.resolve())).hex()}.results"
    content = b""
    with suppress(OSError):
        content = file.read_bytes()
    kept = Kept(maker(), content)
    yield kept
    if kept.new:
        with suppress(OSError):
            _keep(file, kept.content())


def cache_folder() -> Path | None:
    """Give our folder among the user's caches; None where the system names none."""
    try:
        if sys.platform == "win32":
            base = Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local")
        elif sys.platform == "darwin":
            base = Path.home() / "Library" / "Caches"
        else:
            base = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache")
    except RuntimeError:
        return None
    return base / "tenderwright" if base.is_absolute() else None


def maker() -> bytes:
    """Give a digest of what results hang on besides inputs: our own files, Python, the libraries and the machine.

    A file is known by its size and the times of its last changes, as git knows it: reading all takes too long.
    """
    machine = sys.version, sys.platform, os.uname() if hasattr(os, "uname") else ""
    state = machine, sorted(_libraries()), sorted(_files(OURS))
    return digest(repr(state).encode())


def _libraries() -> Iterator[str]:
    """Give the library folders' notes on what is installed, whose names tell the versions."""
    for folder in sys.path:
        with suppress(OSError):
            yield from (name for name in os.listdir(folder or ".") if name.endswith("-info"))


def _files(folder: Path | str) -> Iterator[tuple[str, int, int, int]]:
    for entry in os.scandir(folder):
        if not entry.is_dir():
            state = entry.stat()
            yield entry.path, state.st_size, state.st_mtime_ns, state.st_ctime_ns
        elif entry.name != "__pycache__":
            yield from _files(entry.path)


def _keep(file: Path, content: bytes) -> None:
    """Put a file in place whole, and take away the oldest where there are too many."""
    file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    part = file.with_suffix(f".{os.getpid()}")
    part.write_bytes(content)
    part.replace(file)
    for old in sorted(file.parent.glob("*.results"), key=lambda one: one.stat().st_mtime)[:-PACKAGES]:
        old.unlink()
