"""Members inside tanks: floors, frames and bulkheads as gauged."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from tenderwright.calculations.ship.condition_of_shell import given_uncertainty, unused_name
from tenderwright.calculations.ship.survey_readings import SurveyReadings
from tenderwright.calculations.steps.outcome import Absent, Each, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.member import METHOD as MEMBER
from tenderwright.calculations.thickness.member import GaugedMember
from tenderwright.calculations.thickness.named_readings import NamedReadings
from tenderwright.calculations.value import Given
from tenderwright.model.ship_condition import ShipCondition


class MemberReadings(Struct, frozen=True, eq=False):
    """The readings of one member of a tank, all surveys."""

    tank: str
    member: str
    named: NamedReadings


@step()
def member_readings(survey_readings: SurveyReadings) -> dict[str, MemberReadings] | Absent:
    """Part the readings inside the tanks by member."""
    members = survey_readings.members
    if not members.names:
        return NotAsked("no survey gauged members inside tanks")
    found: dict[str, MemberReadings] = {}
    for index, (tank, member) in enumerate(members.names):
        slug = "-".join("".join(c if c.isalnum() else " " for c in member.lower()).split())
        name = unused_name(f"{tank}.{slug}", found)
        readings = members.readings.only(np.asarray(members.member == index))
        found[name] = MemberReadings(tank, member, NamedReadings(readings))
    return found


@step_of(
    MEMBER,
    "member.{}",
    names={"mean_diminution": "mean-loss", "renewal_thickness": "renewal-thickness"},
    each="member_readings",
    kept=True,
)
def members_gauged(of: MemberReadings, condition: ShipCondition) -> Uses | Absent:
    """Find the state and the rate of a member."""
    limit = condition.members
    if limit is None:
        return Lacking("it needs `members` in vessel/condition.yaml")
    readings = of.named.readings
    latest = int((readings.survey == readings.survey.max()).sum())
    inputs = {
        "readings": Given(of.named, f"{len(readings)} readings, {latest} of the latest survey", "from the surveys"),
        "allowable": Given(limit.allowable.si, f"{limit.allowable}: {limit.source}", limit.allowable.at),
        "uncertainty": given_uncertainty(condition),
    }
    return Uses(f"{of.member}, {of.tank}", inputs, limit.here)


class MemberFound(Struct, frozen=True):
    """A member of a tank with what was found of it."""

    tank: str
    member: str
    found: GaugedMember


@step()
def members_found(
    member_readings: dict[str, MemberReadings], members_gauged: Each[GaugedMember]
) -> tuple[MemberFound, ...]:
    """Give the members that could be judged, the worst first."""
    found = (MemberFound(member_readings[n].tank, member_readings[n].member, one) for n, one in members_gauged.items())
    return tuple(sorted(found, key=lambda one: (-one.found.greatest_loss, one.tank, one.member)))
