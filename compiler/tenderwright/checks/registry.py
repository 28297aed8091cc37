"""The trade checks, all of them, by the code of their notice."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.checks import (
    addendum_not_listed,
    anodes_outlived,
    coated_twice,
    coating_without_preparation,
    condition_unsafe,
    contingent_without_quantity,
    facility_certificate,
    forgotten_service,
    item_number_reused,
    late_report,
    no_plug_register,
    oil_boundary_hot_work,
    opened_not_tested,
    opening_under_block,
    owner_furnished_undated,
    phase_order,
    question_unanswered,
    sounding_beyond_tank,
    stated_differs,
    tank_state_differs,
    unbounded_words,
    unlike_metals,
    unsafe_entry,
    unstable_before_settling,
    untested_coating,
    weight_after_stability,
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
    "tank-state-differs": tank_state_differs.check,
    "weight-after-stability": weight_after_stability.check,
    "opening-under-block": opening_under_block.check,
    "no-plug-register": no_plug_register.check,
    "unstable-before-settling": unstable_before_settling.check,
    "facility-certificate": facility_certificate.check,
    "unlike-metals": unlike_metals.check,
    "anodes-outlived": anodes_outlived.check,
    "question-unanswered": question_unanswered.check,
    "addendum-not-listed": addendum_not_listed.check,
    "item-number-reused": item_number_reused.check,
}
"""In the order in which the codes stand in the registry of notices."""
