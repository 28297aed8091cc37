"""The metacentric heights of a docking against the least asked for, each with how well it is known."""

from __future__ import annotations

from tenderwright.calculations.landing.landing import BothLandings
from tenderwright.calculations.ship.undocking import Undocking
from tenderwright.calculations.ship.wanted import LEAST_GM, least_gm
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import Uses, step_of
from tenderwright.calculations.uncertainty.afloat import HowSure
from tenderwright.calculations.uncertainty.judged import METHOD as JUDGED
from tenderwright.calculations.value import Given
from tenderwright.calculations.verdict import Limit
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.lightship import Lightship
from tenderwright.quantities.display import show


@step_of(JUDGED, "docking.stability", names={"result": "result", "deciding": "deciding", "use": "use"})
def stability(
    landing: BothLandings | None,
    undocking: Undocking | None,
    how_sure: HowSure | None,
    docking_plan: DockingPlan,
    lightship: Lightship,
) -> Uses | Absent:
    """Judge them: as she settles, as the last block leaves her, and afloat."""
    least = least_gm(docking_plan, lightship)
    if least is None:
        return Lacking(LEAST_GM)
    heights: list[tuple[str, float | None, str]] = []
    if landing is not None:
        heights.append(("as she comes to lie on all the blocks", landing.exact.settling.stability.gm, "gm_at_settling"))
    if undocking is not None:
        heights.append(("afloat when she leaves", undocking.position.gm_fluid, "gm"))
        heights.append(("as the last block leaves her", undocking.least_gm, "gm_at_settling"))
    known = [(when, gm, figure) for when, gm, figure in heights if gm is not None]
    if not known:
        return Lacking("it needs the landing, or the condition in which she is floated")
    limits = [
        Limit(
            when,
            "length",
            gm,
            least.si,
            at_least=True,
            source=f"least asked for, {least}",
            uncertainty=(how_sure.u(figure) if how_sure is not None else None) or 0.0,
        )
        for when, gm, figure in known
    ]
    words = "; ".join(f"{show(gm, 'metacentric height', more=1)} {when}" for when, gm, _ in known)
    given = Given(limits, f"{words}; least {least}", "docking.landing.gm, condition.undocking.gm-fluid")
    return Uses("metacentric heights against the least asked for", {"limits": given}, least.at)
