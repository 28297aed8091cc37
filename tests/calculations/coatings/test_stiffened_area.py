from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.coatings.stiffened_area import (
    METHOD,
    Panel,
    Web,
    internal_area,
    stiffener_factor,
)
from tenderwright.calculations.method import OutOfRange


def test_flat_bar() -> None:
    # Derived: height 100 mm at 600 mm gives 1.333.
    assert stiffener_factor(0.1, 0.6) == pytest.approx(1.333, abs=5e-4)


def test_angle() -> None:
    # Derived: 1 + (2 * 100 + 2 * 65) / 600.
    assert stiffener_factor(0.1, 0.6, 0.065) == pytest.approx(1.55)


def test_space_with_floors() -> None:
    # Derived: 48 * 4/3 + 12 + 6 floors of 2 faces of 2.4 - 0.4 m² = 64 + 12 + 24.
    panels = [Panel(48.0, spacing=0.6, height=0.1), Panel(12.0)]
    assert internal_area(panels, [Web(2.4, holes=0.4, count=6)]) == pytest.approx(100.0)


areas = st.floats(0, 500)
panels = st.builds(Panel, area=areas, spacing=st.floats(0.2, 2.0), height=st.floats(0, 0.5), flange=st.floats(0, 0.2))


@given(st.lists(panels, min_size=1, max_size=6))
def test_stiffeners_only_add_and_order_does_not_matter(chosen: list[Panel]) -> None:
    area = internal_area(chosen)
    assert area >= sum(panel.area for panel in chosen) - 1e-9
    assert internal_area(chosen[::-1]) == pytest.approx(area)


@pytest.mark.parametrize(
    ("panel", "web", "words"),
    [
        (Panel(1.0, height=0.1), Web(1.0), "spacing"),
        (Panel(1.0, spacing=0.0, height=0.1), Web(1.0), "spacing"),
        (Panel(1.0, spacing=0.5, height=-0.1), Web(1.0), "height"),
        (Panel(-1.0), Web(1.0), "panel"),
        (Panel(1.0), Web(1.0, holes=1.1), "holes"),
        (Panel(1.0), Web(-1.0), "web"),
        (Panel(1.0), Web(1.0, count=-1), "webs"),
    ],
)
def test_refuses_what_is_no_space(panel: Panel, web: Web, words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        internal_area([panel], [web])


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(panels=[{"area": 48.0, "spacing": 0.6, "height": 0.1}], webs=[{"area": 2.0}])
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["area"] == pytest.approx(68.0)
    assert outputs["ratio"] == pytest.approx(68 / 48)
    assert METHOD.run(panels=[{"area": 0.0}])["ratio"] is None
