"""Damages for lateness stand in the rules of the tender, and the owner's papers hold their day against the trials."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.documents.owner.programme import programme
from tenderwright.documents.parts.front import revision_record
from tenderwright.pipeline import owner_desk
from tests.documents.composed import changed, words
from tests.documents.parts_owner.seen import SETTINGS
from tests.planning.conftest import PROGRAMME


def told(damages: str) -> tuple[str, str]:
    """Give the words of the rules of the tender and of the owner's programme."""

    def spoil(root: Path) -> None:
        tender = root / "package.yaml"
        tender.write_text(tender.read_text("utf-8").replace("sections:", f"{damages}sections:", 1), "utf-8")
        slow = PROGRAMME.replace("high: 6 d", "high: 40 d")
        (root / "owner" / "programme.yaml").write_text(slow, "utf-8")
        rates = root / "owner" / "rates.yaml"
        rates.write_text(rates.read_text("utf-8").replace("lines:", SETTINGS, 1), "utf-8")

    made = changed(spoil)
    part = programme(owner_desk(made.compiled, made.owner))
    assert part is not None
    return words(revision_record(made.desk())), words(part)


@pytest.mark.parametrize(("after", "said"), [(0, "That is too early"), (60, "so that they fall on what is slower")])
def test_damages_are_told_and_held_against_the_trials(after: int, said: str) -> None:
    rules, own = told(f"damages: {{ a_day: 400, after: {after}, most: 10 % }}\n")
    begins = (
        f"Late redelivery from {after} d after the contract day" if after else "Late redelivery after the contract day"
    )
    assert f"{begins}: EUR 400.00 for each day, at most 10 % of the contract price." in rules
    assert said in own


def test_a_tender_without_damages_says_nothing_of_them() -> None:
    rules, own = told("")
    assert "Late redelivery" not in rules
    assert "Damages" not in own
