"""What a bidder remarks by line, assumes or offers instead: each is settled by the owner, by whom and why."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from tenderwright.linking.evaluation import answers, begins
from tenderwright.model.bid import Bid
from tenderwright.model.evaluation import Adder, SettledRemark
from tenderwright.notices import Place


class Remark(Struct, frozen=True):
    """Something that a bidder wrote beside its prices and that is no exclusion."""

    text: str
    kind: str
    """remark, assumption or alternative."""
    lines: tuple[str, ...]
    here: Place
    by: str = ""
    why: str = ""
    """Empty while it is not settled."""

    @property
    def name(self) -> str:
        """Name it in a sentence."""
        at = f" at line {', '.join(self.lines)}" if self.lines else ""
        return f"the {self.kind}{at} “{self.text}”"


def remarks(name: str, bid: Bid, adders: Sequence[Adder], settled: Sequence[SettledRemark]) -> tuple[Remark, ...]:
    """List the remarks of a bid; one that an adder prices is settled by that."""
    own = [one for one in settled if one.bid == name]
    found = []
    for place, said in enumerate(bid.exclusions):
        if said.kind != "exclusion":
            priced = next((adder for adder in adders if place in answers(adder, bid)), None)
            answer = next((one for one in own if one.remark and begins(said.text, one.remark)), None)
            by, why = (answer.by, answer.why) if answer is not None else ("", priced.why if priced is not None else "")
            found.append(Remark(said.text, said.kind, said.lines, said.here, by, why))
    for number, line in bid.lines.items():
        if line.note:
            answer = next((one for one in own if number in one.lines and begins(line.note, one.remark)), None)
            by, why = (answer.by, answer.why) if answer is not None else ("", "")
            found.append(Remark(line.note, "remark", (number,), line.here, by, why))
    return tuple(found)
