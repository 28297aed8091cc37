"""The types of fields: quantities by dimension, references by what they name, and forms of text."""

from __future__ import annotations

import datetime
from decimal import Decimal
from typing import Annotated

from tenderwright.model.build import Name, Reference
from tenderwright.model.day import Day
from tenderwright.model.marks import Amount, Either, Form, Key, Measures, OneOf, Refers, Within
from tenderwright.quantities.bounds import FIRST_FRAME, LAST_FRAME
from tenderwright.quantities.quantity import Quantity

Length = Annotated[Quantity, Measures("length")]
SignedLength = Annotated[Quantity, Measures("length", signed=True)]
LengthOrShell = Annotated[Quantity | str, Measures("length", ("shell",))]
LengthOrKeel = Annotated[Quantity | str, Measures("length", ("keel",))]
LengthOrDeck = Annotated[Quantity | str, Measures("length", ("deck",))]
Area = Annotated[Quantity, Measures("area")]
Volume = Annotated[Quantity, Measures("volume")]
Mass = Annotated[Quantity, Measures("mass")]
SignedMass = Annotated[Quantity, Measures("mass", signed=True)]
Density = Annotated[Quantity, Measures("density")]
AreaDensity = Annotated[Quantity, Measures("area_density")]
CurrentDensity = Annotated[Quantity, Measures("current_density")]
LineLoad = Annotated[Quantity, Measures("line_load")]
Force = Annotated[Quantity, Measures("force")]
Fraction = Annotated[Quantity, Measures("fraction")]
Angle = Annotated[Quantity, Measures("angle")]
SignedAngle = Annotated[Quantity, Measures("angle", signed=True)]
Pressure = Annotated[Quantity, Measures("pressure")]
Speed = Annotated[Quantity, Measures("speed")]
Moment = Annotated[Quantity, Measures("moment")]
SecondMoment = Annotated[Quantity, Measures("second_moment")]
Time = Annotated[Quantity, Measures("time")]
Temperature = Annotated[Quantity, Measures("temperature")]
Power = Annotated[Quantity, Measures("power")]
Charge = Annotated[Quantity, Measures("charge")]
Flow = Annotated[Quantity, Measures("flow")]
Salinity = Annotated[Quantity, Measures("salinity")]
AnyQuantity = Annotated[Quantity, Measures("any")]
SignedAnyQuantity = Annotated[Quantity, Measures("any", signed=True)]

TankRef = Annotated[Reference, Refers("tank")]
ZoneRef = Annotated[Reference, Refers("zone")]
SchemeRef = Annotated[Reference, Refers("scheme")]
OpeningRef = Annotated[Reference, Refers("opening")]
StrakeRef = Annotated[Reference, Refers("strake")]
AnodeRef = Annotated[Reference, Refers("anode")]
DrawingRef = Annotated[Reference, Refers("drawing")]
ItemRef = Annotated[Reference, Refers("item")]
FacilityRef = Annotated[Reference, Refers("facility")]
DockingRef = Annotated[Reference, Refers("docking")]
ClauseRef = Annotated[Reference, Refers("clause")]
ValueRef = Annotated[Reference, Refers("value")]

Money = Annotated[Decimal, Amount()]
SignedMoney = Annotated[Decimal, Amount(signed=True)]
Price = Annotated[Decimal, Within(least=0, most=10**12)]
"""A rate or a percentage, which may have more decimals than money."""

Frame = Annotated[int, Within(least=FIRST_FRAME, most=LAST_FRAME)]
Days = Annotated[int, Within(least=0, most=3650)]

Date = datetime.date
_EVENT = Form(
    r"^(award|arrival|docking|undocking|redelivery)( [+-] [0-9]{1,4} d)?$",
    "Day counted from an event",
    "docking + 3 d",
    "undocking - 1 d",
    "arrival",
)
DayFromEvent = Annotated[Day, _EVENT]
DayOrDate = Annotated[Day, Either(_EVENT)]
DateOrNone = Annotated[str, Either("none")]
DayOrUnknown = Annotated[str, Either("unknown")]
DayAndTime = Annotated[str, Form(r"^[0-9]{4}-[0-9]{2}-[0-9]{2} [0-9]{2}:[0-9]{2}$", "Day and time", "2027-05-04 09:30")]

