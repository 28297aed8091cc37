"""What a number shows in its cell, and whether its format is one of the plain ones."""

from __future__ import annotations

import re
from decimal import ROUND_HALF_UP, Decimal

_TOKEN = re.compile(r'"([^"]*)"|\\(.)|_.|\*.|\[\$([^\]-]*)[^\]]*\]|\[([^\]]*)\]|([^"\\_*\[]+?)(?=["\\_*\[]|$)')
_BARE = re.compile(r'(?:"[^"]*"|\\.|_.|\*.|\[[^\]]*\])|([^"\\_*\[]+)')
_DIGITS = re.compile(r"[#0?,]*[#0?](?:\.[#0?]+)?,*")
_COLOURS = re.compile(r"black|blue|cyan|green|magenta|red|white|yellow|color ?\d{1,2}", re.IGNORECASE)
_PLAIN_WORDS = re.compile(r"[A-Z]{3}|[€£¥$]|[A-Z]{1,2}\$|(?i:kr\.?|zł|fr\.?)|[-+()\s.'’]*|,?-{1,2}")
_PLAIN = ("General", "@", "")
_SHOWN_TO = 2
"""Decimals that money has; what is shown to fewer must not lose any."""


def shows(number: Decimal, shape: str) -> str:
    """Give what a number shows in a format, where that is not plainly the number; else empty.

    Plain are formats of figures, with a sign of currency and decimals or without: nothing scaled, no other words, no
    conditions, no share of hundred, and no decimals hidden.
    """
    if shape in _PLAIN:
        return ""
    part = _part(number, shape)
    if part is None:
        return f"what the format `{shape}` makes of it"
    words, digits, before, after = part
    if not digits:
        text = "".join(words).strip()
        dash = not number and not text.strip("-–— ")
        return "" if dash and text else f"`{text}`" if text else "nothing"
    decimals = len(digits.rstrip(",").partition(".")[2])
    scale = len(digits) - len(digits.rstrip(","))
    percent = sum(word.count("%") for word in words)
    value = (abs(number) * Decimal(100) ** percent / Decimal(1000) ** scale).quantize(
        Decimal(1).scaleb(-decimals), ROUND_HALF_UP
    )
    hides = decimals < _SHOWN_TO and not scale and not percent and value != abs(number)
    plain = not scale and not percent and all(_PLAIN_WORDS.fullmatch(word.strip(" -+()")) for word in words)
    return "" if plain and not hides else f"`{before}{value}{after}`"


def _part(number: Decimal, shape: str) -> tuple[list[str], str, str, str] | None:
    """Give the words, the figures, and what stands before and after them in the part of a format for a number."""
    parts = _split(shape)
    place = 1 if number < 0 and len(parts) > 1 else 2 if not number and len(parts) > 2 else 0
    words, digits, before, after = [], "", "", ""
    position, text = 0, parts[place]
    while position < len(text):
        match = _TOKEN.match(text, position)
        if match is None or match.end() == position:
            return None
        position = match.end()
        quoted, escaped, currency, bracket, bare = match.groups()
        if bracket is not None and not _COLOURS.fullmatch(bracket):
            return None
        if bare is not None:
            found = list(_DIGITS.finditer(bare))
            if len(found) > 1 or (found and digits):
                return None
            if found:
                digits = found[0][0]
                before += bare[: found[0].start()]
                after += bare[found[0].end() :]
                words += [bare[: found[0].start()], bare[found[0].end() :]]
                continue
        word = quoted or escaped or currency or bare or ""
        words.append(word)
        before, after = (before, after + word) if digits else (before + word, after)
    letters = re.search(r"[a-zA-Z/@]", "".join(_BARE.findall(text)))
    return None if letters else (words, digits, before, after)


def _split(shape: str) -> list[str]:
    """Part a format at its semicolons, not at those in quotes."""
    pieces = re.findall(r'(?:"[^"]*"|\\.|[^";\\])*;?', shape)
    parts = [piece.removesuffix(";") for piece in pieces if piece]
    return [*parts, ""] if shape.endswith(";") else parts or [shape]
