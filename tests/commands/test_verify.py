"""`tenderwright verify` tells a parcel that is the commit's from one that is not, and says where."""

from __future__ import annotations

import hashlib
import io
import json
import os
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from tenderwright.commands import verify as command
from tenderwright.commands.yard_at import YardAt, yard_at
from tenderwright.writing.archive import archive, zip_members
from tests.pipeline.packages import commit, edit, files_of, git, starter
from tests.writing.test_pdf_pages import drawn

from .conftest import FirstIssue
from .run import Ran, Runner

pytestmark = pytest.mark.usefixtures("git_knows_who")
FOLDER = "BWT-2028-01-yard/"


@pytest.fixture(scope="module")
def rebuilt(issued_once: FirstIssue) -> YardAt:
    """What the commit gives, rebuilt once for all tests that look at the comparison only."""
    return yard_at(issued_once.root, "HEAD~1")


@pytest.fixture
def compare(
    run: Runner, issued_once: FirstIssue, rebuilt: YardAt, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Callable[[bytes], Ran]:
    def comparing(parcel: bytes) -> Ran:
        monkeypatch.setattr(command, "yard_at", lambda root, commit: rebuilt)
        (tmp_path / "parcel.zip").write_bytes(parcel)
        return run("verify", tmp_path / "parcel.zip", "--in", issued_once.root)

    return comparing


def _members(issued: FirstIssue) -> dict[str, bytes]:
    with zipfile.ZipFile(issued.parcel) as packed:
        return {name: packed.read(name) for name in packed.namelist()}


def _changed(issued: FirstIssue, path: str, change: Callable[[bytes], bytes]) -> bytes:
    """Give the parcel with one file changed, packed as ours are."""
    members = _members(issued)
    members[FOLDER + path] = change(members[FOLDER + path])
    return archive(members)


def _commit(issued: FirstIssue) -> str:
    return git(issued.root, "rev-parse", "HEAD~1")[:12]


def test_a_parcel_is_the_same_whatever_the_files_are_now(
    run: Runner, issued_once: FirstIssue, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = issued_once.copy(tmp_path / "ships").root
    edit(root, "items/320-rivets-renew.yaml", "quantity: 40 each", "quantity: 41 each")
    commit(root.parent, "an addendum")
    edit(root, "package.yaml", "place: Brackwater", "place: Brackwater Quay")
    git(root, "add", "--all")
    (root / "items" / "320-rivets-renew.yaml").write_text("not: [yaml", "utf-8")
    before = files_of(root.parent)
    monkeypatch.chdir(root)
    ran = run("verify", issued_once.parcel)
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.splitlines() == [
        f"The same, byte for byte: `BWT-2028-01-yard.zip` is what commit {_commit(issued_once)} gives.",
        "  tag `issue-1` records issue 1 of BWT-2028-01 at that commit, with this very parcel",
    ]
    assert files_of(root.parent) == before


def test_one_byte_of_a_page(compare: Callable[[bytes], Ran], issued_once: FirstIssue) -> None:
    (page, start), *_ = drawn((issued_once.folder / "specification.pdf").read_bytes())
    at = start + 90

    ran = compare(
        _changed(issued_once, "specification.pdf", lambda pdf: pdf[:at] + bytes([pdf[at] ^ 1]) + pdf[at + 1 :])
    )
    lines = ran.out.splitlines()
    assert ran.code == 1
    assert lines[:3] == [
        f"Different: `parcel.zip` is not what commit {_commit(issued_once)} gives (files that differ: 1 of 12).",
        "  specification.pdf was altered after the manifest was written",
        f"  specification.pdf differs first at byte {at}, which belongs to page {page}",
    ]
    assert lines[3].startswith("  tag `issue-1` records issue 1 of BWT-2028-01 at that commit, with parcel SHA-256 ")


def test_one_line_of_a_table(compare: Callable[[bytes], Ran], issued_once: FirstIssue) -> None:
    ran = compare(_changed(issued_once, "quantities.csv", lambda text: text.replace(b",hours,40,h,", b",hours,4,h,")))
    assert ran.code == 1
    table = (issued_once.folder / "quantities.csv").read_text("utf-8").splitlines()
    number = next(n for n, line in enumerate(table, start=1) if ",hours,40,h," in line)
    assert ran.out.splitlines()[2].startswith(f"  quantities.csv differs first in line {number}: it says `")
    assert ",hours,4,h,assumed" in ran.out
    assert ",hours,40,h,assumed" in ran.out


def test_one_cell_of_the_price_form(compare: Callable[[bytes], Ran], issued_once: FirstIssue) -> None:
    def spoilt(workbook: bytes) -> bytes:
        with zipfile.ZipFile(io.BytesIO(workbook)) as packed:
            parts = [(name, packed.read(name)) for name in packed.namelist()]
        assert sum(b"<v>40</v>" in content for name, content in parts if name.endswith("sheet2.xml"))
        return zip_members(
            [(n, c.replace(b"<v>40</v>", b"<v>41</v>", 1) if n.endswith("sheet2.xml") else c) for n, c in parts]
        )

    ran = compare(_changed(issued_once, "price-form.xlsx", spoilt))
    assert ran.code == 1
    (line,) = [line for line in ran.out.splitlines() if "differs first" in line]
    assert line.startswith("  price-form.xlsx part xl/worksheets/sheet2.xml differs first in line 1: it says `")
    assert "<v>41</v>" in line


def test_a_file_more_and_a_file_less(compare: Callable[[bytes], Ran], issued_once: FirstIssue) -> None:
    members = _members(issued_once)
    del members[FOLDER + "quantities.csv"]
    ran = compare(archive(members | {FOLDER + "letter.txt": b"Dear yard"}))
    assert ran.code == 1
    assert ran.out.splitlines()[1:5] == [
        "  letter.txt is not in the manifest",
        "  quantities.csv is in the manifest and not in the parcel",
        "  letter.txt is not among the files that the commit gives",
        "  quantities.csv is missing",
    ]


def test_an_archive_packed_otherwise(compare: Callable[[bytes], Ran], issued_once: FirstIssue) -> None:
    content = issued_once.parcel.read_bytes()
    ran = compare(content[:-2] + b"\x01\x00!")
    assert ran.code == 1
    assert ran.out.splitlines()[:2] == [
        f"Different: every file in `parcel.zip` is what commit {_commit(issued_once)} gives, "
        "but the archive around them is not.",
        f"  the archive differs first at byte {len(content) - 2}",
    ]


def test_another_compiler_is_told(compare: Callable[[bytes], Ran], issued_once: FirstIssue) -> None:
    ran = compare(_changed(issued_once, "manifest.json", lambda text: text.replace(b'"0.1.0"', b'"0.0.9"')))
    assert ran.code == 1
    assert "  manifest.json differs first in line 3" in ran.out
    assert "  each file has the checksum of the parcel's own manifest" in ran.out
    assert "  the parcel was written by compiler 0.0.9, and is compared with what 0.1.0 writes" in ran.out
    ran = compare(_changed(issued_once, "manifest.json", lambda text: text.replace(b'  "compiler": "0.1.0",\n', b"")))
    assert "  the parcel was written by a compiler that did not say its version" in ran.out
    # The compiler that made it proves it: the tag names that, and from where it can be installed where it was known.
    assert "  it was made by tenderwright 0.1.0" in ran.out


def test_a_parcel_that_names_another_commit(run: Runner, issued_once: FirstIssue, tmp_path: Path) -> None:
    root = issued_once.copy(tmp_path / "ships").root
    edit(root, "items/320-rivets-renew.yaml", "quantity: 40 each", "quantity: 41 each")
    other = commit(root.parent, "an addendum")
    first = git(root, "rev-parse", "issue-1^{commit}")
    (tmp_path / "parcel.zip").write_bytes(
        _changed(issued_once, "manifest.json", lambda text: text.replace(first.encode(), other.encode()))
    )
    ran = run("verify", tmp_path / "parcel.zip", "--in", root)
    assert ran.code == 1
    assert ran.out.startswith(f"Different: `parcel.zip` is not what commit {other[:12]} gives")
    assert "each file has the checksum of the parcel's own manifest" in ran.out
    assert "quantities.csv differs first in line" in ran.out
    assert "specification.pdf differs first at byte" in ran.out


def test_a_package_that_is_not_sound_at_that_commit(run: Runner, issued_once: FirstIssue, tmp_path: Path) -> None:
    root = issued_once.copy(tmp_path / "ships").root
    edit(root, "items/320-rivets-renew.yaml", 'depends_on: ["130",', 'depends_on: ["1300",')
    name = commit(root.parent, "a mistake")
    first = git(root, "rev-parse", "issue-1^{commit}")
    (tmp_path / "parcel.zip").write_bytes(
        _changed(issued_once, "manifest.json", lambda text: text.replace(first.encode(), name.encode()))
    )
    ran = run("verify", tmp_path / "parcel.zip", "--in", root)
    assert ran.code == 1
    assert ran.out == (
        f"Not verified: `parcel.zip` cannot be rebuilt, since this compiler says of commit {name[:12]}: 1 mistake.\n"
    )
    assert "there is no item 1300" in ran.err


def test_mistakes_by_the_format_of_another_compiler_are_told_once(
    run: Runner, issued_once: FirstIssue, tmp_path: Path
) -> None:
    root = issued_once.copy(tmp_path / "ships").root
    edit(root, "items/320-rivets-renew.yaml", "kind: contingent", "kind: contingnt")
    edit(root, "items/210-hull-wash.yaml", "title:", "titel:")
    name = commit(root.parent, "of another format")
    said = json.loads((issued_once.folder / "manifest.json").read_text("utf-8"))
    older = json.dumps(said | {"commit": name, "compiler": "0.0.9"}).encode()
    (tmp_path / "parcel.zip").write_bytes(_changed(issued_once, "manifest.json", lambda text: older))
    ran = run("verify", tmp_path / "parcel.zip", "--in", root)
    assert (ran.code, ran.err.count("error[")) == (1, 1)
    assert "2 mistakes" in ran.out
    assert "the parcel was written by compiler 0.0.9" in ran.out


def test_a_commit_that_is_not_in_the_repository(run: Runner, issued_once: FirstIssue, tmp_path: Path) -> None:
    root = starter(tmp_path / "other")
    edit(root, "package.yaml", "place: Brackwater", "place: Brackwater Quay")
    commit(root)
    ran = run("verify", issued_once.parcel, "--in", root)
    assert (ran.code, ran.out) == (2, "")
    assert f"there is no commit `{_commit(issued_once)}" in ran.err


def test_a_parcel_of_another_tender(compare: Callable[[bytes], Ran], issued_once: FirstIssue) -> None:
    ran = compare(_changed(issued_once, "manifest.json", lambda text: text.replace(b"BWT-2028-01", b"BWT-2043-01")))
    assert (ran.code, ran.out) == (2, "")
    assert "holds tender BWT-2028-01, and the parcel is of another" in ran.err


def test_a_draft(run: Runner, issued_once: FirstIssue, tmp_path: Path) -> None:
    said = json.loads((issued_once.folder / "manifest.json").read_text("utf-8")) | {"state": "draft", "commit": ""}
    file = tmp_path / "draft.zip"
    file.write_bytes(archive(_members(issued_once) | {FOLDER + "manifest.json": json.dumps(said).encode()}))
    ran = run("verify", file, "--in", issued_once.root)
    assert (ran.code, ran.out) == (2, "")
    assert "`draft.zip` is a draft: it names no commit that it could be compared with" in ran.err


def test_wrong_use(run: Runner, issued_once: FirstIssue, tmp_path: Path) -> None:
    assert run("verify", tmp_path / "nowhere.zip", "--in", issued_once.root).code == 2
    assert run("verify", issued_once.parcel, "--in", tmp_path / "nowhere").code == 2
    assert os.listdir(tmp_path) == []


def test_away_from_the_repository_it_is_held_against_its_own_manifest(
    run: Runner, issued_once: FirstIssue, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    monkeypatch.chdir(tmp_path)
    names = f"(tender BWT-2028-01, commit {_commit(issued_once)})"
    ran = run("verify", issued_once.parcel)
    lines = ran.out.splitlines()
    assert (ran.code, ran.err) == (0, "")
    assert lines[0] == (
        f"Whole: each file in `BWT-2028-01-yard.zip` {names} is as its own manifest lists it, "
        "and none is missing or added."
    )
    assert "whether the museum issued it, this cannot show" in lines[2]
    assert hashlib.sha256(issued_once.parcel.read_bytes()).hexdigest() in lines[2]
    starter(tmp_path / "package_src")
    assert run("verify", issued_once.parcel) == ran
    (tmp_path / "parcel.zip").write_bytes(_changed(issued_once, "quantities.csv", lambda text: text + b"\n"))
    ran = run("verify", "parcel.zip")
    assert ran.code == 1
    assert ran.out.splitlines()[:2] == [
        f"Not whole: `parcel.zip` {names} is not what its own manifest lists (files that differ: 1).",
        "  quantities.csv was altered after the manifest was written",
    ]
