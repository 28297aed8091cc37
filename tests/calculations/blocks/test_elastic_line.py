"""The elastic keel line against Hetényi's closed forms, against a dense solve, and by its laws."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from tenderwright.calculations.blocks.area_moment import Block, area_moment
from tenderwright.calculations.blocks.block_tridiagonal import solve_block_tridiagonal
from tenderwright.calculations.blocks.elastic_line import Girder, elastic_keel_line, girder
from tenderwright.calculations.blocks.overhang import overhang_peak
from tenderwright.calculations.blocks.winkler import characteristic, force_at_middle, forces_at_ends
from tenderwright.calculations.method import OutOfRange

EI, K, L, P = 2.0e9, 5.0e6, 40.0, 5.0e6
LAM = characteristic(K, EI)


def many_springs(count: int, ends: float, middle: float, k: float = K) -> tuple[float, float, float]:
    """End and middle deflection and middle moment on `count` bays of springs that stand for a foundation."""
    x, spring = np.linspace(0.0, L, count + 1), np.full(count + 1, k * L / count)
    spring[[0, -1]] /= 2
    forces = np.zeros(count + 1)
    forces[[0, -1]], forces[count // 2] = ends, middle
    found = elastic_keel_line(girder(x, EI, 0.0, forces), np.arange(count + 1), spring, can_pull=True)
    return found.deflection[0], found.deflection[count // 2], found.moment[count // 2]


@pytest.mark.parametrize("slenderness", [0.5, 2.0, np.pi, 6.3245553, 12.0])
@pytest.mark.parametrize("place", ["ends", "middle"])
def test_tends_to_hetenyi_as_the_springs_close_up(slenderness, place):
    """Hetényi, Beams on Elastic Foundation, 1946, ch. IV: the difference falls with the square of the spacing, and by
    Richardson's extrapolation from 400 and 800 bays no more than 1e-8 of the greatest value is left."""
    k = 4 * EI * (slenderness / L) ** 4
    forms = forces_at_ends if place == "ends" else force_at_middle
    exact = forms(P, k, slenderness / L, L)
    wanted = np.array([exact.end, exact.middle, exact.moment_middle])
    greatest = max(abs(exact.end), abs(exact.middle))
    scale = np.array([greatest, greatest, max(abs(exact.moment_middle), 1e-3 * P * L)])
    ends, middle = (P, 0.0) if place == "ends" else (0.0, P)
    errors = [(np.array(many_springs(n, ends, middle, k)) - wanted) / scale for n in (200, 400, 800)]
    assert np.abs(errors[0]).max() < 2e-3 * max(1.0, (slenderness / 6) ** 2)
    assert np.abs(errors[2]).max() < np.abs(errors[0]).max() / 15
    assert np.abs((4 * errors[2] - errors[1]) / 3).max() < 1e-8 * max(1.0, slenderness**2)


def test_check_set_to_nine_figures():
    """Derived, by 400 finite elements: y_end 0.3173150120, y_mid -0.0268096923, M_mid 5.52653764e4."""
    coarse, fine = np.array(many_springs(800, P, 0.0)), np.array(many_springs(1600, P, 0.0))
    found = (4 * fine - coarse) / 3
    assert found[0] == pytest.approx(0.3173150120, rel=1e-9)
    assert found[1] == pytest.approx(-0.0268096923, rel=2e-9)
    assert found[2] == pytest.approx(5.52653764e4, rel=2e-9)


def dense(hull: Girder, at: np.ndarray, k: float) -> tuple[np.ndarray, np.ndarray]:
    """The same beam by cubic finite elements and numpy's dense solution: deflections and slopes at nodes."""
    n = hull.nodes.size
    matrix, right = np.zeros((2 * n, 2 * n)), np.zeros(2 * n)
    right[::2] = hull.forces
    for i, h in enumerate(np.diff(hull.nodes)):
        where = slice(2 * i, 2 * i + 4)
        part = [[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h], [-12, -6 * h, 12, -6 * h]]
        part.append([6 * h, 2 * h * h, -6 * h, 4 * h * h])
        matrix[where, where] += hull.bending_stiffness[i] / h**3 * np.array(part)
        qa, qf = hull.load_aft[i], hull.load_forward[i]
        right[where] += (
            h / 60 * np.array([21 * qa + 9 * qf, h * (3 * qa + 2 * qf), 9 * qa + 21 * qf, -h * (2 * qa + 3 * qf)])
        )
    matrix[2 * at, 2 * at] += k
    found = np.linalg.solve(matrix, right)
    return found[::2], found[1::2]


@given(st.integers(2, 25), st.randoms(use_true_random=False))
@settings(max_examples=40)
def test_equals_a_dense_solution_by_finite_elements(count, random):
    numbers = np.random.default_rng(random.randrange(2**32))
    n = count + 2
    hull = girder(
        np.cumsum(numbers.uniform(0.3, 3.0, n)),
        numbers.uniform(1e9, 2e10, n - 1),
        numbers.uniform(0.0, 3e5, n),
        numbers.uniform(0.0, 1e5, n),
    )
    at = np.sort(numbers.choice(n, count, replace=False))
    found = elastic_keel_line(hull, at, 3e7, can_pull=True)
    wanted, _ = dense(hull, at, 3e7)
    assert found.deflection == pytest.approx(wanted, rel=1e-7, abs=1e-7 * float(np.abs(wanted).max()))


def loads_of(hull: Girder) -> tuple[float, float]:
    """Total load and its moment about x = 0."""
    h, x = np.diff(hull.nodes), hull.nodes[:-1]
    total = 0.5 * h * (hull.load_aft + hull.load_forward)
    moment = x * total + h * h * (hull.load_aft + 2 * hull.load_forward) / 6
    return float(total.sum() + hull.forces.sum()), float(moment.sum() + hull.forces @ hull.nodes)


