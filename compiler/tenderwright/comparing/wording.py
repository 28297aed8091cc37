"""Words for where in a file a change stands: `Line a, quantity` for the quantity of a line of an item."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from tenderwright.comparing.operation import At, Named, Operation, Segment
from tenderwright.reading.layout import schema_of
from tenderwright.shapes.schemas import load_schema

_ENTRY = {
    "lines": "line",
    "holds": "hold point",
    "addenda": "addendum",
    "references": "reference document",
    "depends_on": "item done before",
    "boundary_of": "tank on whose boundary it is",
    "owner_furnished": "furnished by the owner,",
    "yard_furnished": "furnished by the yard,",
    "does": "what the work does,",
    "criteria": "criterion",
    "yard_questions": "question to the yard",
    "sections": "block of numbers from",
    "half_breadths": "half breadth",
    "services": "service",
    "about": "about item",
}
"""By the key of a list, what one entry of it is called; others lose their last letter."""

_WORDS = {
    "item": "number",
    "phase": "when it is done",
    "option_until": "last day to take it up",
    "deferral": "what follows if it is put off",
    "owner_furnished": "furnished by the owner",
    "yard_furnished": "furnished by the yard",
    "depends_on": "items done before",
    "schemes": "coating schemes",
    "does": "what the work does",
    "at": "at",
    "due": "day due",
    "by": "who attends",
    "accept": "what passes",
    "takes": "figure its quantity is taken from",
    "share": "share of the figure taken",
    "price": "form of price",
    "on": "on what it rests",
    "keep_fabric": "whether removed fabric is kept",
    "delivered": "at the yard by",
    "verified": "verified as fitted",
    "closing": "closing day",
    "valid": "how long bids stay open",
    "issued": "day of issue",
    "day_cost": "the owner's cost of a day",
    "counts": "what the evaluated price counts",
    "evaluated": "rule of the evaluated price",
    "arithmetic": "rule of arithmetic",
    "text": "words",
}


def label(at: At, numbers: Mapping[At, int] | None = None) -> str:
    """Name a place in a file in words; `numbers` says which list entries now have another number, from 0."""
    words: list[str] = []
    holder = ""
    for depth, segment in enumerate(at):
        if isinstance(segment, str):
            entry_follows = depth + 1 < len(at) and not isinstance(at[depth + 1], str)
            if not entry_follows:
                words.append(_WORDS.get(segment, segment.replace("_", " ").replace("-", " ")))
            holder = segment
            continue
        words.append(f"{entry_of(holder)} {_name(segment)}".strip() + _now(at[: depth + 1], numbers or {}))
    text = ", ".join(words).replace(",,", ",")
    return text[:1].upper() + text[1:]


def entry_of(holder: str) -> str:
    """Give what one entry of a list is called."""
    return _ENTRY.get(holder, holder.removesuffix("s").replace("_", " "))


def _name(segment: Segment) -> str:
    return str(segment.name) if isinstance(segment, Named) else str(int(segment) + 1)


def _now(at: At, numbers: Mapping[At, int]) -> str:
    return f" (now {numbers[at] + 1})" if at in numbers else ""


def renumbered(operations: Iterable[Operation]) -> dict[At, int]:
    """Find which entries of lists without names, among those changed, stand at another place afterwards."""
    gone: dict[At, list[int]] = {}
    come: dict[At, list[int]] = {}
    touched: set[At] = set()
    for operation in operations:
        if operation.does in ("added", "removed") and operation.at and isinstance(operation.at[-1], int):
            found = gone if operation.does == "removed" else come
            found.setdefault(operation.at[:-1], []).append(operation.at[-1])
            touched |= _entries(operation.at[:-1])
        else:
            touched |= _entries(operation.at)
    moved = {}
    for at in touched:
        index = at[-1]
        assert isinstance(index, int)
        after = index - sum(1 for one in gone.get(at[:-1], ()) if one < index)
        for one in sorted(come.get(at[:-1], ())):
            after += one <= after
        if after != index:
            moved[at] = after
    return moved


def _entries(at: At) -> set[At]:
    return {at[: depth + 1] for depth, segment in enumerate(at) if isinstance(segment, int)}


def shape_at(file: str, at: At) -> Mapping[str, Any]:
    """Find the schema of a place in a file; empty where there is none."""
    name = schema_of(file)
    schema: Mapping[str, Any] = load_schema(name) if name else {}
    for segment in at:
        if isinstance(segment, str):
            extra = schema.get("additionalProperties")
            schema = schema.get("properties", {}).get(segment, extra if isinstance(extra, dict) else {})
        else:
            schema = schema.get("items", {})
    return schema


def said(data: Any) -> str:
    """Give data in words: a list with commas, a mapping as its values in order, each after its key."""
    if data is None:
        return ""
    if isinstance(data, bool):
        return "yes" if data else "no"
    if isinstance(data, list):
        return ", ".join(said(entry) for entry in data)
    if isinstance(data, dict):
        return "; ".join(f"{key.replace('_', ' ')}: {said(value)}" for key, value in data.items())
    return str(data)
