"""The rule of the evaluated price in sentences, written from what the tender counts."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.documents.desk import Desk, joined
from tenderwright.model.choices import dearer
from tenderwright.model.tender import CONTINGENT, DAYS, ONE_BIDDER, OPTIONS, POOL, TOWING, TRAVEL
from tenderwright.pricing.money import in_currency
from tenderwright.pricing.sections import section_of

BEGINS = "The evaluated price of a bid is the sum, after correction of its arithmetic, of:"


def parts_counted(desk: Desk) -> tuple[str, ...]:
    """Name each part of the evaluated price, as bidders read it."""
    parts = tuple(_parts(desk))
    return (*(f"{words};" for words in parts[:-1]), f"{parts[-1]}.")


def afterwards(desk: Desk) -> tuple[str, ...]:
    """Say what is not counted, and that no bid is ranked before each part has its figure."""
    counted = desk.tender.award.components
    left = [name for name in (CONTINGENT, POOL, OPTIONS, DAYS, TOWING, TRAVEL) if name not in counted]
    named = {DAYS: "the owner's days", TOWING: "the tow", TRAVEL: "the owner's travel"}
    words = joined([named.get(name, name) for name in left])
    verb = "are" if len(left) > 1 or (not words.startswith("the tow") and not words.endswith("travel")) else "is"
    sentences = [f"Not counted {verb} {words}."] if left else []
    return (*sentences, "Bids are ranked once every one of these parts has a figure for each of them.")


def _parts(desk: Desk) -> Iterator[str]:
    award, package = desk.tender.award, desk.package
    found = [
        (section_of(i, line, desk.tender).code, line) for i in package.items if not i.withdrawn for line in i.lines
    ]
    sections = {code for code, _ in found}
    credits = ", less the credits" if "G" in sections else ""
    yield f"the lump sums, and the quantities times rates, of all definite and measured lines{credits}"
    if "H" in sections:
        yield "the provisional sums, which are the same for all"
    if CONTINGENT in award.components:
        further = any(code == "D" and line.price == "day" for code, line in found)
        among = ", the further days among them" if further else ""
        yield f"the tendered quantities times rates of all contingent lines{among}"
    if POOL in award.components:
        yield "the hours pool times its rates, and the allowance for materials with the mark-up tendered on it"
    if OPTIONS in award.components:
        yield "the options, all as if they were taken up"
    if dearer(package):
        yield "where one line may stand in the place of others, what the dearer of the two is more"
    if DAYS in award.components:
        cost = f" of {in_currency(desk.tender.currency, award.day_cost)}" if award.day_cost is not None else ""
        yield f"the owner's cost of a day{cost}, for each day from arrival to redelivery in the bidder's programme"
    if TOWING in award.components:
        yield "the owner's cost of the tow to the bidder's dock and home"
    if TRAVEL in award.components:
        yield "the owner's cost of travel to the bidder's dock"
    left_open = "what the bid leaves out, an exclusion or lines of one item that it does not answer,"
    if award.exclusions == ONE_BIDDER:
        yield (
            f"{left_open} at the figure of the one other bidder who asks the most for all of that work, or where no "
            "other prices all of it at the owner's estimate"
        )
    else:
        yield f"{left_open} at the owner's estimate"
