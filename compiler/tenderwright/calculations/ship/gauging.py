"""How many thickness readings the survey in dock needs."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.condition_of_shell import strake_index
from tenderwright.calculations.thickness.diminution import SUBSTANTIAL
from tenderwright.calculations.thickness.shots import METHOD as SHOTS
from tenderwright.calculations.thickness.shots import plate_shots
from tenderwright.calculations.value import Given, Record
from tenderwright.model.package import Package


def gauging_values(package: Package, results: Results, record: Record) -> None:
    """Count readings: two a plate, or one plate in three, and a pattern of five where corrosion is substantial."""
    condition, shell = package.condition, results.condition.shell
    if condition is None or condition.gauging is None or shell is None:
        if any(name.startswith("shell.survey") for name in record.failed):
            record.spoil(SHOTS, "shell.gauging", "the survey could not be analysed")
        else:
            record.lack(SHOTS, "shell.gauging", "it needs readings, and `gauging` in vessel/condition.yaml")
        return
    gauging, plates = condition.gauging, shell.plates
    number = np.array([edges.size - 1 for edges in plates.edges]) * plates.sides
    everywhere, selected = (
        sum(int(number[i]) for name in names if (i := strake_index(package, name.name)) >= 0)
        for names in (gauging.all, gauging.selected)
    )
    poor = int(np.unique(shell.analysis.plate[shell.analysis.latest & (shell.analysis.state >= SUBSTANTIAL)]).size)
    every, third, five = (
        plate_shots(everywhere, "all plates"),
        plate_shots(selected, "selected plates"),
        plate_shots(poor, "substantial corrosion"),
    )
    inputs = {
        "all plates": Given(
            everywhere, f"{everywhere} plates of strakes {', '.join(map(str, gauging.all))}", gauging.here
        ),
        "selected": Given(
            selected, f"{selected} plates of strakes {', '.join(map(str, gauging.selected))}", gauging.here
        ),
        "substantial": Given(poor, f"{poor} plates with substantial corrosion", "shell.survey.substantial"),
    }
    outputs = {"plates": float(every + third + five), "shots": float(every + third + five)}
    record.keep(SHOTS, "shell.gauging", "gauging in dock", inputs, outputs)
