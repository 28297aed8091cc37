"""What a package says of its things is printed where they are listed."""

from __future__ import annotations

import pytest

from .composed import composed, part, words

YARD = {
    "particulars": ("Beware of", "of the ship. The doubler of 1988"),
    "fittings": (
        "Grid of flat bars, held by twelve studs",
        "Hung on three pintles",
    ),
    "coating-zones": ("Cement wash on the stem foot", "0.4 m² (drawing "),
    "blocks": ("600 mm of white oak, 900 MPa (0.07 of the modulus along the grain (from memory))",),
    "history": ("300 mm × 1.0 m, 1.40 m high",),
    "condition": ("Insert of 10 mm", "Fr 34 to Fr 37", "Fr 4 to Fr 18, 15.3 lb plate, inner"),
    "docking-data": ("tally of 2008, 1680 pigs of 25 kg",),
}
OWNER = {
    "facilities": ("1:17, hauled with 980 kN, track of 118 m", "certificate SH-2291 (classification society)"),
    "price-basis": ("labour: yards' tariffs, 2026, as 165.c", "Statistics office of the Outer Coast, table 30.15"),
    "funding": ("Laid by since 2008",),
}


@pytest.mark.parametrize("anchor", YARD)
def test_the_yard_reads_what_is_known(anchor: str) -> None:
    printed = words(part(composed("marram").edition("yard"), anchor))
    assert [one for one in YARD[anchor] if one not in printed] == []


@pytest.mark.parametrize("anchor", OWNER)
def test_the_owner_reads_what_is_known(anchor: str) -> None:
    printed = words(part(composed("marram").edition("owner"), anchor))
    assert [one for one in OWNER[anchor] if one not in printed] == []


def test_losses_and_the_filled_profile_stand_with_their_source() -> None:
    printed = words(composed("marram").edition("yard"))
    assert "The first coat fills 0.5 of a profile of 70 µm (common practice, no source)." in printed
    assert "(common practice, no source) for coat 1" in printed
