from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tanks.dock_water_allowance import dock_water_allowance
from tenderwright.calculations.tanks.free_surface import free_surface
from tenderwright.calculations.tanks.liquid_densities import LIQUID_DENSITIES
from tenderwright.calculations.tanks.table_volume import table_volume
from tenderwright.calculations.tanks.water_density import water_density


def test_bunker_survey_example():
    """A bunker survey worked by hand (derived): 3.27 m gives 161.68 m3; with VCF 0.9870, WCF 0.9892:
    157.85 t."""
    found = table_volume([157.20, 163.60], 3.27, [3.20, 3.30])
    assert found["volume"] == pytest.approx(161.68, abs=0.0005)
    assert found["volume"] * 0.9870 * 0.9892 == pytest.approx(157.85, abs=0.005)


@pytest.mark.parametrize(
    ("sounding", "soundings", "volumes"),
    [
        (3.4, [3.2, 3.3], [1, 2]),
        (3.2, [3.3, 3.2], [1, 2]),
        (3.2, [3.2, 3.3], [2, 1]),
        (3.2, [3.2], [1]),
        (3.2, [3.2, 3.3], [1]),
    ],
)
def test_tables_are_checked(sounding, soundings, volumes):
    with pytest.raises(OutOfRange):
        table_volume(volumes, sounding, soundings)


@pytest.mark.parametrize(
    ("salinity", "temperature", "density"),
    [(0, 5, 999.96675), (35, 5, 1027.67547), (0, 25, 997.04796), (35, 25, 1023.34306)],
)
def test_eos80_check_values(salinity, temperature, density):
    """UNESCO technical papers in marine science 44, check values (from memory)."""
    assert water_density(salinity, temperature)["density"] == pytest.approx(density, abs=5e-6)


def test_eos80_brackish():
    """Computed from the same polynomial apart: 1025.97275 and, like the Baltic, 1005.16888 kg/m3."""
    assert water_density(35, 15)["density"] == pytest.approx(1025.97275, abs=5e-6)
    assert water_density(7, 10)["density"] == pytest.approx(1005.16888, abs=5e-6)


@pytest.mark.parametrize(("salinity", "temperature"), [(-1, 10), (43, 10), (35, -3), (35, 41)])
def test_eos80_range(salinity, temperature):
    with pytest.raises(OutOfRange):
        water_density(salinity, temperature)


def test_fresh_water_allowance():
    """Derrett, Ship Stability for Masters and Mates, p. 79: W 2705.3 t, TPC 6.77, FWA 99.9 mm."""
    found = dock_water_allowance(1000, 2705.3e3, 6.77e5)
    assert found["fresh_water_allowance"] == pytest.approx(0.0999, abs=5e-6)


def test_fresh_water_allowance_of_a_bigger_ship():
    """Imunotes.in: W 16000 t, TPC 20, from 8.0 m in sea water to 8.2 m in fresh."""
    assert dock_water_allowance(1000, 16000e3, 20e5)["dock_water_allowance"] == pytest.approx(0.2)


@pytest.mark.parametrize(
    ("density", "fwa", "dwa"), [(1008, 0.180, 0.1224), (1004, 0.185, 0.1554), (1010, 0.180, 0.108)]
)
def test_dock_water_allowance(density, fwa, dwa):
    """Imunotes.in: FWA 180 at 1.008 gives 12.24 cm; FWA 185 at 1.004 gives 155 mm; third computed."""
    assert dock_water_allowance(density, fresh_water_allowance=fwa)["dock_water_allowance"] == pytest.approx(dwa)


@pytest.mark.parametrize(
    "given_",
    [
        {},
        {"displacement": 1e6},
        {"displacement": 1e6, "mass_per_immersion": 0.0},
        {"fresh_water_allowance": 0.1, "displacement": 1e6},
    ],
)
def test_allowance_needs_one_basis(given_):
    with pytest.raises(OutOfRange):
        dock_water_allowance(1010, **given_)


def test_allowance_is_for_dock_water():
    with pytest.raises(OutOfRange):
        dock_water_allowance(1030, fresh_water_allowance=0.1)


@given(st.integers(1, 6))
def test_longitudinal_divisions_count_squared(n):
    """Derrett, Ship Stability for Masters and Mates, pp. 193-195: divide by n squared."""
    whole, divided = free_surface(15, 10, 1025, 8e6), free_surface(15, 10, 1025, 8e6, n)
    assert divided["loss_of_gm"] * n**2 == pytest.approx(whole["loss_of_gm"])


def test_free_surface_correction():
    """Derrett ch. 20, Example 1: correction 0.16016 m at 8000 t (computed from inputs read)."""
    assert free_surface(15, 10, 1025, 8e6)["loss_of_gm"] == pytest.approx(0.16016, abs=5e-6)


@pytest.mark.parametrize("arguments", [(0, 10, 1025, 8e6), (15, 10, 1025, 8e6, 0), (15, 10, 1025, 8e6, 1.5)])
def test_free_surface_range(arguments):
    with pytest.raises(OutOfRange):
        free_surface(*arguments)


def test_liquid_densities_are_cited():
    """Common practice, no source: diesel 0.88, heavy fuel 0.95; ISO 8217: DMA at most 890 kg/m3 at 15 degC."""
    assert LIQUID_DENSITIES["diesel oil"].density == 880
    assert LIQUID_DENSITIES["heavy fuel oil"].density == 950
    assert LIQUID_DENSITIES["DMA"].density == 890
    assert LIQUID_DENSITIES["DMA"].upper_limit
    assert all(str(entry.source) for entry in LIQUID_DENSITIES.values())
