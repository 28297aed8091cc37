"""What a docking costs and what pays for it: two bars to one scale, hatched by how sure each piece is."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.axis import money_axis, round_step
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.edition import Figure
from tenderwright.pricing.money import written

WIDTH = 165.0
"""Width of the drawing, mm."""
SOLID = Hatch((45,), 0.75, 0.3, "", pen.INK)
CHANGED = Hatch((135,), 1.3, 0.22, "", pen.RED)
WAITING = Hatch((90,), 2.2, 0.16, "1.4 0.9", pen.OCHRE)
PROMISED = Hatch((45,), 1.9, 0.2, "", pen.BLUE)
HATCHES = {"contract": SOLID, "ordered": CHANGED, "waiting": WAITING, "in hand": SOLID, "promised": PROMISED}
"""From dense to open: the surer, the darker."""
_LEFT, _RIGHT, _BAR, _ROW = 22.0, 4.0, 6.0, 11.5
_TOP = 6.5

Piece = tuple[str, Decimal]
"""Its word, which gives the hatching, and its amount."""


def money_bar(
    currency: str, costs: Sequence[Piece], money: Sequence[Piece], contract: Decimal, limit: Decimal | None
) -> Figure:
    """Draw costs over money, from nothing to the greater of them; marks stand at the contract and at its limit.

    Pieces are drawn from left to right and must not be below nothing; money that cannot pay for this is no part of it.
    """
    rows = [("Cost", costs), *([("Money", money)] if money else [])]
    ends = [sum((amount for _, amount in pieces), Decimal(0)) for _, pieces in rows]
    greatest = float(max([*ends, contract, limit or Decimal(0), Decimal(1)]))
    per = (WIDTH - _LEFT - _RIGHT) / greatest
    foot = _TOP + _ROW * len(rows) - 1.2
    marks: list[str] = []
    for index, (name, pieces) in enumerate(rows):
        marks += _row(name, pieces, _TOP + _ROW * index, per)
    marks += _mark(_LEFT + float(contract) * per, foot, "contract", before=True)
    if limit is not None and limit > contract:
        marks += _mark(_LEFT + float(limit) * per, foot, "with contingency", before=False)
    for index, (_, pieces) in enumerate(rows):
        marks += _words(pieces, _TOP + _ROW * index + _BAR + 2.1, per)
    step = int(round_step(max(1000.0, 19.0 / per)))
    marks += money_axis(currency, greatest, step, per, (_LEFT, WIDTH - _RIGHT), foot, pen.FINE)
    told = "; ".join(
        f"{name.lower()}: " + ", ".join(f"{word} {written(amount)}" for word, amount in pieces) for name, pieces in rows
    )
    ceiling = f", with its contingency {written(limit)}" if limit is not None else ""
    words = f"Bars to one scale, {currency}. {told}. The contract is {written(contract)}{ceiling}."
    high = foot + 6.4
    svg = pen.picture(WIDTH, high, words, marks)
    return Figure("money-bar", svg, "", words, title="Cost and money")


def _row(name: str, pieces: Sequence[Piece], top: float, per: float) -> list[str]:
    """Draw one bar with its name before it."""
    marks = [pen.text((_LEFT - 2.0, top + _BAR * 0.66), name, pen.NORMAL, "end", bold=True, kind="bar")]
    at = _LEFT
    for word, amount in pieces:
        if amount <= 0:
            continue
        end = at + float(amount) * per
        box = [(at, top), (end, top), (end, top + _BAR), (at, top + _BAR)]
        hatch = HATCHES.get(word, SOLID)
        marks.append(
            pen.polygon(box, 0, fill=pen.PAPER) + hatch.over([box]) + pen.polygon(box, pen.MEDIUM, kind_of(word))
        )
        at = end
    return marks


def _words(pieces: Sequence[Piece], middle: float, per: float) -> list[str]:
    """Write the word of each piece under it, with its amount where that fits; none lies over another."""
    marks: list[str] = []
    at, free = _LEFT, 0.0
    for word, amount in pieces:
        if amount <= 0:
            continue
        end = at + float(amount) * per
        told = f"{word} {written(amount.quantize(Decimal(1)))[:-3]}"
        told = told if pen.text_width(told, pen.SMALL) < end - at else word
        wide = pen.text_width(told, pen.SMALL)
        start = max(free, min((at + end - wide) / 2, WIDTH - 0.5 - wide))
        marks.append(pen.label((start, middle), told, pen.SMALL, "start", kind="piece"))
        free, at = start + wide + 2.0, end
    return marks


def kind_of(word: str) -> str:
    """Give the dash of a piece's outline: what still waits has a broken one."""
    return "1.6 0.8" if word == "waiting" else ""


def _mark(x: float, foot: float, word: str, *, before: bool) -> list[str]:
    """Draw a heavy mark through the bars, its word before it or after it."""
    anchor = "end" if before else "start"
    room = pen.text_width(word, pen.SMALL)
    if not before and x + 1.0 + room > WIDTH:
        x_text, anchor = WIDTH - 0.5, "end"
    else:
        x_text = x - 1.0 if before else x + 1.0
    dash = "" if before else "1.8 0.9"
    return [
        pen.line((x, _TOP - 2.0), (x, foot), 0.8, dash),
        pen.text((x_text, _TOP - 2.6), word, pen.SMALL, anchor, bold=True, kind="mark"),
    ]
