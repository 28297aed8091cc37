"""Unlike metals that touch in sea water: which of each pair wastes."""

from __future__ import annotations

from tenderwright.calculations.anodes.galvanic import METHOD as PAIR
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given
from tenderwright.model.package import Package
from tenderwright.model.ship_condition import MetalPair

_NAMES = {name: name for name in ("wastes", "spared", "difference", "risk")}


@step()
def metal_pairs(package: Package) -> dict[str, MetalPair]:
    """Give the pairs of metals in contact, by their number in the package."""
    condition = package.condition
    return {str(number): pair for number, pair in enumerate(condition.metals if condition else (), start=1)}


@step_of(PAIR, "metals.{}", names=_NAMES, each="metal_pairs")
def judged_pair(pair: MetalPair) -> Uses:
    """Judge two metals in contact."""
    inputs = {name: Given(metal, metal, pair.here) for name, metal in (("one", pair.one), ("other", pair.other))}
    return Uses(pair.what, inputs, pair.here, of=pair.what)