@given(st.lists(st.floats(0.0, 4e5), min_size=12, max_size=12), st.floats(1e7, 1e10), st.floats(1e6, 1e9))
def test_balances_and_never_pulls(load, ei, k):
    hull = girder(np.linspace(-2.0, 42.0, 12), ei, load)
    total, moment = loads_of(hull)
    assume(total > 1e5)
    at = np.arange(1, 11)
    assume(2.5 < moment / total < 37.5)
    found = elastic_keel_line(hull, at, k)
    assert found.reactions.min() >= 0.0
    assert found.reactions.sum() == pytest.approx(total, rel=1e-7)
    assert found.reactions @ hull.nodes[at] == pytest.approx(moment, rel=1e-6)
    lifted = ~found.bears
    assert np.all(found.deflection[at][lifted] <= 1e-12)
    assert found.moment[[0, -1]] == pytest.approx([0.0, 0.0], abs=1e-6 * total)


@given(st.floats(4.0, 36.0), st.floats(0.2, 5.0))
def test_stiff_hull_tends_to_the_area_moment_method(lcg, spread):
    places = np.arange(2.0, 40.0, 4.0)
    nodes = np.unique(np.append(places, lcg))
    forces = np.where(nodes == lcg, 2e7, 0.0)
    at = np.searchsorted(nodes, places)
    found = elastic_keel_line(girder(nodes, 1e16, 0.0, forces), at, 1e7 * spread)
    rigid = area_moment(2e7, lcg, [Block(float(x), 1.0, 1.0) for x in places])
    assert found.reactions == pytest.approx(np.array(rigid.reactions), abs=2e-5 * 2e7)


def test_middle_lifts_under_loads_at_the_ends():
    n = 200
    x, forces = np.linspace(0.0, L, n), np.zeros(n)
    forces[[0, -1]] = P
    found = elastic_keel_line(girder(x, EI, 0.0, forces), np.arange(n), K * L / n)
    assert not found.bears[n // 2]
    assert found.bears[0]
    assert found.rounds > 1
    assert found.reactions == pytest.approx(found.reactions[::-1], abs=1e-6 * P)


def test_peak_at_the_end_of_a_long_keel_line():
    """Hetényi's half-endless beam: an overhanging load adds 2 P lam + 2 M lam^2 to the last blocks."""
    x = np.concatenate([[-2.0], np.arange(0.0, 60.05, 0.1)])
    forces = np.zeros(x.size)
    forces[0] = 1e5
    hull = girder(x, 2e9, 0.0, forces)
    spring = np.full(x.size - 1, 5e6 * 0.1)
    spring[0] /= 2
    found = elastic_keel_line(hull, np.arange(1, x.size), spring, can_pull=True)
    wanted = overhang_peak(1e5, 5e6, 2e9, 2e5)["peak"]
    assert 5e6 * found.deflection[1] == pytest.approx(wanted, rel=1e-3)


def test_low_block_carries_less():
    x = np.linspace(0.0, 20.0, 11)
    hull = girder(x, 5e9, 1e5)
    even = elastic_keel_line(hull, np.arange(11), 5e7)
    gaps = np.zeros(11)
    gaps[5] = 0.003
    low = elastic_keel_line(hull, np.arange(11), 5e7, gaps)
    assert low.reactions[5] < even.reactions[5]
    assert low.reactions[4] > even.reactions[4]
    assert low.reactions.sum() == pytest.approx(even.reactions.sum())
    gaps[5] = 1.0
    assert not elastic_keel_line(hull, np.arange(11), 5e7, gaps).bears[5]


@given(st.integers(1, 40), st.integers(1, 3), st.randoms(use_true_random=False))
def test_block_tridiagonal_equals_dense(n, m, random):
    numbers = np.random.default_rng(random.randrange(2**32))
    lower, upper = numbers.normal(size=(2, n, m, m))
    middle = numbers.normal(size=(n, m, m)) + 8 * m * np.eye(m)
    right = numbers.normal(size=(n, m))
    whole = np.zeros((n * m, n * m))
    for i in range(n):
        here = slice(i * m, i * m + m)
        whole[here, here] = middle[i]
        if i:
            whole[here, i * m - m : i * m] = lower[i]
        if i < n - 1:
            whole[here, i * m + m : i * m + 2 * m] = upper[i]
    wanted = np.linalg.solve(whole, right.ravel()).reshape(n, m)
    assert solve_block_tridiagonal(lower, middle, upper, right) == pytest.approx(wanted, abs=1e-12)


def test_refusals():
    x = np.linspace(0.0, 10.0, 5)
    with pytest.raises(OutOfRange, match="nodes"):
        girder([0.0, 0.0, 1.0], 1e9)
    with pytest.raises(OutOfRange, match="EI"):
        girder(x, 0.0)
    with pytest.raises(OutOfRange, match="finite"):
        girder(x, 1e9, np.nan)
    hull = girder(x, 1e9, 0.0, [1e5, 0, 0, 0, 0])
    with pytest.raises(OutOfRange, match="two blocks"):
        elastic_keel_line(hull, [1, 1], 1e6)
    with pytest.raises(OutOfRange, match="two blocks"):
        elastic_keel_line(hull, [1, 5], 1e6)
    with pytest.raises(OutOfRange, match="stiffness"):
        elastic_keel_line(hull, [1, 2], 0.0)
    with pytest.raises(OutOfRange, match="stand"):
        elastic_keel_line(hull, [2, 3, 4], 1e6)
