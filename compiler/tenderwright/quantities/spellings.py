"""How people spell units: each spelling of the papers of ships and yards, and the one name that it stands for."""

from __future__ import annotations

import re

LETTERS = str.maketrans(
    {"\u00a0": " ", "\u2009": " ", "\u202f": " ", "’": "'", "‘": "'", "′": "'", "´": "'", "”": '"', "“": '"', "″": '"',
     "−": "-", "µ": "u", "μ": "u", "·": "*", "⋅": "*", "²": "2", "³": "3", "⁴": "4", "½": " 1/2", "¼": " 1/4",
     "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"}
)  # fmt: skip
"""What word processors and printers set for the plain characters."""

_SAME = {
    "m": "metre metres meter meters",
    "mm": "mm millimetre millimetres millimeter millimeters",
    "cm": "cm centimetre centimetres centimeter centimeters",
    "km": "km kilometre kilometres kilometer kilometers",
    "um": "micron microns",
    "in": "inch inches in",
    "ft": "foot feet ft",
    "yd": "yard yards yds yd",
    "mil": "mil mils thou",
    "fathom": "fathom fathoms fm fms",
    "nmi": "nautical_mile nautical_miles",
    "kg": "kg kgs kilogram kilograms",
    "g": "gram grams",
    "t": "metric_ton metric_tons metric_tonne metric_tonnes tonne tonnes",
    "lb": "lb lbs pound pounds",
    "oz": "oz ounce ounces",
    "long_ton": "long_ton long_tons uk_ton uk_tons",
    "short_ton": "short_ton short_tons us_ton us_tons",
    "long_cwt": "long_cwt",
    "short_cwt": "short_cwt",
    "m2": "sqm",
    "m3": "cbm cum",
    "L": "litre litres liter liters",
    "US_gal": "us_gal us_gals us_gallon us_gallons",
    "imp_gal": "imp_gal imp_gals imp_gallon imp_gallons imperial_gallon imperial_gallons uk_gal uk_gallon uk_gallons",
    "s": "sec secs second seconds",
    "min": "min mins minute minutes",
    "h": "hr hrs",
    "yr": "yrs",
    "psi": "psi",
    "ksi": "ksi",
    "lb/ft2": "psf",
    "mil/yr": "mpy",
    "lbf": "lbf",
    "kip": "kip kips",
    "mph": "mph",
    "kn": "knot knots kt kts",
    "A": "amp amps ampere amperes",
    "V": "volt volts",
    "each": "ea no nos pc pcs piece pieces off",
    "person_hour": "person_hour person_hours person_h man_hour man_hours manhour manhours",
    "deg": "degree degrees",
    "percent": "per_cent pct",
}
_WORDS = {spelling.replace("_", " "): name for name, all_of_it in _SAME.items() for spelling in all_of_it.split()}
"""In small letters, with no full stops; capitals are read as well."""
_MARKS = {"'": "ft", "ft-in": "ft", '"': "in", "LT": "long_ton", "ST": "short_ton", "LF": "ft", "°": "deg", "‰": "g/kg",
          "ppt": "g/kg", "l": "L", "°C": "degC", "° C": "degC", "deg C": "degC", "C": "degC", "°F": "degF",
          "° F": "degF", "deg F": "degF", "F": "degF"}  # fmt: skip
"""Read with their capitals, since others mean something else."""
_POWERED = ("mm", "cm", "m", "in", "ft", "yd")
_SQUARE = re.compile(r"(square|sq|cubic|cu) ?(.+)")
_ALONG = re.compile(r"(?:lineal|linear|lin|running) ?(.+)")
_POWER = re.compile(r"(.*[A-Za-z])([234])")
_RAISED = re.compile(r"(?:\^|\*\*)(?=[234]$)")
_JOINT = re.compile(r"\s*(/|(?<!\*)\*(?!\*)|\bper\b)\s*")

