"""Surface preparation grades and what each corresponds to in the other standards."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Standing, Symbol


class PreparationGrade(Struct, frozen=True):
    """One row of the table of correspondence; a field is None where that standard has no such grade."""

    name: str
    content: str
    standing: Standing
    """How well the row is known; `caution` says what part of it is known less well."""
    iso: str | None = None
    """ISO 8501-1 (dry) or ISO 8501-4 (water)."""
    sspc: str | None = None
    nace: str | None = None
    bs4232: str | None = None
    caution: str = ""


SOURCE = Citation(
    "Tables of correspondence of ISO 8501-1, SSPC, NACE and BS 4232",
    "dry grades as SSPC-VIS 1 pairs them; waterjetting and its answer in ISO 8501-4",
    "from memory",
)

GRADES: tuple[PreparationGrade, ...] = (
    PreparationGrade(
        "white metal blast",
        "no visible residue",
        "published",
        "Sa 3",
        "SSPC-SP 5",
        "NACE No. 1",
        "first quality",
    ),
    PreparationGrade(
        "near-white blast",
        "staining on at most 5 % of each unit area (SP 10)",
        "published",
        "Sa 2 1/2",
        "SSPC-SP 10",
        "NACE No. 2",
        "second quality",
        caution="the BS 4232 grade is from memory; ISO gives no percentage",
    ),
    PreparationGrade(
        "commercial blast",
        "staining on at most 33 % of each unit area (SP 6)",
        "published",
        "Sa 2",
        "SSPC-SP 6",
        "NACE No. 3",
        "third quality",
    ),
    PreparationGrade("brush-off blast", "tightly held residues stay", "published", "Sa 1", "SSPC-SP 7", "NACE No. 4"),
    PreparationGrade("power tool cleaning", "loose matter off by power tool", "published", "St 3", "SSPC-SP 3"),
    PreparationGrade("hand tool cleaning", "loose matter off by hand tool", "published", "St 2", "SSPC-SP 2"),
    PreparationGrade(
        "power tool cleaning to bare metal",
        "bare metal by power tool, profile of 25 µm or more",
        "published",
        sspc="SSPC-SP 11",
        caution="the profile is from memory; ISO has no such grade",
    ),
    PreparationGrade(
        "commercial power tool cleaning",
        "commercial grade by power tool",
        "published",
        sspc="SSPC-SP 15",
        caution="ISO has no photograph of it",
    ),
    PreparationGrade(
        "solvent cleaning",
        "oil, grease and dirt off; always comes first",
        "published",
        sspc="SSPC-SP 1",
        caution="no Sa grade",
    ),
    PreparationGrade("pickling", "scale and rust off in acid", "published", sspc="SSPC-SP 8", caution="no Sa grade"),
    PreparationGrade(
        "waterjetting to clean bare substrate",
        "clean; makes no new profile",
        "published",
        sspc="WJ-1",
    ),
    PreparationGrade(
        "very thorough waterjetting",
        "at least 95 % free; makes no new profile",
        "published",
        "Wa 2 1/2",
        "WJ-2",
        caution="that it answers to the ISO 8501-4 grade is from memory, and approximate",
    ),
    PreparationGrade(
        "thorough waterjetting",
        "at least two thirds free; makes no new profile",
        "published",
        "Wa 2",
        "WJ-3",
        caution="that it answers to the ISO 8501-4 grade is from memory, and approximate",
    ),
    PreparationGrade(
        "light waterjetting",
        "loose matter off; makes no new profile",
        "published",
        "Wa 1",
        "WJ-4",
        caution="that it answers to the ISO 8501-4 grade is from memory, and approximate",
    ),
)
"""The table of correspondence, from `SOURCE`. A correspondence, not an identity."""

_ALIASES = {
    "near-white metal blast": "near-white blast",
    "near white": "near-white blast",
    "white metal": "white metal blast",
    "commercial": "commercial blast",
    "brush-off": "brush-off blast",
    "sweep blast": "brush-off blast",
    "bs 4232 1st quality": "white metal blast",
    "bs 4232 2nd quality": "near-white blast",
    "bs 4232 3rd quality": "commercial blast",
    "bs 4232 first quality": "white metal blast",
    "bs 4232 second quality": "near-white blast",
    "bs 4232 third quality": "commercial blast",
}


_JOINT = re.compile(
    r"\biso 8501-[14]\b:?|\b(?:sspc[- ]?)?sp ?12\b(?: ?/ ?nace no\.? ?5)?(?=.*\bwj)|\bsspc[- ]?sp(?=[- ]?wj)"
)
"""The name of the standard before that of the grade, which tells nothing more: `SSPC-SP 12/NACE No. 5, WJ-2`."""
_WATER = re.compile(r"\bw[aj]")
_FLASH_RUST = re.compile(r"(?<=\d)[\s,/(-]*(?:flash rust\w*\s*|fr ?)?([lmh])\)?\s*$")
"""The degree of flash rust after a grade of waterjetting: light, medium or heavy."""


def _plain(name: str) -> str:
    plain = name.casefold().replace("½", " 1/2")
    return re.sub(r"(?<=\d)[.,]5\b", " 1/2", plain)


def _keys(name: str) -> set[str]:
    """Give the keys of the names that are written beside each other, as in `SSPC-SP 10/NACE No. 2`."""
    plain = _without_flash_rust(_JOINT.sub(" ", _plain(name)))
    return {_key(_without_flash_rust(one)) for one in re.split(r"/(?!\s*2\b)", plain) if one.strip(" ,")}


def _without_flash_rust(name: str) -> str:
    return _FLASH_RUST.sub("", name) if _WATER.search(name) else name


def _key(name: str) -> str:
    """Reduce a name to what tells grades apart, so that `Sa 2½`, `SA2.5` and `Sa 2 1/2` are one."""
    plain = _plain(name)
    plain = re.sub(r"\b(sspc|no|nace(?=[\s-]*wj))\b\.?", " ", plain)
    return re.sub(r"[^a-z0-9/]", "", plain).replace("1/2", "half")


FLASH_RUST = {"L": "light", "M": "medium", "H": "heavy"}
"""Grades of flash rust after water-jetting: ISO 8501-4 (from memory)."""


def flash_rust_of(name: str) -> str:
    """Give the grade of flash rust that a grade of water-jetting ends with, as in `Wa 2 1/2 M`; nothing where none."""
    plain = _plain(name)
    found = _FLASH_RUST.search(plain) if _WATER.search(plain) else None
    return found[1].upper() if found else ""


def _index() -> dict[str, PreparationGrade]:
    """Gather every name of every grade."""
    index: dict[str, PreparationGrade] = {}
    for grade in GRADES:
        for name in (grade.name, grade.iso, grade.sspc, grade.nace, grade.bs4232):
            if name is not None:
                index[_key(name)] = grade
    for alias, name in _ALIASES.items():
        index[_key(alias)] = index[_key(name)]
    return index


_INDEX = _index()


def preparation_grade(name: str) -> PreparationGrade:
    """Find a grade by any of its names: ISO, SSPC, NACE, BS 4232, waterjetting, or the trade's own words.

    The name of the standard may stand before it, both names of a joint standard beside each other, and the degree of
    flash rust (L, M, H) after a grade of waterjetting.

    Source: `SOURCE`. Raises OutOfRange for a name that no standard here has.
    """
    found = {_INDEX.get(key) for key in _keys(name)}
    if len(found) != 1 or None in found:
        raise OutOfRange(f"no surface preparation grade is called {name!r}")
    return next(grade for grade in found if grade is not None)


def _kernel(grade: str) -> Mapping[str, Any]:
    found = preparation_grade(grade)
    return {
        "name": found.name,
        "content": found.content,
        "iso": found.iso,
        "sspc": found.sspc,
        "nace": found.nace,
        "bs4232": found.bs4232,
        "standing": found.standing,
        "caution": found.caution,
        "flash_rust": FLASH_RUST.get(flash_rust_of(grade), ""),
    }


METHOD = Method(
    name="coating.preparation-grade",
    title="Equivalent grades of surface preparation",
    formula="table of correspondence",
    source=SOURCE,
    valid="correspondence, not identity: the standards judge by different means",
    inputs={
        "grade": {
            "type": "string",
            "description": "A grade by any of its names.",
            "examples": ["Sa 2 1/2", "SSPC-SP 10", "NACE No. 2", "near-white", "WJ-2"],
        }
    },
    outputs=(
        Symbol("name", "the trade's words", "text", ""),
        Symbol("content", "what the grade asks", "text", ""),
        Symbol("iso", "ISO 8501-1 or ISO 8501-4", "text", ""),
        Symbol("sspc", "SSPC, or waterjetting degree", "text", ""),
        Symbol("nace", "NACE", "text", ""),
        Symbol("bs4232", "BS 4232 of 1967", "text", ""),
        Symbol("standing", "how well the row is known", "text", ""),
        Symbol("caution", "what is known less well", "text", ""),
        Symbol("flash_rust", "flash rust accepted, where the grade says it: light, medium or heavy", "text", ""),
    ),
    kernel=_kernel,
    example={"grade": "Sa 2 1/2"},
    cautions=("name one standard in a specification; an equivalent is no substitute for it",),
)
