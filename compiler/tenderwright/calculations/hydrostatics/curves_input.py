"""A table of hydrostatics as an input: its shape and how it becomes a hull."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np

from tenderwright.calculations.hydrostatics.curves import COLUMNS, HullCurves
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schema import length, listed, quantity, record

CURVES: Mapping[str, Any] = record(
    "A table of hydrostatics on an even keel, where there are no offsets; x forward of the after perpendicular, z "
    "above the baseline. A column that is given is given at every draft.",
    ("length", "density", "rows"),
    length=length("Length between perpendiculars."),
    density=quantity("density", "Density of the water that the table is for."),
    moment_kg=length("KG with which the moments to change trim were worked; left out where BM_L stood for it.", "3 m"),
    rows=listed(
        record(
            "One draft.",
            ("draft", "displacement", "lcb", "km"),
            draft=length("Draft above the baseline."),
            displacement=quantity("mass", "Mass displaced in the table's water."),
            lcb=length("Centre of buoyancy, forward of AP."),
            km=length("Transverse metacentre above the baseline."),
            kb=length("Centre of buoyancy above the baseline; by Morrish's formula where left out."),
            lcf=length("Centre of flotation, forward of AP; from displacement and LCB where left out."),
            immersion=quantity("line_load", "Mass per unit of immersion (TPC); from the displacement where left out."),
            moment=quantity("mass", "Moment per unit of trim (MCTC).", "5.9 t*m/cm"),
            bm_longitudinal=length("Longitudinal metacentric radius, in place of the moment.", "58 m"),
            wetted_surface=quantity("area", "Wetted surface.", "350 m2"),
        ),
        "The drafts, rising.",
        3,
    ),
)


def curves_from_input(curves: Mapping[str, Any] | HullCurves) -> HullCurves:
    """Make the hull from a converted table, or take one that is made. Raises OutOfRange."""
    if isinstance(curves, HullCurves):
        return curves
    rows = curves["rows"]
    columns: dict[str, Any] = {}
    for name in ("draft", *COLUMNS):
        given = [row[name] for row in rows if name in row]
        if given and len(given) != len(rows):
            raise OutOfRange(f"`{name}` is given at {len(given)} drafts of {len(rows)}; give it at each or at none")
        if given:
            columns["drafts" if name == "draft" else name] = np.array(given, dtype=np.float64)
    return HullCurves(length=curves["length"], density=curves["density"], moment_kg=curves.get("moment_kg"), **columns)


def _row(draft: str, displacement: str, lcb: str, km: str, lcf: str, immersion: str, moment: str) -> dict[str, str]:
    return {
        "draft": draft,
        "displacement": displacement,
        "lcb": lcb,
        "km": km,
        "lcf": lcf,
        "immersion": immersion,
        "moment": moment,
    }


EXAMPLE_CURVES: Mapping[str, Any] = {
    "length": "40 m",
    "density": "1025 kg/m3",
    "rows": [
        _row("1.0 m", "121.0 t", "19.52 m", "5.56 m", "19.37 m", "1.95 t/cm", "3.75 t*m/cm"),
        _row("1.4 m", "206.7 t", "19.42 m", "5.39 m", "19.21 m", "2.30 t/cm", "4.61 t*m/cm"),
        _row("1.8 m", "302.7 t", "19.32 m", "4.69 m", "19.00 m", "2.47 t/cm", "5.23 t*m/cm"),
        _row("2.2 m", "402.8 t", "19.21 m", "4.10 m", "18.76 m", "2.55 t/cm", "5.73 t*m/cm"),
        _row("2.6 m", "507.2 t", "19.10 m", "3.95 m", "18.61 m", "2.67 t/cm", "6.27 t*m/cm"),
        _row("3.0 m", "615.9 t", "19.01 m", "3.90 m", "18.52 m", "2.77 t/cm", "6.77 t*m/cm"),
        _row("3.4 m", "728.4 t", "18.93 m", "3.90 m", "18.49 m", "2.85 t/cm", "7.22 t*m/cm"),
    ],
}
