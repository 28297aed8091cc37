"""Walk a package through its life: an addendum, bids made on its own price form, the award, the dock, the close."""

from __future__ import annotations

import io
import shutil
from pathlib import Path

import openpyxl
import yaml

from tenderwright.cli import main
from tenderwright.comparing.compare import Comparison, compare
from tenderwright.comparing.side import Side
from tenderwright.pipeline import Compiled, compile_owner, compile_package, compose_yard, read, stamp_of
from tenderwright.writing.price_form_xlsx import price_form_workbook


def laid(root: Path, *parts: Path) -> Path:
    """Lay files of a later day over a package, or lay it at first."""
    for part in parts:
        shutil.copytree(part, root, dirs_exist_ok=True, ignore=shutil.ignore_patterns("build"))
    return root


def compiled(root: Path) -> Compiled:
    """Compile a package whose papers must be without a mistake on either side."""
    files = read(root)
    yard = compile_package(files)
    owner = compile_owner(files, yard)
    assert [f"{one.place}: {one.message}" for one in (*yard.notices, *owner.notices) if one.severity == "error"] == []
    return yard


def between(before: Compiled, after: Compiled) -> Comparison:
    """Tell what an addendum would tell."""
    return compare(*(Side(one.files, one.package, one.links, one.record) for one in (before, after)))


def returned(root: Path, yard: str, factor: float, received: str) -> int:
    """Fill the price form at the owner's own rates times a factor, and read it as it comes back."""
    of = compile_package(read(root))
    _, form = compose_yard(of, stamp_of(of))
    book = openpyxl.load_workbook(io.BytesIO(price_form_workbook(form)))
    rates = yaml.safe_load((root / "owner" / "rates.yaml").read_text("utf-8"))["lines"]
    sheet = book["Price form"]
    for row in range(1, sheet.max_row + 1):
        line = str(sheet.cell(row, 1).value)
        rate = rates.get(line, rates.get(line.rpartition(".")[0], {})).get("rate")
        if rate is not None:
            cell = sheet.cell(row, 7)
            cell.value = round(rate * factor / 100, 4) if "%" in cell.number_format else round(rate * factor, 2)
    said = book["Acknowledgements"]
    for addendum in range(1, len(of.package.tender.addenda) + 1 if of.package.tender is not None else 1):
        said.cell(3 + addendum, 2).value = "yes"
    terms = next(cell.row for cell in said["A"] if str(cell.value).startswith("The terms of the tender"))
    said.cell(terms, 2).value = "yes"
    folder = root / "owner" / "documents" / "bids"
    folder.mkdir(parents=True, exist_ok=True)
    file = folder / f"{yard.split()[0].lower()}.xlsx"
    book.save(file)
    return main(["bids", "read", str(root), str(file), "--received", received, "--yard", yard])
