"""What every rule of the ship's coherence looks at."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.steps.runner import Calculated
from tenderwright.checks.coherence.ship.shell import Shell
from tenderwright.model.package import Package


class Ship(Struct, frozen=True):
    """The package, and the shell of her lines where they can be used."""

    package: Package
    shell: Shell | None
    calculated: Calculated

    @property
    def length(self) -> float | None:
        """Give her length between perpendiculars [m], as her lines or her particulars have it."""
        if self.package.particulars is not None:
            return self.package.particulars.dimensions.length_between_perpendiculars.si
        return None

    @property
    def draft(self) -> float | None:
        """Give her usual draft [m]."""
        return self.package.particulars.dimensions.draft.si if self.package.particulars is not None else None
