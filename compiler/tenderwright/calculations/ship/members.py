"""Members inside tanks: floors, frames and bulkheads as gauged."""

from __future__ import annotations

import re
from collections.abc import Iterator

import numpy as np
from msgspec import Struct

from tenderwright.calculations.ship.condition_of_shell import before_renewal, given_uncertainty, unused_name
from tenderwright.calculations.ship.survey_readings import SurveyReadings
from tenderwright.calculations.steps.outcome import Absent, Each, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.member import METHOD as MEMBER
from tenderwright.calculations.thickness.member import GaugedMember
from tenderwright.calculations.thickness.named_readings import NamedReadings
from tenderwright.calculations.value import Given
from tenderwright.model.found import SteelRenewed
from tenderwright.model.history import EarlierDocking
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.quantities.position import FrameTable


class MemberReadings(Struct, frozen=True, eq=False):
    """The readings of one member of a tank, all surveys."""

    tank: str
    member: str
    named: NamedReadings


@step()
def member_readings(
    survey_readings: SurveyReadings, frames: FrameTable | None, history: tuple[EarlierDocking, ...]
) -> dict[str, MemberReadings] | Absent:
    """Part the readings inside the tanks by member, without those of members renewed since."""
    members = survey_readings.members
    if not members.names:
        return NotAsked("no survey gauged members inside tanks")
    found: dict[str, MemberReadings] = {}
    for index, (tank, member) in enumerate(members.names):
        slug = "-".join("".join(c if c.isalnum() else " " for c in member.lower()).split())
        name = unused_name(f"{tank}.{slug}", found)
        readings = members.readings.only(np.asarray(members.member == index))
        for docking, new in _renewals(tank, member, frames, history):
            readings = readings.only(~before_renewal(readings, docking, new))
        if not len(readings):
            continue
        found[name] = MemberReadings(tank, member, NamedReadings(readings))
    return found


def _renewals(
    tank: str, member: str, frames: FrameTable | None, history: tuple[EarlierDocking, ...]
) -> Iterator[tuple[EarlierDocking, SteelRenewed]]:
    """Find where a member such as `floor 80` was renewed: steel of its kind, in its tank, over the frame it names."""
    named = re.fullmatch(r"(?P<kind>[a-z]+) (?:at )?(?:Fr )?(?P<frame>[0-9]+)", member)
    number = int(named["frame"]) if named is not None else None
    if named is None or number is None or frames is None or number not in frames.numbers:
        return
    at = frames.x(number)
    for docking in history:
        for new in docking.renewed:
            here = new.tank is not None and new.tank.name == tank and new.what == named["kind"]
            if here and new.from_ is not None and new.to is not None and new.from_.x <= at <= new.to.x:
                yield docking, new


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