IDENTIFIER = Form(r"^[a-z0-9]+(-[a-z0-9]+)*$", "Identifier", longest=48)
Identifier = Annotated[str, IDENTIFIER]
IdentifierName = Annotated[Name, IDENTIFIER]
_ROW = r"(\.[a-z0-9]+(-[a-z0-9]+)*)?"
"""The row of a table, of a line that is priced by row."""
LINE = Form(r"^[0-9]+\.[a-z]{1,2}" + _ROW + "$", "Number of a line", "420.a", "520.a.suction-fire")
LineNumber = Annotated[str, LINE]
LineName = Annotated[Name, LINE]
WorkName = Annotated[
    Name, Form(r"^[0-9]+(\.[a-z]{1,2}" + _ROW + ")?$", "Number of an item or of a line", "420", "420.a")
]
LinesName = Annotated[
    Name,
    Form(r"^[0-9]+\.([a-z]{1,2}" + _ROW + r"|\*)$", "Line, or all lines of an item", "310.a", "315.*"),
]
Currency = Annotated[str, Form(r"^[A-Z]{3}$", "Currency", "EUR")]

SHA256 = Form("^[0-9a-f]{64}$", "SHA-256 checksum")
Side = Annotated[str, OneOf("port", "starboard", "both", "centreline"), Key("Side of the ship.", "port")]
DOCK_TYPES = ("graving dock", "floating dock", "shiplift", "slipway", "boat hoist", "tidal grid")
DockType = Annotated[str, OneOf(*DOCK_TYPES)]
Phase = Annotated[str, OneOf("before docking", "dry", "after undocking", "any")]
PRICED = OneOf("definite", "measured", "contingent", "option", "provisional", "credit")
"""The kinds of work that the yard prices."""
PricedKind = Annotated[str, PRICED]
Confidence = Annotated[str, OneOf("P50", "P80")]
Cause = Annotated[
    str,
    OneOf(
        "condition found",
        "quantity measured",
        "owner's change",
        "document wrong",
        "late answer",
        "weather",
        "work left out",
        "other",
    ),
]
Liquid = Annotated[
    str, OneOf("sea water", "fresh water", "diesel oil", "heavy oil", "lubricating oil", "oily water", "none")
]
Metal = Annotated[
    str,
    OneOf(
        "zinc",
        "aluminium alloy",
        "mild steel",
        "wrought iron",
        "cast iron",
        "lead",
        "brass",
        "manganese bronze",
        "gunmetal",
        "tin bronze",
        "aluminium bronze",
        "copper",
        "copper-nickel",
        "nickel-copper alloy",
        "stainless steel, passive",
        "stainless steel, active",
        "titanium",
        "graphite",
    ),
]
SERVICES = OneOf(
    "pilotage",
    "tugs",
    "line-handlers",
    "wharfage",
    "dock-preparation",
    "block-build",
    "block-moves",
    "diver-at-landing",
    "further-dock-days",
    "dock-cleaning",
    "weekend-dock-days",
    "fire-watch",
    "fire-main",
    "extinguishers",
    "gas-free-certificates",
    "ventilation",
    "lighting",
    "tank-rescue",
    "gangways",
    "gangway-watch",
    "telephone",
    "hazardous-materials-survey",
    "air-monitoring",
    "shore-power",
    "earth-return",
    "fresh-water",
    "compressed-air",
    "heating",
    "sewage",
    "bilge-water",
    "garbage",
    "scrap-bins",
    "oily-water",
    "spent-abrasive",
    "wash-water",
    "marine-growth",
    "staging",
    "cranage",
    "interference-removal",
    "temporary-closures",
    "weather-enclosure",
    "containment",
    "docking-plugs",
    "sea-chest-grids",
    "anode-protection",
    "hull-markings",
    "tightness-tests",
    "back-side-protection",
    "soundings-before-docking",
    "soundings-before-undocking",
    "weight-log",
    "undocking-stability",
    "valve-watch",
    "tow-survey",
    "insurance",
    "owners-surveyor",
    "crew-accommodation",
    "berth-refit",
)
"""The checklist of services that dockings forget."""
Service = Annotated[str, SERVICES, Key("A service of the checklist.", "shore-power")]

OfTender = Annotated[
    str, Key("Number of the tender that the paper belongs to: it is refused in the package of another.", "HPT-2027-01")
]
