"""How sure it is how she floats and lands: held against drawing every source at random and landing her each time."""

from __future__ import annotations

from math import atan, sqrt
from typing import Any

import numpy as np
import pytest

from tenderwright.calculations.hydrostatics.hull_form import hull_form
from tenderwright.calculations.landing.exact import Lander, held_particulars, settle_exactly
from tenderwright.calculations.landing.held import BlockLine
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.uncertainty.afloat import METHOD, how_sure

DRAWS = 500
STATIONS = [float(x) for x in range(0, 41, 5)]
BREADTHS = [
    [0.0, 0.2, 0.9, 2.1, 2.9], [0.2, 1.6, 2.6, 3.3, 3.7], [0.4, 2.9, 3.7, 4.0, 4.1], [0.5, 3.5, 4.1, 4.2, 4.2],
    [0.5, 3.6, 4.2, 4.2, 4.2], [0.5, 3.4, 4.0, 4.2, 4.2], [0.4, 2.5, 3.2, 3.6, 3.9], [0.2, 1.2, 1.7, 2.1, 2.6],
    [0.0, 0.1, 0.1, 0.1, 0.2],
]  # fmt: skip
DECKS = [5.2, 5.0, 4.8, 4.7, 4.7, 4.8, 5.0, 5.3, 5.7]
DECK_BREADTHS = [2.9, 3.7, 4.1, 4.2, 4.2, 4.2, 3.9, 2.6, 0.2]


def _form(broader: float = 0.0) -> Any:
    return hull_form(
        length=40.0,
        stations=STATIONS,
        waterlines=[0.0, 1.0, 2.0, 3.0, 4.0],
        half_breadths=[[y * (1 + broader) for y in row] for row in BREADTHS],
        keel_heights=[0.0] * 9,
        deck_heights=DECKS,
        deck_half_breadths=[y * (1 + broader) for y in DECK_BREADTHS],
    )


LIGHT = {"name": "light", "mass": 440e3, "x": 18.6, "y": 0.0, "z": 3.1,
         "u_mass": 4e3, "u_x": 0.05, "u_y": 0.002, "u_z": 0.05}  # fmt: skip
STORES = {"name": "stores", "mass": 30e3, "x": 26.0, "y": 0.3, "z": 3.5,
          "u_mass": 2e3, "u_x": 0.5, "u_y": 0.05, "u_z": 0.1}  # fmt: skip
TANK = {"name": "peak", "mass": 10e3, "x": 35.5, "y": 0.0, "z": 2.4, "density": 1025.0, "surface": 6.0,
        "u_level": 0.01, "u_share": 0.02}  # fmt: skip
U_DENSITY, U_BREADTH = 2.0, 0.01
MOMENT = 5e3


def _landed(rows: list[dict[str, Any]], density: float, broader: float) -> dict[str, float]:
    mass = sum(row["mass"] for row in rows)
    x, y, z = (sum(row["mass"] * row[axis] for row in rows) / mass for axis in "xyz")
    ship = Lander(_form(broader), mass, x, z, density, BlockLine(4.0, 36.0), 0.0, MOMENT)
    free, settling = ship.under(0.0, 0.0), settle_exactly(ship).settling
    gm = free.km_transverse - z - MOMENT / mass
    return {
        "displacement": mass,
        "trim": free.trim,
        "draft_aft": free.draft_aft,
        "draft_forward": free.draft_forward,
        "list": atan(-y / gm),
        "gm": gm,
        "upthrust": settling.upthrust,
        "gm_at_settling": settling.stability.gm,
    }


def test_drawing_every_source_at_random_spreads_the_figures_as_much() -> None:
    """Against Monte Carlo (JCGM 101:2008): the spread of 500 landings, itself known to some 3 %."""
    found = how_sure(
        [LIGHT, STORES],
        [TANK],
        1012.0,
        U_DENSITY,
        U_BREADTH,
        MOMENT,
        block_aft=4.0,
        block_forward=36.0,
        offsets=_form(),
    )
    draw = np.random.default_rng(1934).standard_normal
    landings = []
    for _ in range(DRAWS):
        rows = [
            row | {axis: row[axis] + row[f"u_{axis}"] * draw() for axis in ("mass", "x", "y", "z")}
            for row in (LIGHT, STORES)
        ]
        more = TANK["density"] * TANK["surface"] * TANK["u_level"] * draw() + TANK["mass"] * TANK["u_share"] * draw()
        rows.append(TANK | {"mass": TANK["mass"] + more})
        landings.append(_landed(rows, 1012.0 + U_DENSITY * draw(), U_BREADTH * draw()))
    for figure, one in found.figures.items():
        assert one.u == pytest.approx(np.std([landing[figure] for landing in landings]), rel=0.1), figure


