"""Strakes of wrought iron and early steel: their limits, their laminations, and whether they may be welded."""

from __future__ import annotations

from msgspec import Struct

from tenderwright.calculations.steel.regime import METHOD as REGIME
from tenderwright.calculations.steel.regime import Regime
from tenderwright.calculations.steel.weldability import METHOD as WELDABILITY
from tenderwright.calculations.steps.outcome import Each
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.thickness.lamination import METHOD as LAMINATION
from tenderwright.calculations.value import Given, given
from tenderwright.calculations.verdict import Verdict
from tenderwright.model.particulars import Particulars
from tenderwright.model.shell_condition import PlateAnalysis
from tenderwright.model.ship_condition import ShipCondition
from tenderwright.model.vessel import Strake
from tenderwright.notices import Place

MILD = "mild steel"
ELEMENTS = ("carbon", "manganese", "sulphur", "phosphorus", "nitrogen")


class OldStrake(Struct, frozen=True, eq=False):
    """A strake of old metal."""

    strake: Strake
    material: str
    said: Place
    """Where the material is written."""

    @property
    def here(self) -> Place:
        """Give where the strake stands."""
        return self.strake.here


@step()
def old_strakes(strakes: tuple[Strake, ...], particulars: Particulars | None) -> dict[str, OldStrake]:
    """Give the strakes that are not of mild steel, by their letters in small."""
    hull = particulars.hull if particulars is not None else None
    whole = hull.material if hull is not None else MILD
    at = particulars.here if particulars is not None else Place("vessel/particulars.yaml")
    found = {}
    for strake in strakes:
        material = strake.material or whole
        if material != MILD:
            found[strake.strake.lower()] = OldStrake(strake, material, strake.here if strake.material else at)
    return found


@step_of(REGIME, "shell.material.{}", each="old_strakes")
def strake_regimes(of: OldStrake, condition: ShipCondition | None) -> Uses:
    """Find what the material of a strake asks."""
    inputs = {"material": Given(of.material, of.material, of.said)}
    own = [one for one in condition.materials if one.material == of.material] if condition is not None else []
    if own:
        inputs |= {"allowable": given(own[0].allowable), "source": Given(own[0].source, own[0].source, own[0].here)}
    return Uses(f"strake {of.strake.strake}", inputs, of.here)


@step_of(LAMINATION, "shell.lamination.{}", each="old_strakes")
def strake_laminations(of: OldStrake, condition: ShipCondition | None) -> Uses:
    """Sum up the ultrasonic tests of a strake of old metal for laminations."""
    tests = [
        test
        for test in (condition.laminations if condition is not None else ())
        if any(strake.name == of.strake.strake for strake in test.strakes)
    ]
    sound, laminated = (sum(getattr(test, name) for test in tests) for name in ("readings", "laminated"))
    origin = tests[0].here if tests else of.here
    inputs = {
        "readings": Given(
            sound, "; ".join(f"{one.readings} on {one.on}, {one.source}" for one in tests) or "none", origin
        ),
        "laminated": Given(laminated, str(laminated), origin),
    }
    return Uses(f"strake {of.strake.strake}", inputs, of.here)


@step()
def plate_analyses(condition: ShipCondition) -> dict[str, PlateAnalysis]:
    """Give the analyses of shell plate, by the strakes that they speak for."""
    found = {}
    for number, one in enumerate(condition.analyses, start=1):
        name = "-".join(strake.name.lower() for strake in one.strakes)
        found[f"{name}-{number}" if name in found else name] = one
    return found


@step_of(WELDABILITY, "shell.analysis.{}", names={"joining": "joining", "deciding": "deciding"}, each="plate_analyses")
def analyses_judged(of: PlateAnalysis) -> Uses:
    """Hold an analysis against the acceptance figures."""
    shares = {name: getattr(of, name) for name in ELEMENTS}
    inputs = {name: given(share) for name, share in shares.items() if share is not None}
    return Uses(f"strakes {', '.join(map(str, of.strakes))}, {of.on}: {of.source}", inputs, of.here)


class Unwelded(Struct, frozen=True):
    """Strakes on which no weld is made, each with why."""

    why: dict[str, str]


@step()
def unwelded_strakes(
    old_strakes: dict[str, OldStrake],
    strake_regimes: Each[Regime],
    plate_analyses: dict[str, PlateAnalysis] | None,
    analyses_judged: Each[Verdict] | None,
) -> Unwelded:
    """Find the strakes on which no weld is made: old metal with no analysis that passed, and any whose fails."""
    verdicts: dict[str, list[bool | None]] = {}
    for name, one in (plate_analyses or {}).items():
        found = analyses_judged.get(name) if analyses_judged is not None else None
        for strake in one.strakes:
            verdicts.setdefault(strake.name, []).append(found.met if found is not None else None)
    why = {strake: "its analysis does not pass" for strake, met in verdicts.items() if False in met}
    for name, of in old_strakes.items():
        letter = of.strake.strake
        passed = verdicts.get(letter) and all(verdicts[letter])
        if name in strake_regimes and strake_regimes[name].analysed and not passed:
            why.setdefault(letter, f"it is of {of.material}, and no analysis of it has passed")
    return Unwelded(why)
