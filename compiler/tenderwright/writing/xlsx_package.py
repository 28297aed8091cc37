"""Finishes a workbook file: results beside formulas, fixed times, members always in the same order."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from html import escape
from typing import TYPE_CHECKING

from tenderwright.writing.archive import zip_members

if TYPE_CHECKING:
    from openpyxl import Workbook

Results = Mapping[str, Decimal | str]
"""Results of one sheet's formulas, by cell address."""

_FORMULA_CELL = re.compile(r'<c r="([A-Z]+\d+)"((?: s="\d+")?)><f>(.*?)</f>(?:<v ?/>|<v></v>)</c>')
_HIGH_ROW = re.compile(r'(<row r="(\d+)"[^>]*?) customHeight="1"')
_MERGED = re.compile(r'<mergeCell ref="[A-Z]+(\d+):')
_MODIFIED = re.compile(r"(<dcterms:modified[^>]*>)[^<]*(</dcterms:modified>)")


def workbook_bytes(workbook: Workbook, results: Mapping[str, Results], dated: date) -> bytes:
    """Save a workbook with the results of its formulas, by sheet title, and with its dates pinned.

    Raises `ValueError` where a formula has no result or a result has no formula, so that no reader shows an
    empty cell.
    """
    output = io.BytesIO()
    workbook.save(output)
    members = []
    with zipfile.ZipFile(output) as packed:
        for name in packed.namelist():
            content = packed.read(name)
            if match := re.fullmatch(r"xl/worksheets/sheet(\d+)\.xml", name):
                title = workbook.sheetnames[int(match[1]) - 1]
                content = _growing(_with_results(content.decode(), results.get(title, {}), title)).encode()
            elif name == "docProps/core.xml":
                content = _MODIFIED.sub(rf"\g<1>{dated.isoformat()}T00:00:00Z\g<2>", content.decode()).encode()
            members.append((name, content))
    return zip_members(sorted(members, key=lambda member: (member[0] != "[Content_Types].xml", member[0])))


def _with_results(sheet: str, results: Results, title: str) -> str:
    placed: set[str] = set()

    def place(match: re.Match[str]) -> str:
        address, style, formula = match.groups()
        if address not in results:
            raise ValueError(f"formula {title}!{address} has no result")
        placed.add(address)
        result = results[address]
        kind, value = (' t="str"', escape(result)) if isinstance(result, str) else ("", format(result, "f"))
        return f'<c r="{address}"{style}{kind}><f>{formula}</f><v>{value}</v></c>'

    finished = _FORMULA_CELL.sub(place, sheet)
    if placed != set(results) or finished.count("<f>") != len(placed):
        raise ValueError(f"results and formulas of sheet {title} do not match")
    return finished


def _growing(sheet: str) -> str:
    """Let rows grow with what is typed into them, but for those with merged cells, which programs do not fit."""
    merged = set(_MERGED.findall(sheet))
    return _HIGH_ROW.sub(lambda match: match[0] if match[2] in merged else match[1], sheet)
