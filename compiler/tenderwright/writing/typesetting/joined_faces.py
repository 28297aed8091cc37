"""The typefaces of a joined PDF: one subset of each face for all its parts, whose glyphs keep their numbers."""

from __future__ import annotations

import re
from functools import cache
from io import BytesIO
from typing import Any

from tenderwright.writing.faces import FACES, Face, face_bytes
from tenderwright.writing.typesetting.kept import KeptParts

_MAPPED = re.compile(rb"<([0-9a-f]{4})> <([0-9a-f]+)>")
_WEIGHTS = {400: "", 600: "-Semi-Bold", 700: "-Bold"}


def _name(face: Face) -> str:
    """Give the name that the typesetter gives to a face."""
    slope = "-Italic" if face.style == "italic" else ""
    return f"{face.family.replace(' ', '-')}{_WEIGHTS[face.weight]}{slope}"


_BY_NAME = {_name(face): face for face in FACES}


def face_called(font: Any) -> Face | None:
    """Give the face of ours that a font dictionary of a part holds; none for any other, or with glyphs made up."""
    if font.get("/Encoding") != "/Identity-H":
        return None
    return _BY_NAME.get(str(font.BaseFont).partition("+")[2])


@cache
def _opened(face: Face) -> Any:
    from fontTools.ttLib import TTFont

    content = face_bytes(face.url)
    assert content is not None
    return TTFont(BytesIO(content), lazy=True, recalcTimestamp=False)


@cache
def letters(face: Face) -> dict[int, tuple[int, float]]:
    """Give the glyph of each code point that a face holds, and its width in thousandths of the type size."""
    font = _opened(face)
    scale = 1000 / font["head"].unitsPerEm
    widths = font["hmtx"].metrics
    return {code: (font.getGlyphID(name), widths[name][0] * scale) for code, name in font.getBestCmap().items()}


class JoinedFace:
    """One face of a joined PDF, with the glyphs that any of its pages use."""

    def __init__(self, face: Face, pdf: Any) -> None:
        """Make the font's object in a PDF, to be filled once all glyphs are known."""
        from pikepdf import Dictionary

        self._face, self._pdf = face, pdf
        self._glyphs: dict[int, str] = {}
        self.font = pdf.make_indirect(Dictionary())

    def take(self, font: Any) -> None:
        """Take the glyphs that the font dictionary of a part maps to text."""
        for glyph, text in _MAPPED.findall(font.ToUnicode.read_bytes()):
            self._glyphs.setdefault(int(glyph, 16), text.decode())

    def glyphs(self, text: str) -> bytes:
        """Give the glyphs that set a text, as a string of a content stream; what the face lacks is its empty box."""
        known, shown = letters(self._face), []
        for letter in text:
            glyph = known.get(ord(letter), (0, 0.0))[0]
            self._glyphs.setdefault(glyph, letter.encode("utf-16-be").hex())
            shown.append(f"{glyph:04x}")
        return f"<{''.join(shown)}>".encode()

    def embed(self, kept: KeptParts | None) -> None:
        """Fill the font's object: the subset of the face, its widths and what its glyphs mean."""
        from pikepdf import Array, Dictionary, Name, Stream

        name, font = _name(self._face), _opened(self._face)
        scale = 1000 / font["head"].unitsPerEm
        order, metrics, head, hhea = font.getGlyphOrder(), font["hmtx"].metrics, font["head"], font["hhea"]
        widths: list[Any] = []
        for glyph in sorted(self._glyphs):
            widths += [glyph, Array([round(metrics[order[glyph]][0] * scale)])]
        program = Stream(self._pdf, _kept_subset(self._face, tuple(sorted(self._glyphs)), kept))
        program.Subtype = Name.OpenType
        base = Name(f"/TENDER+{name}")
        descriptor = Dictionary(
            Type=Name.FontDescriptor,
            FontName=base,
            FontFamily=self._face.family,
            Flags=4 + 2 * ("Serif" in self._face.family) + 64 * (self._face.style == "italic"),
            FontBBox=Array([round(side * scale) for side in (head.xMin, head.yMin, head.xMax, head.yMax)]),
            ItalicAngle=round(font["post"].italicAngle),
            Ascent=round(hhea.ascent * scale),
            Descent=round(hhea.descent * scale),
            CapHeight=round(font["OS/2"].sCapHeight * scale),
            StemV=80,
            FontFile3=self._pdf.make_indirect(program),
        )
        descendant = Dictionary(
            Type=Name.Font,
            Subtype=Name.CIDFontType0,
            BaseFont=base,
            CIDSystemInfo=Dictionary(Registry="Adobe", Ordering="Identity", Supplement=0),
            W=Array(widths),
            FontDescriptor=self._pdf.make_indirect(descriptor),
        )
        self.font.Type = Name.Font
        self.font.Subtype = Name.Type0
        self.font.BaseFont = base
        self.font.Encoding = Name("/Identity-H")
        self.font.DescendantFonts = Array([self._pdf.make_indirect(descendant)])
        self.font.ToUnicode = self._pdf.make_indirect(Stream(self._pdf, self._meanings()))

    def _meanings(self) -> bytes:
        """Write the map from glyphs to text (ISO 32000-1, 9.10.3)."""
        pairs = [f"<{glyph:04x}> <{text}>" for glyph, text in sorted(self._glyphs.items())]
        blocks = [pairs[start : start + 100] for start in range(0, len(pairs), 100)]
        lines = [
            "/CIDInit /ProcSet findresource begin",
            "12 dict begin",
            "begincmap",
            "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def",
            "/CMapName /Adobe-Identity-UCS def",
            "/CMapType 2 def",
            "1 begincodespacerange",
            "<0000> <ffff>",
            "endcodespacerange",
            *(line for block in blocks for line in (f"{len(block)} beginbfchar", *block, "endbfchar")),
            "endcmap",
            "CMapName currentdict /CMap defineresource pop",
            "end",
            "end",
        ]
        return "\n".join(lines).encode()


def _kept_subset(face: Face, glyphs: tuple[int, ...], kept: KeptParts | None) -> bytes:
    """Give a subset of a face, from what an earlier run kept where there is such."""
    if kept is None:
        return _subset(face, glyphs)
    name = f"{face.file} {glyphs}"
    program = kept.get(name)
    if program is None:
        program = _subset(face, glyphs)
        kept.put(name, program)
    return program


@cache
def _subset(face: Face, glyphs: tuple[int, ...]) -> bytes:
    """Give the program of a face with some of its glyphs, numbered as in the whole."""
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont

    content = face_bytes(face.url)
    assert content is not None
    font = TTFont(BytesIO(content), lazy=True, recalcTimestamp=False, recalcBBoxes=False)
    options = Options(
        retain_gids=True, hinting=False, layout_features=[], glyph_names=False, notdef_outline=True, name_IDs=[]
    )
    options.drop_tables += ["GSUB", "GPOS", "GDEF", "BASE", "DSIG", "name", "OS/2", "post"]
    subsetter = Subsetter(options)
    subsetter.populate(gids=list(glyphs))
    subsetter.subset(font)
    written = BytesIO()
    font.save(written)
    return written.getvalue()
