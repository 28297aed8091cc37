"""How an item comes to depend on one that does what must be done before it."""

from __future__ import annotations

from tenderwright.checks.context import Context


def depend_on(context: Context, word: str, entry: str) -> str:
    """Say on which items of the package to depend, or how to add one from the catalogue where none does it."""
    doers = [item.number for item in context.live_items if word in item.does]
    if not doers:
        return f"`tenderwright add {entry}`, and write its number in `depends_on`"
    named = " or ".join(f'"{number}"' for number in doers[:3])
    return f"write {named}, which does `{word}`, in `depends_on`"
