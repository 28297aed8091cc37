"""A hint that is done as it is printed works: each class of hint is carried out, and the package checked again."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from tenderwright.cli import main
from tenderwright.notices import Notice
from tests.fixtures.overlay import all_notices_of
from tests.pipeline.packages import edit, starter

RIVETS = "items/320-rivets-renew.yaml"
Cure = Callable[[Path, Notice], None]


def _put(old: str) -> Cure:
    """Put what the hint names in backticks, the last such word where there are several, in the place of the mistake."""

    def cure(root: Path, notice: Notice) -> None:
        edit(root, notice.place.path, old, re.findall(r"`([^`]*)`", notice.hints[0])[-1])

    return cure


def _run(notice: Notice) -> None:
    """Give the command that the hint names."""
    command = re.search(r"`tenderwright ([^`]*)`", " ".join(notice.hints))
    assert command
    assert main(command[1].split()) == 0


def _rename(root: Path, notice: Notice) -> None:
    (name,) = re.findall(r"`([^`]*)`", notice.hints[0])
    (root / notice.place.path).rename(root / name)


def _add(root: Path, notice: Notice) -> None:
    """Add the key that the hint shows as an example, below the line of the notice."""
    (example,) = re.findall(r"for example `([^`]*)`", notice.hints[-1])
    path = root / notice.place.path
    path.write_text(f"{path.read_text('utf-8')}{example}\n", "utf-8")


def _delete(words: str) -> Cure:
    def cure(root: Path, notice: Notice) -> None:
        edit(root, notice.place.path, words, "")

    return cure


EDITED: dict[str, tuple[str, str, str, str, Cure]] = {
    "a key misspelt": (RIVETS, "requirements:", "requirments:", "unknown-key", _put("requirments")),
    "a word that is no choice": (RIVETS, "phase: dry", "phase: drie", "wrong-choice", _put("drie")),
    "a thing that is not there": (RIVETS, "strakes: [A, B]", "zones: [underwatr]", "dead-reference", _put("underwatr")),
    "a space in a number": (RIVETS, "quantity: 40 each", "quantity: 1 040 each", "bad-quantity", _put("1 040 each")),
    "a comma in a number": (RIVETS, "quantity: 40 each", "quantity: 1,040 each", "bad-quantity", _put("1,040 each")),
    "a unit misspelt": (
        "vessel/particulars.yaml",
        "beam: 5.44 m",
        "beam: 5.44 metr",
        "bad-quantity",
        _put("metr"),
    ),
    "a unit of several meanings": (
        "vessel/particulars.yaml",
        "displacement: 112 t",
        "displacement: 112 ton",
        "ambiguous-unit",
        lambda root, notice: edit(
            root, notice.place.path, "112 ton", f"112 {re.findall(r'`([^`]*)`', notice.hints[0])[0]}"
        ),
    ),
    "a key gone": (RIVETS, "phase: dry\n", "", "missing-key", _add),
    "a colon in text": (
        RIVETS,
        "title: Rivets, renew",
        "title: Rivets: renew",
        "yaml-syntax",
        lambda root, notice: edit(root, notice.place.path, "Rivets: renew", '"Rivets: renew"'),
    ),
    "a number for text": (
        "package.yaml",
        "ship: Sandling",
        "ship: 12",
        "wrong-type",
        lambda root, notice: edit(root, notice.place.path, "ship: 12", 'ship: "12"'),
    ),
    "a line break in the wrong place": (RIVETS, "item: 320", "item: 320\n---", "yaml-feature", _delete("---\n")),
}


@pytest.mark.parametrize("what", EDITED)
def test_what_the_hint_says_mends_the_mistake(what: str, tmp_path: Path) -> None:
    path, old, new, code, cure = EDITED[what]
    root = starter(tmp_path / "sandling")
    edit(root, path, old, new)
    found = [notice for notice in all_notices_of(root) if notice.code == code]
    assert found, all_notices_of(root)
    assert found[0].hints
    cure(root, found[0])
    assert code not in {notice.code for notice in all_notices_of(root)}


def test_a_file_under_a_name_of_none_is_renamed_as_the_hint_says(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    (root / RIVETS).rename(root / "items/320-rivets-renew.yml")
    (notice,) = (one for one in all_notices_of(root) if one.code == "unknown-file")
    _rename(root, notice)
    assert all_notices_of(root) == []


def test_notes_are_moved_where_the_hint_says(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    (root / "notes.txt").write_text("Ask the yard\n", "utf-8")
    (notice,) = all_notices_of(root)
    folder = root / re.findall(r"\S+/$", notice.hints[0])[0]
    folder.mkdir(parents=True, exist_ok=True)
    (root / "notes.txt").rename(folder / "notes.txt")
    assert all_notices_of(root) == []


@pytest.mark.parametrize("path", ["drawings.yaml", "vessel/particulars.yaml", "vessel/frames.yaml"])
def test_a_missing_file_is_written_by_the_command_of_the_hint(
    path: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = starter(tmp_path / "sandling")
    (root / path).unlink()
    (notice,) = (one for one in all_notices_of(root) if one.code == "missing-file")
    monkeypatch.chdir(root)
    _run(notice)
    assert "missing-file" not in {one.code for one in all_notices_of(root)}


def test_a_missing_package_is_begun_by_the_command_of_the_hint(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = starter(tmp_path / "sandling")
    (root / "package.yaml").unlink()
    (notice,) = (one for one in all_notices_of(root) if one.code == "missing-file")
    monkeypatch.chdir(tmp_path)
    _run(notice)
    (root / "package.yaml").write_bytes((tmp_path / "spare" / "package.yaml").read_bytes())
    assert "missing-file" not in {one.code for one in all_notices_of(root)}
