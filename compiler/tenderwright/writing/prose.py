"""Renders CommonMark tokens, whose references are already anchors, as HTML."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from markdown_it import MarkdownIt
from markdown_it.common.utils import escapeHtml
from markdown_it.renderer import RendererHTML
from markdown_it.token import Token
from markdown_it.utils import EnvType, OptionsDict

from tenderwright.writing.errors import WritingError

_ALLOWED_TARGETS = ("#", "https://", "http://", "mailto:")


class _ProseRenderer(RendererHTML):
    """Renders as markdown-it does, but passes no raw HTML, loads no picture, sets headings below a part's."""

    def html_block(self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: EnvType) -> str:
        return f"<p>{escapeHtml(tokens[idx].content)}</p>\n"

    def html_inline(self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: EnvType) -> str:
        return escapeHtml(tokens[idx].content)

    def image(self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: EnvType) -> str:
        token = tokens[idx]
        words = self.renderInlineAsText(token.children, options, env) if token.children else token.content
        return f"{escapeHtml(words)} (<code>{escapeHtml(str(token.attrs.get('src', '')))}</code>)"

    def link_open(self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: EnvType) -> str:
        return f'<a href="{escapeHtml(link_target(tokens[idx]))}">'

    def heading_open(self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: EnvType) -> str:
        return f"<{_heading_tag(tokens[idx])}>"

    def heading_close(self, tokens: Sequence[Token], idx: int, options: OptionsDict, env: EnvType) -> str:
        return f"</{_heading_tag(tokens[idx])}>\n"


def link_target(link: Token) -> str:
    """Give what a link of prose leads to, raising `WritingError` where that is neither an anchor nor on the web."""
    target = str(link.attrs.get("href", ""))
    if not target.startswith(_ALLOWED_TARGETS):
        raise WritingError(f"prose refers to {target!r}, which is neither an anchor nor a web address")
    return target


def _heading_tag(token: Token) -> str:
    return f"h{min(max(int(token.tag[1]), 2) + 1, 6)}"


_RENDERER = _ProseRenderer()
_OPTIONS: Any = MarkdownIt("commonmark", {"html": False}).options


def prose_html(tokens: Sequence[Token]) -> str:
    """Render parsed prose as HTML, raising `WritingError` where a reference was left unresolved."""
    return str(_RENDERER.render(tokens, _OPTIONS, {}))
