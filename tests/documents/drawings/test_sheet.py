"""The title strip: revision of the tender, and a caution on two lines."""

from __future__ import annotations

from datetime import date

from tenderwright.documents.drawings.framed import framed, numbered
from tenderwright.documents.drawings.sheet import PROPOSAL, revision, sheet_of
from tenderwright.documents.replacement import drawn
from tenderwright.model.tender import Addendum
from tests.replacing import replace

from .ship import marram


def test_the_first_issue_is_revision_0_of_its_day() -> None:
    package = marram()[0]
    assert package.tender is not None
    first = replace(package, tender=replace(package.tender, addenda=()))
    assert revision(first) == "Revision 0, 2026-12-07"


def test_the_last_addendum_is_the_revision() -> None:
    package = marram()[0]
    assert package.tender is not None
    addenda = (
        Addendum(number=2, date=date(2027, 1, 20), summary="later"),
        Addendum(number=1, date=date(2027, 1, 8), summary="earlier"),
    )
    assert revision(replace(package, tender=replace(package.tender, addenda=addenda))) == "Revision 2, 2027-01-20"


def test_a_package_without_a_tender_has_no_revision() -> None:
    assert revision(replace(marram()[0], tender=None)) == ""


def test_the_caution_of_a_sheet_is_the_one_given() -> None:
    drawn = sheet_of(marram()[0], "one", "One", 239.0, 100.0, PROPOSAL).svg([], "")
    first, second = PROPOSAL.split(": ", 1)
    assert f">{first}:<" in drawn
    assert f">{second}<" in drawn


def test_a_later_revision_and_another_number_of_sheets_do_not_make_another_drawing() -> None:
    package = marram()[0]
    assert package.tender is not None
    first = replace(package, tender=replace(package.tender, addenda=()))
    old, new = (framed(one, "one", "One", "her form").figure([], "", "") for one in (first, package))
    assert old.svg != new.svg
    assert drawn(numbered([old])[0]) == drawn(numbered([new, new])[0])
    assert drawn(old) != drawn(framed(first, "one", "Another", "her form").figure([], "", ""))
