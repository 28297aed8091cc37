"""A parcel says what it is and which of its files were altered; what is not a parcel is refused in a sentence."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from tenderwright.reading import parcel as module
from tenderwright.reading.parcel import BadParcel, read_parcel
from tenderwright.writing.archive import archive
from tenderwright.writing.manifest import manifest
from tests.writing.sample import sample_edition

FILES = {"specification.pdf": b"%PDF", "quantities.csv": b"line\r\n", "drawings/plan.svg": b"<svg/>"}
EDITION = sample_edition(0)
ISSUED = replace(EDITION, stamp=replace(EDITION.stamp, commit="1a" * 20))


def _parcel(folder: Path, files: dict[str, bytes], inside: str = "HP-2026-01-yard") -> Path:
    (folder / "parcel.zip").write_bytes(archive(files, inside))
    return folder / "parcel.zip"


def _said(**changes: Any) -> bytes:
    return json.dumps(json.loads(manifest(ISSUED, FILES)) | changes).encode()


def test_it_says_what_it_is(tmp_path: Path) -> None:
    made = read_parcel(_parcel(tmp_path, FILES | {"manifest.json": manifest(ISSUED, FILES)}))
    assert (made.tender, made.commit, made.compiler) == ("HP-2026-01", "1a" * 20, "0.1.0")
    assert made.members == FILES | {"manifest.json": manifest(ISSUED, FILES)}
    assert set(made.checksums) == set(FILES)
    assert made.altered() == {}


def test_it_says_which_file_was_altered(tmp_path: Path) -> None:
    files = FILES | {"specification.pdf": b"%PdF", "letter.txt": b"", "manifest.json": manifest(ISSUED, FILES)}
    del files["quantities.csv"]
    file = _parcel(tmp_path, files)
    content = file.read_bytes()
    at = content.index(b"plan.svg") + 8
    file.write_bytes(content[:at] + b"\xff" + content[at + 1 :])
    assert read_parcel(file).altered() == {
        "drawings/plan.svg": "is damaged and cannot be unpacked",
        "letter.txt": "is not in the manifest",
        "quantities.csv": "is in the manifest and not in the parcel",
        "specification.pdf": "was altered after the manifest was written",
    }


def test_a_manifest_without_a_compiler_is_read(tmp_path: Path) -> None:
    for compiler in (None, 7, "\x1b[2J"):
        file = _parcel(tmp_path, FILES | {"manifest.json": _said(compiler=compiler)})
        assert read_parcel(file).compiler == ""


@pytest.mark.parametrize(
    ("said", "why"),
    [
        (b"", "is not JSON"),
        (b"\xff", "is not JSON"),
        (b"[" * 100_000, "is not JSON"),
        (b"[]", "is not that of an edition"),
        (_said(edition="owner"), "is not that of a yard edition"),
        (_said(files=[]), "is not that of a yard edition"),
        (_said(files="all"), "is not that of a yard edition"),
        (_said(files=[{"path": "a\x1b[2J", "sha256": ""}]), "is not that of a yard edition"),
        (_said(state="draft", commit=""), "is a draft: it names no commit"),
        (_said(commit="HEAD"), "names no commit"),
        (_said(commit=None), "names no commit"),
    ],
)
def test_what_its_manifest_does_not_say_is_told(tmp_path: Path, said: bytes, why: str) -> None:
    with pytest.raises(BadParcel, match=why):
        read_parcel(_parcel(tmp_path, FILES | {"manifest.json": said}))


def test_what_is_no_parcel_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "letter.txt").write_text("one", "utf-8")
    with pytest.raises(BadParcel, match=r"`letter.txt` is not a parcel: it is not a zip archive"):
        read_parcel(tmp_path / "letter.txt")
    with pytest.raises(BadParcel, match="cannot be read: No such file"):
        read_parcel(tmp_path / "nowhere.zip")
    with pytest.raises(BadParcel, match="cannot be read: Is a directory"):
        read_parcel(tmp_path)
    with pytest.raises(BadParcel, match=r"holds no manifest.json"):
        read_parcel(_parcel(tmp_path, FILES))
    with pytest.raises(BadParcel, match="does not lie in one folder"):
        read_parcel(_parcel(tmp_path, FILES, ""))
    monkeypatch.setattr(module, "MAX_BYTES", 10)
    with pytest.raises(BadParcel, match="is larger than"):
        read_parcel(_parcel(tmp_path, FILES))
