"""The condition of the shell: what the surveys found, zone by zone and plate by plate, and what lies ahead."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.condition_results import SIDES, PlateCall, ShellCondition
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.members import member_values
from tenderwright.calculations.ship.pitting import pitting_values
from tenderwright.calculations.ship.shell_plan import ShellPlan, shell_plan
from tenderwright.calculations.ship.shell_zones import zone_rates
from tenderwright.calculations.ship.survey_readings import SurveyReadings, read_surveys
from tenderwright.calculations.thickness.analysis import Analysis, Outlook, analyse
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.diminution import RENEW, SUBSTANTIAL
from tenderwright.calculations.thickness.forecast import CALL_NEXT, CALL_NOW, CALL_SOUND, CALL_WATCH, CALLS
from tenderwright.calculations.thickness.forecast import METHOD as FORECAST
from tenderwright.calculations.thickness.limits import renewal_thickness
from tenderwright.calculations.thickness.rate import READING_UNCERTAINTY
from tenderwright.calculations.thickness.readings import Readings, year_of
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.package import Package
from tenderwright.model.ship_condition import ShipCondition, WastageZone

_YEAR = 365.25 * 86400.0

SURVEYED: Method[Any] = Method(
    name="shell.survey",
    title="Readings of the shell, and their diminution",
    formula="D = max(0, t0 - t) / t0; substantial above 0.75 a, renew above a",
    source=Citation("IMO 2011 ESP Code", "1.2.9; LR Naval Survey Guidance, Ch. 11, 2.1.3"),
    valid="readings of the latest survey that gauged each plate; pits apart",
    inputs={},
    outputs=(
        Symbol("readings", "readings of plate, all surveys", "each", "each"),
        Symbol("latest", "readings that tell the present state", "each", "each"),
        Symbol("greatest_loss", "greatest diminution", "fraction", "%"),
        Symbol("beyond", "readings beyond the allowable diminution", "each", "each"),
        Symbol("substantial", "readings with substantial corrosion, those beyond the limit besides", "each", "each"),
        Symbol("above_nominal", "readings above the thickness as built", "each", "each"),
    ),
    kernel=lambda: {},
    example={},
    cautions=("Limits are inputs: the naval architect or surveyor decides which hold.",),
)
CALLED: Method[Any] = Method(
    name="shell.plates",
    title="Plates called for renewal now, at the next docking, or to be watched",
    formula=FORECAST.formula,
    source=FORECAST.source,
    valid="plates gauged at least once; a rate from two surveys or more, otherwise since she was built",
    inputs={},
    outputs=(
        Symbol("gauged", "plates gauged", "each", "each"),
        Symbol("now", "plates with steel to renew at this docking", "each", "each"),
        Symbol("next", "plates expected beyond their limit at the next docking", "each", "each"),
        Symbol("watch", "plates to watch", "each", "each"),
        Symbol("sound", "plates called sound", "each", "each"),
    ),
    kernel=lambda: {},
    example={},
    cautions=("The least reading of a plate is forecast at the rate of its mean: the safe side for its state.",),
)


def shell_condition(package: Package, results: Results, record: Record) -> SurveyReadings | None:
    """Read the surveys, analyse them, and keep what they say of shell, pits and members."""
    if not package.surveys:
        _lack(record, "it needs thickness readings under surveys/")
        return None
    read, notices = read_surveys(package)
    record.notices += notices
    if read is not None:
        results.condition.surveys = read.counts
    condition, tender = package.condition, package.tender
    if condition is None or tender is None or not package.strakes:
        needed = {"vessel/condition.yaml", "vessel/strakes.yaml", "package.yaml", "vessel/frames.yaml"}
        if package.frames is None or needed & package.broken.files:
            _spoil(record, "what it rests on has a mistake")
        else:
            _lack(record, "it needs vessel/condition.yaml and vessel/strakes.yaml")
        return None
    if read is None or not len(read.plate):
        _spoil(record, "no reading of the surveys can be used")
        return None
    try:
        results.condition.shell = _analysed(package, condition, read, results, record)
    except OutOfRange as error:
        record.fail(SURVEYED, "shell.survey", str(error), condition.here)
        record.fail(CALLED, "shell.plates", str(error), condition.here)
        return None
    zone_rates(condition, results, record)
    pitting_values(package, condition, results, record)
    member_values(condition, read, results, record)
    return read


def _lack(record: Record, why: str) -> None:
    record.lack(SURVEYED, "shell.survey", why)
    record.lack(CALLED, "shell.plates", why)


def _spoil(record: Record, why: str) -> None:
    record.spoil(SURVEYED, "shell.survey", why)
    record.spoil(CALLED, "shell.plates", why)


def _analysed(
    package: Package, condition: ShipCondition, read: SurveyReadings, results: Results, record: Record
) -> ShellCondition:
    assert package.frames is not None
    assert package.tender is not None
    plan = shell_plan(package.strakes, package.frames, results.form)
    readings = _standing(read.plate, package, condition)
    zone = zones_of(readings, package, condition)
    if (zone < 0).any():
        row = int(np.flatnonzero(zone < 0)[0])
        where = f"strake {package.strakes[int(readings.strake[row])].strake}, {package.frames.label(readings.x[row])}"
        raise OutOfRange(f"a reading at {where} lies in no zone of vessel/condition.yaml")
    allowable = np.array([one.allowable.si for one in condition.zones])[zone]
    planned = year_of(str(package.tender.programme.docking))
    outlook = Outlook(
        docking=max(planned, float(readings.year.max())),  # a survey taken in dock may be later than the day planned
        interval=condition.next_docking.si / _YEAR,
        uncertainty=condition.gauge_uncertainty.si if condition.gauge_uncertainty else READING_UNCERTAINTY,
        built=float(package.particulars.built) if package.particulars else None,
    )
    found = analyse(readings, plan.plates, allowable, outlook)
    names = tuple(strake.strake for strake in package.strakes)
    calls = _calls(found, plan, names)
    shell = ShellCondition(
        names,
        readings,
        _standing(read.pits, package, condition),
        zone,
        allowable,
        found,
        plan.plates,
        plan.grid,
        plan.exists,
        outlook,
        calls,
        _at_docking(readings, found, outlook),
    )
    _keep(package, condition, shell, record)
    return shell


def within(readings: Readings, strake: int, side: str, aft: float, forward: float) -> Flags:
    """Mark the readings of a stretch of a strake."""
    on: Flags = (readings.strake == strake) & (readings.x >= aft) & (readings.x <= forward)
    if side in SIDES:
        on &= readings.side == SIDES.index(side)
    return on


def strake_index(package: Package, name: str) -> int:
    """Give the number of a strake from the keel, from 0; -1 for one that she has not."""
    return next((index for index, strake in enumerate(package.strakes) if strake.strake == name), -1)


def _standing(readings: Readings, package: Package, condition: ShipCondition) -> Readings:
    """Leave out readings of plate that has been renewed since."""
    gone = np.zeros(len(readings), np.bool_)
    for old in condition.renewed:
        where = within(readings, strake_index(package, old.strake.name), old.side, old.from_.x, old.to.x)
        gone |= where & (readings.year < year_of(str(old.on)))
    return readings.only(~gone) if gone.any() else readings


def zones_of(readings: Readings, package: Package, condition: ShipCondition) -> NDArray[np.int64]:
    """Give the zone of each reading, the first that fits; -1 where none does."""
    zone = np.full(len(readings), -1, np.int64)
    for index in reversed(range(len(condition.zones))):
        zone[_in_zone(readings, condition.zones[index], package)] = index
    return zone


def _in_zone(readings: Readings, zone: WastageZone, package: Package) -> Flags:
    inside = np.zeros(len(package.strakes), np.bool_)
    inside[[i for name in zone.strakes if (i := strake_index(package, name.name)) >= 0]] = True
    rows: Flags = inside[readings.strake]
    if zone.from_ is not None:
        rows &= readings.x >= zone.from_.x
    if zone.to is not None:
        rows &= readings.x <= zone.to.x
    return rows


def _at_docking(readings: Readings, found: Analysis, outlook: Outlook) -> Floats:
    """Give the thickness of each latest reading expected at the docking, at the rate of its plate."""
    rate = np.zeros(int(found.plates.plate.max(initial=0)) + 1)
    rate[found.plates.plate] = np.fmax(np.nan_to_num(found.rate_used), 0.0)
    rows = np.flatnonzero(found.latest)
    ahead = np.full(len(readings), np.nan)
    ahead[rows] = readings.measured[rows] - rate[found.plate[rows]] * (outlook.docking - readings.year[rows])
    return ahead


def _calls(found: Analysis, plan: ShellPlan, names: tuple[str, ...]) -> tuple[PlateCall, ...]:
    """List the plates called for something, worst first: by call, then by what is left over the limit."""
    plates = found.plates
    strake, side, aft, forward = plan.plates.place_of(plates.plate)
    spare = found.ahead.at_docking - renewal_thickness(plates.as_built, plates.allowable)
    order = np.lexsort((spare, -found.ahead.call))
    calls = []
    for row in order.tolist():
        if found.ahead.call[row] == CALL_SOUND:
            break
        edges = plan.plates.edges[int(strake[row])]
        number = int(np.searchsorted(edges, aft[row] + 1e-9, side="right"))
        name, of_side = names[int(strake[row])], SIDES[int(side[row])]
        calls.append(
            PlateCall(
                f"{name}{number} {of_side}",
                name,
                of_side,
                float(aft[row]),
                float(forward[row]),
                row,
                CALLS[int(found.ahead.call[row])],
            )
        )
    return tuple(calls)


def _keep(package: Package, condition: ShipCondition, shell: ShellCondition, record: Record) -> None:
    found = shell.analysis
    latest = found.latest
    inputs = {
        f"survey {survey.name}": Given(None, "readings by strake, frame and side", survey.here)
        for survey in package.surveys
    }
    inputs["strakes"] = Given(None, "thickness as built by strake", package.strakes[0].here)
    inputs["zones"] = Given(None, f"{len(condition.zones)} zones with their limits", condition.zones[0].here)
    state = found.state[latest]
    outputs = {
        "readings": float(len(shell.readings)),
        "latest": float(latest.sum()),
        "greatest_loss": float(found.found.fraction[latest].max(initial=0.0)),
        "beyond": float((state == RENEW).sum()),
        "substantial": float((state == SUBSTANTIAL).sum()),
        "above_nominal": float(found.found.above_nominal[latest].sum()),
    }
    record.keep(SURVEYED, "shell.survey", "the shell as last gauged", inputs, outputs)
    call = found.ahead.call
    assert package.tender is not None
    ahead = {
        "readings": given(record.values["shell.survey.readings"], f"{len(shell.readings)} readings"),
        "docking": Given(None, str(package.tender.programme.docking), package.tender.programme.here),
        "interval": given(condition.next_docking),
        "uncertainty": given(condition.gauge_uncertainty)
        if condition.gauge_uncertainty
        else Given(READING_UNCERTAINTY, "0.1 mm", "common practice, no source"),
    }
    counts = {
        "gauged": float(call.size),
        "now": float((call == CALL_NOW).sum()),
        "next": float((call == CALL_NEXT).sum()),
        "watch": float((call == CALL_WATCH).sum()),
        "sound": float((call == CALL_SOUND).sum()),
    }
    record.keep(CALLED, "shell.plates", "plates between butts, both sides", ahead, counts)