def test_a_mass_alone_is_the_uncertainty_of_the_displacement() -> None:
    found = how_sure([LIGHT, STORES], [TANK], offsets=_form())
    by_hand = sqrt(4e3**2 + 2e3**2 + (1025 * 6 * 0.01) ** 2 + (10e3 * 0.02) ** 2)
    assert found.u("displacement") == pytest.approx(by_hand)
    assert found.figures["displacement"].driver == "light: mass"
    assert found.u("line_load") is None


def test_the_line_load_follows_weight_and_centre() -> None:
    """q = (W/L)(1 + 6 e/L) at the heavy end: with the centre in the middle W/L u_W/W and 6 W u_x/L^2 (derived)."""
    one = LIGHT | {"x": 20.1, "u_mass": 4e3, "u_x": 0.05, "u_y": 0.0, "u_z": 0.0}
    found = how_sure([one], keel_aft=4.0, keel_forward=36.0, offsets=_form())
    e, length, mass = 0.1, 32.0, 440e3
    by_hand = sqrt((4e3 / length * (1 + 6 * e / length)) ** 2 + (6 * mass * 0.05 / length**2) ** 2)
    assert found.u("line_load") == pytest.approx(by_hand, rel=1e-4)


def test_the_greatest_block_of_a_level_line_takes_its_share() -> None:
    """R = W/n (1 + 12 e (n - 1)/(2 (n^2 - 1) p)) at the end of n equal blocks at pitch p, by moments (derived)."""
    one = LIGHT | {"x": 20.1, "u_mass": 4e3, "u_x": 0.0, "u_y": 0.0, "u_z": 0.0}
    line = [{"x": 5.0 + 3.0 * number, "length": 0.4, "width": 1.0} for number in range(11)]
    found = how_sure([one], keel_blocks=line, offsets=_form())
    end = (1 + 12 * 0.1 * 15.0 / (3.0**2 * (11**2 - 1))) / 11
    assert found.u("block") == pytest.approx(end * 4e3, rel=1e-3)


def test_twice_as_uncertain_is_twice_as_much() -> None:
    once = how_sure([LIGHT], block_aft=4.0, block_forward=36.0, offsets=_form())
    doubled = LIGHT | {name: 2 * LIGHT[name] for name in ("u_mass", "u_x", "u_y", "u_z")}
    twice = how_sure([doubled], block_aft=4.0, block_forward=36.0, offsets=_form())
    for figure, one in once.figures.items():
        assert twice.figures[figure].u == pytest.approx(2 * one.u)


def test_on_an_even_keel_the_upthrust_is_that_of_the_trim_that_may_be() -> None:
    """P = MCTC t/l, by the hand method (derived)."""
    level = _level(LIGHT) | {"u_mass": 0.0, "u_z": 0.0}
    found = how_sure([level], block_aft=4.0, block_forward=36.0, offsets=_form())
    ship = Lander(_form(), level["mass"], level["x"], level["z"], 1025.0, BlockLine(4.0, 36.0))
    held = held_particulars(ship)
    by_hand = held.moment_to_change_trim * (found.u("trim") or 0.0) / (held.lcf - 4.0)
    assert found.u("upthrust") == pytest.approx(by_hand, rel=0.02)


def _level(row: dict[str, Any]) -> dict[str, Any]:
    """Set the centre where she floats on an even keel but for a hair by the stern, by halving."""
    low, high = 15.0, 25.0
    for _ in range(60):
        x = (low + high) / 2
        ship = Lander(_form(), row["mass"], x, row["z"], 1025.0, BlockLine(4.0, 36.0))
        low, high = (low, x) if ship.under(0.0, 0.0).trim < 0 else (x, high)
    return row | {"x": (low + high) / 2 - 1e-9}


def test_a_ship_that_weighs_nothing() -> None:
    with pytest.raises(OutOfRange, match="more than nothing"):
        METHOD.kernel(offsets=_form(), weights=[LIGHT | {"mass": 0.0}])


def test_she_must_float() -> None:
    with pytest.raises(OutOfRange):
        how_sure([LIGHT | {"mass": 9e6}], offsets=_form())


def test_lines_drawn_between_few_sections_make_trim_and_stability_less_sure() -> None:
    """Against a hull that is shifted, broadened and raised by as much as they may be out."""
    level = LIGHT | dict.fromkeys(("u_mass", "u_x", "u_y", "u_z"), 0.0)
    found = how_sure(
        [level], offsets=_form(), volume_uncertainty=0.01, centre_uncertainty=0.1, metacentre_uncertainty=0.05
    ).figures
    at = _landed([level], 1025.0, 0.0)
    shifted = _landed([level | {"x": level["x"] + 0.1}], 1025.0, 0.0)
    lighter = _landed([level], 1025.0 * 1.01, 0.0)
    trim = sqrt((shifted["trim"] - at["trim"]) ** 2 + (lighter["trim"] - at["trim"]) ** 2)
    assert found["trim"].u == pytest.approx(trim, rel=0.02)
    assert dict(found["gm"].shares)["metacentre between sections"] * found["gm"].u ** 2 == pytest.approx(0.05**2)
    assert found["displacement"].u == 0.0
