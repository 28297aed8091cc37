from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.reading.layout import NEEDED
from tenderwright.reading.package import Files, read_one, read_package
from tenderwright.starter.write import write_starter


def small(root: Path) -> Path:
    for path in NEEDED:
        (root / path).parent.mkdir(parents=True, exist_ok=True)
        (root / path).write_text("a: 1\n", "utf-8")
    return root


def notices(files: Files) -> list[tuple[str, str]]:
    return [(notice.code, str(notice.place)) for notice in files.notices]


def test_line_ends_and_a_byte_order_mark_do_not_move_places(tmp_path: Path) -> None:
    (small(tmp_path) / "package.yaml").write_bytes(b"\xef\xbb\xbfa: 1\r\nb: \xc3\xa9 #4\r\nc: |\r\n  x\r\n  y\r\n")
    files = read_package(tmp_path)
    source = files.sources["package.yaml"]
    assert source.data == {"a": 1, "b": "é", "c": "x\ny\n"}
    assert source.text == "a: 1\nb: é #4\nc: |\n  x\n  y\n"
    assert (source.place(("b",)).line, source.place(("b",)).column) == (2, 4)
    assert notices(files) == [("lost-comment", "package.yaml:2:6")]


def test_bytes_that_are_not_utf8_are_placed(tmp_path: Path) -> None:
    (small(tmp_path) / "drawings.yaml").write_bytes(b"a: 1\r\nb: xy\xff\n")
    assert notices(read_package(tmp_path)) == [("not-utf8", "drawings.yaml:2:6")]


def test_each_needed_file_is_missed(tmp_path: Path) -> None:
    assert notices(read_package(tmp_path)) == [("missing-file", f"{path}:1:1") for path in NEEDED]


@pytest.mark.parametrize(
    ("path", "hint"),
    [
        ("items/420.yml", "name it `items/420.yaml`"),
        ("vessel/tank.yaml", "did you mean `vessel/tanks.yaml`?"),
        ("notes.txt", None),
        ("items/deeper/420.yaml", None),
        ("owner/bid.yaml", None),
    ],
)
def test_a_file_without_a_place_is_told(tmp_path: Path, path: str, hint: str | None) -> None:
    file = small(tmp_path) / path
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text("a: 1\n", "utf-8")
    (notice,) = read_package(tmp_path).notices
    assert (notice.code, notice.place.path) == ("unknown-file", path)
    assert hint is None or hint in notice.hints


@pytest.mark.parametrize("path", ["README.md", ".git/config", "items/.hidden.yaml", "photographs/a.jpg", "LICENSE"])
def test_some_files_may_lie_there(tmp_path: Path, path: str) -> None:
    file = small(tmp_path) / path
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(b"\xff\x00")
    files = read_package(tmp_path)
    assert notices(files) == []
    assert path not in files.sources


def test_the_yards_side_sees_nothing_confidential(tmp_path: Path) -> None:
    write_starter(tmp_path)
    (tmp_path / "owner" / "risks.yaml").write_text("a: &x 1\n", "utf-8")
    files = read_package(tmp_path)
    yards, owners = files.without_owner(), files.owner_only()
    assert notices(yards) == []
    assert notices(owners) == [("yaml-feature", "owner/risks.yaml:1:4")]
    assert not [path for path in yards.sources if path.startswith("owner/")]
    assert {**yards.sources, **owners.sources} == dict(files.sources)
    assert read_package(tmp_path, owner=False).sources.keys() == yards.sources.keys()


def test_a_source_whose_text_is_equal_is_used_again(tmp_path: Path) -> None:
    write_starter(tmp_path)
    first = read_package(tmp_path)
    changed = tmp_path / "drawings.yaml"
    changed.write_text(changed.read_text("utf-8") + "# changed\n", "utf-8")
    second = read_package(tmp_path, kept=first.sources)
    again = {path for path, source in second.sources.items() if source is first.sources[path]}
    assert second.sources.keys() - again == {"drawings.yaml"}


def test_one_file_by_itself_is_named_as_given(tmp_path: Path) -> None:
    file = tmp_path / "given.yaml"
    file.write_text("a: 1\n", "utf-8")
    source, found = read_one(file)
    assert source is not None
    assert (source.path, source.data, found) == (str(file), {"a": 1}, [])
    for missing, code in ((tmp_path / "absent.yaml", "no-such-file"), (tmp_path, "not-a-file")):
        source, (notice,) = read_one(missing)
        assert source is None
        assert notice.code == code
