"""Every figure of the condition of the shell comes out the same from the inputs that stand beside it."""

from __future__ import annotations

from tenderwright.calculations.plain import plain
from tenderwright.calculations.steps.again import different
from tenderwright.calculations.value import Record

from .ship import marram

METHODS = {
    "shell.survey",
    "shell.plates",
    "shell.plate",
    "shell.zone-rate",
    "thickness.pitting",
    "thickness.member",
    "shell.renewal",
    "shell.contingent",
    "shell.gauging",
}


def test_the_figures_come_out_the_same_from_plain_inputs() -> None:
    _, record, _ = marram()
    ours = {name: value for name, value in record.values.items() if value.working.method.name in METHODS}
    assert {value.working.method.name for value in ours.values()} == METHODS
    assert [value.name for value, _ in different(Record(ours))] == []


def test_an_input_that_is_changed_changes_the_figure() -> None:
    """Half a millimetre off the last reading of the topside is more than its mean loss can hide."""
    _, record, _ = marram()
    value = record.values["shell.zone.topside.mean-loss"]
    inputs = {name: plain(entry.si) for name, entry in value.working.inputs.items()}
    (topside,) = [zone for zone in inputs["forecast"]["survey"]["zones"] if zone["zone"] == "topside"]
    last = next(
        row for row in reversed(inputs["forecast"]["survey"]["readings"]) if row["strake"] in topside["strakes"]
    )
    last["measured"] -= 5e-4
    assert value.working.method.run(**inputs)["mean_loss"] > value.si
