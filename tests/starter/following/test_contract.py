"""Of the contract of a closed tender, days that are dates are asked again, and those counted from an event stay."""

from __future__ import annotations

from tenderwright.model.package import Package
from tenderwright.reading.yaml_file import read_yaml
from tenderwright.starter.following.closed import Closed
from tenderwright.starter.following.sources import following
from tests.documents.composed import composed

TEXT = """\
payments:
- { stage: First, share: 60 %, on: docking + 3 d }
- stage: Second
  share: 40 %
  on: 2027-05-20
securities:
- kind: refund guarantee
  share: 10 %
  form: on demand
  issuer: A bank
  released: docking
  valid_to: 2027-06-04
"""


def test_dates_are_asked_again() -> None:
    source, notices = read_yaml("contract.yaml", TEXT)
    assert notices == []
    assert source is not None
    links = composed("starter").compiled.links
    package = Package(tender=None, particulars=None, frames=None, offsets=None, lightship=None)
    made = following("T-2", Closed("T-1", None, None, {}), package, links, {"contract.yaml": source})
    text = made.texts["contract.yaml"]
    assert "on: docking + 3 d" in text
    assert "on: todo (T-1 had 2027-05-20)" in text
    assert "valid_to: todo (T-1 had 2027-06-04)" in text
