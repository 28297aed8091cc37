"""Members inside tanks: floors, frames and bulkheads as gauged."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.condition_results import MemberSummary
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.survey_readings import SurveyReadings
from tenderwright.calculations.thickness.diminution import METHOD as DIMINUTION
from tenderwright.calculations.thickness.diminution import STATES, classify, diminution
from tenderwright.calculations.thickness.rate import READING_UNCERTAINTY, rates
from tenderwright.calculations.value import Given, Record
from tenderwright.model.ship_condition import ShipCondition

NAMES = {"mean_diminution": "mean-loss", "renewal_thickness": "renewal-thickness"}


def member_values(condition: ShipCondition, read: SurveyReadings, results: Results, record: Record) -> None:
    """Gather the members of tanks, each with the worst state of its latest readings and its rate."""
    members, limit = read.members, condition.members
    if limit is None or not members.member.size:
        return
    uncertainty = condition.gauge_uncertainty.si if condition.gauge_uncertainty else READING_UNCERTAINTY
    found = diminution(members.as_built, members.measured)
    state = classify(found.fraction, limit.allowable.si)
    rate = rates(
        members.member,
        len(members.names),
        members.survey,
        members.year,
        members.as_built,
        members.measured,
        uncertainty,
    ).rate
    made = []
    for index, (tank, member) in enumerate(members.names):
        rows = np.flatnonzero(members.member == index)
        if not rows.size:
            continue
        rows = rows[members.survey[rows] == members.survey[rows].max()]
        loss, built = found.fraction[rows], float(members.as_built[rows].mean())
        summary = MemberSummary(
            tank,
            member,
            int(rows.size),
            built,
            float(members.measured[rows].min()),
            float(loss.mean()),
            float(loss.max()),
            STATES[int(state[rows].max())],
            float(rate[index]),
        )
        made.append(summary)
        inputs = {
            "readings": Given(None, f"{rows.size} of the latest survey", "from the surveys"),
            "as_built": Given(built, f"{1e3 * built:.1f} mm", "from the surveys"),
            "allowable": Given(limit.allowable.si, f"{limit.allowable}: {limit.source}", limit.allowable.at),
        }
        outputs = {"mean_diminution": summary.mean_loss, "renewal_thickness": built * (1.0 - limit.allowable.si)}
        slug = "-".join("".join(c if c.isalnum() else " " for c in member.lower()).split())
        record.keep(DIMINUTION, f"member.{tank}.{slug}", f"{member}, {tank}", inputs, outputs, NAMES)
    results.condition.members = tuple(sorted(made, key=lambda one: (-one.greatest_loss, one.tank, one.member)))
