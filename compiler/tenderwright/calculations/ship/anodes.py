"""Anodes fitted: how many, and their mass when new."""

from __future__ import annotations

from typing import Any

from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.value import Given, Record
from tenderwright.model.package import Package

ANODES: Method[Any] = Method(
    name="anode.fitted",
    title="Anodes fitted, and their mass when new",
    formula="N = count; M = sum of net masses",
    source=Citation("Count of the anode list", standing="derived"),
    valid="anodes listed in vessel/anodes.yaml",
    inputs={},
    outputs=(
        Symbol("count", "anodes fitted", "each", "each"),
        Symbol("mass", "net mass of alloy when new", "mass", "kg"),
    ),
    kernel=lambda: {},
    example={},
)


def anode_values(package: Package, record: Record) -> None:
    """Keep the number and mass of the anodes fitted."""
    anodes = package.anodes
    if anodes:
        inputs = {"anodes": Given(None, f"{len(anodes)} anodes", anodes[0].here)}
        outputs = {"count": float(len(anodes)), "mass": sum(anode.mass.si for anode in anodes)}
        record.keep(ANODES, "anodes", "anodes fitted", inputs, outputs)
