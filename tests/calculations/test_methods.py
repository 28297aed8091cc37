from __future__ import annotations

from typing import Any

import pytest

from tenderwright.calculations.method import Method
from tenderwright.calculations.registry import methods


@pytest.mark.parametrize("method", methods().values(), ids=lambda method: method.name)
def test_an_example_gives_all_that_must_be_given_and_nothing_that_is_no_input(method: Method[Any]) -> None:
    assert method.optional <= method.inputs.keys()
    assert method.inputs.keys() - method.optional <= method.example.keys() <= method.inputs.keys()
