"""Unpack a zip archive from outside into memory: within limits, and nothing in it is trusted."""

from __future__ import annotations

import io
import stat
import struct
import zipfile
import zlib

MAX_MEMBERS = 1_000
MAX_UNPACKED = 300_000_000
"""Bytes of all members together."""
_LOCAL_HEADER = struct.Struct("<4s22xHH")
"""Signature, and the lengths of name and extra field (PKWARE APPNOTE 4.3.7)."""


class BadArchive(Exception):
    """An archive cannot be unpacked safely; the message says why."""


def unpack(content: bytes) -> dict[str, bytes | None]:
    """Give the members of a zip archive by name; None for one whose data are damaged.

    Checksums of the archive are not looked at: whoever asks holds the members against something better. Raises
    `BadArchive` for what is no zip archive, for names that lead elsewhere or stand twice, for links, for encryption
    and unusual compression, and beyond the limits.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as packed:
            members = packed.infolist()
    except (zipfile.BadZipFile, NotImplementedError, ValueError, OSError, struct.error) as error:
        raise BadArchive("it is not a zip archive, or its directory is damaged") from error
    if len(members) > MAX_MEMBERS:
        raise BadArchive(f"it holds more than {MAX_MEMBERS} files")
    if sum(member.file_size for member in members) > MAX_UNPACKED:
        raise BadArchive(f"it would unpack to more than {MAX_UNPACKED // 1_000_000} MB")
    for member in members:
        _check(member)
    if len({member.orig_filename.casefold() for member in members}) < len(members):
        raise BadArchive("two files in it have one name")
    return {member.orig_filename: _content(content, member) for member in members}


def _check(member: zipfile.ZipInfo) -> None:
    name = member.orig_filename
    if not name.isprintable() or "\\" in name or any(part in ("", ".", "..") for part in name.split("/")):
        raise BadArchive(f"{name!a} is not a name for a file in it")
    mode = member.external_attr >> 16
    if stat.S_IFMT(mode) not in (0, stat.S_IFREG):
        raise BadArchive(f"`{name}` is not a plain file")
    if member.flag_bits & 0x1 or member.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
        raise BadArchive(f"`{name}` is encrypted, or packed in a way that is not used here")


def _content(content: bytes, member: zipfile.ZipInfo) -> bytes | None:
    """Unpack one member, never to more than its directory entry says; None where it does not come out so."""
    start = member.header_offset
    header = content[start : start + _LOCAL_HEADER.size]
    if len(header) < _LOCAL_HEADER.size:
        return None
    signature, name, extra = _LOCAL_HEADER.unpack(header)
    start += _LOCAL_HEADER.size + name + extra
    packed = content[start : start + member.compress_size]
    if signature != b"PK\3\4" or len(packed) != member.compress_size:
        return None
    if member.compress_type == zipfile.ZIP_STORED:
        return packed if len(packed) == member.file_size else None
    inflater = zlib.decompressobj(-zlib.MAX_WBITS)
    try:
        unpacked = inflater.decompress(packed, member.file_size + 1)
    except zlib.error:
        return None
    return unpacked if inflater.eof and len(unpacked) == member.file_size else None
