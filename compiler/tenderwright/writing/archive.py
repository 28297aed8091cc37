"""Packs files into a zip archive whose bytes depend on nothing but their names and contents."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Mapping

_FIXED_TIME = (1980, 1, 1, 0, 0, 0)
_UNIX = 3
_OTHER = re.compile(r"[^A-Za-z0-9._-]+")
_COMPRESSED = (".pdf", ".xlsx", ".docx", ".png", ".jpg", ".jpeg")
"""Endings of files that are compressed in themselves."""
_REGULAR_FILE_MODE = 0o100644 << 16


def parcel_name(tender: str, what: str) -> str:
    """Name a parcel after its tender, with a hyphen for whatever is no letter of a to z, figure, `.`, `_` or `-`."""
    return f"{file_name(tender) or 'tender'}-{what}"


def file_name(text: str) -> str:
    """Give a text as the name of a file or folder, with a hyphen for other characters; empty where none is left."""
    return _OTHER.sub("-", text).strip(".-")


def archive(files: Mapping[str, bytes], folder: str = "") -> bytes:
    """Pack files, sorted by path, into a zip archive, all inside one folder when it is named."""
    prefix = f"{folder}/" if folder else ""
    return zip_members([(prefix + path, files[path]) for path in sorted(files)])


def zip_members(members: list[tuple[str, bytes]]) -> bytes:
    """Pack members in the order given, with fixed times and modes."""
    output = io.BytesIO()
    with zipfile.ZipFile(output, "w") as packed:
        for name, content in members:
            member = zipfile.ZipInfo(name, _FIXED_TIME)
            member.compress_type = zipfile.ZIP_STORED if name.endswith(_COMPRESSED) else zipfile.ZIP_DEFLATED
            member.create_system = _UNIX
            member.external_attr = _REGULAR_FILE_MODE
            packed.writestr(member, content, compresslevel=9)
    return output.getvalue()
