"""The form of the contract: sound as it is written, with every matter that no key answers, each not settled."""

from __future__ import annotations

from pathlib import Path

from tenderwright.model.matters import MATTERS
from tenderwright.planning.contract_matters import answered
from tenderwright.starter.forms import Facts, form
from tests.documents.composed import changed


def test_the_form_is_read_and_asks_each_matter() -> None:
    path, text = form("contract", "", Facts(tender="BWT-2028-01"))

    def write(root: Path) -> None:
        (root / path).write_text(text, "utf-8")

    found = changed(write).compiled
    assert [one.code for one in found.notices if one.place.path == path] == []
    assert found.package.contract is not None
    assert found.package.tender is not None
    states = {one.matter.key: one.state for one in answered(found.package.contract, found.package.tender)}
    assert states["agreed-value"] == states["liens"] == "not settled"
    assert set(states) == {one.key for one in MATTERS}
