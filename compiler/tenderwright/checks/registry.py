"""The trade checks, all of them, by the code of their notice."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.checks import (
    coated_twice,
    coating_without_preparation,
    condition_unsafe,
    contingent_without_quantity,
    forgotten_service,
    late_report,
    oil_boundary_hot_work,
    opened_not_tested,
    owner_furnished_undated,
    phase_order,
    sounding_beyond_tank,
    stated_differs,
    unbounded_words,
    unsafe_entry,
    untested_coating,
)
from tenderwright.checks.context import Check

CHECKS: Mapping[str, Check] = {
    "oil-boundary-hot-work": oil_boundary_hot_work.check,
    "opened-not-tested": opened_not_tested.check,
    "coating-without-preparation": coating_without_preparation.check,
    "coated-twice": coated_twice.check,
    "contingent-without-quantity": contingent_without_quantity.check,
    "unbounded-words": unbounded_words.check,
    "phase-order": phase_order.check,
    "late-report": late_report.check,
    "owner-furnished-undated": owner_furnished_undated.check,
    "untested-coating": untested_coating.check,
    "unsafe-entry": unsafe_entry.check,
    "sounding-beyond-tank": sounding_beyond_tank.check,
    "forgotten-service": forgotten_service.check,
    "stated-differs": stated_differs.check,
    "condition-unsafe": condition_unsafe.check,
}
"""In the order in which the codes stand in the registry of notices."""
