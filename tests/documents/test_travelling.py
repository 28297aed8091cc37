"""What goes along with the tender: reference documents and pictures, packed as they are, named where they are used."""

from __future__ import annotations

import hashlib
import re
from pathlib import Path

import pytest

from tenderwright.comparing.changes import differences
from tenderwright.comparing.data import package_data
from tenderwright.comparing.subject import subject_of
from tenderwright.documents.edition import Pictures, plain
from tenderwright.pipeline import read
from tenderwright.reading import package as reading
from tenderwright.reading.git_state import uncommitted
from tenderwright.writing.html import part_html, screen_page
from tests.pipeline.packages import MARRAM, commit, edit, starter

from .composed import changed, composed, part, rows, tables, walk

PDF = b"%PDF-1.7\nan empty page\n"
SENT = f"file: references/d-01.pdf, sha256: {hashlib.sha256(PDF).hexdigest()} }}"
SEEN = 'seen: "At the museum, by appointment" }'


def _sent(root: Path) -> None:
    (root / "references").mkdir()
    (root / "references" / "d-01.pdf").write_bytes(PDF)
    edit(root, "drawings.yaml", SEEN, SENT)


def test_what_is_named_goes_along_byte_for_byte() -> None:
    sent = composed("marram").edition("yard").files
    assert set(sent) == {f"references/{name}" for name in ("d-02.dxf", "d-10.pdf", "d-11.png", "345-bilge-keel.png")}
    assert all(content == (MARRAM / path).read_bytes() for path, content in sent.items())
    assert composed("marram").edition("owner").files == {}
    assert composed("marram").edition("priced").files == {}


def test_the_register_says_which_file_goes_along_or_where_a_document_is_seen() -> None:
    register = next(table for table in tables(part(changed(_sent).edition("yard"), "lists")))
    where = {row[0]: row[4] for row in rows(register)}
    assert where["D-01"] == "references/d-01.pdf"
    assert where["D-02"] == "seen as said below"
    assert plain(register.note).endswith("Where they can be seen: At the museum, by appointment.")


def test_an_item_links_to_the_file_on_the_screen_and_names_it_on_paper() -> None:
    edition = changed(_sent).edition("yard")
    assert screen_page(edition).count('<a class="file" href="references/d-01.pdf">d-01.pdf</a>') > 1
    paper = part_html(edition, part(edition, "item-110"))
    assert "d-01.pdf" in paper
    assert 'href="references/' not in paper


def test_pictures_stand_with_their_item_keyed_by_frame_and_strake() -> None:
    edition = composed("marram").edition("yard")
    (block,) = [one for one in walk(part(edition, "item-345")) if isinstance(one, Pictures)]
    (picture,) = block.pictures
    assert picture.caption.startswith("Fr 52, port. The port bilge keel")
    assert picture.alternative
    for page in (screen_page(edition), part_html(edition, part(edition, "item-345"))):
        assert re.search(r'<img src="data:image/png;base64,[A-Za-z0-9+/=]+" alt="The port bilge keel', page)


def test_a_file_beyond_the_limit_is_told_and_left(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = starter(tmp_path / "sandling")
    _sent(root)
    monkeypatch.setattr(reading, "MOST", 10)
    files = read(root)
    assert files.travelling == {}
    assert [(one.code, one.place.path) for one in files.notices] == [("too-large", "references/d-01.pdf")]


def test_no_link_out_of_the_package_is_followed(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    (tmp_path / "secret.pdf").write_bytes(PDF)
    (root / "references").mkdir()
    (root / "references" / "d-01.pdf").symlink_to(tmp_path / "secret.pdf")
    files = read(root)
    assert files.travelling == {}
    assert [one.code for one in files.notices] == ["outside-package"]


def test_a_file_that_is_not_as_committed_makes_a_draft(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    _sent(root)
    commit(root)
    assert uncommitted(root, read(root).without_owner().paths) == []
    (root / "references" / "d-01.pdf").write_bytes(PDF + b"another")
    (root / "references" / "d-02.pdf").write_bytes(PDF)
    assert uncommitted(root, read(root).without_owner().paths) == ["references/d-01.pdf", "references/d-02.pdf"]


def test_an_addendum_tells_of_a_file_that_is_another(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    _sent(root)
    before = package_data(read(root))
    (root / "references" / "d-01.pdf").write_bytes(PDF + b"another")
    operations = differences(before, package_data(read(root)))
    assert [one.file for one in operations] == ["references/d-01.pdf"]
    assert subject_of("references/d-01.pdf", before, before).title == "Reference document d-01.pdf"
