"""The page of the trade checks: what each found, and which of them could not be made."""

from __future__ import annotations

import re

from tenderwright.checks.context import Unjudged
from tenderwright.documents.owner.trade_checks import trade_checks
from tenderwright.notices import Notice, Place
from tenderwright.notices.codes import CHECK_CODES, CODES, OWNER_CHECK_CODES
from tests.documents.composed import composed, rows, tables, words


def found(notices: list[Notice], unjudged: list[Unjudged]) -> dict[str, str]:
    (table,) = tables(trade_checks(notices, unjudged))
    return {row[0]: "".join(row[1:]) for row in rows(table)}


def test_a_check_that_was_not_made_is_not_told_as_having_found_nothing() -> None:
    page = found([], list(composed("starter").compiled.unjudged))
    about = "not judged, or only in part: it needs vessel/docking-plan.yaml"
    assert page[CODES["block-overloaded"].title] == about
    assert CODES["unlike-metals"].title not in page
    quiet = words(trade_checks([], list(composed("starter").compiled.unjudged)).blocks[-2:])
    assert CODES["unlike-metals"].title in quiet
    for code in (*CHECK_CODES, *OWNER_CHECK_CODES):
        assert (CODES[code].title in page) != (CODES[code].title in re.split(r"; |\n|\.$", quiet, flags=re.M)), code


def test_what_was_found_stands_before_what_could_not_be_judged() -> None:
    notice = Notice("block-overloaded", Place("vessel/docking-plan.yaml", 3, 1), "too hard")
    page = found([notice], [Unjudged("block-overloaded", "it needs more")])
    told = page[CODES["block-overloaded"].title]
    assert told.startswith("vessel/docking-plan.yaml:3")
    assert told.endswith("too hard; not judged, or only in part: it needs more")


def test_where_nothing_was_found_it_says_so_once() -> None:
    page = trade_checks([], [])
    assert tables(page) == []
    assert "Nothing." in words(page)
