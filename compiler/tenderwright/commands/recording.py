"""Put what goes to yards in its folder and record it in a tag, which completes it; or neither."""

from __future__ import annotations

import hashlib
import shlex
import sys
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from tenderwright import __version__
from tenderwright.commands.folder import WrongUse
from tenderwright.commands.yard_at import YardEdition
from tenderwright.model.tender import Tender
from tenderwright.reading.git_state import GitState
from tenderwright.reading.issued import Issued, one_line, tag_message
from tenderwright.starter.source import pinned_source
from tenderwright.writing.tag import is_tag, tag_commit

if TYPE_CHECKING:
    from tenderwright.writing.edition_files import Written


def record_of(
    tag: str, yard: YardEdition, state: GitState, tender: Tender, number: int, addendum: int | None, amends: str = ""
) -> Issued:
    """Give what the tag of an issue says, or that of an addendum to what yards had at the commit that it `amends`."""
    if state.time is None:
        raise RuntimeError("only what is committed is recorded")
    files = yard.written.files
    return Issued(
        tag=tag,
        tender=one_line(tender.tender.number),
        number=number,
        commit=state.commit,
        date=datetime.fromtimestamp(state.time, UTC),
        edition_hash=yard.form.edition_hash,
        parcel=yard.parcel,
        parcel_sha256=hashlib.sha256(files[yard.parcel]).hexdigest(),
        manifest_sha256=hashlib.sha256(files["manifest.json"]).hexdigest(),
        compiler=__version__,
        source=pinned_source(),
        addendum=addendum,
        amends=amends,
    )


def same_as_before(again: Issued | None, record: Issued) -> None:
    """Raise WrongUse where what was recorded already is another parcel than is made now."""
    if again is not None and again.parcel_sha256 != record.parcel_sha256:
        raise WrongUse(
            f"`{again.tag}` was issued by compiler {again.compiler} with another parcel, SHA-256 "
            f"{again.parcel_sha256}, than {__version__} makes; nothing was written"
        )


def put_down(
    root: Path, place: Path, name: str, written: Written, record: Issued, title: str | None, replace: bool = False
) -> Path:
    """Put the files in place, then make the tag, which completes it; where git makes none the files go again.

    Killed between the two, the same command finds its own files there and goes on to the tag. No title: it is made.
    """
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.outputs import remove_outputs, write_outputs

    there = (place / name).exists()
    try:
        folder = write_outputs(place, name, written.files, replace=replace)
    except (WritingError, OSError) as error:
        raise WrongUse(str(error)) from error
    if title is not None:
        try:
            tag_commit(root, record.tag, record.commit, tag_message(record, title))
        except BaseException:
            if not there and not is_tag(root, record.tag):
                remove_outputs(place, name)
            raise
    return folder


def tell(record: Issued, what: str, written: Written) -> None:
    """Say what was recorded, and what is to be done with its tag."""
    print(f"{what}: tag `{record.tag}`, parcel SHA-256 {record.parcel_sha256}")
    print(f"next: `git push origin {shlex.quote(record.tag)}`, so that others can check a parcel")
    if written.uncovered:
        print(f"  characters that the fonts do not have: {written.uncovered}", file=sys.stderr)
