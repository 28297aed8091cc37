"""Every field that the format declares is read somewhere, told apart by its class: no common name hides another's."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from typing import get_type_hints

from mypy import build
from mypy.config_parser import parse_config_file
from mypy.find_sources import create_source_list
from mypy.nodes import MemberExpr
from mypy.options import Options
from mypy.types import Instance, Type, TypeVarType, UnionType, get_proper_type

from tenderwright.model import format as declared
from tenderwright.model.noun import keys_of
from tests.schemas.test_readers import COMPILER, ELSEWHERE, is_kept, nouns

BY_NAME = {
    "model/account_sums.py": (
        *("AccountLine.contract", "AccountChange.change"),
        *("Totals.contract", "Totals.changes", "Totals.final"),
    ),
    "calculations/ship/regimes.py": ("LaminationTest.laminated",),
    "model/in_dock_sense.py": ("ActualDays.dry",),
    "model/load.py": (
        *("Zones.zones", "Zones.schemes", "Drawings.drawings", "Tanks.tanks", "Openings.openings"),
        *("Appendages.appendages", "Strakes.strakes", "Anodes.anodes", "Photographs.photographs"),
    ),
}
"""What these modules read by a name that is itself data, or through a protocol, so that its class is not seen."""


def classes(of: Type) -> Iterator[str]:
    kind = get_proper_type(of)
    if isinstance(kind, Instance):
        yield kind.type.fullname
    elif isinstance(kind, UnionType):
        for one in kind.items:
            yield from classes(one)
    elif isinstance(kind, TypeVarType):
        for one in (kind.upper_bound, *kind.values):
            yield from classes(one)


def attributes_read() -> set[str]:
    options = Options()
    parse_config_file(options, lambda: None, str(COMPILER.parents[1] / "pyproject.toml"), sys.stdout, sys.stderr)
    options.incremental, options.export_types, options.preserve_asts = False, True, True
    options.mypy_path, options.python_executable = [str(COMPILER.parent)], sys.executable
    found = build.build(create_source_list([str(COMPILER)], options), options)
    assert found.errors == []
    members = (one for one in found.types if isinstance(one, MemberExpr) and one.expr in found.types)
    return {f"{name}.{one.name}" for one in members for name in classes(found.types[one.expr])}


def test_every_field_is_read_of_its_own_class() -> None:
    assert declared.NOUNS
    read, unread = attributes_read(), []
    needless = []
    excused = {*ELSEWHERE, *(one for listed in BY_NAME.values() for one in listed)}
    for noun in nouns():
        hints = get_type_hints(noun, include_extras=True)
        family = [f"{one.__module__}.{one.__qualname__}" for one in (*noun.__mro__, *nouns(noun))]
        for name, _ in keys_of(noun):
            said = f"{noun.__name__}.{name}"
            seen = any(f"{one}.{name}" in read for one in family)
            if seen and (said in excused or is_kept(hints[name])):
                needless.append(said)
            if not seen and said not in excused and not is_kept(hints[name]):
                unread.append(said)
    assert unread == []
    assert needless == [], "these are read: they need not be listed here, and are not only kept for the record"
