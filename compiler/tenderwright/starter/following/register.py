"""The register of approvals of the following tender: the same approvals, none of them asked for yet."""

from __future__ import annotations

from tenderwright.reading.source import Path, Source
from tenderwright.starter.following.closed import Closed
from tenderwright.starter.following.edits import Edits

REGISTER = "owner/approvals.yaml"
_OF_ONE_TENDER = ("asked", "granted", "refused", "expires", "paper", "not_needed", "afterwards")
_OF_A_CONDITION = ("met", "paper")


def register_again(number: str, closed: Closed, source: Source) -> str:
    """Give the text of the register without how far each approval was; empty where none is left.

    What was the word of a source of money goes with that money, which is of the closed tender.
    """
    edits = Edits(source, closed.number)
    edits.put(("tender",), number)
    _away(edits, ("until",))
    approvals = source.data["approvals"]
    kept = [index for index, one in enumerate(approvals) if "source" not in one]
    for index in range(len(approvals)):
        if index not in kept:
            edits.drop(("approvals", index))
    for index in kept:
        _reset(edits, closed, index)
    return edits.text if kept else ""


def _reset(edits: Edits, closed: Closed, index: int) -> None:
    at: Path = ("approvals", index)
    one = edits.source.data["approvals"][index]
    for key in _OF_ONE_TENDER:
        _away(edits, (*at, key))
    for key in ("needed", "notes"):
        if closed.is_of_its_time(str(one.get(key, ""))):
            _away(edits, (*at, key))
    for nth in range(len(one.get("conditions", ()))):
        for key in _OF_A_CONDITION:
            _away(edits, (*at, "conditions", nth, key))


def _away(edits: Edits, at: Path) -> None:
    """Take a key away; within brackets, where that cannot be done, ask for it again."""
    if at not in edits.source.keys:
        return
    edits.drop(at)
    if not edits.touched(at):
        edits.ask(at, keep=False)
