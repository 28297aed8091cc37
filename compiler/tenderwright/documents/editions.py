"""Compose the yard edition: which parts, in which order."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.audience import Audience
from tenderwright.documents.dead_ship import dead_ship_sheet
from tenderwright.documents.desk import CAUTION, CAUTION_LINE, Desk, in_its_units
from tenderwright.documents.dock_sheet import dock_sheet
from tenderwright.documents.drawings.all import drawings, figures_of
from tenderwright.documents.edition import Edition, Figure, Part, Stamp
from tenderwright.documents.form import price_form
from tenderwright.documents.in_print import in_print
from tenderwright.documents.inspection_plan import STEM, inspection_plan
from tenderwright.documents.not_calculated import not_calculated_of
from tenderwright.documents.numbering import numbered
from tenderwright.documents.parts.asked import asked
from tenderwright.documents.parts.clauses import general_requirements
from tenderwright.documents.parts.coating_conditions import coating_conditions
from tenderwright.documents.parts.coatings import zones
from tenderwright.documents.parts.condition_chapter import condition_chapter
from tenderwright.documents.parts.docking import DOCKING, docking_chapter
from tenderwright.documents.parts.front import consolidated_lists, contents, cover, cover_facts, revision_record
from tenderwright.documents.parts.gathered import gathered, without_nearly_empty
from tenderwright.documents.parts.gauging import gauging
from tenderwright.documents.parts.history import history
from tenderwright.documents.parts.item import item_part
from tenderwright.documents.parts.questions import questions
from tenderwright.documents.parts.schedule import schedule
from tenderwright.documents.parts.ship import fittings, particulars
from tenderwright.documents.parts.tanks import sounding_tables, tanks
from tenderwright.documents.photograph_sheet import STEM as PHOTOGRAPHS
from tenderwright.documents.photograph_sheet import photograph_sheet
from tenderwright.documents.price_form import PriceForm
from tenderwright.documents.signed_forms import signed_forms
from tenderwright.reading.git_state import GitState


@in_its_units
def yard_edition(desk: Desk, stamp: Stamp) -> tuple[Edition, PriceForm]:
    """Compose the yard edition and its price form."""
    form = price_form(desk, stamp.label)
    edition = _edition(desk, stamp, _parts(replace(desk, numbers_parts=True), form))
    beside = {
        "dock-sheet": dock_sheet(desk, edition),
        "dead-ship": dead_ship_sheet(desk, edition),
        STEM: inspection_plan(desk, edition),
        PHOTOGRAPHS: photograph_sheet(desk, edition),
    }
    edition = replace(edition, sheets={stem: sheet for stem, sheet in beside.items() if sheet is not None})
    edition = replace(edition, forms=signed_forms(desk, edition, form))
    return in_print(desk, edition), form


def stamp(state: GitState) -> Stamp:
    """Give how every page is marked."""
    return Stamp(state.state, state.label, state.commit if state.state == "issued" else "")


def _parts(desk: Desk, form: PriceForm) -> list[Part]:
    parts: list[Part | None] = [
        cover(desk),
        asked(desk, form),
        contents(),
        revision_record(desk),
        schedule(desk, form),
        *(item_part(desk, item) for item in desk.package.items if not item.withdrawn),
        general_requirements(desk),
        *without_nearly_empty([*_ship(desk), *docking_chapter(desk), tanks(desk)]),
        *_drawings(desk),
        sounding_tables(desk),
        gauging(desk),
        consolidated_lists(desk),
        questions(desk),
    ]
    return [part for part in parts if part is not None]


def _ship(desk: Desk) -> list[Part | None]:
    coats = gathered(zones(desk), coating_conditions(desk))
    return [particulars(desk), fittings(desk), history(desk), condition_chapter(desk), coats]


def _drawings(desk: Desk) -> list[Part]:
    return sheets(drawings(desk.package, desk.calculated), "Drawings", "D", "yard")


def sheets(found: Mapping[str, list[Figure] | Absent], group: str, letter: str, audience: Audience) -> list[Part]:
    """Compose a sheet for each drawing, and after them say which could not be made, and why."""
    made = [
        Part(
            f"sheet-{figure.name}",
            f"{letter}{number}",
            figure.title or figure.name,
            "drawing",
            group,
            (figure,),
            landscape=True,
            caution=True,
            audience=audience,
        )
        for number, figure in enumerate(figures_of(found), start=1)
    ]
    absent = tuple(not_calculated_of({title: one for title, one in found.items() if isinstance(one, Absent)}))
    if absent:
        anchor, number = f"sheets-not-made-{audience}", f"{letter}{len(made) + 1}"
        title = "Drawings that could not be made"
        made.append(Part(anchor, number, title, "drawing", group, absent, caution=True, audience=audience))
    return made


def _cautioned(part: Part) -> Part:
    """Let only the docking chapter and the drawings carry the usual caution in full; the cover gives it too."""
    full = part.kind == "drawing" or part.group == DOCKING
    return part if full or not part.caution else replace(part, caution_line=CAUTION_LINE)


def _edition(desk: Desk, stamp: Stamp, parts: list[Part]) -> Edition:
    tender = desk.tender
    return Edition(
        name="yard",
        title=tender.tender.title,
        subtitle=tender.tender.subtitle or "Specification for tender",
        tender=tender.tender.number,
        owner=tender.owner.name,
        stamp=stamp,
        issued=tender.dates.issued,
        page_size="Letter" if tender.page_size == "Letter" else "A4",
        parts=numbered(tuple(_cautioned(part) for part in parts)),
        caution=CAUTION,
        facts=cover_facts(desk),
        files=_files(desk),
        audience="yard",
    )


def _files(desk: Desk) -> dict[str, bytes]:
    """Give the files that go along: those of reference documents, and the pictures of items that are not withdrawn."""
    named = {drawing.file for drawing in desk.package.drawings}
    named |= {one.file for item in desk.package.items if not item.withdrawn for one in item.pictures}
    return {path: one.content for path, one in desk.package.travelling.items() if path in named}