# Words that mean different things in different places; the reader is asked to say which.
AMBIGUOUS = {
    "ton": ("t", "long_ton", "short_ton"),
    "tons": ("t", "long_ton", "short_ton"),
    "gallon": ("US_gal", "imp_gal"),
    "gallons": ("US_gal", "imp_gal"),
    "gal": ("US_gal", "imp_gal"),
    "gals": ("US_gal", "imp_gal"),
    "cwt": ("long_cwt", "short_cwt"),
    "mile": ("nmi", "statute_mile"),
    "miles": ("nmi", "statute_mile"),
}
_SYMBOLS = {*_SAME, "d"}
"""What a hyphen may join."""
_CUSTOMARY = re.compile(r"(?:in|ft|yd|lb|mil)[234]?")


class AmbiguousUnit(ValueError):
    """The unit means different things in different places; `choices` are what it may mean."""

    def __init__(self, unit: str, choices: tuple[str, ...]) -> None:
        super().__init__(unit)
        self.unit = unit
        self.choices = choices


def spelled(name: str) -> str:
    """Give the plain name of a unit however it is spelled, such as `ft*long_ton/in`; raises AmbiguousUnit.

    What is no spelling of ours comes back as it is.
    """
    plain = name.translate(LETTERS).strip()
    pieces = [_name(plain)] if _name(plain) else [one for word in _JOINT.split(plain) for one in _factors(word)]
    for at, piece in enumerate(pieces):
        if piece.lower() in AMBIGUOUS:
            imperial = any(_CUSTOMARY.fullmatch(other) for other in pieces)
            meant = [one for one in AMBIGUOUS[piece.lower()] if not (imperial and one == "t")]
            raise AmbiguousUnit(name, tuple("".join([*pieces[:at], one, *pieces[at + 1 :]]) for one in meant))
    return "".join(pieces)


def _factors(word: str) -> list[str]:
    """Give a factor by its plain name, or those that hyphens join, such as `ft-lb`, with `*` between them."""
    if word == "per":
        return ["/"]
    if _name(word) or "-" not in word:
        return [_name(word) or word]
    parts = [_name(part) or part for part in word.split("-")]
    if not all(part in _SYMBOLS or part.lower() in AMBIGUOUS for part in parts):
        return [word]
    return [piece for part in parts for piece in ("*", part)][1:]


def _name(word: str) -> str:
    """Give the plain name of one factor; empty where it is no spelling."""
    plain = " ".join(_RAISED.sub("", word.replace(".", "")).split())
    if plain in _MARKS:
        return _MARKS[plain]
    small = plain.lower().replace("_", " ").replace("-", " ")
    if small in _WORDS:
        return _WORDS[small]
    if match := _SQUARE.fullmatch(small):
        base = _length(match[2])
        return base and base + ("2" if match[1].startswith("sq") else "3")
    if match := _ALONG.fullmatch(small):
        return _length(match[1])
    if match := _POWER.fullmatch(plain):
        base = _length(match[1])
        return base and base + match[2]
    return ""


def _length(word: str) -> str:
    """Give the plain name of a length that may be squared; empty where it is none."""
    name = _WORDS.get(word.strip().lower(), word.strip())
    return name if name in _POWERED else ""


def also_written(name: str) -> tuple[str, ...]:
    """List how else one unit is spelled; small letters stand for capitals too."""
    words = [one.replace("_", " ") for one in _SAME.get(name, "").split() if one.replace(" ", "_") != name]
    return (*words, *(mark for mark, meant in _MARKS.items() if meant == name))


_SET = ("m²", "m³", "ft²", "ft³", "µm", "μm", "°", "'", '"', "sq ft", "sq m", "sq in", "cu ft", "cu m", "lin ft", "LT",
        "L.T.", "ST", "LF")  # fmt: skip
SPELLINGS = tuple(sorted({*_WORDS, *_SET}))
"""Spellings that stand in sentences."""
