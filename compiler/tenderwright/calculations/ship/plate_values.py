"""Values of each plate that is called for renewal, so that every figure of it can be explained."""

from __future__ import annotations

import math

from tenderwright.calculations.condition_results import PlateCall, ShellCondition
from tenderwright.calculations.results import Results
from tenderwright.calculations.thickness.forecast import METHOD as FORECAST
from tenderwright.calculations.thickness.limits import renewal_thickness
from tenderwright.calculations.value import Given, Record
from tenderwright.model.package import Package

_CALLED = ("renew now", "renew at the next docking")
_YEAR = 365.25 * 86400.0


def plate_values(package: Package, results: Results, record: Record) -> None:
    """Keep the forecast of every plate that is called for renewal now or at the next docking."""
    shell = results.condition.shell
    if shell is None or package.condition is None:
        return
    for call in shell.calls:
        if call.call in _CALLED:
            _keep(package, shell, call, record)


def _keep(package: Package, shell: ShellCondition, call: PlateCall, record: Record) -> None:
    found, row = shell.analysis, call.row
    plates, ahead = found.plates, found.ahead
    built, least, allowed = (float(values[row]) for values in (plates.as_built, plates.least, plates.allowable))
    rate, spread = float(found.rate_used[row]), float(found.rate.uncertainty[row])
    words = f"{1e3 * rate:.3f} mm/yr"
    words += " since she was built" if found.since_built[row] else f" ± {1e3 * spread:.3f} mm/yr"
    inputs = {
        "readings": Given(None, f"{int(plates.count[row])} of the latest survey", "shell.survey.latest"),
        "as_built": Given(built, f"{1e3 * built:.1f} mm", "from the surveys"),
        "thickness": Given(least, f"{1e3 * least:.1f} mm, the least reading", "from the surveys"),
        "allowable": Given(allowed, f"{allowed:.0%}", "zones of vessel/condition.yaml"),
        "rate": Given(rate, words, "least squares over the surveys (thickness.rate)"),
    }
    life = float(ahead.life[row])
    outputs = {
        "at_docking": float(ahead.at_docking[row]),
        "at_next": float(ahead.at_next[row]),
        "least_at_next": float(ahead.least_at_next[row]),
        "renewal_thickness": float(renewal_thickness(built, allowed)),
        "call": call.call,
    }
    if not math.isnan(life):
        outputs["life"] = life * _YEAR
    label = package.frames.label if package.frames else str
    about = f"plate {call.name}, {label(call.aft)} to {label(call.forward)}"
    record.keep(FORECAST, f"plate.{call.name.lower().replace(' ', '-')}", about, inputs, outputs)
