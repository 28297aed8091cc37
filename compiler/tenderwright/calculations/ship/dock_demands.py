"""What a dock must offer her: length, breadth, water, lift and line load, each with its clearance."""

from __future__ import annotations

from tenderwright.calculations.blocks.bearing import Bearing
from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.cradle.line_load import LineLoad
from tenderwright.calculations.facility.clearances import Clearances
from tenderwright.calculations.facility.drafts import METHOD as DRAFTS
from tenderwright.calculations.facility.drafts import Drafts
from tenderwright.calculations.facility.fit import Berth, Visitor, basic_limits
from tenderwright.calculations.method import Citation
from tenderwright.calculations.ship.buoyancy import Buoyancy
from tenderwright.calculations.ship.facilities import (
    given_clearances,
    greatest_line_load,
    reaching,
    visitor,
    widest,
)
from tenderwright.calculations.ship.keel import KeelLine
from tenderwright.calculations.ship.weight import Weighed
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.uncertainty.afloat import HowSure
from tenderwright.calculations.value import Given
from tenderwright.calculations.verdict import Limit
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.particulars import Particulars
from tenderwright.model.vessel import Appendage, Opening

_ANY = Berth(None, None, None, None, None, has_sill=True)


@step_of(DRAFTS, "docking.drafts")
def docked_drafts(
    dock_water: Given,
    docking: FloatingPosition,
    buoyancy: Buoyancy,
    particulars: Particulars,
    keel_line: KeelLine,
    appendages: tuple[Appendage, ...],
    openings: tuple[Opening, ...],
) -> Uses:
    """Find how deep keel and appendages reach in the docking condition, in the water for which it was reckoned."""
    inputs = reaching(docking, buoyancy, particulars, keel_line, appendages, openings) | {"density": dock_water}
    return Uses("docking condition, in the dock's water", inputs, particulars.here)


@step(lazy=True)
def dock_demands(
    docked_drafts: Drafts | Absent,
    docked_weight: Weighed,
    docking_line_load: LineLoad | Absent,
    particulars: Particulars,
    docking_plan: DockingPlan | None,
    keel_bearing: Bearing | None,
    how_sure: HowSure | Absent,
    appendages: tuple[Appendage, ...],
    openings: tuple[Opening, ...],
) -> tuple[Limit, ...]:
    """Give what she asks of any dock, with the clearances of the docking plan; none is held against a limit."""
    reach, _ = widest(particulars, appendages, openings)
    ship = visitor(particulars, docked_weight, docked_drafts, how_sure, reach)
    if not isinstance(docking_line_load, Absent):
        ship |= greatest_line_load(docking_line_load, keel_bearing, docking_plan)
    clear = given_clearances(docking_plan).si
    clearances = Clearances(**{k: v for k, v in clear.items() if k != "source"}, source=Citation(clear["source"]))
    return basic_limits(Visitor(**ship), _ANY, clearances)
