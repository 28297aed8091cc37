"""Write the editions of a compiled package, as `build` does once and `build --watch` on each save."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

from tenderwright.commands.folder import WrongUse
from tenderwright.commands.progress import progress
from tenderwright.commands.todos import need
from tenderwright.notices import Notice, sort_notices
from tenderwright.pipeline import (
    Compiled,
    OwnersSide,
    compose_owner,
    compose_priced,
    compose_yard,
    stamp_of,
    write,
    write_owner,
)

if TYPE_CHECKING:
    from tenderwright.calculations.steps.kept import Kept
    from tenderwright.documents.edition import Edition
    from tenderwright.documents.price_form import PriceForm
    from tenderwright.writing.edition_files import Written
    from tenderwright.writing.pdf import Typesetter

EDITIONS = ("yard", "owner")
WHAT = {"yard": "the yard edition", "owner": "the owner's papers"}
PREVIEW = "preview"
"""The folder of the page that `--watch` writes first."""


def notices_for(compiled: Compiled, owner: OwnersSide, only: str | None) -> list[Notice]:
    """Give the notices that bear on what is built: the yard edition does not look at owner/."""
    return sort_notices(compiled.notices if only == "yard" else [*compiled.notices, *owner.notices])


def no_estimate(compiled: Compiled, owner: OwnersSide) -> str:
    """Say why a package without mistakes has no estimate."""
    waiting = owner.papers.broken
    if "owner/rates.yaml" in waiting.waiting_files:
        return waiting.waiting_files["owner/rates.yaml"]
    if owner.papers.rates is None:
        return "there is no owner/rates.yaml"
    return next(
        (why for (kind, _), why in waiting.waiting.items() if kind == "rate"),
        "the quantity of a line is still `todo`",
    )


def write_editions(
    compiled: Compiled,
    owner: OwnersSide,
    out: Path,
    only: str | None,
    typesetter: Typesetter,
    yard: tuple[Edition, PriceForm] | None = None,
    *,
    priced: bool = False,
    kept: Kept | None = None,
) -> None:
    """Compose the editions asked for, put them in place once all of them stand, and say what was written.

    The yard edition may have been composed already. With `priced` the owner's papers hold the specification as well,
    with their prices at its lines. What takes long to foresee is taken from what is kept.
    """
    from tenderwright.writing.errors import WritingError
    from tenderwright.writing.outputs import write_outputs

    need(compiled)
    state = stamp_of(compiled)
    wanted = [name for name in EDITIONS if only in (None, name)]
    if "owner" in wanted and owner.estimate is None:
        why = no_estimate(compiled, owner)
        if only == "owner":
            raise WrongUse(f"{why}, so there are none of the owner's papers")
        if "there is no" not in why:
            print(f"none of the owner's papers: {why}", file=sys.stderr)
        wanted.remove("owner")
    made: dict[str, Written] = {}
    name = "yard"
    try:
        with progress("composing " + " and ".join(WHAT[name] for name in wanted)):
            if yard is None and ("yard" in wanted or priced):
                yard = compose_yard(compiled, state)
            if "yard" in wanted and yard is not None:
                typesetter.begin(yard[0])
            if "owner" in wanted:
                name = "owner"
                specification = compose_priced(compiled, owner, yard[0]) if yard is not None and priced else None
                book = compose_owner(compiled, owner, state, kept, yard[0] if yard is not None else None)
                typesetter.begin(book[0], *([specification] if specification is not None else []))
        for name in wanted:
            with progress(f"typesetting {WHAT[name]}"):
                if name == "owner":
                    made[name] = write_owner(*book, specification, typesetter, state)
                elif yard is not None:
                    made[name] = write(*yard, typesetter, state)
    except WritingError as error:
        raise WrongUse(f"{WHAT[name]} cannot be written: {error}") from error
    for name, written in made.items():
        try:
            folder = write_outputs(out, name, written.files)
        except (WritingError, OSError) as error:
            raise WrongUse(str(error)) from error
        print(f"{folder}: {written.pages} pages, {len(written.files)} files, {state.label}")
        if written.uncovered:
            print(f"  characters that the fonts do not have: {written.uncovered}", file=sys.stderr)
