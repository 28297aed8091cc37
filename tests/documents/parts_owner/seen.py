"""Owner's desks for tests: the starter with a programme and risks, and the parts of the owner edition."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from tenderwright.documents.edition import Figure, Part
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.pipeline import owner_desk
from tests.documents.composed import Composed, changed, composed, part, walk
from tests.planning.conftest import PROGRAMME

RISKS = """risks:
  - { risk: late-rain, what: It rains., likelihood: 50 %, low: 1000, high: 3000, days_low: 2 d, days_high: 4 d }
  - { risk: thin-plate, what: A plate is thin., item: "320", likelihood: 20 %, low: 4000, high: 9000 }
  - { risk: no-grant, what: No grant comes., bears_on: money, likelihood: 30 %, low: 0, high: 20000 }
"""
SETTINGS = "simulation: { within: 50 %, across: 20 %, trials: 20000, seed: 7 }\nlines:"
DAYS = "day_lines:\n  - { line: 110.b, days: further dock days }\n"


def lay_foreseen(root: Path) -> None:
    """Lay a programme, risks and settings of the trials into a package."""
    (root / "owner" / "programme.yaml").write_text(PROGRAMME + DAYS, "utf-8")
    (root / "owner" / "risks.yaml").write_text(RISKS, "utf-8")
    rates = root / "owner" / "rates.yaml"
    rates.write_text(rates.read_text("utf-8").replace("lines:", SETTINGS, 1), "utf-8")


@cache
def foreseen() -> Composed:
    """Give the starter with a programme, risks and settings of the trials."""
    return changed(lay_foreseen)


@cache
def foreseen_desk() -> OwnerDesk:
    """Give its desk."""
    found = foreseen()
    return owner_desk(found.compiled, found.owner)


@cache
def starter_desk() -> OwnerDesk:
    """Give the desk of the starter as it is, without programme, risks or settings."""
    found = composed("starter")
    return owner_desk(found.compiled, found.owner)


def marram_part(anchor: str) -> Part:
    """Give a part of the owner edition of the demonstration."""
    return part(composed("marram").edition("owner"), anchor)


def figures(found: Part) -> list[Figure]:
    """Give the figures of a part."""
    return [one for one in walk(found) if isinstance(one, Figure)]
