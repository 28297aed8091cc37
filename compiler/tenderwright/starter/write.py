"""Write the starter package into an empty folder, whole or not at all."""

from __future__ import annotations

import shutil
from collections.abc import Mapping
from pathlib import Path

from tenderwright.shapes.schemas import schema_folder

_FILES = Path(__file__).resolve().parent / "files"

_RENAMED = {"gitignore": ".gitignore"}
"""Files that are kept under another name, so that they do not act where they are kept."""

_APART = {"github-workflow.yml"}
"""Files that are no part of the package."""

SCHEMAS = ".schemas"
"""Where the schemas go, for editors that complete and check YAML as it is typed."""


STAGED = ".start"
"""Where the files are put together before they are moved to their places."""


class FolderInUse(OSError):
    """The folder holds something already, or is no folder; the message says which."""


def starter_files() -> dict[str, Path]:
    """Give every file of a new package by its path in it, with the file it is copied from."""
    kept = {path.relative_to(_FILES).as_posix(): path for path in _FILES.rglob("*") if path.is_file()}
    files = {_RENAMED.get(name, name): path for name, path in kept.items() if name not in _APART}
    schemas = {f"{SCHEMAS}/{path.name}": path for path in schema_folder().glob("*.schema.json")}
    return dict(sorted((files | schemas).items()))


_ANY = Path(__file__).resolve().parent / "any"
"""What any package has and no other file gives: standing text that names no ship."""
_SHARED = ("owner/README.md", ".gitignore", f"{SCHEMAS}/")
"""Of the invented ship's files, those that any package has."""


def write_fitted(folder: Path, texts: Mapping[str, str]) -> list[str]:
    """Write a package of these files, with what any package has beside them; as `write_starter` otherwise."""
    own = {path.relative_to(_ANY).as_posix(): path for path in _ANY.rglob("*") if path.is_file()}
    return write_starter(folder, shared_files() | own, texts)


def shared_files() -> dict[str, Path]:
    """Give the files that any package has, whatever the ship, by their paths in it."""
    return {name: path for name, path in starter_files().items() if name.startswith(_SHARED)}


def write_starter(
    folder: Path, files: Mapping[str, Path] | None = None, texts: Mapping[str, str | bytes] | None = None
) -> list[str]:
    """Write a new package into a folder that is not there yet, or holds at most `.git`, and list what was written.

    It is the package of an invented ship, or else holds copies of `files` and new ones of `texts`. Nothing is left
    behind where it fails. Raises FolderInUse, and other OSErrors where the disk refuses.
    """
    _require_empty(folder)
    made = not folder.exists()
    folder.mkdir(parents=True, exist_ok=True)
    moved: list[Path] = []
    staged = folder / STAGED
    try:
        copied, written = starter_files() if files is None else files, texts or {}
        staged.mkdir()
        for name in (*copied, *written):
            (staged / name).parent.mkdir(parents=True, exist_ok=True)
        for name, source in copied.items():
            shutil.copyfile(source, staged / name)
        for name, text in written.items():
            (staged / name).write_bytes(text if isinstance(text, bytes) else text.encode())
        for child in sorted(staged.iterdir()):
            moved.append(child.rename(folder / child.name))
    except BaseException:
        _remove([*moved, staged, *([folder] if made else [])])
        raise
    staged.rmdir()
    return sorted((*copied, *written))


def _require_empty(folder: Path) -> None:
    if folder.is_dir():
        if any(child.name != ".git" for child in folder.iterdir()):
            raise FolderInUse(f"`{folder}` is not empty")
    elif folder.exists() or folder.is_symlink():
        raise FolderInUse(f"`{folder}` is not a folder")


def _remove(paths: list[Path]) -> None:
    for path in paths:
        if path.is_dir():
            shutil.rmtree(path)
        elif path.exists():
            path.unlink()
