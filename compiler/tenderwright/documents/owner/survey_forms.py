"""Forms for a survey of her condition, to print and fill by hand: diver, walk-through, tanks, timber, photographs.

What the package knows is filled in, and the columns are those of the files into which the result is typed afterwards.
"""

from __future__ import annotations

from dataclasses import replace

from tenderwright.calculations.ship.timber import of_wood
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Edition, Part
from tenderwright.documents.parts.survey_diver import anodes, openings, plating, potentials
from tenderwright.documents.parts.survey_form import blank, caution, entered, form, form_head
from tenderwright.documents.parts.survey_timber import timber
from tenderwright.documents.parts.survey_within import tanks, walk_through
from tenderwright.model.noun import keys_of
from tenderwright.model.photograph import Photograph

DIVING = (
    "Diving: by a team competent by the law of the place, with a supervisor. Before a diver is in the water, shaft and "
    "rudder are locked, pumps and sea suctions near the dive are stopped and tagged, and nobody starts anything until "
    "the supervisor has signed the diver out."
)
ABOARD = (
    "Nobody walks through alone, and nobody enters a space that has been shut until its air is tested and the "
    "competent person has signed for it."
)
ENTRY = (
    "A tank or void is a confined space. No head goes through a manhole before the competent person's certificate of "
    "the day stands below: oxygen, flammable and toxic gas tested at several heights, ventilation running, a watch at "
    "the manhole, and rescue gear there. The law of the place decides the limits. A certificate lapses when conditions "
    "change."
)
_GROUP = "Forms for a survey of her condition"
_ROWS_OF_PHOTOGRAPHS = 14


def survey_forms(desk: Desk, book: Edition) -> Edition:
    """Compose the forms as a paper of their own, which holds nothing confidential."""
    wood = of_wood(desk.package.particulars)
    parts = [
        _part(
            "diver",
            "Diver",
            [
                caution(DIVING),
                *form_head("Diver, supervisor", "Visibility, tide", "Gauge and its check"),
                *plating(desk),
                *anodes(desk),
                *openings(desk),
                *potentials(desk),
            ],
        ),
        _part(
            "walk-through",
            "Walk-through, by compartment",
            [caution(ABOARD), *form_head("By, with", "Weather, lying", "List and trim"), *walk_through(desk)],
        ),
        _part(
            "tanks",
            "Tanks and voids",
            [caution(ENTRY), *form_head("By, with", "Competent person", "Gas meter and its check"), *tanks(desk)],
        ),
        *(
            [_part("timber", "Timber", [*form_head("Surveyor", "Lying", "Moisture meter, set for"), *timber(desk)])]
            if wood
            else []
        ),
        _part(
            "photograph-list",
            "Photographs taken",
            [*form_head("By", "Camera, its clock checked by", "Rights"), *_photographs(desk)],
        ),
    ]
    return replace(
        book,
        title=f"Survey forms, {desk.tender.ship}",
        subtitle="To print, fill by hand and type in",
        parts=tuple(replace(part, number=str(number)) for number, part in enumerate(parts, start=1)),
        facts=(),
        sheets={},
        tables={},
        record=None,
        audience="yard",
        confidential=False,
    )


def _part(anchor: str, title: str, blocks: list[Block]) -> Part:
    return Part(
        f"form-{anchor}", "", title, "data", _GROUP, tuple(blocks), landscape=True, caution=True, audience="yard"
    )


_SHORT = ("by", "rights", "may_be_published", "finding")
"""Columns of photographs.csv that the head of the form gives for all, or that are known only later."""


def _photographs(desk: Desk) -> list[Block]:
    wide = {"file": 1.6, "caption": 3.2, "date": 1.1}
    left = (*_SHORT, *(() if desk.package.anodes else ("anode",)))
    keys = [key for _, key in keys_of(Photograph) if key not in left]
    columns = [(key, wide.get(key, 0.9)) for key in keys]
    note = entered("photographs.csv, a row for each", "date by a slate in the first picture, not by the camera's clock")
    return form(columns, blank(_ROWS_OF_PHOTOGRAPHS, len(columns)), note)
