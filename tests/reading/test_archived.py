"""An archive is held against its list: whatever is changed, lost or added is named."""

from __future__ import annotations

import hashlib
from pathlib import Path

import pytest

from tenderwright.reading.archived import LIST, archived, changed_archives, list_text


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    folder = tmp_path / "owner/archive/T-1"
    files = {"package/owner/award.yaml": b"bid: corve\n", "README.md": b"# T-1\n", "package/with two  spaces": b""}
    for path, content in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(content)
    sums = {path: hashlib.sha256(content).hexdigest() for path, content in files.items()}
    (folder / LIST).write_text(list_text(sums), "utf-8")
    return folder


def test_one_as_it_was_written_is_whole(archive: Path, tmp_path: Path) -> None:
    (archive / ".DS_Store").write_bytes(b"left by the system")
    found = archived(archive)
    assert (found.files, found.altered) == (3, {})
    assert found.list_sha256 == hashlib.sha256((archive / LIST).read_bytes()).hexdigest()
    assert list(changed_archives(tmp_path)) == []


def test_what_is_changed_lost_or_added_is_named(archive: Path, tmp_path: Path) -> None:
    (archive / "README.md").write_bytes(b"# T-2\n")
    (archive / "package/owner/award.yaml").unlink()
    (archive / "package/owner/bid.yaml").write_bytes(b"")
    assert archived(archive).altered == {
        "README.md": "was changed",
        "package/owner/award.yaml": "is missing",
        "package/owner/bid.yaml": "was added",
    }
    (notice,) = changed_archives(tmp_path)
    assert (notice.place.path, notice.severity) == ("owner/archive/T-1/README.md", "warning")


def test_a_link_in_the_place_of_a_file_is_a_change(archive: Path, tmp_path: Path) -> None:
    elsewhere = tmp_path / "award.yaml"
    (archive / "package/owner/award.yaml").rename(elsewhere)
    (archive / "package/owner/award.yaml").symlink_to(elsewhere)
    assert archived(archive).altered == {"package/owner/award.yaml": "was changed"}


def test_a_list_that_cannot_be_read_proves_nothing(archive: Path) -> None:
    (archive / LIST).write_text("not a list\n", "utf-8")
    assert archived(archive).altered[LIST] == "cannot be read in line 1"
    (archive / LIST).unlink()
    assert list(archived(archive).altered) == [LIST]


def test_of_many_files_a_few_are_named(archive: Path, tmp_path: Path) -> None:
    for number in range(9):
        (archive / f"new-{number}").write_bytes(b"")
    (notice,) = changed_archives(tmp_path)
    assert "new-2 was added; and 6 files more" in notice.message
