"""The starter package in dock: a bid, an award, a pool of hours, and a first week of changes."""

from __future__ import annotations

from pathlib import Path

from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package
from tenderwright.pricing.in_dock.ledger import Ledger
from tenderwright.reading.package import read_package
from tenderwright.starter.write import write_starter

BID = """yard: Ostrey Slip Company
received: 2027-12-09
lines:
  110.a: { rate: 22000 }
  110.b: { rate: 700 }
  110.c: { rate: 500 }
  130.a: { rate: 44 }
  130.b: { rate: 1500 }
  140.a: { rate: 4000 }
  140.b: { rate: 400 }
  160.a: { rate: 55 }
  160.b: { rate: 12 }
  210.a: { rate: 3000 }
  320.a: { rate: 100 }
  420.a: { rate: 90 }
"""
"""The base price is 22000 + 40 x 44 + 1500 + 4000 + 3000 + 50 x 90 = 36760."""
POOL = """item: 160
title: Hours pool, hold ready
kind: contingent
phase: any
system: services
scope: Hours and materials for work that no other line fits.
requirements:
  - Hours are worked only on a written order that names the greatest number of them.
lines:
  - { line: a, text: Shipwright or welder, price: hours, quantity: 60 h, basis: assumed, where: "anywhere, on order" }
  - { line: b, text: "Mark-up on materials, in per cent", price: markup, amount: 2000, basis: owner's, where: any }
"""
AWARD = """bid: ostrey
awarded: 2028-01-31
amount: 36760
contingency: 12000
answer_within: 24 h
authority:
  - { who: Ship keeper, up_to: 2000 }
  - { who: Trustees }
days_line: 110.b
"""
SCOPE = """weights: { risk: 5, preservation: 3, safety: 4 }
items:
  "110": { must: true, needs: ["130"] }
  "320": { risk: 5, preservation: 3, safety: 4, needs: ["140", "210"] }
  "420": { risk: 3, preservation: 4, safety: 1, needs: ["210"] }
"""
FUNDING = """sources:
  - { source: reserve, name: Reserve, amount: 30000, status: in hand, likelihood: 100 % }
  - { source: appeal, name: Rivet appeal, amount: 9000, status: in hand, only: ["320", "420"] }
  - { source: county, name: County, amount: 6000, status: promised, match: 100 % }
  - { source: lottery, name: Lottery, amount: 70000, status: hoped for }
"""
PROGRAMME = """week: 7
activities:
  - { activity: dock, item: "110", kind: docking, likely: 1 d }
  - { activity: clean, item: "140", likely: 2 d }
  - { activity: wash, item: "210", likely: 1 d }
  - { activity: rivet, item: "320", likely: 3 d }
  - { activity: coat, item: "420", likely: 4 d }
  - { activity: undock, item: "110", kind: undocking, likely: 1 d }
"""
WEEK = """until: 2028-04-09
days: { arrived: 2028-04-03, docked: 2028-04-05, dry: 2028-04-05 }
conditions:
  - report: CF-01
    day: 2028-04-06
    item: "320"
    line: 320.a
    quantity: 48 each
    where: strakes A and B, Fr 10 to Fr 30
    found: Points wasted to less than half.
    answer_by: 2028-04-07 12:00
    decision: accepted
    decided: 2028-04-07
    by: Trustees
  - report: CF-02
    day: 2028-04-08
    hour: 15:30
    item: "320"
    where: Floors at Fr 16
    extent: 6 each
    found: Cement broken, bracket wasted.
    amount: 1900
    days: 2
  - report: CF-03
    day: 2028-04-08
    item: "420"
    where: Boot-top
    line: 420.a
    quantity: 12 m2
    found: Old coating loose.
changes:
  - change: CO-01
    day: 2028-04-07
    line: 320.a
    quantity: 48 each
    cause: condition found
    what: rivets
    condition: CF-01
    by: Trustees
    signed: 2028-04-07
  - change: CO-02
    day: 2028-04-08
    line: 160.a
    hours: 20 h
    materials: 300
    cause: owner's change
    what: bilge pipe
    by: Ship keeper
    signed: 2028-04-08
  - { change: CO-03, day: 2028-04-09, line: 110.c, quantity: 1 each, cause: owner's change, what: one block moved }
measured:
  - { line: 420.a, quantity: 47.5 m2 }
progress:
  - { item: "140", done: 100 % }
  - { item: "210", done: 50 % }
"""
FILES = {
    "items/160-hours-pool.yaml": POOL,
    "owner/bids/ostrey.yaml": BID,
    "owner/award.yaml": AWARD,
    "owner/scope.yaml": SCOPE,
    "owner/funding.yaml": FUNDING,
    "owner/programme.yaml": PROGRAMME,
    "owner/in-dock/week-1.yaml": WEEK,
}


def write_docked(root: Path, **changed: str) -> Path:
    """Write the package; files given by their stem, such as `award` or `week_1`, stand in place of those here."""
    write_starter(root)
    rates = root / "owner" / "rates.yaml"
    text = rates.read_text("utf-8")
    rates.write_text(text.replace("  210.a:", "  160.a: { rate: 50 }\n  160.b: { rate: 10 }\n  210.a:"), "utf-8")
    named = {path.rsplit("/", 1)[-1].removesuffix(".yaml").replace("-", "_"): path for path in FILES}
    texts = {**FILES, **{named[name]: text for name, text in changed.items()}}
    for path, text in texts.items():
        file = root / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, "utf-8")
    return root


def compiled(root: Path) -> tuple[Compiled, OwnersSide]:
    """Compile the package with its owner's papers."""
    files = read_package(root)
    made = compile_package(files)
    return made, compile_owner(files, made)


def ledger_of(root: Path, **changed: str) -> Ledger:
    """Write the package, compile it, and give its ledger; it must be sound."""
    _, owner = compiled(write_docked(root, **changed))
    assert [notice.message for notice in owner.notices if notice.severity == "error"] == []
    assert owner.ledger is not None
    return owner.ledger
