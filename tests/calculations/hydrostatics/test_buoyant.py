"""What floats is given by offsets or by a table, one of the two."""

from __future__ import annotations

import pytest

from tenderwright.calculations.hydrostatics.buoyant import buoyant
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.plain import plain
from tests.calculations.hydrostatics.curves_of import curves_of
from tests.calculations.hydrostatics.hulls import barge


def test_one_of_the_two():
    form = barge()
    table = curves_of(form, [1.0, 2.0, 3.0])
    assert buoyant(form, None) is form
    assert buoyant(None, table) is table
    assert buoyant(None, plain(table)).length == form.length
    for offsets, curves in ((None, None), (form, table)):
        with pytest.raises(OutOfRange, match="one of the two"):
            buoyant(offsets, curves)
