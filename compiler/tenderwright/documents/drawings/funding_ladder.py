"""The funding ladder: a bar for each rung, as long as the money up to it, hatched by how sure each source is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.axis import money_axis, round_step
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.sheet import TITLE_HEIGHT, Sheet
from tenderwright.documents.edition import Figure
from tenderwright.pricing.money import Rounding, rounding

WIDTH = 165.0
"""Width of the column of a page, mm."""
CAUTION = (
    "Planning figures: estimates and hopes of money, no promise of either. "
    "Check each funder's current notice before counting on it."
)
SURENESS = {
    "in hand": Hatch((45,), 0.75, 0.3, "", pen.INK),
    "promised": Hatch((45,), 1.5, 0.2, "", pen.BLUE),
    "applied for": Hatch((135,), 2.4, 0.16, "", pen.OCHRE),
    "hoped for": Hatch((90,), 3.2, 0.13, "1.4 0.9", pen.PURPLE),
}
"""From dense to open: the surer the money, the darker."""
WANTED = Hatch((), 1.0)
"""Money that nobody has spoken of: left white."""
_ROW, _BAR, _TOP, _LEFT, _RIGHT = 15.5, 5.4, 12.0, 2.0, 4.0


@dataclass(frozen=True)
class RungMark:
    """One rung as it is drawn."""

    title: str
    adds: str
    pieces: tuple[tuple[str, Decimal], ...]
    """Sureness and money of each source up to here."""
    cost: Decimal
    """What the items bought come to; nothing where none is."""


def funding_ladder(ship: str, tender: str, currency: str, rungs: Sequence[RungMark], confidence: str) -> Figure:
    """Draw the rungs from the lowest upwards, to one scale of money."""
    greatest = float(max([sum((money for _, money in rung.pieces), Decimal(0)) for rung in rungs] + [Decimal(1)]))
    per = (WIDTH - _LEFT - _RIGHT) / greatest
    foot = _TOP + _ROW * len(rungs)
    sheet = Sheet(
        "funding-ladder",
        "Funding ladder",
        ship,
        tender,
        WIDTH,
        foot + 9.0 + TITLE_HEIGHT,
        caution=CAUTION,
        unscaled="One scale of money",
    )
    step = int(round_step(max(10_000.0, 17.0 / per)))
    axis = money_axis(currency, greatest, step, per, (_LEFT, WIDTH - _RIGHT), foot + 1.2, pen.MEDIUM)
    marks, about = [_key(), *axis], rounding(currency, [Decimal(round(greatest))])
    for index, rung in enumerate(reversed(rungs)):
        marks += _rung(rung, _TOP + _ROW * index, per, about)
    told = "; ".join(f"{rung.title}: {rung.adds}" for rung in rungs)
    words = f"Bars of the money up to each rung, from the surest source up. {told}."
    caption = (
        f"Each bar is all the money up to its rung; the heavy mark is what the work bought with it comes to at "
        f"{confidence}. Money to the right of the mark finds no work that it may pay for or match."
    )
    return Figure(sheet.name, sheet.svg(marks, words), caption, words, title="Funding ladder")


def _rung(rung: RungMark, top: float, per: float, about: Rounding) -> list[str]:
    marks = [
        pen.text(
            (_LEFT, top + 3.4), pen.shortened(rung.title, pen.NORMAL, 112, True), pen.NORMAL, bold=True, kind="rung"
        ),
        pen.text((_LEFT, top + 7.0), pen.shortened(rung.adds, pen.SMALL, WIDTH - _LEFT - _RIGHT), pen.SMALL),
    ]
    at, y = _LEFT, top + 8.2
    for sureness, money in rung.pieces:
        end = at + float(money) * per
        box = [(at, y), (end, y), (end, y + _BAR), (at, y + _BAR)]
        marks.append(SURENESS.get(sureness, WANTED).over([box]) + pen.polygon(box, pen.FINE))
        at = end
    if rung.cost:
        x = _LEFT + float(rung.cost) * per
        marks.append(pen.line((x, y - 0.9), (x, y + _BAR + 0.9), 0.9))
        whole = sum((money for _, money in rung.pieces), Decimal(0))
        told = f"work for {about.figure(rung.cost)} of {about.figure(whole)}"
        marks.append(pen.text((WIDTH - _RIGHT, top + 3.4), told, pen.NORMAL, "end", kind="cost"))
    return marks


def _key() -> str:
    marks, x = [], _LEFT
    for sureness, hatch in SURENESS.items():
        marks.append(hatch.swatch(x, 3.6))
        marks.append(pen.text((x + 8.4, 4.5), sureness, pen.SMALL, kind="key"))
        x += 11.5 + pen.text_width(sureness, pen.SMALL)
    marks.append(pen.line((x + 1.5, 1.9), (x + 1.5, 5.3), 0.9))
    marks.append(pen.text((x + 3.5, 4.5), "cost of the work bought", pen.SMALL, kind="key"))
    return "".join(marks)
