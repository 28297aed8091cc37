"""The annex on gauging: plates and pits one by one, on which the chapter on her condition rests."""

from __future__ import annotations

from tenderwright.calculations.ship.condition_of_shell import shell_forecast
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Part
from tenderwright.documents.parts.condition import plates
from tenderwright.documents.parts.pits import pits_listed


def gauging(desk: Desk) -> Part | None:
    """Compose the annex; None where her shell is not gauged."""
    ship, shell = desk.package.particulars, desk.calculated.found(shell_forecast)
    if shell is None or (ship is not None and ship.hull is not None and not ship.hull.of_metal):
        return None
    blocks = [*plates(desk, shell), *pits_listed(desk)]
    return Part(
        "gauging", "", "Gauging: plates and pits", "data", "Annexes", tuple(blocks), caution=True, audience="yard"
    )
