"""Sub-totals and totals of a bid: as written, as its lines make them, and where the two differ."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from decimal import Decimal
from typing import Literal

from msgspec import Struct

from tenderwright.model.bid import Bid
from tenderwright.pricing.bids.corrected import CorrectedLine, Correction
from tenderwright.pricing.choices import dearer_by
from tenderwright.pricing.money import CENT, total
from tenderwright.pricing.sections import SECTIONS

LINES_GOVERN = "the lines govern over their sub-total"
SUB_TOTALS_GOVERN = "sub-totals govern over the total"
FOLLOWS = "follows from the corrections above"


class Sums(Struct, frozen=True):
    """The sums of a bid."""

    sections: Mapping[str, Decimal]
    base: Decimal
    total: Decimal
    base_read: Decimal
    total_read: Decimal
    corrections: tuple[Correction, ...]


def sums(bid: Bid, lines: Collection[CorrectedLine], components: Collection[str]) -> Sums:
    """Add up a bid and hold what was written against it.

    A sum may differ by half a cent for each amount in it, for yards round lines in their own way.
    """
    inside = {s.code: [one for one in lines if one.line.section.code == s.code] for s in SECTIONS}
    made = {code: total([one.amount for one in found]) for code, found in inside.items()}
    added = {code: total([one.amount_read for one in found]) for code, found in inside.items()}
    read = {code: bid.section_totals.get(code, added[code]) for code in added}
    corrections = []
    for code, written in bid.section_totals.items():
        if code in made:
            what = f"Sub-total of section {code}"
            ways = (written, made[code], added[code])
            corrections.append(_held("sub-total", what, LINES_GOVERN, ways, len(inside[code])))
    base_codes = [section.code for section in SECTIONS if section.in_base]
    codes = [section.code for section in SECTIONS if section.counted(components)]
    instead = {one.line.number: one.line.instead_of for one in lines if one.line.instead_of}
    dearer = dearer_by({one.line.number: one.amount for one in lines}, instead)
    dearer_read = dearer_by({one.line.number: one.amount_read for one in lines}, instead)
    found_sums = []
    for what, chosen, written_sum in (("Base price", base_codes, bid.base_total), ("Total", codes, bid.total)):
        right, stood = total([made[code] for code in chosen]), total([read[code] for code in chosen])
        if what == "Total":
            right, stood = right + dearer, stood + dearer_read
        number = sum(len(inside[code]) for code in chosen)
        if written_sum is not None:
            corrections.append(_held("total", what, SUB_TOTALS_GOVERN, (written_sum, right, stood), number))
        found_sums.append((right, written_sum if written_sum is not None else stood))
    (base, base_read), (whole, whole_read) = found_sums
    return Sums(made, base, whole, base_read, whole_read, tuple(one for one in corrections if one is not None))


def _held(
    kind: Literal["sub-total", "total"], what: str, rule: str, ways: tuple[Decimal, Decimal, Decimal], amounts: int
) -> Correction | None:
    """Hold a sum as written against the right one; where it adds up what stood above it, it only follows."""
    written, right, stood = ways
    slack = max(CENT, CENT / 2 * amounts)
    if abs(written - right) <= slack:
        return None
    own = abs(written - stood) > slack
    return Correction(kind, what, rule if own else FOLLOWS, written, right, own=own)
