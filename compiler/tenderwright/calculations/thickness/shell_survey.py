"""The shell as its surveys found it: what each reading has lost, against the limit of its zone."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, listed, quantity, record, text
from tenderwright.calculations.thickness.analysis import Assessed, assess
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.diminution import RENEW, SUBSTANTIAL
from tenderwright.calculations.thickness.named_plates import PLATES, NamedPlates, plates_from_input
from tenderwright.calculations.thickness.named_readings import PLACED, NamedReadings, readings_from_input
from tenderwright.quantities.display import show

Zones = Sequence[Mapping[str, Any]]
"""Each with `strakes`, `allowable`, and `from` and `to` where it does not run the length of them."""

ZONES = listed(
    record(
        "One zone.",
        ("strakes", "allowable"),
        zone=text("Its name."),
        strakes=listed(text("Name of a strake."), "Strakes that it takes in."),
        **{"from": length("Its after end; that of the strakes where left out."), "to": length("Its forward end.")},
        allowable=quantity("fraction", "What its plate may lose before it is renewed, as its source says."),
    ),
    "Zones with their limits; a reading belongs to the first that fits.",
)


MATERIALS = listed(
    record(
        "One strake of old metal.",
        ("strake", "allowable"),
        strake=text("Its name."),
        allowable=quantity("fraction", "What its plate may lose, whatever the zone allows.", "20 %"),
    ),
    "Strakes whose material has a limit of its own; the lesser holds.",
    0,
)


class Surveyed(Struct, frozen=True, eq=False):
    """Readings of the shell with their limits and states."""

    named: NamedReadings
    plates: NamedPlates
    zones: Zones
    materials: Sequence[Mapping[str, Any]]
    """What plate of old metal may lose, by strake."""
    zone: Ints
    """Zone of each reading, by its place in the list of zones."""
    allowable: Floats
    """What plate may lose at each reading."""
    assessed: Assessed

    def as_input(self) -> dict[str, Any]:
        """Give what it was built from."""
        return {"readings": self.named, "plates": self.plates, "zones": self.zones, "materials": self.materials}


def survey_shell(
    readings: Sequence[Mapping[str, Any]] | NamedReadings,
    plates: Sequence[Mapping[str, Any]] | NamedPlates,
    zones: Zones,
    materials: Sequence[Mapping[str, Any]] = (),
) -> Surveyed:
    """Set readings against the thickness as built and the limits of their zones.

    Formula: D = max(0, t0 - t) / t0; renew where D > a, substantial where D > 0.75 a. Of each plate the latest survey
    that gauged it tells its state. Symbols: thickness as built t0 and measured t; allowable a of the first zone that
    fits, or of its strake's material where that is less. Source: as `diminution` and `classify`. Raises OutOfRange for
    a reading in no zone.
    """
    shell = plates_from_input(plates)
    named = readings_from_input(readings, shell.strakes)
    found = named.readings
    zone = zone_of(named, zones)
    if (zone < 0).any():
        row = int(np.flatnonzero(zone < 0)[0])
        where = f"strake {shell.strakes[int(found.strake[row])]}, {show(found.x[row], 'centre')} forward"
        raise OutOfRange(f"a reading at {where} lies in no zone")
    allowable: Floats = np.array([one["allowable"] for one in zones])[zone]
    if materials:
        most = {one["strake"]: one["allowable"] for one in materials}
        caps = np.array([most.get(name, np.inf) for name in shell.strakes])
        allowable = np.minimum(allowable, caps[found.strake])
    plate = shell.grid.plate_of(found.strake, found.side, found.x)
    return Surveyed(named, shell, zones, materials, zone, allowable, assess(found, plate, shell.grid.count, allowable))


def surveyed_from_input(survey: Mapping[str, Any] | Surveyed) -> Surveyed:
    """Survey the shell by converted input, or take what was surveyed. Raises OutOfRange."""
    return survey if isinstance(survey, Surveyed) else survey_shell(**survey)


def zone_of(named: NamedReadings, zones: Zones) -> Ints:
    """Give the zone of each reading, the first that fits; -1 where none does."""
    zone = np.full(len(named.readings), -1, np.int64)
    for index in reversed(range(len(zones))):
        zone[np.flatnonzero(_in_zone(named, zones[index]))] = index
    return zone


def _in_zone(named: NamedReadings, zone: Mapping[str, Any]) -> Flags:
    inside = np.array([name in zone["strakes"] for name in named.strakes], np.bool_)
    rows: Flags = inside[named.readings.strake]
    if "from" in zone:
        rows &= named.readings.x >= zone["from"]
    if "to" in zone:
        rows &= named.readings.x <= zone["to"]
    return rows


def outputs_of(surveyed: Surveyed) -> dict[str, float]:
    """Give the survey as the outputs of the method."""
    found, latest = surveyed.assessed, surveyed.assessed.latest
    state = found.state[latest]
    return {
        "readings": float(len(surveyed.named.readings)),
        "latest": float(latest.sum()),
        "greatest_loss": float(found.found.fraction[latest].max(initial=0.0)),
        "beyond": float((state == RENEW).sum()),
        "substantial": float((state == SUBSTANTIAL).sum()),
        "above_nominal": float(found.found.above_nominal[latest].sum()),
    }


SURVEY = record(
    "The shell as surveyed, as `shell.survey` takes it.",
    ("readings", "plates", "zones"),
    readings=PLACED,
    plates=PLATES,
    zones=ZONES,
    materials=MATERIALS,
)
EXAMPLE_SURVEY: Mapping[str, Any] = {
    "readings": [
        {
            "survey": number,
            "date": date,
            "strake": strake,
            "side": "port",
            "at": at,
            "as_built": "9.5 mm",
            "measured": measured,
        }
        for number, date, strake, at, measured in (
            (1, "2007-09-15", "B", "12.3 m", "8.9 mm"),
            (1, "2007-09-15", "C", "14.1 m", "8.6 mm"),
            (2, "2025-10-06", "B", "12.1 m", "8.1 mm"),
            (2, "2025-10-06", "B", "12.6 m", "7.4 mm"),
            (2, "2025-10-06", "C", "14.0 m", "6.8 mm"),
        )
    ],
    "plates": [
        {"strake": "B", "ends": ["2.4 m", "9.6 m", "16.8 m"]},
        {"strake": "C", "ends": ["2.4 m", "11.4 m", "18.6 m"]},
    ],
    "zones": [
        {"zone": "engine room bottom", "strakes": ["B"], "from": "9 m", "to": "15 m", "allowable": "20 %"},
        {"zone": "bottom", "strakes": ["B", "C"], "allowable": "25 %"},
    ],
}

METHOD = Method(
    name="shell.survey",
    title="Readings of the shell, and their diminution",
    formula="D = max(0, t0 - t) / t0; substantial above 0.75 a, renew above a",
    source=Citation("IMO 2011 ESP Code", "1.2.9; LR Naval Survey Guidance, Ch. 11, 2.1.3"),
    valid="readings of the latest survey that gauged each plate; pits apart",
    inputs={"readings": PLACED, "plates": PLATES, "zones": ZONES, "materials": MATERIALS},
    optional=frozenset({"materials"}),
    outputs=(
        Symbol("readings", "readings of plate, all surveys", "each", "each"),
        Symbol("latest", "readings that tell the present state", "each", "each"),
        Symbol("greatest_loss", "greatest diminution", "fraction", "%"),
        Symbol("beyond", "readings beyond the allowable diminution", "each", "each"),
        Symbol("substantial", "readings with substantial corrosion, those beyond the limit besides", "each", "each"),
        Symbol("above_nominal", "readings above the thickness as built", "each", "each"),
    ),
    kernel=survey_shell,
    figures=outputs_of,
    example=EXAMPLE_SURVEY,
    cautions=("Limits are inputs: the naval architect or surveyor decides which hold.",),
)
