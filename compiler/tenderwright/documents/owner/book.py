"""Compose the owner's book: what the docking may cost and take, what pays for it, and what the checks found.

It stands beside the specification and repeats none of it: its lines and items bear the numbers of the specification.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from tenderwright.checks.context import Unjudged
from tenderwright.documents.desk import CAUTION, in_its_units
from tenderwright.documents.drawings.at_facilities import at_facilities
from tenderwright.documents.edition import Edition, Part, Stamp
from tenderwright.documents.editions import sheets
from tenderwright.documents.form import price_form
from tenderwright.documents.in_print import in_print
from tenderwright.documents.inspection_plan import STEM as INSPECTION_PLAN
from tenderwright.documents.owner.approvals import approvals_sheet
from tenderwright.documents.owner.brief import brief
from tenderwright.documents.owner.care.paper import care_paper
from tenderwright.documents.owner.care.wall import wall_page
from tenderwright.documents.owner.contract_checklist import STEM, contract_checklist
from tenderwright.documents.owner.cost_risk import cost_risk
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.donors import donor_sheet
from tenderwright.documents.owner.estimate import owner_estimate
from tenderwright.documents.owner.facilities import facilities
from tenderwright.documents.owner.facility_fit import facility_comparison
from tenderwright.documents.owner.former_prices import former_prices
from tenderwright.documents.owner.funding import funding
from tenderwright.documents.owner.index import Filed, index_sheet
from tenderwright.documents.owner.inspection_plan import owners_inspection_plan
from tenderwright.documents.owner.photographs import owner_photographs
from tenderwright.documents.owner.price_basis import price_basis
from tenderwright.documents.owner.priced import priced_form, priced_schedule
from tenderwright.documents.owner.prices_by_item import prices_by_item
from tenderwright.documents.owner.programme import programme
from tenderwright.documents.owner.record import record_sheet
from tenderwright.documents.owner.survey_forms import survey_forms
from tenderwright.documents.owner.tables import owner_tables
from tenderwright.documents.owner.trade_checks import owners_to_be_written, trade_checks
from tenderwright.documents.owner.years_ahead import years_to_next
from tenderwright.documents.parts.front import contents, cover, cover_facts
from tenderwright.documents.price_form import PriceForm
from tenderwright.documents.tow.plan import tow_plan
from tenderwright.notices import Notice
from tenderwright.shapes.todos import Todo


@in_its_units
def owner_edition(
    desk: OwnerDesk,
    stamp: Stamp,
    notices: Sequence[Notice],
    unjudged: Sequence[Unjudged],
    todos: Sequence[Todo],
    filed: Filed,
) -> tuple[Edition, PriceForm]:
    """Compose the owner's book with the short papers beside it, and the price form with the owner's rates."""
    kept = desk.foresight.papers.facilities.values() if desk.foresight is not None else ()
    aside = frozenset(one.facility.name for one in kept if one.kept_because)
    tender, at_docks = desk.tender, at_facilities(desk.package, desk.calculated, aside)
    form = price_form(desk.yards, stamp.label)
    chapters: dict[str, tuple[Part | None, ...]] = {
        "What it costs": (
            priced_schedule(desk, form),
            prices_by_item(desk),
            owner_estimate(desk),
            price_basis(desk),
            cost_risk(desk),
        ),
        "How long it takes, what pays for it, and what follows": (programme(desk), funding(desk), years_to_next(desk)),
        "Docks, and what earlier dockings cost": (facility_comparison(desk), facilities(desk), former_prices(desk)),
        "Checks": (trade_checks(notices, unjudged), *owners_to_be_written(todos)),
    }
    book = Edition(
        name="owner",
        title=tender.tender.title,
        subtitle="The owner's book: prices, time, money and checks",
        tender=tender.tender.number,
        owner=tender.owner.name,
        stamp=stamp,
        issued=tender.dates.issued,
        page_size="Letter" if tender.page_size == "Letter" else "A4",
        parts=(cover(desk), contents(), *_numbered(chapters), *sheets(at_docks, "Drawings of the docks", "F", "owner")),
        caution=CAUTION,
        confidential=True,
        facts=cover_facts(desk),
        tables=owner_tables(desk),
        record=desk.record,
    )
    beside = {
        "brief": brief(desk, book),
        "approvals": approvals_sheet(desk, book),
        STEM: contract_checklist(desk, book),
        INSPECTION_PLAN: owners_inspection_plan(desk, book),
        "record": record_sheet(desk, book),
        "donors": donor_sheet(desk, book),
        "tow-plan": tow_plan(desk.yards, book),
        "care-plan": care_paper(desk, book),
        "wheelhouse": wall_page(desk, book),
        "photographs": owner_photographs(desk, book),
        "survey-forms": survey_forms(desk, book),
    }
    book = replace(book, sheets={stem: sheet for stem, sheet in beside.items() if sheet is not None})
    book = replace(book, sheets={**book.sheets, "index": index_sheet(desk, book, filed)})
    return in_print(desk, book), priced_form(form, desk.estimate)


def _numbered(chapters: Mapping[str, Sequence[Part | None]]) -> list[Part]:
    """Number the parts as they stand, under the titles of their chapters."""
    parts = [replace(part, group=title) for title, inside in chapters.items() for part in inside if part is not None]
    return [replace(part, number=str(number)) for number, part in enumerate(parts, start=1)]
