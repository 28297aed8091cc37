from __future__ import annotations

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from tenderwright.quantities.purposes import PURPOSES, USUAL, purpose_of

COMPILER = Path(__file__).parents[2] / "compiler" / "tenderwright"
TELLING = {"show": 1, "plainly": 1, "in_column": 1, "head": 1, "axis": 1, "plus_minus": 2, "told": 1, "unit_of": 0}


@cache
def _named() -> tuple[tuple[str, int, str], ...]:
    """Give every purpose that our code names, with its place."""
    return tuple(_calls())


def _calls() -> Iterator[tuple[str, int, str]]:
    for path in COMPILER.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not isinstance(node, ast.Call):
                continue
            name = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
            place = TELLING.get(name, -1)
            if 0 <= place < len(node.args):
                purpose = node.args[place]
                if isinstance(purpose, ast.Constant) and isinstance(purpose.value, str):
                    yield path.relative_to(COMPILER).as_posix(), node.lineno, purpose.value


def test_every_purpose_that_is_named_is_in_the_table() -> None:
    named = _named()
    assert len(named) > 200
    assert [place for place in named if place[2] not in PURPOSES] == []


def test_every_purpose_of_the_table_is_named_or_usual() -> None:
    named = {purpose for _, _, purpose in _named()} | set(USUAL.values())
    by_dimension = {purpose_of(of.dimension, of.metric.unit) for of in PURPOSES.values()}
    assert sorted(set(PURPOSES) - named - by_dimension) == []
