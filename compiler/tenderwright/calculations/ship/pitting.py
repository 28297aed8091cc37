"""Pits of the shell, judged one by one, each stretch by the share of it that is pitted."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from msgspec import Struct

from tenderwright.calculations.renewal.pit_work import METHOD as PIT_WORK
from tenderwright.calculations.renewal.shell_plan import ShellPlan
from tenderwright.calculations.renewal.shell_renewal import RenewalPlan
from tenderwright.calculations.ship.condition_of_shell import PLATE, ShellReadings, unused_name, within
from tenderwright.calculations.ship.regimes import Unwelded
from tenderwright.calculations.steps.outcome import Absent, Each, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.named_readings import SIDES
from tenderwright.calculations.thickness.pitting import METHOD as PITTING
from tenderwright.calculations.thickness.pitting import Pitting
from tenderwright.calculations.thickness.readings import Readings
from tenderwright.calculations.thickness.shell_survey import Surveyed
from tenderwright.calculations.value import Given, given
from tenderwright.model.history import EarlierDocking
from tenderwright.model.shell_condition import Pitted
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.notices import Place
from tenderwright.quantities.position import FrameTable


class PitStretch(Struct, frozen=True, eq=False):
    """A pitted stretch of one side, with its readings as last gauged."""

    pitted: Pitted
    side: str
    pits: Readings
    plate: Readings
    """Between the pits."""

    @property
    def here(self) -> Place:
        """Give where the stretch stands."""
        return self.pitted.here

    @property
    def where(self) -> str:
        """Say where it is."""
        pitted = self.pitted
        return f"strake {pitted.strake.name}, {self.side}, {pitted.from_} to {pitted.to}"


@step()
def pit_stretches(
    condition: ShipCondition,
    frames: FrameTable,
    shell_readings: ShellReadings,
    shell_survey: Surveyed,
    history: tuple[EarlierDocking, ...],
) -> dict[str, PitStretch]:
    """Give every pitted stretch, each side by itself, but for plate renewed with no pits gauged since."""
    found: dict[str, PitStretch] = {}
    for pitted in condition.pitted:
        for side in SIDES if pitted.side not in SIDES else (pitted.side,):
            place = frames.label(pitted.from_.x).replace(" ", "").replace("+", "-").replace("mm", "").lower()
            name = f"{pitted.strake.name.lower()}-{side}-{place}"
            stretch = _stretch(pitted, side, shell_readings, shell_survey)
            if len(stretch.pits) or not _renewed(pitted, side, history):
                found[unused_name(name, found)] = stretch
    return found


def _renewed(pitted: Pitted, side: str, history: tuple[EarlierDocking, ...]) -> bool:
    """Tell whether one plate or insert of an earlier docking took the place of a whole stretch."""
    return any(
        one.what in PLATE
        and (one.strake.name, one.side) in ((pitted.strake.name, side), (pitted.strake.name, "both"))
        and one.from_.x <= pitted.from_.x
        and pitted.to.x <= one.to.x
        for docking in history
        for one in docking.renewed
        if one.strake is not None and one.from_ is not None and one.to is not None
    )


def _stretch(pitted: Pitted, side: str, shell: ShellReadings, survey: Surveyed) -> PitStretch:
    place = (pitted.strake.name, side, pitted.from_.x, pitted.to.x)
    pits = shell.pits.readings.only(within(shell.pits.readings, shell.pits.strakes, *place))
    if len(pits):
        pits = pits.only(pits.survey == pits.survey.max())
    readings = survey.named.readings
    plate = within(readings, survey.named.strakes, *place) & survey.assessed.latest
    return PitStretch(pitted, side, pits, readings.only(plate))


_KEPT = ("remaining", "share_left", "treatment", "inserts", "welds", "fills", "watched", "mean_depth")


@step_of(
    PITTING,
    "shell.pits.{}",
    names={name: name.replace("_", "-") for name in _KEPT},
    each="pit_stretches",
)
def pits_judged(of: PitStretch, unwelded_strakes: Unwelded) -> Uses | Absent:
    """Judge the pits of a stretch."""
    pitted = of.pitted
    if not len(of.pits):
        return Lacking(f"it needs pits gauged on {of.where}, under surveys/")
    columns = (of.pits.x.tolist(), of.pits.as_built.tolist(), of.pits.measured.tolist())
    pits = [dict(zip(("at", "as_built", "left"), row, strict=True)) for row in zip(*columns, strict=True)]
    plate = of.plate.measured.tolist()
    inputs = {
        "pits": Given(pits, f"{len(pits)} pits of the last survey that gauged any", "from the surveys"),
        "intensity": Given(pitted.share.si, f"{pitted.share}: {pitted.source}", pitted.share.at),
        "plate": Given(plate, f"{len(plate)} readings between the pits", "shell.survey.latest"),
    }
    if why := unwelded_strakes.why.get(pitted.strake.name):
        inputs["weldable"] = Given(False, why, "vessel/condition.yaml")
    return Uses(f"pits of {of.where}", inputs, pitted.here)


@step_of(PIT_WORK, "shell.pit-work")
def pit_work(
    pit_stretches: dict[str, PitStretch],
    pits_judged: Each[Pitting],
    shell_plan: ShellPlan,
    shell_renewal: RenewalPlan,
    condition: ShipCondition,
) -> Uses | Absent:
    """Find how much of the pitted plate is welded and filled, once the inserts are in."""
    if not condition.pitted:
        return NotAsked("vessel/condition.yaml names no pitted plate")
    if absent := pits_judged.first_absent():
        return absent
    stretches = list(_stretches(pit_stretches, pits_judged))
    inserts = [
        {"strakes": list(one.strakes), "side": one.side, "from": one.aft, "to": one.forward}
        for one in shell_renewal.inserts
    ]
    judged = ", ".join(f"shell.pits.{name}.treatment" for name in pit_stretches)
    inputs = {
        "shell": Given(shell_plan, shell_plan.words, "vessel/strakes.yaml"),
        "stretches": Given(stretches, f"{len(stretches)} pitted stretches", judged or condition.pitted[0].here),
        "inserts": Given(inserts, f"{len(inserts)} inserts", "shell.renewal.inserts"),
    }
    if condition.renewal is not None and condition.renewal.pit_measure is not None:
        inputs["measure"] = given(condition.renewal.pit_measure)
    return Uses("pits outside the plate renewed", inputs, condition.pitted[0].here)


def _stretches(stretches: Mapping[str, PitStretch], judged: Each[Pitting]) -> Iterator[dict[str, Any]]:
    for name, one in stretches.items():
        pits = [{"at": pit.at, "treatment": pit.treatment} for pit in judged[name].pits]
        yield {
            "strake": one.pitted.strake.name,
            "side": one.side,
            "from": one.pitted.from_.x,
            "to": one.pitted.to.x,
            "share": one.pitted.share.si,
            "pits": pits,
        }
