"""Writes the manifest of an edition: what it is, from which commit and compiler, and a checksum of every file."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping

from tenderwright import __version__
from tenderwright.documents.edition import Edition
from tenderwright.writing.json_file import Json, canonical_json

MANIFEST_NAME = "manifest.json"


def manifest(edition: Edition, files: Mapping[str, bytes], edition_hash: str = "", amends: str = "") -> bytes:
    """Write the manifest of an edition's files, which must not hold the manifest itself.

    That of an addendum says at which commit stands what it `amends`.
    """
    if MANIFEST_NAME in files:
        raise ValueError("a manifest cannot list itself")
    listed: list[Json] = [
        {"path": path, "size": len(content), "sha256": hashlib.sha256(content).hexdigest()}
        for path, content in sorted(files.items())
    ]
    return canonical_json(
        {
            "tender": edition.tender,
            "title": edition.title,
            "edition": edition.name,
            "issued": edition.issued,
            "state": edition.stamp.state,
            "stamp": edition.stamp.label,
            "commit": edition.stamp.commit,
            **({"amends": amends} if amends else {}),
            "compiler": __version__,
            "confidential": edition.confidential,
            "edition_hash": edition_hash,
            "files": listed,
        }
    )
