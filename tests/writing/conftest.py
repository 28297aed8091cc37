from __future__ import annotations

import pytest

from tenderwright.writing.pdf import Typeset, Typesetter

from .sample import sample_edition

TIMESTAMP = 1770000000


@pytest.fixture(scope="session")
def typeset() -> Typeset:
    return Typesetter().typeset(sample_edition(), TIMESTAMP)
