"""The desk at which an edition is composed: the compiled package, and how things are named, linked and shown."""

from __future__ import annotations

import copy
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import wraps
from typing import Any, TypeVar, cast
from urllib.parse import unquote

from markdown_it.token import Token

from tenderwright.calculations.method import BY_ROW, Symbol
from tenderwright.calculations.ship.how_sure import WHERE, how_sure
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.value import Record, Value
from tenderwright.documents.edition import Inline, Prose, Span
from tenderwright.documents.numbering import GROUPS, mark, part_words
from tenderwright.linking.link import Links
from tenderwright.linking.prose import KINDS, WEB, parse_prose
from tenderwright.model.build import Prose as WrittenProse
from tenderwright.model.build import Reference
from tenderwright.model.package import Package, sound
from tenderwright.model.tender import Tender
from tenderwright.quantities.customs import telling_in
from tenderwright.quantities.display import METRIC_UNITS, in_column, no_finer, show, unit_of, written_as
from tenderwright.quantities.purposes import PURPOSES, purpose_of
from tenderwright.quantities.quantity import Quantity

_POWERS = re.compile(r"(\d ?(?:[kmcµ]?g/|t/|mA/|lb/)?(?:[ckm]?m|ft|in|yd))([23])\b")
_LETTERED = {"um": "µm", "degC": "°C", "degF": "°F"}
_BEFORE = re.compile(r"\b(award|arrival|(?:un)?docking|redelivery) - (?=\d+ d\b)", re.IGNORECASE)
_LETTERS = re.compile(rf"(?<=\d)( ?)({'|'.join(_LETTERED)})\b")

CAUTION = (
    "A planning and tender document; it certifies nothing. The docking plan, stability and strength are for a naval "
    "architect and the dockmaster; entry and hot work for the yard's competent person or marine chemist. The law of "
    "the yard's place governs."
)
"""The usual caution, printed in full where the ship is docked, drawn or handed over."""

CAUTION_LINE = (
    "A planning and tender document; it certifies nothing. Who decides on docking, entry and hot work: see the cover."
)
"""The same in a line, for the other pages that touch safety, of a document whose cover gives it in full."""


_Desk = TypeVar("_Desk", bound="Desk")
_Composer = TypeVar("_Composer", bound=Callable[..., Any])


def in_its_units(compose: _Composer) -> _Composer:
    """Let a composer tell all figures in the units of the desk that it is given first."""

    @wraps(compose)
    def composed(desk: Desk, *arguments: Any, **named: Any) -> Any:
        with telling_in(desk.units, american=desk.package.american):
            return compose(desk, *arguments, **named)

    return cast(_Composer, composed)


