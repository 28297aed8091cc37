"""The page of the trade checks: what each found, and which of them could not be made."""

from __future__ import annotations

from tenderwright.checks.context import Unjudged
from tenderwright.documents.owner.trade_checks import trade_checks
from tenderwright.notices import Notice, Place
from tenderwright.notices.codes import CHECK_CODES, CODES, OWNER_CHECK_CODES
from tests.documents.composed import composed, rows, tables


def found(notices: list[Notice], unjudged: list[Unjudged]) -> dict[str, str]:
    (table,) = tables(trade_checks(notices, unjudged))
    return {row[0]: "".join(row[1:]) for row in rows(table)}


def test_a_check_that_was_not_made_is_not_told_as_having_found_nothing() -> None:
    page = found([], list(composed("starter").compiled.unjudged))
    about = "not judged, or only in part: it needs vessel/docking-plan.yaml"
    assert page[CODES["block-overloaded"].title] == about
    assert page[CODES["unlike-metals"].title] == "nothing found"
    titles = {CODES[code].title for code in (*CHECK_CODES, *OWNER_CHECK_CODES)}
    assert set(page) == titles | {"The tender", "The owner's papers"}


def test_what_was_found_stands_before_what_could_not_be_judged() -> None:
    notice = Notice("block-overloaded", Place("vessel/docking-plan.yaml", 3, 1), "too hard")
    page = found([notice], [Unjudged("block-overloaded", "it needs more")])
    words = page[CODES["block-overloaded"].title]
    assert words.startswith("vessel/docking-plan.yaml:3")
    assert words.endswith("too hard; not judged, or only in part: it needs more")
