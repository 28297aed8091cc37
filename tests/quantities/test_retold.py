from __future__ import annotations

import pytest

from tenderwright.quantities.customs import telling_in
from tenderwright.quantities.retold import retold


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("rivets of a shell are from 8 mm to 40 mm", "rivets of a shell are from 0.315 in to 1.57 in"),
        ("a keel line carries from 3 to 300 t/m", "a keel line carries from 0.900 long ton/ft to 90.0 long ton/ft"),
        ("from 5 to 500 mg/m2", "from 0.500 µg/cm² to 50.0 µg/cm²"),
        ("within 2 m of it, in 3 places", "within 6.56 ft of it, in 3 places"),
        ("weighs 1520 t (1496 long ton)", "weighs 1520 t (1496 long ton)"),
        ("at most 5 m (common practice)", "at most 16.4 ft (common practice)"),
        ("up to 5 years, Fr 12 to Fr 14, frame 9 and 7 h", "up to 5 years, Fr 12 to Fr 14, frame 9 and 7 h"),
    ],
)
def test_our_own_texts_are_told_in_the_system_asked_for(text: str, told: str) -> None:
    assert retold(text) == text
    with telling_in("us"):
        assert retold(text) == told
