"""Curves of form or a table of hydrostatics: what floats the ship where there are no offsets."""

from typing import Annotated

from tenderwright.model.kinds import Area, Density, Fraction, Length, LineLoad, Mass, SignedLength, Volume
from tenderwright.model.marks import Count, Key, OneOf
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class Centres(Noun, frozen=True, kw_only=True):
    """From where a table measures along the ship."""

    from_: Annotated[
        str, Key("Where its zero is.", "amidships"), OneOf("after perpendicular", "amidships", "forward perpendicular")
    ]
    plus: Annotated[str, Key("Which way a figure without a minus lies from there.", "aft"), OneOf("forward", "aft")]


class AtDraft(Noun, frozen=True, kw_only=True):
    """One draft of a table of hydrostatics or curves of form, on an even keel."""

    draft: Annotated[Length, Key("Draft of the row.", "3.0 m", "11 ft 6 in")]
    displacement: Annotated[
        Mass | None, Key("Displacement, in water of the table's density.", "687 t", "1450 long_ton")
    ] = None
    volume: Annotated[Volume | None, Key("Volume displaced, in place of the displacement.", "670 m3")] = None
    lcb: Annotated[
        SignedLength, Key("Longitudinal centre of buoyancy, measured as `centres` says.", "0.85 m", "-2.1 ft")
    ]
    lcf: Annotated[
        SignedLength | None, Key("Longitudinal centre of flotation; from displacement and LCB where left out.", "1.6 m")
    ] = None
    km: Annotated[Length | None, Key("Height of the transverse metacentre.", "4.2 m")] = None
    kb: Annotated[
        Length | None, Key("Height of the centre of buoyancy; by Morrish's formula where left out.", "1.8 m")
    ] = None
    bm: Annotated[Length | None, Key("Transverse metacentric radius, which with KB stands for KM.", "2.4 m")] = None
    immersion: Annotated[
        LineLoad | None,
        Key(
            "Tonnes per centimetre or tons per inch; from the displacement where left out.",
            "3.4 t/cm",
            "18 long_ton/in",
        ),
    ] = None
    moment: Annotated[
        Mass | None, Key("Moment to change trim one centimetre or one inch.", "7.9 t*m/cm", "210 ft*long_ton/in")
    ] = None
    bm_longitudinal: Annotated[
        Length | None, Key("Longitudinal metacentric radius, in place of the moment.", "61 m")
    ] = None
    wetted_surface: Annotated[Area | None, Key("Wetted surface of the hull.", "520 m2")] = None
    here: Place


_AT_DRAFTS = [
    {"draft": draft, "displacement": mass, "lcb": lcb, "km": km, "immersion": tpc, "moment": mct}
    for draft, mass, lcb, km, tpc, mct in (
        ("2.5 m", "525 t", "0.74 m", "4.37 m", "3.20 t/cm", "7.2 t*m/cm"),
        ("3.0 m", "687 t", "0.90 m", "4.26 m", "3.30 t/cm", "7.9 t*m/cm"),
        ("3.5 m", "855 t", "1.10 m", "4.22 m", "3.41 t/cm", "8.8 t*m/cm"),
    )
]


class CurvesOfForm(Noun, frozen=True, kw_only=True):
    """Her curves of form or table of hydrostatics, on an even keel: what floats her where there are no offsets."""

    source: Annotated[str, Key("Where the table comes from.", "curves of form, drawing D-05, read at every foot")]
    density: Annotated[
        Density | None,
        Key(
            "Density of the water that the table is for; salt water of 1.025 t/m3 where left out. 35 ft3 to the long ton "
            "is 64 lb/ft3.",
            "1.025 t/m3",
            "64 lb/ft3",
        ),
    ] = None
    centres: Annotated[
        Centres, Key("From where LCB and LCF are measured, and which way.", {"from": "amidships", "plus": "aft"})
    ]
    draft_zero: Annotated[
        SignedLength | None,
        Key(
            "Height of the zero of the drafts above the keel line; negative where they are to the underside of a keel "
            "that stands below it.",
            "-0.18 m",
        ),
    ] = None
    height_zero: Annotated[
        SignedLength | None,
        Key("Height of the zero of KM and KB above the keel line; as that of the drafts where left out.", "0 m"),
    ] = None
    moment_kg: Annotated[
        Length | None,
        Key(
            "KG with which the moments to change trim were worked, from the same zero as KM; left out where BM stood for "
            "GM.",
            "3.6 m",
        ),
    ] = None
    uncertainty: Annotated[
        Fraction | None,
        Key("Standard uncertainty of the displacement at a draft; 0.5 % where left out.", "0.5 %"),
    ] = None
    rows: Annotated[tuple[AtDraft, ...], Key("A row for each draft, rising.", _AT_DRAFTS), Count(3)]
    here: Place
