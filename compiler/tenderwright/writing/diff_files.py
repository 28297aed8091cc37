"""Write what changed as PDF, web page, text and, of the yard's side, data."""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from typing import Any

from tenderwright.documents.edition import Edition, Span
from tenderwright.writing.edition_files import Written
from tenderwright.writing.html import screen_page
from tenderwright.writing.json_file import Json, canonical_json
from tenderwright.writing.manifest import MANIFEST_NAME, manifest
from tenderwright.writing.markdown.document import markdown_document
from tenderwright.writing.pdf import Typesetter

STEM = "diff"


def diff_files(edition: Edition, typesetter: Typesetter, timestamp: int, statement: Json = None) -> Written:
    """Write the files; in text, words stand as `{+put in+}` and `{-taken out-}`."""
    typeset = typesetter.typeset(edition, timestamp)
    shown = replace(edition, parts=_in_signs(edition.parts))
    files: dict[str, bytes] = {
        f"{STEM}.pdf": typeset.pdf,
        f"{STEM}.html": screen_page(edition).encode(),
        f"{STEM}.md": markdown_document(shown),
    }
    if statement is not None:
        files[f"{STEM}.json"] = canonical_json(statement, keep_order=True)
    files[MANIFEST_NAME] = manifest(edition, files)
    return Written(files, typeset.page_count, typeset.laid_out, typeset.uncovered)


def _in_signs(thing: Any) -> Any:
    """Give a part, block or piece of one with signs about the words that were put in and taken out."""
    if isinstance(thing, Span) and (thing.inserted or thing.deleted):
        sign = "+" if thing.inserted else "-"
        return replace(thing, text=f"{{{sign}{thing.text}{sign}}}")
    if isinstance(thing, tuple):
        return tuple(_in_signs(one) for one in thing)
    if is_dataclass(thing) and not isinstance(thing, type):
        return replace(thing, **{field.name: _in_signs(getattr(thing, field.name)) for field in fields(thing)})
    return thing
