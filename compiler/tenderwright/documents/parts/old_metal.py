"""Strakes of wrought iron and early steel: what they may lose, their laminations, and how their repairs are joined."""

from __future__ import annotations

from tenderwright.calculations.ship.regimes import (
    analyses_judged,
    old_strakes,
    plate_analyses,
    strake_laminations,
    strake_regimes,
    unwelded_strakes,
)
from tenderwright.calculations.steel.weldability import (
    CARBON,
    EQUIVALENT,
    EQUIVALENT_SOURCE,
    JOINING,
    NITROGEN,
    PHOSPHORUS,
    PRACTICE,
    SULPHUR,
)
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.verdict import Verdict
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Column, Heading, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.model.shell_condition import PlateAnalysis
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import decimals

_REGIME = (
    "Old metal has a limit of its own, which holds where that of the zone is looser. It is laminar: places that an "
    "ultrasonic test finds laminated are traced before anything is cut, drilled or welded. A lamination read as the "
    "far face passes for lost metal. No weld is made on it before an analysis of it has passed; till then, and where "
    "it fails, repairs are riveted, and a pit that would be welded is cut out."
)
_ANALYSIS = (
    f"An analysis is judged by carbon {100 * CARBON:g} %, sulphur {100 * SULPHUR:g} %, phosphorus "
    f"{100 * PHOSPHORUS:g} % and nitrogen {100 * NITROGEN:g} % ({PRACTICE}), and a carbon equivalent C + Mn/6 of "
    f"{EQUIVALENT:g} % ({EQUIVALENT_SOURCE}). A figure that is lacking is not known. An analysis speaks for its "
    "sample; the procedure is proved on cut-out material before the first weld."
)


def old_metal(desk: Desk) -> list[Block]:
    """Compose the strakes of old metal and the analyses; nothing where there are none."""
    return [*_strakes(desk), *_analyses(desk)]


def _strakes(desk: Desk) -> list[Block]:
    old = desk.calculated.found(old_strakes)
    if not old:
        return []
    regimes, tests = desk.calculated.outcome(strake_regimes), desk.calculated.outcome(strake_laminations)
    joined = desk.calculated.outcome(unwelded_strakes)
    for absent in (regimes, tests, joined):
        if isinstance(absent, Absent):
            return [Heading("Old metal"), not_calculated(absent)]
    assert not isinstance(regimes, Absent)
    assert not isinstance(tests, Absent)
    assert not isinstance(joined, Absent)
    rows = []
    for name, one in old.items():
        regime, test, letter = regimes.get(name), tests.get(name, {}), one.strake.strake
        limit = "–" if regime is None or regime.allowable is None else f"{decimals(100.0 * regime.allowable, 0)} %"
        share = test.get("share")
        found = str(test.get("state", "not tested"))
        cells = (
            f"{letter}  {capital(one.strake.name)}",
            one.material,
            f"{limit}: {regime.source}" if regime is not None else limit,
            found if not share else f"{found}: {decimals(100.0 * float(share), 1)} % of the readings",
            f"riveted only: {joined.why[letter]}" if letter in joined.why else "may be welded by a proved procedure",
        )
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("Strake", width=1.4),
        Column("Material", width=1.1),
        Column("May lose at most", width=2.6),
        Column("Laminations", width=1.8),
        Column("Repairs", width=2.4),
    )
    return [Heading("Old metal"), Table(columns, tuple(rows), note=inline(_REGIME), small=True)]


def _analyses(desk: Desk) -> list[Block]:
    written, judged = desk.calculated.found(plate_analyses), desk.calculated.outcome(analyses_judged)
    if not written:
        return []
    if isinstance(judged, Absent):
        return [Heading("Analysis of shell plate"), not_calculated(judged)]
    rows = tuple(_row(one, judged.get(name)) for name, one in written.items())
    columns = (
        Column("Strakes", width=1),
        Column("Day and source", width=2),
        *(Column(f"{symbol}, %", "right", 0.7) for symbol in ("C", "Mn", "S", "P", "N")),
        Column("Decided by", width=1.6),
        Column("Repairs", width=2),
    )
    return [Heading("Analysis of shell plate"), Table(columns, rows, note=inline(_ANALYSIS), small=True)]


def _row(one: PlateAnalysis, judged: Verdict | None) -> Row:
    shares = (one.carbon, one.manganese, one.sulphur, one.phosphorus, one.nitrogen)
    cells = [", ".join(map(str, one.strakes)), f"{day(one.on)}, {one.source}"]
    cells += ["–" if share is None else decimals(100.0 * share.si, 3) for share in shares]
    cells += ["–", "–"] if judged is None else [judged.governs.name, JOINING[judged.met]]
    return Row(tuple(inline(cell) for cell in cells))
