"""Which tightness test each opened boundary needs, and at what pressure or head."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.calculations.tightness import figures
from tenderwright.calculations.tightness.figures import TestFigure
from tenderwright.calculations.tightness.head import head_to_pressure, u_tube_height
from tenderwright.calculations.verdict import within

Boundary = Literal["tank", "dry space", "weathertight closure", "fillet weld", "double-plate rudder"]
Structure = Literal["welded", "riveted"]
Test = Literal["hose", "air", "vacuum box", "head", "dye penetrant or ultrasonic"]

BOUNDARIES: tuple[Boundary, ...] = (
    "tank",
    "dry space",
    "weathertight closure",
    "fillet weld",
    "double-plate rudder",
)

_PAINT = "paint goes on after the test, not before (common practice)"
_AIR = (
    "air stores energy: lift slowly, keep people away, and let a U-tube of water and a relief limit the pressure",
    "let air go through the U-tube, not past a shut valve; the gauge is not the only measure",
)
_SIGN_OFF = (
    "pressures of class are for modern welded structure; a naval architect agrees the test of a riveted or iron tank "
    "before it is made (judgement, no source)"
)


class Choice(Struct, frozen=True):
    """A test for a boundary."""

    test: Test
    pressure: float | None
    """Pa above the atmosphere (of vacuum for a box, at the nozzle for a hose); None for dye penetrant."""
    head: float | None
    """Head of water above the top of the tank, m, for a test by head."""
    u_tube: float | None
    """Height of fresh water in the U-tube of an air test, m."""
    figure: str
    """What the figure is measured at."""
    source: Citation
    others: tuple[Test, ...]
    """Tests that may stand in its place if the surveyor agrees."""
    sign_off: bool
    """Whether a naval architect must agree it first."""
    cautions: tuple[str, ...]


def tightness_test(
    boundary: Boundary,
    structure: Structure,
    hose_possible: bool = True,
    by_air: bool = False,
    agreed: TestFigure | None = None,
) -> Choice:
    """Choose the test of a boundary that was opened or repaired.

    Method: tanks by a head of water, or by air if asked; riveted tanks at 1 m of head or at most 0.07 bar of air;
    dry spaces by hose, or where no hose can play by vacuum box on welds, and riveted joints by dye penetrant or
    ultrasonic looks; closures by hose; fillets by air along them; a double-plate rudder by 0.1 bar.
    Symbols: agreed, a figure of one's own with its citation, put in place of the published one.
    Source: `figures`; after repairs LR Naval Survey Guidance, Ch. 14, 2; the choice for riveted structure is judgement.
    Raises OutOfRange for an agreed figure of the wrong kind, or above what a riveted tank or a rudder may have.
    """
    choice = _usual(boundary, structure, hose_possible, by_air)
    return choice if agreed is None else _with(choice, boundary, structure, agreed)


def _usual(boundary: Boundary, structure: Structure, hose_possible: bool, by_air: bool) -> Choice:
    riveted = structure == "riveted"
    if boundary == "tank":
        figure = (
            (figures.RIVETED_AIR if riveted else figures.TANK_AIR)
            if by_air
            else (figures.RIVETED_HEAD if riveted else figures.TANK_HEAD)
        )
        cautions = (
            *(_AIR if by_air else ("shores and blocks carry the water of the test: ask the dockmaster",)),
            _PAINT,
        )
        others: tuple[Test, ...] = ("head",) if by_air else ("air",)
        return _choice("air" if by_air else "head", figure, others, riveted, cautions)
    if boundary == "dry space":
        if hose_possible:
            return _choice("hose", figures.HOSE, ("vacuum box",) if not riveted else (), False, (_PAINT,))
        if riveted:
            return _looks(("a box does not seal on rivet points and laps",))
        return _choice("vacuum box", figures.VACUUM_BOX, ("dye penetrant or ultrasonic",), False, (_PAINT,))
    if boundary == "weathertight closure":
        return _choice("hose", figures.HOSE, (), False, ()) if hose_possible else _looks(())
    if boundary == "fillet weld":
        return _choice("air", figures.FILLET_AIR, ("vacuum box",), False, (_PAINT,))
    greatest = "the means used must be unable to pass 0.15 bar"
    return _choice("air", figures.RUDDER_AIR, (), riveted, (*_AIR, greatest))


def _choice(
    test: Test, figure: TestFigure, others: tuple[Test, ...], sign_off: bool, cautions: tuple[str, ...]
) -> Choice:
    pressure = head_to_pressure(figure.head) if figure.head is not None else figure.pressure
    u_tube = u_tube_height(pressure) if test == "air" and pressure is not None else None
    more = (_SIGN_OFF,) if sign_off else ()
    return Choice(
        test, pressure, figure.head, u_tube, figure.figure, figure.source, others, sign_off, (*more, *cautions)
    )


def _looks(cautions: tuple[str, ...]) -> Choice:
    return Choice(
        "dye penetrant or ultrasonic",
        None,
        None,
        None,
        "on the joint, with a close visual look, where no hose can play",
        figures.HOSE.source,
        (),
        False,
        cautions,
    )


def _with(choice: Choice, boundary: Boundary, structure: Structure, agreed: TestFigure) -> Choice:
    if choice.pressure is None:
        raise OutOfRange("dye penetrant and ultrasonic looks have no pressure to agree")
    if (agreed.head is None) == (agreed.pressure is None):
        raise OutOfRange("agree a head or a pressure, and not both")
    if (agreed.head is not None) != (choice.test == "head"):
        raise OutOfRange(f"a test by {choice.test} is agreed by {'head' if choice.test == 'head' else 'pressure'}")
    limit = None
    if boundary == "double-plate rudder":
        limit = figures.RUDDER_AIR_GREATEST
    elif structure == "riveted" and choice.test == "air" and boundary == "tank":
        limit = figures.RIVETED_AIR.pressure
    if limit is not None and agreed.pressure is not None and not within(agreed.pressure, limit):
        raise OutOfRange(
            f"{agreed.pressure / 1e5:g} bar of air is more than the {limit / 1e5:g} bar that is safe to plan for a "
            f"{structure} {boundary}"
        )
    own = _choice(choice.test, agreed, choice.others, choice.sign_off, ())
    return replace(own, cautions=choice.cautions)


def _kernel(
    boundary: Boundary,
    structure: Structure,
    hose_possible: bool = True,
    by_air: bool = False,
    head: float | None = None,
    pressure: float | None = None,
    source: str = "",
) -> Choice:
    agreed = None
    if head is not None or pressure is not None:
        if not source:
            raise OutOfRange("a figure of one's own needs its source")
        words = "as agreed" if head is None else "above the tank top, as agreed"
        agreed = TestFigure(words, Citation(source), pressure, head)
    return tightness_test(boundary, structure, hose_possible, by_air, agreed)


def outputs_of(found: Choice) -> Mapping[str, Any]:
    """Give the outputs of the method from a choice; a test has no pressure, head or U-tube that is not of its kind."""
    outputs = {
        "test": found.test,
        "pressure": found.pressure,
        "head": found.head,
        "u_tube": found.u_tube,
        "figure": found.figure,
        "source": str(found.source),
        "others": list(found.others),
        "sign_off": found.sign_off,
        "cautions": list(found.cautions),
    }
    return {name: value for name, value in outputs.items() if value is not None}


METHOD = Method(
    name="tightness.test",
    title="Tightness test of a boundary",
    formula="test by boundary and structure; p = ρ g h",
    source=figures.AFTER_REPAIR,
    valid="boundaries opened or repaired at a docking; the surveyor agrees each test",
    inputs={
        "boundary": {"type": "string", "enum": list(BOUNDARIES), "description": "What was opened."},
        "structure": {"type": "string", "enum": ["welded", "riveted"], "description": "How it is built."},
        "hose_possible": {"type": "boolean", "description": "Whether a hose can play on it; true unless given."},
        "by_air": {"type": "boolean", "description": "Whether a tank is to be tested by air; by head unless given."},
        "head": quantity("length", "Head agreed, above the top of the tank.", "1.2 m"),
        "pressure": quantity("pressure", "Pressure agreed.", "0.05 bar"),
        "source": {
            "type": "string",
            "minLength": 1,
            "description": "Who gives the head or pressure agreed.",
            "examples": ["naval architect's letter of 2027-02-01"],
        },
    },
    outputs=(
        Symbol("test", "the test", "text", ""),
        Symbol("pressure", "pressure of the test", "pressure", "bar"),
        Symbol("head", "head above the top of the tank", "length", "m"),
        Symbol("u_tube", "height of water in the U-tube", "length", "m"),
        Symbol("figure", "how the figure is measured", "text", ""),
        Symbol("source", "who gives it", "text", ""),
        Symbol("others", "tests that may stand in its place", "text", ""),
        Symbol("sign_off", "whether a naval architect must agree it first", "truth", ""),
        Symbol("cautions", "what to look out for", "text", ""),
    ),
    kernel=_kernel,
    example={"boundary": "tank", "structure": "riveted"},
    optional=frozenset({"hose_possible", "by_air", "head", "pressure", "source"}),
    cautions=(
        "the choice for riveted structure is judgement, with no source",
        "a test under pressure is the yard's to plan",
    ),
    figures=outputs_of,
)
