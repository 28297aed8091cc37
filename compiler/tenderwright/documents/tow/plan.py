"""The tow plan: what tower, insurer and harbour are handed, without the tender."""

from __future__ import annotations

from dataclasses import replace

from tenderwright.calculations.ship.tow_closures import tow_closures
from tenderwright.documents.desk import Desk
from tenderwright.documents.drawings.tow_profile import tow_profile
from tenderwright.documents.edition import Block, Edition, Figure, Heading, Part
from tenderwright.documents.links_within import links_within
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.documents.tow.aboard import aboard, boarding
from tenderwright.documents.tow.closures import closure_list
from tenderwright.documents.tow.condition import condition, in_short
from tenderwright.documents.tow.gear import gear
from tenderwright.documents.tow.pull import pull
from tenderwright.documents.tow.route import route, sailing
from tenderwright.documents.tow.surveyor import surveyor
from tenderwright.model.tow import Tow

GROUP = "Tow plan"
ASKED = "What the tow surveyor will ask"
_FEW = 12
"""Rows to close up to which they need no pages of their own."""
CAUTION = (
    "A planning document; it certifies nothing. Tow master, tug master, surveyor and insurer decide whether, when and "
    "how she sails, and the harbour what it allows. Planning figures: methods of resistance agree to about a third."
)


def tow_plan(desk: Desk, edition: Edition) -> Edition | None:
    """Compose the tow plan; None where no tow is planned. Nothing in it is confidential, and anybody may read it."""
    plan = desk.package.tow
    if plan is None:
        return None
    parts = [
        _part("T1", "tow-in-short", "The tow in short", [*in_short(desk, plan), *condition(desk, plan)]),
        _drawing(desk),
        _part(
            "T3",
            "tow-pull",
            "Pull, gear, passage and weather",
            [*pull(desk, plan), *gear(desk, plan), *route(desk, plan), *sailing(desk, plan)],
        ),
        *_ready(desk, plan),
    ]
    return replace(
        edition,
        title=f"Tow plan, {desk.tender.ship}",
        subtitle="For tower, insurer and harbour; planning figures",
        parts=links_within(tuple(parts)),
        facts=(),
        sheets={},
        forms={},
        tables={},
        record=None,
        caution=CAUTION,
        audience="public",
        confidential=False,
    )


def _ready(desk: Desk, plan: Tow) -> list[Part]:
    """Compose what is to be ready: parts of their own, or one together for a ship with few openings."""
    closed, under_way = closure_list(desk), [*aboard(desk, plan), *boarding(desk, plan)]
    found = desk.calculated.found(tow_closures)
    few = found is not None and len(found) <= _FEW
    asked = surveyor(desk, plan, "T4" if few else "T5")
    if few:
        blocks: list[Block] = [
            Heading("Closed for sea"),
            *closed,
            Heading("Aboard under way"),
            *under_way,
            Heading(ASKED),
            *asked,
        ]
        return [_part("T4", "tow-ready", "Ready for sea", blocks)]
    return [
        _part("T4", "tow-closures", "Closed for sea, space by space", closed, landscape=True),
        _part("T5", "tow-aboard", "Aboard under way", under_way),
        _part("T6", "tow-surveyor", ASKED, asked),
    ]


def _part(number: str, anchor: str, title: str, blocks: list[Block], *, landscape: bool = False) -> Part:
    return Part(
        anchor, number, title, "data", GROUP, tuple(blocks), landscape=landscape, caution=True, audience="public"
    )


def _drawing(desk: Desk) -> Part:
    found = tow_profile(desk.package, desk.calculated)
    block: Block = found if isinstance(found, Figure) else not_calculated(found, "Profile for the tow")
    return Part(
        "tow-profile",
        "T2",
        "Profile for the tow",
        "drawing",
        GROUP,
        (block,),
        landscape=True,
        caution=True,
        audience="public",
    )
