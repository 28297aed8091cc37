"""What the owner can foresee: the same from what was kept as worked out anew, and kept by all that was read."""

from __future__ import annotations

import pytest

from tenderwright.calculations.steps.kept import Kept
from tenderwright.pipeline import OwnersSide, compile_owner, compile_package, owner_desk
from tenderwright.planning import foresight as module
from tenderwright.reading.package import Files
from tests.documents.composed import composed
from tests.model.packages import put


def test_what_was_kept_is_what_is_worked_out(monkeypatch: pytest.MonkeyPatch) -> None:
    made = composed("marram")
    anew = owner_desk(made.compiled, made.owner).foresight
    first = Kept(b"this")
    assert owner_desk(made.compiled, made.owner, first).foresight == anew
    monkeypatch.setattr(module, "trials", None)
    assert owner_desk(made.compiled, made.owner, Kept(b"this", first.content())).foresight == anew


def test_another_amount_in_any_file_is_another_content(starter: Files) -> None:
    def side(files: Files) -> OwnersSide:
        return compile_owner(files, compile_package(files))

    other = put(starter, "owner/rates.yaml", starter.sources["owner/rates.yaml"].text + "\n")
    assert side(starter).content == side(starter).content != side(other).content
