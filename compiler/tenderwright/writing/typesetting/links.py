"""Links from one part to another, which stand in words of their own until the parts are joined."""

from __future__ import annotations

ACROSS = "tender:"
"""The scheme of an address in another part: after it comes the anchor."""
