"""The typefaces of the paper edition, taken from packages and never from the machine."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from importlib.resources import files

SCHEME = "face"


@dataclass(frozen=True)
class Face:
    """One font file and how style sheets ask for it."""

    family: str
    weight: int
    style: str
    package: str
    file: str

    @property
    def url(self) -> str:
        """Give the address under which the build serves the file."""
        return f"{SCHEME}:{self.file}"


def _family(family: str, package: str, stem: str) -> tuple[Face, ...]:
    cuts = (
        ("Regular", 400, "normal"),
        ("It", 400, "italic"),
        ("Semibold", 600, "normal"),
        ("Bold", 700, "normal"),
    )
    return tuple(Face(family, weight, style, package, f"{stem}-{cut}.otf") for cut, weight, style in cuts)


FACES = (
    *_family("Tender Serif", "font_source_serif_pro", "SourceSerifPro"),
    *_family("Tender Sans", "font_source_sans_pro", "SourceSansPro"),
)


def face_rules() -> str:
    """Give the `@font-face` rules of every face."""
    return "\n".join(
        f'@font-face {{ font-family: "{face.family}"; font-weight: {face.weight}; font-style: {face.style}; '
        f'src: url("{face.url}"); }}'
        for face in FACES
    )


def face_bytes(url: str) -> bytes | None:
    """Give the font file served under an address, or nothing for any other address."""
    for face in FACES:
        if face.url == url:
            return (files(face.package) / "files" / face.file).read_bytes()
    return None


@cache
def covered_characters() -> frozenset[int]:
    """Give the code points that every regular face can set."""
    from io import BytesIO

    from fontTools.ttLib import TTFont

    maps = []
    for face in FACES:
        if face.weight == 400 and face.style == "normal":
            content = face_bytes(face.url)
            assert content is not None
            maps.append(frozenset(TTFont(BytesIO(content), lazy=True).getBestCmap()))
    return frozenset.intersection(*maps)
