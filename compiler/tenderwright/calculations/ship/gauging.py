"""How many thickness readings the survey in dock needs."""

from __future__ import annotations

from collections.abc import Iterable

from tenderwright.calculations.distinct import distinct
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import Uses, step_of
from tenderwright.calculations.thickness.diminution import SUBSTANTIAL
from tenderwright.calculations.thickness.gauging import METHOD as GAUGING
from tenderwright.calculations.thickness.shell_survey import Surveyed
from tenderwright.calculations.value import Given
from tenderwright.model.build import Reference
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.notices import Place


@step_of(GAUGING, "shell.gauging")
def shell_gauging(shell_survey: Surveyed, condition: ShipCondition) -> Uses | Absent:
    """Count the readings of the survey in dock."""
    gauging, plates = condition.gauging, shell_survey.plates
    if gauging is None:
        return Lacking("it needs `gauging` in vessel/condition.yaml")
    number = {
        name: plates.grid.sides * (ends.size - 1) for name, ends in zip(plates.strakes, plates.grid.edges, strict=True)
    }
    found = shell_survey.assessed
    poor = int(distinct(found.plate[found.latest & (found.state >= SUBSTANTIAL)]).size)
    inputs = {
        "all_plates": _given(gauging.all, number, gauging.here),
        "selected_plates": _given(gauging.selected, number, gauging.here),
        "substantial_plates": Given(poor, f"{poor} plates with substantial corrosion", "shell.survey.substantial"),
    }
    return Uses("gauging in dock", inputs, gauging.here)


def _given(strakes: Iterable[Reference], number: dict[str, int], here: Place) -> Given:
    count = sum(number.get(strake.name, 0) for strake in strakes)
    return Given(count, f"{count} plates of strakes {', '.join(map(str, strakes))}", here)
