"""Compose the owner edition: the specification with prices, what the docking may cost and take, record and checks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tenderwright.checks.context import Unjudged
from tenderwright.documents.desk import in_its_units
from tenderwright.documents.drawings.at_facilities import at_facilities
from tenderwright.documents.edition import Edition, Part, Stamp
from tenderwright.documents.editions import sheets, yard_edition
from tenderwright.documents.owner.cost_risk import cost_risk
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.donors import donor_sheet
from tenderwright.documents.owner.estimate import owner_estimate
from tenderwright.documents.owner.facilities import facilities
from tenderwright.documents.owner.facility_fit import facility_comparison
from tenderwright.documents.owner.funding import funding
from tenderwright.documents.owner.price_basis import price_basis
from tenderwright.documents.owner.priced import priced_form, priced_part
from tenderwright.documents.owner.prices_by_item import OWNER, prices_by_item
from tenderwright.documents.owner.programme import programme
from tenderwright.documents.owner.record import record_of_calculation
from tenderwright.documents.owner.tables import owner_tables
from tenderwright.documents.owner.trade_checks import owners_to_be_written, trade_checks
from tenderwright.documents.owner.years_ahead import years_to_next
from tenderwright.documents.price_form import PriceForm
from tenderwright.notices import Notice
from tenderwright.shapes.todos import Todo


@in_its_units
def owner_edition(
    desk: OwnerDesk, stamp: Stamp, notices: Sequence[Notice], unjudged: Sequence[Unjudged], todos: Sequence[Todo]
) -> tuple[Edition, PriceForm]:
    """Compose the owner edition: the same with prices, what the docking may cost and take, record and checks."""
    yard, form = yard_edition(desk.yards, stamp)
    parts = [priced_part(part, desk.estimate, desk.tender.currency) for part in yard.parts]
    parts += [*_owners(desk), *_at_facilities(desk), record_of_calculation(desk), trade_checks(notices, unjudged)]
    parts += owners_to_be_written(todos)
    edition = replace(
        yard,
        name="owner",
        subtitle="Owner's edition, priced",
        parts=tuple(parts),
        confidential=True,
        sheets={},
        tables=owner_tables(desk),
        record=desk.record,
        audience="owner",
    )
    donors = donor_sheet(desk, edition)
    return (replace(edition, sheets={"donors": donors}) if donors else edition), priced_form(form, desk.estimate)


def _owners(desk: OwnerDesk) -> list[Part]:
    money = (prices_by_item(desk), owner_estimate(desk), price_basis(desk), cost_risk(desk))
    return [part for part in (*money, programme(desk), funding(desk), years_to_next(desk)) if part is not None]


def _at_facilities(desk: OwnerDesk) -> list[Part]:
    """Compose what is known of each facility, and whether she fits there."""
    parts = [part for part in (facility_comparison(desk), facilities(desk)) if part is not None]
    return parts + sheets(at_facilities(desk.package, desk.calculated), OWNER, "F", "owner")
