"""Compose the file of a bid under owner/bids/ from a bid as read, in the order of its schema."""

from __future__ import annotations

from typing import Any

from tenderwright.model.bid import Bid, BidLine, Exclusion
from tenderwright.model.noun import Noun, keys_of
from tenderwright.quantities.quantity import Quantity

_LAST = ("doubts",)


def bid_entry(bid: Bid) -> dict[str, Any]:
    """Give a bid as plain data; what is not said in it is left out."""
    made: dict[str, Any] = {}
    for name, key in keys_of(Bid):
        value = getattr(bid, name)
        if name not in ("lines", "exclusions", "answers", "tables", "facility", "dock", *_LAST):
            made[key] = list(value) if isinstance(value, tuple) else value
    made["facility"] = str(bid.facility) if bid.facility is not None else None
    made["dock"] = _plain(bid.dock) if bid.dock is not None else None
    made["exclusions"] = [_exclusion(one) for one in bid.exclusions]
    made["answers"] = [{"ask": one.ask, "answer": one.answer} for one in bid.answers]
    made["tables"] = {row: dict(cells) for row, cells in bid.tables.items()}
    made["lines"] = {number: _line(line) for number, line in bid.lines.items()}
    made["doubts"] = list(bid.doubts)
    order = ["tender", "yard", "facility", "dock", "received", "doubts"]
    kept = {key: value for key, value in made.items() if value not in (None, "", [], {}) or key == "lines"}
    return {key: kept[key] for key in sorted(kept, key=lambda key: order.index(key) if key in order else len(order))}


def _plain(noun: Noun) -> dict[str, Any]:
    """Give a noun as plain data: quantities as written, nothing of what is not said."""
    made: dict[str, Any] = {}
    for name, key in keys_of(noun):
        value = getattr(noun, name)
        if isinstance(value, Noun):
            made[key] = _plain(value)
        elif value not in (None, "", ()):
            made[key] = (
                str(value) if isinstance(value, Quantity) else list(value) if isinstance(value, tuple) else value
            )
    return made


def _line(line: BidLine) -> dict[str, Any]:
    entry = {
        "rate": line.rate,
        "status": line.status,
        "extension": line.extension,
        "note": line.note,
        "as_written": line.as_written,
    }
    return {key: value for key, value in entry.items() if value not in (None, "")}


def _exclusion(exclusion: Exclusion) -> dict[str, Any]:
    entry = {
        "text": exclusion.text,
        "lines": list(exclusion.lines),
        "kind": exclusion.kind,
        "effect": exclusion.effect,
    }
    return {key: value for key, value in entry.items() if value not in ("", [])}
