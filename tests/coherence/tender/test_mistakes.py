"""Every gross mistake of the list is told, and nothing is told of what is sound."""

from __future__ import annotations

import pytest

from tests.coherence.damage import damaged, sound, told_of
from tests.coherence.tender.mistakes import MISTAKES


@pytest.mark.parametrize(("file", "keys", "value", "code"), MISTAKES)
def test_a_gross_mistake_is_told_in_its_file(file: str, keys: str, value: str, code: str) -> None:
    told = [notice for notice in told_of(damaged(sound().files, file, keys, value)) if notice.code == code]
    assert file in {notice.place.path for notice in told} | {n.place.path for one in told for n in one.notes if n.place}


def test_nothing_is_told_of_the_demonstration() -> None:
    assert sound().compiled.notices == ()
    assert sound().owner.notices == ()
    assert told_of(sound().files) == []
