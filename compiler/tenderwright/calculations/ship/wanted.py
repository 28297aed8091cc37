"""What the package asks of her when she is docked and floated: trim, list and metacentric height."""

from __future__ import annotations

from tenderwright.calculations.value import Given, given
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.lightship import Lightship
from tenderwright.quantities.display import plainly
from tenderwright.quantities.quantity import Quantity

USUAL = "common practice, no source"
LEAST_GM = "it needs `least_gm` in vessel/docking-plan.yaml, or in vessel/lightship.yaml under `docking`"
"""What is said where no least metacentric height is asked for."""
TRIM_TOLERANCE = 0.1
"""Either way from the trim wanted, where the package states none, m (common practice, no source)."""
MOST_LIST = 0.00872664625997165
"""List, where the package states none: half a degree, rad (common practice, no source)."""


def least_gm(plan: DockingPlan | None, lightship: Lightship | None) -> Quantity | None:
    """Give the least metacentric height asked for: of the docking plan, or of the condition wanted."""
    wanted = lightship.docking if lightship is not None else None
    return (plan.least_gm if plan is not None else None) or (wanted.least_gm if wanted is not None else None)


def given_least_gm(plan: DockingPlan | None, lightship: Lightship | None) -> dict[str, Given]:
    """Give it as an input, where one is asked for."""
    found = least_gm(plan, lightship)
    return {} if found is None else {"least_gm": given(found)}


def trim_tolerance(lightship: Lightship | None) -> Given:
    """Give how far the trim may be from the one wanted, m, either way."""
    wanted = lightship.docking if lightship is not None else None
    if wanted is None or wanted.trim_tolerance is None:
        return Given(TRIM_TOLERANCE, f"{plainly(TRIM_TOLERANCE, 'trim')}, none is stated", USUAL)
    return given(wanted.trim_tolerance)


def most_list(lightship: Lightship | None) -> Given:
    """Give the greatest list with which she may land and lift off, rad."""
    wanted = lightship.docking if lightship is not None else None
    if wanted is None or wanted.most_list is None:
        return Given(MOST_LIST, "0.5 degrees, none is stated", USUAL)
    return given(wanted.most_list)
