"""Sets up the templates: escaping everywhere, no undefined names, and the few filters that blocks need."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from jinja2 import Environment, PackageLoader, StrictUndefined
from markdown_it.token import Token
from markupsafe import Markup

from tenderwright.documents.edition import Block, Edition, Figure, Part, Table
from tenderwright.writing.decimals import table_pads
from tenderwright.writing.figures import Room, figure_svg
from tenderwright.writing.prose import prose_html

_STATE_MARKS = {"issued": "", "draft": "DRAFT", "no-git": "NOT ISSUED"}


@dataclass(frozen=True)
class Drawing:
    """How figures are drawn in one medium."""

    room: Room | None
    """The largest a figure may be; none for a medium that fits figures itself."""
    nested_rules: bool

    def svg(self, figure: Figure) -> Markup:
        """Give the figure's SVG as markup."""
        return Markup(figure_svg(figure, scale=self._scale(figure), nested_rules=self.nested_rules))

    @property
    def opens(self) -> bool:
        """Say whether a figure opens large when it is tapped: on a screen, where it may be too small to read."""
        return self.room is None

    def reduced(self, figure: Figure) -> bool:
        """Say whether the figure is too large for the page and so loses its scale."""
        return self._scale(figure) < 1.0

    def _scale(self, figure: Figure) -> float:
        return 1.0 if self.room is None else self.room.scale(figure)


@dataclass(frozen=True)
class ContentsGroup:
    """Parts listed together in the contents."""

    title: str
    parts: tuple[Part, ...]


def contents_groups(parts: Sequence[Part]) -> tuple[ContentsGroup, ...]:
    """Group the parts to list in the contents by their group, in order; covers and contents are left out."""
    groups: list[ContentsGroup] = []
    for part in parts:
        if part.kind in ("cover", "contents"):
            continue
        if groups and groups[-1].title == part.group:
            groups[-1] = ContentsGroup(part.group, (*groups[-1].parts, part))
        else:
            groups.append(ContentsGroup(part.group, (part,)))
    return tuple(groups)


def edition_mark(edition: Edition) -> str:
    """Give the words every page of an edition carries in its head: confidential, draft, both or neither."""
    words = ("CONFIDENTIAL" if edition.confidential else "", _STATE_MARKS[edition.stamp.state])
    return " · ".join(word for word in words if word)


def style_sheet(name: str) -> str:
    """Read a style sheet or script of this package."""
    return (files(__package__) / "styles" / name).read_text(encoding="utf-8")


def _widths(table: Table) -> tuple[str, ...]:
    total = sum(column.width for column in table.columns)
    return tuple(f"{100 * column.width / total:.3f}" for column in table.columns)


def _kind(block: Block) -> str:
    return type(block).__name__


def _prose(tokens: Sequence[Token]) -> Markup:
    return Markup(prose_html(tokens))


@cache
def environment() -> Environment:
    """Make the template environment, once."""
    made = Environment(
        loader=PackageLoader("tenderwright.writing"),
        autoescape=True,
        undefined=StrictUndefined,
        auto_reload=False,
    )
    filters: dict[str, Callable[..., object]] = {
        "prose": _prose,
        "table_pads": table_pads,
        "widths": _widths,
        "kind": _kind,
    }
    made.filters.update(filters)
    return made
