"""Compile the yard edition of a package as it stood at a commit."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec.structs import replace

from tenderwright.commands.folder import WrongUse
from tenderwright.commands.progress import progress
from tenderwright.pipeline import Compiled, compile_package, compose_yard, stamp_of, write
from tenderwright.reading.at_commit import NotAtCommit, package_at
from tenderwright.reading.git_state import GitState
from tenderwright.reading.package import read_package
from tenderwright.reading.source import Source

if TYPE_CHECKING:
    from tenderwright.documents.price_form import PriceForm
    from tenderwright.writing.edition_files import Written


@dataclass(frozen=True)
class YardEdition:
    """A yard edition, or an addendum to one, as it was written."""

    form: PriceForm
    written: Written

    @property
    def parcel(self) -> str:
        """Name the parcel among the files."""
        return next(path for path in self.written.files if path.endswith(".zip"))


@dataclass(frozen=True)
class YardAt:
    """A package as it stood at a commit, and its yard edition where no mistake was found."""

    compiled: Compiled
    state: GitState
    edition: YardEdition | None = None


def yard_at(root: Path, commit: str, issued: Mapping[str, Mapping[str, Source]] | None = None) -> YardAt:
    """Compile the package at root as it stood at a commit, held against what was issued before, and write its edition.

    Nothing is put on disk. Raises WrongUse where there is no such commit, or an edition cannot be written.
    """
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.pdf import Typesetter

    try:
        with package_at(root, commit) as folder:
            with progress("reading and calculating"):
                files = replace(read_package(folder, owner=False), issued=issued or {})
                compiled = compile_package(files)
                state = stamp_of(compiled)
            if not compiled.sound or compiled.package.todos:
                return YardAt(compiled, state)
            with progress("composing and typesetting the yard edition"):
                edition, form = compose_yard(compiled, state)
                return YardAt(compiled, state, YardEdition(form, write(edition, form, Typesetter(), state)))
    except NotAtCommit as error:
        raise WrongUse(str(error)) from error
    except WritingError as error:
        raise WrongUse(f"the yard edition cannot be written: {error}") from error
