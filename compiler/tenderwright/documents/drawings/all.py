"""All the drawings of the yard edition, in the order in which they are printed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import ParamSpec

from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import (
    anode_plan,
    coating_zones,
    docking_bottom,
    docking_profile,
    general_arrangement,
    lines,
    loss_plot,
    plank_expansion,
    shell_expansion,
    side_block_sections,
    tank_interiors,
    tank_states,
    water_levels,
)
from tenderwright.documents.drawings.framed import numbered
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.quantities.customs import system, telling_in

P = ParamSpec("P")
Made = Figure | list[Figure] | Absent


def drawings(package: Package, calculated: Calculated) -> dict[str, list[Figure] | Absent]:
    """Make every drawing, by title; of one that could not be made, say why."""
    made: dict[str, Figure | list[Figure] | Absent] = {
        docking_profile.TITLE: in_one_system(docking_profile.docking_profile, package, calculated),
        docking_bottom.TITLE: docking_bottom.docking_bottom(package, calculated),
        side_block_sections.TITLE: in_one_system(side_block_sections.side_block_sections, package, calculated),
        water_levels.TITLE: in_one_system(water_levels.water_levels, package, calculated),
        tank_states.TITLE: tank_states.tank_states(package, calculated),
        general_arrangement.TITLE: general_arrangement.tanks(package, calculated),
        coating_zones.TITLE: in_one_system(coating_zones.zones, package, calculated),
        plank_expansion.TITLE: plank_expansion.plank_expansion(package, calculated),
        shell_expansion.TITLE: shell_expansion.shell_expansion(package, calculated),
        loss_plot.TITLE: in_one_system(loss_plot.loss_plot, package, calculated),
        tank_interiors.TITLE: tank_interiors.tank_interiors(package, calculated),
        anode_plan.TITLE: anode_plan.anode_plan(package, calculated),
        lines.TITLE: lines.body_plan(package, calculated),
    }
    return {title: [one] if isinstance(one, Figure) else one for title, one in made.items()}


_METRIC_ALONE = " Figures on this drawing are metric alone; the tables give them in both systems."


def in_one_system(draw: Callable[P, Made], *arguments: P.args, **named: P.kwargs) -> Made:
    """Draw what has no room for figures in two systems of units in metric ones where both are asked for."""
    if system() != "both":
        return draw(*arguments, **named)
    with telling_in("metric"):
        made = draw(*arguments, **named)
    if isinstance(made, Figure):
        return replace(made, caption=made.caption + _METRIC_ALONE)
    return [replace(one, caption=one.caption + _METRIC_ALONE) for one in made] if isinstance(made, list) else made


def figures_of(found: Mapping[str, list[Figure] | Absent]) -> list[Figure]:
    """Give the drawings that could be made, in order and numbered."""
    return numbered([figure for made in found.values() if not isinstance(made, Absent) for figure in made])
