"""A potential brought from the cell that it was read with to silver/silver chloride in sea water."""

from __future__ import annotations

from math import log

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity

GAS, FARADAY, KELVIN = 8.314462618, 96485.33212, 273.15
"""Molar gas constant J/(mol K), Faraday constant C/mol (CODATA 2018), and 0 degC in K."""
SEA = 35.0
"""Salinity of the sea water in which an open silver cell reads true, g/kg."""
USUAL_TEMPERATURE = 15.0
"""Temperature of the water where none was read, degC."""
LEAST_SALINITY = 0.5
"""Below it an open silver cell reads nothing that can be corrected, g/kg."""

SHIFT = {"silver": 0.0, "silver gel": -0.05, "copper": 0.05, "calomel": 0.0, "zinc": -1.05}
"""What is added to a reading with each cell, V (from memory)."""
SPREAD = {"silver": 0.005, "silver gel": 0.01, "copper": 0.01, "calomel": 0.005, "zinc": 0.02}
"""Standard uncertainty of a reading with each cell, V (common practice, no source)."""


class OnSilver(Struct, frozen=True):
    """A potential against silver/silver chloride in sea water, V."""

    potential: float
    correction: float
    """What was added to the reading."""
    u: float
    """Standard uncertainty."""


def on_silver(
    reading: float, cell: str, salinity: float | None = None, temperature: float = USUAL_TEMPERATURE
) -> OnSilver:
    """Bring a potential to silver/silver chloride in sea water.

    Formula: E = E_read + shift of the cell; for an open silver cell E = E_read + (R T/F) ln(35/S), since its own
    potential follows the chloride of the water (Nernst) and brackish water lets steel look better protected than it is.
    Symbols: reading E_read in V with `silver` (open), `silver gel` (sealed, saturated), `copper` (copper sulphate),
    `calomel` or `zinc`; salinity S in g/kg, as that of the sea where none was read; temperature in degC.
    Range: S from 0.5 to 45 g/kg; activities taken in step with concentration. Source: derived; the shifts from memory.
    Raises OutOfRange.
    """
    if cell not in SHIFT:
        raise OutOfRange(f"`{cell}` is none of the reference cells: {', '.join(SHIFT)}")
    if abs(reading) > 3.0:
        raise OutOfRange(f"{reading:g} V is no potential of metal in water")
    brackish = 0.0
    if cell == "silver" and salinity is not None:
        if not LEAST_SALINITY <= salinity <= 45.0:
            raise OutOfRange(
                f"an open silver cell is corrected from {LEAST_SALINITY:g} to 45 g/kg, not at {salinity:g}"
            )
        brackish = GAS * (temperature + KELVIN) / FARADAY * log(SEA / salinity)
    correction = SHIFT[cell] + brackish
    return OnSilver(reading + correction, correction, SPREAD[cell])


CELL = {"type": "string", "enum": list(SHIFT), "description": "The reference cell."}
METHOD = Method(
    name="care.reference-cell",
    title="A potential against silver/silver chloride in sea water",
    formula="E = E_read + shift; open silver cell E = E_read + (R T/F) ln(35/S)",
    source=Citation("Nernst's equation for the open cell", standing="derived"),
    valid="salinity from 0.5 to 45 g/kg; shifts from cell to cell are from memory",
    inputs={
        "reading": quantity("potential", "The reading."),
        "cell": CELL,
        "salinity": quantity("salinity", "Salinity of the water; that of the sea, 35 g/kg, unless given."),
        "temperature": quantity("temperature", "Temperature of the water; 15 degC unless given."),
    },
    outputs=(
        Symbol("potential", "potential against silver/silver chloride in sea water", "potential", "V"),
        Symbol("correction", "what was added to the reading", "potential", "V"),
        Symbol("u", "standard uncertainty", "potential", "V"),
    ),
    kernel=on_silver,
    figures=lambda found: {"potential": found.potential, "correction": found.correction, "u": found.u},
    example={"reading": "-0.86 V", "cell": "silver", "salinity": "8 g/kg", "temperature": "10 degC"},
    optional=frozenset({"salinity", "temperature"}),
    cautions=("a cell is held against a second one before each round; dry, dirty or painted cells read anything",),
)
