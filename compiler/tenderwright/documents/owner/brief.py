"""The brief for trustees, two pages: need, cost, certainty, time, money, choices, and what is to be decided by when."""

from __future__ import annotations

from dataclasses import replace

from tenderwright.documents.edition import Block, Edition, Part
from tenderwright.documents.owner.brief_choices import choices, decisions, if_nothing
from tenderwright.documents.owner.brief_money import cost_and_money, in_short, sureness
from tenderwright.documents.owner.desk import OwnerDesk


def brief(desk: OwnerDesk, book: Edition) -> Edition:
    """Compose the brief as a paper of its own; what the owner's papers do not tell it says where it would stand."""
    blocks: list[Block] = [
        *in_short(desk),
        *cost_and_money(desk),
        *sureness(desk),
        *choices(desk),
        *decisions(desk),
        *if_nothing(desk),
    ]
    ship = desk.tender.ship
    part = Part("brief", "Brief", f"{ship} in dock: for her trustees", "brief", "", tuple(blocks), caution=True)
    return replace(book, subtitle="Brief for trustees", parts=(part,), facts=(), sheets={}, tables={}, record=None)
