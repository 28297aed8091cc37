"""Words that bound nothing stand nowhere that is priced, unless a quantity bounds them in the same sentence.

Ground: "as required" and "repair as necessary" without a quantity are among the errors that bidders price as risk
(common practice, no source); GAO decision B-420065 (2021): where the extent is not defined, the bidder carries the
risk.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.unbounded_phrases import Found, find_unbounded
from tenderwright.notices import Notice
from tenderwright.reading.source import Source


def check(context: Context) -> Iterator[Notice]:
    """Report unbounded words in items and clauses, at the words."""
    for text in context.texts:
        for found in find_unbounded(text.source.text, text.start, text.end) if text.item is not None else ():
            yield _notice(text.source, text.whose, found)
    for clause in context.package.clauses:
        source = clause.text.source
        for found in find_unbounded(source.text, 0, len(source.text)):
            yield _notice(source, f"clause `{clause.clause}`", found)


def _notice(source: Source, what: str, found: Found) -> Notice:
    place = source.place_of(found.start, len(found.on_first_line))
    message = f"{what} says `{found.words}`, which bounds nothing"
    return Notice("unbounded-words", place, message, hints=(found.hint,))
