"""An archive from outside unpacks within limits, or is refused in a sentence; nothing in it is trusted."""

from __future__ import annotations

import io
import struct
import zipfile

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.reading import unpack as module
from tenderwright.reading.unpack import BadArchive, unpack
from tenderwright.writing.archive import archive

FILES = {"a.txt": b"a" * 5000, "b/c.pdf": bytes(range(256)) * 9, "d.csv": b""}
PACKED = archive(FILES, "folder")


def _zip(*names: str, method: int = zipfile.ZIP_DEFLATED, content: bytes = b"x" * 99, mode: int = 0o100644) -> bytes:
    output = io.BytesIO()
    with zipfile.ZipFile(output, "w") as packed:
        for name in names:
            member = zipfile.ZipInfo(name)
            member.external_attr = mode << 16
            packed.writestr(member, content, method)
    return output.getvalue()


@given(st.dictionaries(st.from_regex(r"[a-z]{1,8}(/[a-z]{1,8})?\.(pdf|txt)", fullmatch=True), st.binary(), max_size=5))
def test_what_was_packed_comes_out(files: dict[str, bytes]) -> None:
    assert unpack(archive(files, "f")) == {f"f/{path}": content for path, content in files.items()}


@given(st.binary(max_size=400))
def test_other_bytes_are_no_archive(content: bytes) -> None:
    with pytest.raises(BadArchive):
        unpack(content)


@given(st.integers(0, len(PACKED) - 1), st.integers(1, 255))
def test_a_spoilt_byte_is_refused_or_comes_out_as_it_is(at: int, by: int) -> None:
    spoilt = bytearray(PACKED)
    spoilt[at] ^= by
    try:
        found = unpack(bytes(spoilt))
    except BadArchive:
        return
    assert all(content is None or len(content) <= module.MAX_UNPACKED for content in found.values())


@given(st.integers(0, len(PACKED) - 1))
def test_a_cut_archive_is_refused(length: int) -> None:
    with pytest.raises(BadArchive):
        unpack(PACKED[:length])


def test_a_spoilt_member_does_not_hide_the_others() -> None:
    at = PACKED.index(bytes(range(256)))
    found = unpack(PACKED[:at] + b"\xff" + PACKED[at + 1 :])
    assert found["folder/b/c.pdf"] == b"\xff" + FILES["b/c.pdf"][1:]
    at = PACKED.index(b"a.txt") + 5
    found = unpack(PACKED[:at] + b"\xff\xff" + PACKED[at + 2 :])
    assert found["folder/a.txt"] is None
    assert found["folder/b/c.pdf"] == FILES["b/c.pdf"]


@pytest.mark.parametrize(
    "name", ["../up", "a/../../up", "/etc/passwd", "a//b", "a/./b", "a\\b", "a/", "a\x1b[2Jb", "a\nb", ""]
)
def test_a_name_that_leads_elsewhere_is_refused(name: str) -> None:
    with pytest.raises(BadArchive, match="is not a name for a file in it"):
        unpack(_zip("f/good", name))


def test_two_of_one_name_are_refused() -> None:
    with pytest.raises(BadArchive, match="two files in it have one name"):
        unpack(_zip("f/Page.pdf", "f/page.pdf"))


def test_a_link_is_refused() -> None:
    with pytest.raises(BadArchive, match="`f/link` is not a plain file"):
        unpack(_zip("f/link", mode=0o120777))


@pytest.mark.parametrize("method", [zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA])
def test_unusual_compression_is_refused(method: int) -> None:
    with pytest.raises(BadArchive, match="packed in a way that is not used here"):
        unpack(_zip("f/a", method=method))


def test_encryption_is_refused() -> None:
    packed = bytearray(_zip("f/a"))
    packed[packed.index(b"PK\1\2") + 8] |= 1
    with pytest.raises(BadArchive, match="is encrypted"):
        unpack(bytes(packed))


def test_too_many_or_too_much_is_refused_before_anything_is_unpacked(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "_content", lambda content, member: pytest.fail("it was unpacked"))
    bomb = _zip("f/a", "f/b", content=b"\0" * (module.MAX_UNPACKED // 2 + 1))
    assert len(bomb) < module.MAX_UNPACKED / 500
    with pytest.raises(BadArchive, match="would unpack to more than 300 MB"):
        unpack(bomb)
    with pytest.raises(BadArchive, match="more than 1000 files"):
        unpack(_zip(*(f"f/{n}" for n in range(1001))))


def test_a_member_that_grows_beyond_what_it_says_is_damaged() -> None:
    packed = bytearray(_zip("f/a", content=b"\0" * 1_000_000))
    directory = packed.index(b"PK\1\2")
    packed[directory + 24 : directory + 28] = struct.pack("<I", 10)
    assert unpack(bytes(packed)) == {"f/a": None}
