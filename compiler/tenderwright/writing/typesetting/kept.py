"""What earlier runs made, for a typesetter that is given it."""

from __future__ import annotations

from typing import Protocol


class KeptParts(Protocol):
    """Set parts by their HTML, and subsets of faces by what is in them."""

    def get(self, page: str) -> bytes | None:
        """Give what was kept."""

    def put(self, page: str, content: bytes) -> None:
        """Keep something."""
