"""Unpacks a workbook in memory: member names, counts and sizes are checked, and sizes measured while reading."""

from __future__ import annotations

import io
import stat
import zipfile
import zlib

from tenderwright.reading.workbook.refusal import Refusal, unreadable, unsafe

MAX_MEMBERS = 200
MAX_MEMBER_BYTES = 16_000_000
MAX_TOTAL_BYTES = 32_000_000
MAX_RATIO = 200
"""How many times larger than its packed form a member of more than a megabyte may be."""

_CHUNK = 65_536
_OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_AS_XLSX = "open it in a spreadsheet program and save it as .xlsx, without a password"


def unpack(data: bytes) -> dict[str, bytes]:
    """Give the members of a workbook by name; raises `Refusal`."""
    if data.startswith(_OLE):
        locked = "EncryptedPackage".encode("utf-16-le") in data
        what = "the workbook is encrypted" if locked else "this is a workbook of the old binary kind"
        raise unreadable(what, _AS_XLSX)
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            members = packed.infolist()
            if len(members) > MAX_MEMBERS:
                raise unsafe(f"the workbook has {len(members)} members; at most {MAX_MEMBERS} are read")
            _check_names(members)
            return _contents(packed, members)
    except (zipfile.BadZipFile, zlib.error, EOFError, OSError, NotImplementedError, RuntimeError, ValueError) as error:
        raise unreadable(f"this is not a workbook, or is a damaged one: {error}", _AS_XLSX) from error


def _check_names(members: list[zipfile.ZipInfo]) -> None:
    seen: set[str] = set()
    for member in members:
        name = member.orig_filename
        parts = name.split("/")
        if name.startswith("/") or "\\" in name or ":" in name or ".." in parts or "." in parts:
            raise unsafe(f"the member `{_shown(name)}` has a name that leads out of the workbook")
        if not name.isprintable() or name.lower() in seen:
            raise unsafe(f"the member `{_shown(name)}` has a name that hides another")
        if stat.S_ISLNK(member.external_attr >> 16):
            raise unsafe(f"the member `{_shown(name)}` is a link")
        if member.flag_bits & 0x41:
            raise unreadable("the workbook is encrypted", _AS_XLSX)
        if member.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
            raise unreadable(f"the member `{_shown(name)}` is packed in a way that workbooks do not use", _AS_XLSX)
        seen.add(name.lower())


def _shown(name: str) -> str:
    return name[:60].encode("ascii", "backslashreplace").decode().replace("\x00", "\\x00")


def _contents(packed: zipfile.ZipFile, members: list[zipfile.ZipInfo]) -> dict[str, bytes]:
    contents: dict[str, bytes] = {}
    total = 0
    for member in members:
        if member.is_dir():
            continue
        contents[member.filename] = content = _content(packed, member, MAX_TOTAL_BYTES - total)
        total += len(content)
    return contents


def _content(packed: zipfile.ZipFile, member: zipfile.ZipInfo, left: int) -> bytes:
    """Read one member in pieces, and stop as soon as it is larger than it may be, whatever it declares."""
    pieces: list[bytes] = []
    size = 0
    with packed.open(member) as stream:
        while piece := stream.read(_CHUNK):
            size += len(piece)
            pieces.append(piece)
            refusal = _too_large(member, size, left)
            if refusal is not None:
                raise refusal
    return b"".join(pieces)


def _too_large(member: zipfile.ZipInfo, size: int, left: int) -> Refusal | None:
    if size > MAX_MEMBER_BYTES:
        return unsafe(f"the member `{_shown(member.filename)}` unpacks to more than {MAX_MEMBER_BYTES // 10**6} MB")
    if size > left:
        return unsafe(f"the workbook unpacks to more than {MAX_TOTAL_BYTES // 10**6} MB")
    if size > 1_000_000 and size > MAX_RATIO * max(1, member.compress_size):
        return unsafe(f"the member `{_shown(member.filename)}` unpacks to more than {MAX_RATIO} times its size")
    return None
