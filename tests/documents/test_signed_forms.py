"""Forms to sign: tied to their tender, part of the parcel and of what is returned, and the same bytes each time."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import docx

from tenderwright.amending import amend, new_addenda
from tenderwright.documents.edition import Edition
from tenderwright.documents.parts.asked import asked
from tenderwright.documents.parts.front import revision_record
from tenderwright.writing.word.document import word_document
from tests.amending.conftest import AFTER, BEFORE, LISTED, stated
from tests.documents.composed import Composed, changed, composed, words
from tests.pipeline.packages import edit, starter

CONTRACT = """\
forms: [offer, security, declaration]
securities:
  - kind: performance security
    share: 10 %
    form: on demand
    issuer: A bank
    released: redelivery
    valid_to: redelivery + 60 d
"""
TIMESTAMP = 1_822_635_000


def made_with(contract: str) -> Composed:
    """Compose the starter's tender with a contract."""
    return changed(lambda root: (root / "contract.yaml").write_text(contract, "utf-8") and None)


def text_of(form: Edition) -> str:
    """Give the words of a form as its Word document holds them."""
    document = docx.Document(io.BytesIO(word_document(form, TIMESTAMP)))
    cells = [cell.text for table in document.tables for row in table.rows for cell in row.cells]
    return "\n".join([paragraph.text for paragraph in document.paragraphs] + cells)


def test_each_form_names_its_tender_and_has_lines_to_sign() -> None:
    made = made_with(CONTRACT)
    edition, form = made.yard
    assert list(edition.forms) == ["forms/offer", "forms/security", "forms/declaration"]
    for one in edition.forms.values():
        told = text_of(one)
        for said in ("BWT-2028-01", "Docking of the steam tug Sandling, 2028", "Sandling", "10 December 2027"):
            assert said in told
        for asked_for in ("Signature", "Place and day", "Name and office of who signs", "no legal advice"):
            assert asked_for in told
    assert form.edition_hash in text_of(edition.forms["forms/offer"])
    assert "10 % of the contract price, on demand" in text_of(edition.forms["forms/security"])
    declared = text_of(edition.forms["forms/declaration"])
    assert all(one in declared for one in ("No conflict of interest", "No collusion", "No sanctions", "No insolvency"))
    assert "Ship-repairer's liability" in declared


def test_they_are_among_what_is_returned_and_none_of_security_is_without_one() -> None:
    made = made_with("forms: [offer, security]\n")
    edition, form = made.yard
    assert list(edition.forms) == ["forms/offer"]
    assert "forms/ signed" in words(asked(made.desk(), form))
    assert "forms/offer.docx." in words(revision_record(made.desk()))
    assert composed("starter").yard[0].forms == {}
    assert "forms/" not in words(asked(composed("starter").desk(), composed("starter").yard[1]))


def test_the_same_source_gives_the_same_bytes_at_one_time() -> None:
    one, other = made_with(CONTRACT).yard[0], made_with(CONTRACT).yard[0]
    for stem, form in one.forms.items():
        data = word_document(form, TIMESTAMP)
        assert data == word_document(other.forms[stem], TIMESTAMP)
        assert all(entry.date_time[0] < 2028 for entry in zipfile.ZipFile(io.BytesIO(data)).infolist())


def test_an_addendum_sends_the_forms_that_changed_and_no_others(tmp_path: Path) -> None:
    before, after = starter(tmp_path / "before"), starter(tmp_path / "after")
    for root, share in ((before, "10 %"), (after, "5 %")):
        (root / "contract.yaml").write_text(CONTRACT.replace("10 %", share), "utf-8")
    edit(after, "package.yaml", "owner:", LISTED)
    one, other = stated(before, BEFORE), stated(after, AFTER)
    made = amend(one, other, new_addenda(one, other)[0])
    assert list(made.amendment.edition.forms) == ["forms/offer", "forms/security"]
    assert [one.file for one in made.comparison.operations if one.file == "contract.yaml"]
