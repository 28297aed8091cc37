"""Tells which of the libraries that the typesetter loads are not on this machine, and how to install them.

The Makefile runs this file by itself, before anything is installed, so it uses the standard library alone.
"""

from __future__ import annotations

import ctypes
import ctypes.util
import os
import sys
from contextlib import suppress
from dataclasses import dataclass


@dataclass(frozen=True)
class Library:
    """A library of the machine, the names under which the typesetter tries it, and its package on each system."""

    title: str
    names: tuple[str, ...]
    packages: tuple[str, ...]
    """Its package on each of SYSTEMS, in that order."""


SYSTEMS = (
    ("Debian, Ubuntu", "sudo apt-get install"),
    ("Fedora", "sudo dnf install"),
    ("Arch", "sudo pacman -S"),
    ("Alpine", "sudo apk add"),
    ("macOS (Homebrew)", "brew install"),
    ("Windows (MSYS2)", "pacman -S"),
)
_WINDOWS = "mingw-w64-ucrt-x86_64-"

LIBRARIES = (
    Library(
        "GObject",
        ("libgobject-2.0-0", "gobject-2.0-0", "gobject-2.0", "libgobject-2.0.so.0", "libgobject-2.0.0.dylib",
         "libgobject-2.0-0.dll"),
        ("libglib2.0-0", "glib2", "glib2", "glib", "glib", f"{_WINDOWS}glib2"),
    ),
    Library(
        "Pango",
        ("libpango-1.0-0", "pango-1.0-0", "pango-1.0", "libpango-1.0.so.0", "libpango-1.0.dylib",
         "libpango-1.0-0.dll"),
        ("libpango-1.0-0", "pango", "pango", "pango", "pango", f"{_WINDOWS}pango"),
    ),
    Library(
        "HarfBuzz",
        ("libharfbuzz-0", "harfbuzz", "harfbuzz-0.0", "libharfbuzz.so.0", "libharfbuzz.0.dylib", "libharfbuzz-0.dll"),
        ("libharfbuzz0b", "harfbuzz", "harfbuzz", "harfbuzz", "harfbuzz", f"{_WINDOWS}harfbuzz"),
    ),
    Library(
        "HarfBuzz-Subset",
        ("libharfbuzz-subset-0", "harfbuzz-subset", "harfbuzz-subset-0.0", "libharfbuzz-subset.so.0",
         "libharfbuzz-subset.0.dylib", "libharfbuzz-subset-0.dll"),
        ("libharfbuzz-subset0", "harfbuzz", "harfbuzz", "harfbuzz-subset", "harfbuzz", f"{_WINDOWS}harfbuzz"),
    ),
    Library(
        "Fontconfig",
        ("libfontconfig-1", "fontconfig-1", "fontconfig", "libfontconfig.so.1", "libfontconfig.1.dylib",
         "libfontconfig-1.dll"),
        ("libfontconfig1", "fontconfig", "fontconfig", "fontconfig", "fontconfig", f"{_WINDOWS}fontconfig"),
    ),
    Library(
        "PangoFT2",
        ("libpangoft2-1.0-0", "pangoft2-1.0-0", "pangoft2-1.0", "libpangoft2-1.0.so.0", "libpangoft2-1.0.dylib",
         "libpangoft2-1.0-0.dll"),
        ("libpangoft2-1.0-0", "pango", "pango", "pango", "pango", f"{_WINDOWS}pango"),
    ),
)  # fmt: skip
"""What the typesetter loads.

It can do without HarfBuzz-Subset, but then complains of every face it embeds, and we take no complaint; so that is
needed too. HarfBuzz-Vector, which it also tries, serves faces in colour alone, and ours have none.
"""

DLL_FOLDERS = (
    "C:\\msys64\\ucrt64\\bin",
    "C:\\msys64\\mingw64\\bin",
    "C:\\Program Files\\GTK3-Runtime Win64\\bin",
)
"""Where the typesetter looks on Windows, where WEASYPRINT_DLL_DIRECTORIES does not say otherwise."""

NOT_FOUND = (
    "what is installed and still not found is looked for on macOS in DYLD_FALLBACK_LIBRARY_PATH, such as "
    "`$(brew --prefix)/lib`, and on Windows in WEASYPRINT_DLL_DIRECTORIES"
)


def missing() -> list[Library]:
    """List the libraries that do not load under any of their names."""
    add_folder = getattr(os, "add_dll_directory", None)
    if add_folder is not None:
        for folder in os.getenv("WEASYPRINT_DLL_DIRECTORIES", ";".join(DLL_FOLDERS)).split(";"):
            with suppress(OSError):
                add_folder(folder)
    return [library for library in LIBRARIES if not _loads(library)]


def _loads(library: Library) -> bool:
    """Tell whether a library loads by a name as it stands, which is quick, or where the system finds that name."""
    if any(load(name) for name in library.names if "." in name):
        return True
    found = (ctypes.util.find_library(name) for name in library.names)
    return any(load(path) for path in found if path is not None)


def load(path: str) -> bool:
    """Try to load a library from a path, or by a name that the system's loader knows."""
    try:
        ctypes.CDLL(path)
    except OSError:
        return False
    return True


def packages(libraries: list[Library], system: int = 0) -> list[str]:
    """Name the packages that bring libraries on one of SYSTEMS; Debian is the first."""
    return list(dict.fromkeys(library.packages[system] for library in libraries))


def how_to_install(libraries: list[Library]) -> str:
    """Say which libraries are missing and how each system installs them."""
    titles = [library.title for library in libraries]
    named = " and ".join([", ".join(titles[:-1]), titles[-1]] if len(titles) > 1 else titles)
    verb = "is" if len(titles) == 1 else "are"
    width = max(len(system) for system, _ in SYSTEMS)
    lines = [
        f"  {system:{width}}  {command} {' '.join(packages(libraries, number))}"
        for number, (system, command) in enumerate(SYSTEMS)
    ]
    said = f"the typesetter cannot start: {named} {verb} not found on this machine; install with"
    return "\n".join([said, *lines, NOT_FOUND])


def main() -> int:
    """Say what is missing, or with --debian name only the packages; give 0 where nothing is, else 2."""
    libraries = missing()
    if "--debian" in sys.argv[1:]:
        print(" ".join(packages(libraries)))
    elif libraries:
        print(how_to_install(libraries), file=sys.stderr)
    return 2 if libraries else 0


if __name__ == "__main__":
    sys.exit(main())
