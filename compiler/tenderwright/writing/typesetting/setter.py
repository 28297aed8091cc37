"""Sets one part: its HTML laid out and painted as a tagged PDF of its own, the same bytes wherever that is done."""

from __future__ import annotations

import gc
import re
from typing import Any

from tenderwright.writing.clock import source_date
from tenderwright.writing.fetching import build_fetcher, no_complaints
from tenderwright.writing.html import paper_style
from tenderwright.writing.typesetting.collection import paused_collection
from tenderwright.writing.typesetting.fit import fit
from tenderwright.writing.typesetting.headings import level_headings
from tenderwright.writing.typesetting.sheets import Sheet, sheet_named

_BODY = re.compile(r'<body id="[^"]*" class="(\S+)([^"]*)">')
_TEXT = re.compile(r">[^<]+")
_TIED = re.compile(
    r"(?<=\d) (?=(?:[mckµ]?m[²³]?|[kmµ]?g|t|h|d|min|s|%|‰|°[CF]?|K|k?V|m?A|k?W|kWh|bar|[kM]?Pa|k?N|l|L|ml|ft[²³]?|lb|"
    r"psi|in|t/m[²³]?|mm/a)(?![\w·/]))|(?<=\bFr) (?=[−-]?\d)"
)
"""The blanks that are not to be broken at: before a unit of the trade, and after `Fr`."""
_AS_THEY_ARE = frozenset({"cover", "drawing", "statement", "donors", "wall", "record", "landscape"})
"""Kinds of parts laid out by hand, whose drawings fill their sheets, or whose type is as small as it may be."""


class PartSetter:
    """Sets parts one after another, with one style sheet and one set of faces."""

    def __init__(self) -> None:
        from weasyprint import CSS
        from weasyprint.text.fonts import FontConfiguration

        self._fetcher, self._fonts = build_fetcher(), FontConfiguration()
        with no_complaints("style sheet"):
            self._style = CSS(string=paper_style(), url_fetcher=self._fetcher, font_config=self._fonts)

    def set(self, anchor: str, page: str) -> bytes:
        """Give the PDF of a part; raises `WritingError` when the typesetter complains of anything."""
        with source_date(0), no_complaints(f"part {anchor}"), paused_collection():
            document, size = self._fitted(anchor, page)
            body = _BODY.search(page)
            item = body is not None and "item" in body[2].split()
            pdf: bytes = document.write_pdf(
                zoom=size, pdf_variant="pdf/ua-1", finisher=lambda _, pdf: _tags(pdf, anchor, item=item)
            )
        del document
        gc.collect(0)
        return pdf

    def _fitted(self, anchor: str, page: str) -> tuple[Any, float]:
        """Lay out a part, fitted to its pages where its kind and its figures let it, with the size to paint it at."""
        from weasyprint import CSS

        body = _BODY.search(page)
        if body is None or set(body[2].split()) & _AS_THEY_ARE:
            return self._laid_out(page), 1.0
        name = body[1]

        def lay_out(sheet: Sheet) -> Any:
            return self._laid_out(page, CSS(string=f"@page {name} {{ {sheet.rule} }}"))

        return fit(sheet_named(name), anchor, lay_out, to_scale="<figure" in page)

    def _laid_out(self, page: str, *more: Any) -> Any:
        from weasyprint import HTML

        return HTML(string=tied(page), url_fetcher=self._fetcher).render(
            font_config=self._fonts, stylesheets=[self._style, *more]
        )


def tied(page: str) -> str:
    """Keep each figure on one line with its unit, and each frame with its number, in the texts of a page."""
    return _TEXT.sub(lambda text: _TIED.sub("\N{NO-BREAK SPACE}", text[0]), page)


def _tags(pdf: Any, anchor: str, *, item: bool) -> None:
    _name_headers(pdf, anchor)
    level_headings(pdf, alike=item)


def _name_headers(pdf: Any, anchor: str) -> None:
    """Give the headers of tables names that no other part uses."""
    from pydyf import Array, Dictionary, String

    def own(name: Any) -> Any:
        return String(f"{anchor}-{name.string}")

    for one in pdf.objects:
        if not isinstance(one, Dictionary) or one.get("S") not in ("/TH", "/TD"):
            continue
        if "ID" in one:
            one["ID"] = own(one["ID"])
        if "Headers" in one.get("A", {}):
            one["A"]["Headers"] = Array([own(name) for name in one["A"]["Headers"]])
