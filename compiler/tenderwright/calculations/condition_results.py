"""What the calculations of the ship's condition give besides single values: for its drawings and pages.

Lengths and thicknesses in m, areas in m2, masses in kg, rates in m a year, x forward of the after perpendicular.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tenderwright.calculations.anodes.layout import Layout
    from tenderwright.calculations.anodes.life import AnodeLife
    from tenderwright.calculations.anodes.number import AnodeNumber
    from tenderwright.calculations.climate.workable_hours import MonthClimate, Workable
    from tenderwright.calculations.renewal.contingent import Contingent, Gauged
    from tenderwright.calculations.renewal.quantities import Renewal, RenewalTotal
    from tenderwright.calculations.renewal.shell_grid import ShellGrid
    from tenderwright.calculations.thickness.analysis import Analysis, Outlook
    from tenderwright.calculations.thickness.cells import Ints
    from tenderwright.calculations.thickness.columns import Flags, Floats
    from tenderwright.calculations.thickness.pitting import Pitting
    from tenderwright.calculations.thickness.plates import PlateGrid
    from tenderwright.calculations.thickness.readings import Readings
    from tenderwright.calculations.tightness.choice import Boundary, Choice


SIDES = ("port", "starboard")


@dataclass(frozen=True)
class SurveyCount:
    """A survey as it was read."""

    name: str
    first: str
    """Day of its first reading, written YYYY-MM-DD."""
    last: str
    readings: int
    """Of plate and members."""
    pits: int
    greatest_loss: float
    above_nominal: int
    stages: tuple[str, ...]
    instruments: tuple[str, ...]


@dataclass(frozen=True)
class ZoneSummary:
    """One zone of the shell as the latest readings found it."""

    zone: str
    readings: int
    mean_loss: float
    """Mean diminution, readings above nominal as nothing."""
    greatest_loss: float
    substantial: int
    """Readings whose corrosion is substantial or worse."""
    renew: int
    rate: float
    """m a year; nan where no frame space was gauged twice."""
    uncertainty: float
    bays: int
    """Frame spaces gauged at two surveys, from which the rate is."""
    upper_at_next: float
    """Mean diminution expected at the next docking at the upper rate, or at present where there is no rate."""
    mean_at_next: float
    means: tuple[tuple[float, float], ...]
    """Year and mean diminution of each survey, over the frame spaces that all of them gauged."""


@dataclass(frozen=True)
class PlateCall:
    """A plate with what it is called for."""

    name: str
    """Such as `B5 port`: strake, number from aft, side."""
    strake: str
    side: str
    aft: float
    forward: float
    row: int
    """Its row in the analysis."""
    call: str
    reasons: tuple[str, ...] = ()


@dataclass(frozen=True)
class PitStretch:
    """A pitted stretch with what its pits call for."""

    strake: str
    side: str
    aft: float
    forward: float
    share: float
    pits: int
    deepest: float
    thickness: float
    """Mean of the plate between the pits."""
    judged: Pitting
    source: str


@dataclass(frozen=True)
class MemberSummary:
    """A member inside a tank."""

    tank: str
    member: str
    readings: int
    as_built: float
    least: float
    mean_loss: float
    greatest_loss: float
    state: str
    rate: float
    """nan where one survey alone gauged it."""


@dataclass(frozen=True)
class PlannedRenewal:
    """An insert of the plan with its place."""

    name: str
    """Such as `R3`."""
    side: Literal["port", "starboard"]
    strakes: tuple[str, ...]
    aft: float
    forward: float
    made: Renewal
    thickness: float
    apart: str = ""
    """The item that renews it, where it is one of its own; then it is in no total."""


@dataclass(frozen=True, eq=False)
class ShellCondition:
    """The readings of the shell, analysed."""

    strakes: tuple[str, ...]
    readings: Readings
    """Of plate, all surveys."""
    pits: Readings
    zone: Ints
    """Zone of each reading, by its place in the list of zones."""
    allowable: Floats
    analysis: Analysis
    plates: PlateGrid
    grid: ShellGrid
    exists: Flags
    """Where each strake has plate, by strake and frame space."""
    outlook: Outlook
    calls: tuple[PlateCall, ...]
    """Plates called for something, worst first."""
    at_docking: Floats
    """Thickness of each reading expected at the docking; nan for readings of earlier surveys."""


@dataclass(frozen=True)
class AnodeGroup:
    """Anodes fitted on one day and looked at on another."""

    anodes: tuple[str, ...]
    fitted: str
    seen: str
    years: float
    mean_left: float
    least_left: float
    life: AnodeLife
    mean_current: float
    """A, of all of them."""


@dataclass(frozen=True)
class AnodePlan:
    """What the anodes have to do until the next docking, and whether those fitted do it."""

    needed: AnodeNumber
    each: float
    """Mean net mass of the anodes fitted, kg."""
    fitted: int
    initial: float
    """Current asked at the start, A."""
    mean: float
    final: float
    greatest_life: float
    """How long the anodes fitted, renewed, last by mass, in years."""
    layout: Layout | None = None
    """Places of further anodes a side, where more are needed than are fitted."""


@dataclass(frozen=True)
class MonthOutlook:
    """How much of a month's working hours paint may be put on."""

    month: int
    climate: MonthClimate
    dew_point: float
    """At the mean of temperature and humidity, degC."""
    open: Workable
    cover: Workable


@dataclass(frozen=True)
class BoundaryTest:
    """The tightness test of one boundary that the items open."""

    kind: Literal["tank", "opening", "shell"]
    name: str
    boundary: Boundary
    items: tuple[str, ...]
    choice: Choice


@dataclass
class ConditionResults:
    """Everything about the condition of the ship; a part that could not be calculated is None or empty."""

    surveys: tuple[SurveyCount, ...] = ()
    shell: ShellCondition | None = None
    zones: tuple[ZoneSummary, ...] = ()
    pits: tuple[PitStretch, ...] = ()
    members: tuple[MemberSummary, ...] = ()
    renewals: tuple[PlannedRenewal, ...] = ()
    total: RenewalTotal | None = None
    contingent: Contingent | None = None
    gauged: Gauged | None = None
    anode_groups: tuple[AnodeGroup, ...] = ()
    anode_plan: AnodePlan | None = None
    months: tuple[MonthOutlook, ...] = ()
    tests: tuple[BoundaryTest, ...] = ()
