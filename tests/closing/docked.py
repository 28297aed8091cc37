"""The award and the papers from the dock that come to what the small findings say."""

from __future__ import annotations

from pathlib import Path

BID = """yard: Ostrey Slip Company
received: 2027-12-09
lines:
  110.a: { rate: 21900.50 }
  110.b: { rate: 700 }
  110.c: { rate: 500 }
  130.a: { status: included }
  130.b: { status: included }
  140.a: { status: included }
  140.b: { rate: 400 }
  210.a: { status: included }
  320.a: { rate: 95 }
  420.a: { rate: 88 }
"""
AWARD = "bid: ostrey\nawarded: 2028-01-31\namount: 26300.50\n"
WEEK = """until: 2028-03-16
days: { docked: 2028-03-02, undocked: 2028-03-16 }
conditions:
  - report: CF-1
    day: 2028-03-04
    item: "320"
    where: strake A
    found: 31 rivets loose.
    decision: accepted
    decided: 2028-03-05
changes:
  - change: CO-1
    day: 2028-03-05
    line: 320.a
    quantity: 31 each
    cause: condition found
    what: rivets
    condition: CF-1
    by: Ship keeper
    signed: 2028-03-05
measured:
  - { line: 420.a, quantity: 48 m2, day: 2028-03-15 }
"""


def put_papers(root: Path, week: str = WEEK) -> Path:
    """Write the bid, the award and the week into a package."""
    for path, text in (("bids/ostrey", BID), ("award", AWARD), ("in-dock/week-1", week)):
        file = root / "owner" / f"{path}.yaml"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, "utf-8")
    return root
