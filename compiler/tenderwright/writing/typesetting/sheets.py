"""The sheets that parts are set on: size and margins, for the style sheet and for what is painted in the margins."""

from __future__ import annotations

from dataclasses import astuple, dataclass
from typing import Literal

Form = Literal["", "landscape", "drawing", "cover", "statement"]


@dataclass(frozen=True)
class Sheet:
    """One sheet, in millimetres."""

    width: float
    height: float
    top: float
    right: float
    bottom: float
    left: float

    @property
    def rule(self) -> str:
        """Give what the style sheet says of it."""
        margins = " ".join(f"{side:.6g}mm" for side in (self.top, self.right, self.bottom, self.left))
        return f"size: {self.width:.6g}mm {self.height:.6g}mm; margin: {margins};"

    def scaled(self, factor: float) -> Sheet:
        """Give a sheet so many times as large."""
        return Sheet(*(round(factor * side, 4) for side in astuple(self)))


SHEETS: dict[tuple[str, Form], Sheet] = {
    ("A4", ""): Sheet(210, 297, 21, 18, 21, 20),
    ("A4", "landscape"): Sheet(297, 210, 22, 20, 25, 20),
    ("A4", "drawing"): Sheet(297, 210, 14, 14, 16, 14),
    ("A4", "cover"): Sheet(210, 297, 30, 24, 24, 34),
    ("A4", "statement"): Sheet(210, 297, 19, 18, 22, 18),
    ("Letter", ""): Sheet(215.9, 279.4, 21, 18, 21, 20),
    ("Letter", "landscape"): Sheet(279.4, 215.9, 22, 20, 25, 20),
    ("Letter", "drawing"): Sheet(279.4, 215.9, 14, 14, 16, 14),
    ("Letter", "cover"): Sheet(215.9, 279.4, 28, 24, 22, 34),
    ("Letter", "statement"): Sheet(215.9, 279.4, 17, 19, 21, 19),
}


def form_of(kind: str, landscape: bool) -> Form:
    """Give the form of the sheets that a part of a kind is set on."""
    if kind == "cover" or kind == "statement":
        return "cover" if kind == "cover" else "statement"
    return "" if not landscape else "drawing" if kind == "drawing" else "landscape"


def sheet_class(page_size: str, form: Form) -> str:
    """Give the name by which the style sheet knows a sheet."""
    return "-".join(filter(None, (page_size.lower(), form)))


def sheet_named(name: str) -> Sheet:
    """Give the sheet that the style sheet knows by a name."""
    return next(sheet for (size, form), sheet in SHEETS.items() if sheet_class(size, form) == name)


def sheet_rules() -> str:
    """Give the rules of every sheet, and of the bodies that are set on them."""
    return "\n".join(
        f"@page {name} {{ {sheet.rule} }}\nbody.{name} {{ page: {name}; }}"
        for (size, form), sheet in SHEETS.items()
        for name in [sheet_class(size, form)]
    )
