"""Hulls whose particulars are known exactly, and one invented ship-shaped hull."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.hydrostatics.hull_form import HullForm, hull_form


def wigley(length: float = 100.0, breadth: float = 10.0, draft: float = 6.25, intervals: int = 20) -> HullForm:
    x = np.linspace(0.0, length, intervals + 1)
    z = np.linspace(0.0, draft, 9)
    along = 1 - (2 * x / length - 1) ** 2
    up = 1 - (1 - z / draft) ** 2
    return hull_form(length=length, stations=x, waterlines=z, half_breadths=breadth / 2 * np.outer(along, up))


def barge(length: float = 40.0, breadth: float = 8.0, depth: float = 5.0) -> HullForm:
    return hull_form(
        length=length,
        stations=np.linspace(0.0, length, 9),
        waterlines=np.linspace(0.0, depth, 6),
        half_breadths=np.full((9, 6), breadth / 2),
    )


def prism(length: float = 40.0, breadth: float = 8.0, depth: float = 4.0) -> HullForm:
    z = np.linspace(0.0, depth, 5)
    return hull_form(
        length=length,
        stations=np.linspace(0.0, length, 9),
        waterlines=z,
        half_breadths=np.tile(breadth / 2 * z / depth, (9, 1)),
    )


def cylinder(radius: float = 3.0, length: float = 30.0) -> HullForm:
    heights = radius * (1 - np.cos(np.linspace(0.0, np.pi, 65)))
    half = np.sqrt(np.maximum(radius**2 - (heights - radius) ** 2, 0.0))
    return hull_form(
        length=length,
        stations=np.linspace(0.0, length, 5),
        waterlines=heights,
        half_breadths=np.tile(half, (5, 1)),
    )


def coaster() -> HullForm:
    """An invented ship of 40 m with half stations, a rising keel aft, sheer and a raked stem."""
    x: NDArray[np.float64] = np.array([-1.0, 0, 2, 4, 8, 12, 16, 20, 24, 28, 32, 36, 38, 40])
    z: NDArray[np.float64] = np.array([0, 0.5, 1, 2, 3, 4], dtype=np.float64)
    keel = np.array([2.5, 0.6, 0.2, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0.1, 0.5])
    rows = [
        [0, 0, 0, 0, 0.8, 1.9],
        [0, 0, 0.2, 0.8, 2.0, 2.8],
        [0, 0.3, 0.7, 1.7, 2.8, 3.3],
        [0.2, 0.9, 1.5, 2.6, 3.4, 3.7],
        [0.4, 2.0, 2.7, 3.6, 4.0, 4.1],
        [0.5, 2.8, 3.5, 4.1, 4.2, 4.2],
        [0.5, 3.1, 3.8, 4.2, 4.2, 4.2],
        [0.5, 3.1, 3.8, 4.2, 4.2, 4.2],
        [0.5, 3.0, 3.7, 4.2, 4.2, 4.2],
        [0.5, 2.5, 3.2, 3.9, 4.1, 4.2],
        [0.4, 1.6, 2.3, 3.1, 3.5, 3.8],
        [0.2, 0.6, 1.0, 1.6, 2.1, 2.6],
        [0, 0.2, 0.4, 0.8, 1.1, 1.6],
        [0, 0, 0.1, 0.1, 0.1, 0.4],
    ]
    return hull_form(
        length=40.0,
        stations=x,
        waterlines=z,
        half_breadths=np.array(rows),
        keel_heights=keel,
        deck_heights=4.8 + 1.2 * ((x - 18) / 22) ** 2,
        deck_half_breadths=np.array(rows)[:, -1] + 0.1,
        half_sidings=0.1,
    )