@dataclass(frozen=True)
class Desk:
    """What the composers of parts work from."""

    package: Package
    links: Links
    calculated: Calculated
    numbers_parts: bool = False
    """Whether what is composed here goes into the specification, whose parts get their numbers at the end."""
    earlier_tender: str = ""
    """The tender whose items are told of, where it is not that of the package."""

    def of_tender(self: _Desk, number: str) -> _Desk:
        """Give the desk for what tells of a tender: items of an earlier one are named with it and lead nowhere."""
        return self if self.package.is_of(number) else replace(self, earlier_tender=number)

    @property
    def tender(self) -> Tender:
        """Give the tender; editions are composed only of sound packages, which have one."""
        return sound(self.package.tender)

    @property
    def record(self) -> Record:
        """Give the record of calculation."""
        return self.calculated.record

    @property
    def units(self) -> str:
        """Give the system in which quantities are shown."""
        return self.tender.units

    def anchor(self, kind: str, name: str) -> str:
        """Give the anchor at which a thing is found in the edition; empty where it has none."""
        if kind in ("frame", "value") or (kind == "item" and self.earlier_tender):
            return ""
        if kind == "part":
            return name if self.numbers_parts else ""
        return f"{kind}-{name}".replace(".", "-")

    def label(self, kind: str, name: str) -> str:
        """Give the words for a thing in running text."""
        if kind == "item":
            return f"item {name} of {self.earlier_tender}" if self.earlier_tender else f"item {name}"
        if kind == "question":
            return f"question {name}"
        if kind == "frame":
            return f"Fr {name}"
        if kind == "value":
            value = self.record.values.get(name)
            return self._in_text(value) if value else name
        if kind == "part":
            return mark(name, titled=True) if self.numbers_parts else part_words(name)
        if kind == "drawing":
            return name.upper()
        symbol = self.links.symbols.get((kind, name))
        title = symbol.title if symbol else name
        if kind == "clause":
            number = self.clause_number(name)
            return f"clause {number} ({title})" if number else title
        return f"strake {name}" if kind == "strake" else f"anode {name}" if kind == "anode" else title

    def clause_number(self, name: str) -> str:
        """Give the printed number of a clause, such as `2.7`: that of its file, or its place where that has none."""
        for index, clause in enumerate(self.package.clauses, start=1):
            if clause.clause == name:
                return f"{GROUPS['General requirements']}.{clause.number or index}"
        return ""

    def part(self, anchor: str, *, titled: bool = True) -> Span:
        """Give a link to a part of the specification: `part 4.2 (Blocks and their loads)`, or its number alone."""
        words = mark(anchor, titled=titled) if self.numbers_parts else part_words(anchor)
        return Span(words, self.anchor("part", anchor))

    def ref(self, reference: Reference) -> Span:
        """Give a reference as linked text."""
        return Span(self.label(reference.kind, reference.name), self.anchor(reference.kind, reference.name))

    def refs(self, references: tuple[Reference, ...]) -> Inline:
        """Give references as linked text: twins once, and semicolons between where a name has a comma of its own."""
        spans: list[Span] = []
        named = [self.ref(reference) for reference in references]
        between = "; " if any(", " in one.text for one in named) else ", "
        for before, one in zip([None, *named], named, strict=False):
            stem, comma, side = one.text.rpartition(", ")
            if before is not None and comma and side == "starboard" and before.text == f"{stem}, port":
                spans += [Span(" and "), replace(one, text=side)]
            else:
                spans += ([Span(between)] if spans else []) + [one]
        return tuple(spans)

    def carried(self, path: str) -> Span | None:
        """Give the name of a file that goes along, linked; None where there is none."""
        found = self.package.travelling.get(path)
        return Span(path.rpartition("/")[2], file=path) if found is not None else None

    def item_ref(self, number: str, text: str = "") -> Span:
        """Give a link to an item."""
        return Span(text or number, self.anchor("item", number))

    def quantity(self, quantity: Quantity | str | None, empty: str = "", *, beside: bool = False) -> str:
        """Show a written quantity as the package asks; `beside` adds it as written where that is in another system."""
        if quantity is None:
            return empty
        if isinstance(quantity, str):
            return quantity
        with telling_in(self.units, american=self.package.american):
            return written_as(quantity, beside=beside)

    def figure(self, value: Value, digits: int = 4) -> str:
        """Show a calculated value in its unit, to so many significant digits; 0 for as many as its purpose bears."""
        if isinstance(value.si, bool):
            return "yes" if value.si else "no"
        if value.si is None or isinstance(value.si, str):
            return value.si or "not known"
        with telling_in(self.units, american=self.package.american):
            if value.dimension == "table":
                return "; ".join(_row(value.symbol, row) for row in value.si)
            if isinstance(value.si, (list, tuple)):
                return _several(value)
            return show(float(value.si), purpose_of(value.dimension, value.unit), digits=digits)

    def _in_text(self, value: Value) -> str:
        """Show a value in running text, that of a condition no finer than the docking condition is known."""
        condition, _, figure = value.name.rpartition(".")
        known = self.calculated.found(how_sure) if condition.startswith("condition.") else None
        of = next((name for name, at in WHERE.items() if at == f"condition.docking.{figure}"), "")
        u = known.u(of) if known is not None else None
        if not u or not isinstance(value.si, float):
            return self.figure(value, digits=0)
        with telling_in(self.units, american=self.package.american):
            return no_finer(value.si, u, purpose_of(value.dimension, value.unit))

    def number(self, name: str, purpose: str = "", *, more: int = 0) -> str:
        """Show a value by name without its unit, for what it is for; a dash where there is none."""
        value = self.record.values.get(name)
        if value is None:
            return "–"
        with telling_in(self.units, american=self.package.american):
            return in_column(float(value.si), purpose or purpose_of(value.dimension, value.unit), more=more)

    def told(self, name: str, purpose: str = "", *, more: int = 0) -> str:
        """Show a value by name with its unit, for what it is for; a dash where there is none."""
        value = self.record.values.get(name)
        if value is None:
            return "–"
        with telling_in(self.units, american=self.package.american):
            return show(float(value.si), purpose or purpose_of(value.dimension, value.unit), more=more)

    def prose(self, written: WrittenProse) -> Prose:
        """Give written text as parsed tokens with every reference turned into an anchor and its words."""
        tokens = [copy.copy(token) for token in parse_prose(written.text)]
        for token in tokens:
            if token.children:
                token.children = self._resolved([_own(child) for child in token.children])
        return Prose(tokens)

    def words(self, written: WrittenProse) -> Inline:
        """Give written text as one run of inline text with its links, for a cell or a fact."""
        spans: list[Span] = []
        target = web = ""
        strong = False
        for token in self.prose(written).tokens:
            if spans and token.type in ("inline", "fence", "code_block"):
                spans.append(Span(" "))
            if token.type in ("fence", "code_block"):
                spans.append(Span(token.content.strip(), code=True))
            for child in token.children or ():
                if child.type == "link_open":
                    href = str(child.attrs.get("href", ""))
                    target, web = (href[1:], "") if href.startswith("#") else ("", href)
                elif child.type == "link_close":
                    spans += [Span(f" ({web})")] if web and spans and spans[-1].text != web else []
                    target = web = ""
                elif child.type in ("strong_open", "strong_close"):
                    strong = child.type == "strong_open"
                elif child.type in ("text", "code_inline", "image"):
                    spans.append(Span(child.content, target, strong=strong, code=child.type == "code_inline"))
                elif child.type in ("softbreak", "hardbreak"):
                    spans.append(Span(" "))
        return tuple(spans)

    def plain(self, written: WrittenProse) -> str:
        """Give written text without marks or links, a line for each paragraph and list entry."""
        lines: list[str] = []
        entry = False
        for token in self.prose(written).tokens:
            if token.type == "list_item_open":
                entry = True
            elif token.type == "inline":
                breaks = ("softbreak", "hardbreak")
                words = "".join(" " if child.type in breaks else child.content for child in token.children or ())
                lines.append(f"– {words}" if entry else words)
                entry = False
        return "\n".join(lines)

    def _resolved(self, children: list[Token]) -> list[Token]:
        resolved: list[Token] = []
        auto: str | None = None
        dropped = 0
        told = ""
        for child in children:
            if child.type == "link_open":
                kind, colon, name = unquote(str(child.attrs.get("href", ""))).partition(":")
                if colon and kind in KINDS:
                    anchor = self.anchor(kind, name)
                    auto = self.label(kind, name) if child.info == "auto" else None
                    if anchor:
                        child.attrs["href"] = f"#{anchor}"
                    else:
                        dropped += 1
                        continue
                elif kind in WEB and not self.tender.web_links:
                    told = "" if child.info == "auto" else f" ({child.attrs.get('href', '')})"
                    dropped += 1
                    continue
            elif child.type == "link_close" and dropped:
                dropped -= 1
                auto = None
                resolved += [Token("text", "", 0, content=told)] if told else []
                told = ""
                continue
            elif child.type == "link_close":
                auto = None
            elif child.type == "text" and auto is not None:
                child.content = auto
                auto = None
            elif child.type == "text":
                child.content = set_units(child.content)
            resolved.append(child)
        return resolved


