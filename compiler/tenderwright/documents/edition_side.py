"""One side of a comparison of editions."""

from __future__ import annotations

from dataclasses import dataclass

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Edition
from tenderwright.documents.price_form import PriceForm


@dataclass(frozen=True)
class Issue:
    """The yard edition on one side, with the desk at which it was composed."""

    desk: Desk
    edition: Edition
    form: PriceForm
