"""Nothing is told of sound ships: of other sizes, of other forms, and with lines that were taped."""

from __future__ import annotations

import re
from collections.abc import Callable
from random import Random
from typing import Any

import pytest
from msgspec.structs import replace
from msgspec.structs import replace as with_data

from tenderwright.calculations.steps.registry import steps
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.checks.coherence.ship.registry import check
from tenderwright.checks.context import Context
from tenderwright.model.load import load_package
from tenderwright.notices import Notice
from tenderwright.reading.package import Files
from tests.coherence.damage import sound

FORM = ("vessel/particulars.yaml", "vessel/frames.yaml", "vessel/offsets.yaml")
HULL = (*FORM, *(f"vessel/{name}.yaml" for name in ("tanks", "openings", "appendages", "anodes", "lightship", "zones")))
_MEASURED = re.compile(r"(-?[0-9.]+) (m|m2|m3|t)( ±.*)?")
_POWERS = {"m": 1, "m2": 2, "m3": 3, "t": 3}


def told_of(data: dict[str, Any]) -> list[Notice]:
    """Give what the rules say of a ship of which only some files are there."""
    sources = sound().files.sources
    kept = {path: with_data(sources[path], data=told) for path, told in data.items()}
    files: Files = replace(sound().files, sources=kept | {"package.yaml": sources["package.yaml"]}, photographs={})
    package, notices = load_package(files, {})
    assert notices == []
    calculated = Calculated(package, [replace(step, lazy=True) for step in steps()])
    return list(check(Context(package, sound().compiled.links, calculated)))


def larger(node: Any, factor: float) -> Any:
    """Make what is measured in metres and tonnes larger; what is small stays what it is."""
    if isinstance(node, dict):
        return {key: larger(value, factor) for key, value in node.items() if key not in ("basis", "draft_marks")}
    if isinstance(node, list):
        return [larger(value, factor) for value in node]
    match = _MEASURED.fullmatch(node) if isinstance(node, str) else None
    if match is None:
        return node
    return f"{float(match[1]) * factor ** _POWERS[match[2]]:.6g} {match[2]}"


@pytest.mark.parametrize("factor", [0.5, 1.6, 2.5])
def test_nothing_is_told_of_the_same_ship_in_another_size(factor: float) -> None:
    data = {path: larger(sound().files.sources[path].data, factor) for path in HULL}
    for run in data["vessel/frames.yaml"]["spacing"]:
        run["space"] = f"{float(run['space'].split()[0]) * factor:.1f} mm"
    for name in ("width", "depth"):
        keel = data["vessel/particulars.yaml"]["keel"]
        keel[name] = f"{float(keel[name].split()[0]) * factor:.0f} mm"
    data["vessel/zones.yaml"]["schemes"] = []
    assert told_of(data) == []


Curve = Callable[[float, float], float]
"""Half-breadth as a share of half the beam, by shares of the length from aft and of the depth."""


def _full(x: float, power: float) -> float:
    return float(1 - abs(2 * x - 1) ** power)


def _runs(x: float) -> float:
    return min(1.0, 0.02 + x / 0.2, 0.02 + (1 - x) / 0.3)


FORMS: dict[str, tuple[Curve, Callable[[float], float], Callable[[float], float]]] = {
    "fine": (lambda x, z: _full(x, 2) * (0.1 + 0.9 * (1 - (1 - z) ** 2)), lambda x: 0.0, lambda x: 1.0),
    "full": (lambda x, z: _full(x, 6) * min(1.0, (6 * z) ** 0.5), lambda x: 0.0, lambda x: 1.0),
    "box": (lambda x, z: 1.0, lambda x: 0.0, lambda x: 1.0),
    "swim-ended": (lambda x, z: 1.0, lambda x: max(0.0, 0.8 * (abs(2 * x - 1) - 0.7) / 0.3), lambda x: 1.0),
    "chined": (lambda x, z: _full(x, 3) * (min(1.0, z / 0.3) * 0.85 + 0.15 * z), lambda x: 0.0, lambda x: 1.0),
    "hollow-keeled": (
        lambda x, z: _full(x, 2) * max(0.0, z - 0.6 * (2 * x - 1) ** 2) ** 0.7,
        lambda x: 0.6 * (2 * x - 1) ** 2,
        lambda x: 1 + 0.2 * (2 * x - 1) ** 2,
    ),
    "with a forecastle": (
        lambda x, z: _full(x, 3) * min(1.0, (4 * z) ** 0.5),
        lambda x: 0.0,
        lambda x: 1.4 if x > 0.75 else 1.0,
    ),
    "with straight runs": (lambda x, z: _runs(x) * min(1.0, (6 * z) ** 0.5), lambda x: 0.0, lambda x: 1.0),
}
"""Half-breadth, height of the keel and height of the deck, each by shares."""


def lines(form: str, stations: int, waterlines: int, taped: float) -> dict[str, Any]:
    """Write the form of a ship of 60 m by 10 m by 5 m, whose half-breadths are off by so much."""
    shape, keel, deck = FORMS[form]
    random = Random(7)
    heights = [0.98 * j / (waterlines - 1) for j in range(waterlines)]
    rows = []
    for i in range(stations):
        x = i / (stations - 1)
        half = [5 * shape(x, z) if z >= keel(x) - 1e-9 else 0.0 for z in heights]
        half = [max(0.0, y + random.gauss(0, taped)) if y > 5 * taped else y for y in half]
        edge = {"height": f"{5 * deck(x):.3f} m", "half_breadth": f"{5 * shape(x, 1.0):.3f} m"}
        written = [f"{y:.3f} m" for y in half]
        rows.append({"at": f"{60 * x:.3f} m", "keel": f"{5 * keel(x):.3f} m", "half_breadths": written, "deck": edge})
    dimensions = {"length_overall": "61 m", "length_between_perpendiculars": "60 m", "beam": "10 m", "depth": "5 m"}
    straight = {"from": "28 m", "to": "32 m"}
    return {
        FORM[0]: {
            "name": "A ship",
            "built": 1910,
            "type": "coaster",
            "dimensions": dimensions | {"draft": "3.4 m"},
            "keel": {"kind": "flat", "width": "400 mm", "straight": straight},
        },
        FORM[1]: {"origin": "0 m", "direction": "forward", "spacing": [{"from": 0, "to": 100, "space": "600 mm"}]},
        FORM[2]: {"source": "a curve", "waterlines": [f"{5 * z:.3f} m" for z in heights], "stations": rows},
    }


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize(("stations", "waterlines"), [(7, 5), (11, 8), (21, 12)])
def test_no_offset_of_a_sound_form_is_called_unfair(form: str, stations: int, waterlines: int) -> None:
    for taped in (0.0, 0.015):
        told = told_of(lines(form, stations, waterlines, taped))
        assert [notice.message for notice in told if notice.code == "offset-unfair"] == []


@pytest.mark.parametrize("form", ["fine", "full", "chined", "with straight runs"])
def test_a_half_breadth_that_is_far_off_stands_out(form: str) -> None:
    data = lines(form, 21, 12, 0.015)
    row = data[FORM[2]]["stations"][10]["half_breadths"]
    row[5] = f"{float(row[5].split()[0]) - 0.6:.3f} m"
    (notice,) = [notice for notice in told_of(data) if notice.code == "offset-unfair"]
    assert row[5] in notice.message
