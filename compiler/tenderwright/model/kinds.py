"""The types of fields: quantities by dimension, and references by what they name."""

from __future__ import annotations

from typing import Annotated

from tenderwright.model.build import Measures, Reference, Refers
from tenderwright.quantities.quantity import Quantity

Length = Annotated[Quantity, Measures("length")]
LengthOrWord = Annotated[Quantity | str, Measures("length", ("shell", "keel", "deck"))]
Area = Annotated[Quantity, Measures("area")]
Volume = Annotated[Quantity, Measures("volume")]
Mass = Annotated[Quantity, Measures("mass")]
Density = Annotated[Quantity, Measures("density")]
AreaDensity = Annotated[Quantity, Measures("area_density")]
CurrentDensity = Annotated[Quantity, Measures("current_density")]
LineLoad = Annotated[Quantity, Measures("line_load")]
Force = Annotated[Quantity, Measures("force")]
Fraction = Annotated[Quantity, Measures("fraction")]
Angle = Annotated[Quantity, Measures("angle")]
Pressure = Annotated[Quantity, Measures("pressure")]
Speed = Annotated[Quantity, Measures("speed")]
SecondMoment = Annotated[Quantity, Measures("second_moment")]
Time = Annotated[Quantity, Measures("time")]
Temperature = Annotated[Quantity, Measures("temperature")]
Salinity = Annotated[Quantity, Measures("salinity")]
AnyQuantity = Annotated[Quantity, Measures("any")]

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