def _own(token: Token) -> Token:
    """Copy a parsed token, so that what was parsed once for all stays as it is."""
    made = copy.copy(token)
    made.attrs = dict(token.attrs)
    return made


def set_units(text: str) -> str:
    """Set units after a number as in print, `60 m2` as `60 m²` and `125 um` as `125 µm`, and days before an event."""
    text = _BEFORE.sub(r"\1 − ", text)
    text = _LETTERS.sub(lambda match: match[1] + _LETTERED[match[2]], text)
    return _POWERS.sub(lambda match: match[1] + {"2": "²", "3": "³"}[match[2]], text)


def joined(words: list[str], last: str = "and") -> str:
    """Join words as in `a, b and c`."""
    return f" {last} ".join([", ".join(words[:-1]), words[-1]]) if len(words) > 1 else "".join(words)


def capital(text: str) -> str:
    """Begin a text with a capital."""
    return text[:1].upper() + text[1:]


def _several(value: Value) -> str:
    """Show figures one after the other, with the unit after the last."""
    purpose = purpose_of(value.dimension, value.unit)
    more = 1 - PURPOSES[purpose].metric.places if purpose else -1
    figures = ", ".join(in_column(float(one), purpose, more=more) for one in value.si)
    return f"{figures} {unit_of(purpose)}".rstrip()


def _row(table: Symbol, row: Mapping[str, Any]) -> str:
    """Show a row of a table of figures as one run of text."""
    cells = []
    for column in table.columns:
        figure, dimension, unit = row[column.name], column.dimension, column.unit
        if dimension == BY_ROW:
            dimension, unit = row["dimension"], METRIC_UNITS[row["dimension"]]
        if isinstance(figure, bool) or figure is None:
            cells.append({True: "yes", False: "no", None: "not known"}[figure])
        elif isinstance(figure, str):
            cells += [figure] if column.name != "dimension" else []
        else:
            cells.append(show(float(figure), purpose_of(dimension, unit), digits=3))
    return ", ".join(cells)
