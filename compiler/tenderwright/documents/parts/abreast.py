"""Sets short stacks of blocks side by side, and long narrow tables in columns; a stack stays whole on its page."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import chain
from typing import Literal

from tenderwright.documents.edition import Beside, Block, Facts, Inline, Paragraph, Table, plain
from tenderwright.documents.parts.lines import PAGE, lines

_HALF = 55
"""Letters in a line of half the width, about."""


def abreast(stacks: Iterable[Sequence[Block]], across: Literal[2, 3, 4] = 2) -> list[Block]:
    """Set stacks side by side; below each other where there is one, or one is too long for half the width."""
    there = [tuple(stack) for stack in stacks if stack]
    if len(there) < 2 or max(lines(stack, _HALF) for stack in there) > 0.7 * PAGE:
        return list(chain.from_iterable(there))
    return [Beside(tuple(there), across)]


def facts_abreast(pairs: Sequence[tuple[str, Inline]]) -> list[Block]:
    """Give short facts in two columns, the first half at the left."""
    half = -(-len(pairs) // 2)
    return abreast((Facts(tuple(run)),) for run in (pairs[:half], pairs[half:]) if run)


_FOLDED = 24
"""Rows of a run of a folded table, so that no more than a third of a page stays whole."""

MOST_ROWS = 44
"""Rows of a close table that stand in one column of a page."""


def without_dashes(table: Table) -> Table:
    """Leave out the columns in which no row has anything but a dash."""
    kept = [at for at in range(len(table.columns)) if any(plain(row.cells[at]) != "–" for row in table.rows)]
    rows = tuple(replace(row, cells=tuple(row.cells[at] for at in kept)) for row in table.rows)
    return replace(table, columns=tuple(table.columns[at] for at in kept), rows=rows)


def in_runs(table: Table, most: int = MOST_ROWS) -> tuple[Table, ...]:
    """Part a table that is longer than a page into runs of equal length."""
    runs = max(1, -(-len(table.rows) // most))
    length = max(1, -(-len(table.rows) // runs))
    return tuple(replace(table, rows=table.rows[at : at + length]) for at in range(0, len(table.rows), length))


def folded(table: Table, across: Literal[2, 3] = 2, *, short: int = 12) -> list[Block]:
    """Set a long narrow table in runs side by side, from left to right and in sets, its note after them."""
    if len(table.rows) < short:
        return [table]
    most = int(_FOLDED * 1.2 * len(table.rows) / max(lines((table,), 2 * _HALF / across), 1.2 * len(table.rows)))
    sets = -(-len(table.rows) // (across * most))
    runs = in_runs(replace(table, note=()), -(-len(table.rows) // (across * sets)))
    note = [Paragraph(table.note, as_note=True)] if table.note else []
    beside = [Beside(tuple((run,) for run in runs[at : at + across]), across) for at in range(0, len(runs), across)]
    return [*beside, *note]
