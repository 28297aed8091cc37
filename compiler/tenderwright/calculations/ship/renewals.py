"""Renewal of shell plate: inserts for what is beyond its limit at the docking, and what a denser survey would add."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Literal, cast

import numpy as np

from tenderwright.calculations.condition_results import SIDES, PlannedRenewal, ShellCondition
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.renewal.contingent import METHOD as CONTINGENT
from tenderwright.calculations.renewal.contingent import Contingent, Gauged, contingent_renewal, gauged_by_strake
from tenderwright.calculations.renewal.insert import CORNER_THICKNESSES
from tenderwright.calculations.renewal.outlines import LEAST_SIZE, Outline, OutlineRules, insert_outlines
from tenderwright.calculations.renewal.quantities import RenewalRules, RenewalTotal, renewal_of, renewal_total
from tenderwright.calculations.renewal.rivets import Riveting, default_riveting
from tenderwright.calculations.renewal.shell_grid import ShellGrid
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.condition_of_shell import strake_index, within
from tenderwright.calculations.ship.shell_plan import ShellPlan, shell_plan
from tenderwright.calculations.steel.man_hours import CURVATURE_FACTORS, PLACE_FACTORS, Curvature, Place
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.limits import renewal_thickness
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.package import Package
from tenderwright.model.ship_condition import RenewalPractice, ShipCondition

RENEWAL: Method[Any] = Method(
    name="shell.renewal",
    title="Plate to renew, as named by the survey",
    formula="inserts round frame spaces below t0 (1 - a) at the docking; m = A t rho (1 + tol); "
    "rivets = rows x length / pitch",
    source=Citation(
        "IACS Recommendation 47, Part B", "least sizes and corners; NVIC 7-68, cuts on seams", "from memory"
    ),
    valid="outlines for pricing; the naval architect draws each plate",
    inputs={},
    outputs=(
        Symbol("inserts", "inserts", "each", "each"),
        Symbol("area", "plate fitted", "area", "m2"),
        Symbol("mass", "mass of plate fitted, mill tolerance included", "mass", "kg"),
        Symbol("rivets", "rivets removed", "each", "each"),
        Symbol("rivets_renewed", "rivets driven anew", "each", "each"),
        Symbol("rivets_near_welds", "rivets that stay within 150 mm of a weld", "each", "each"),
        Symbol("seam", "seam opened and closed", "length", "m"),
        Symbol("butt", "riveted butt opened and closed", "length", "m"),
        Symbol("joint", "seam and butt together, to be tested", "length", "m"),
        Symbol("weld", "length round the inserts, as it would be welded", "length", "m"),
        Symbol("hours", "man-hours of steelwork by the tariff, riveting not in it", "person_hour", "person_hour"),
    ),
    kernel=lambda: {},
    example={},
    cautions=(
        "Man-hours by D. Butler, Guide to Ship Repair Estimates, 2000; that factors multiply is assumed.",
        "Inserts follow readings: a plate that nobody gauged is in the contingent quantity.",
    ),
)
FOUND_LATER: Method[Any] = Method(
    name="shell.contingent",
    title="Plate that a denser survey would likely add",
    formula=CONTINGENT.formula + "; mass = expected plate x mean mass of a square metre",
    source=CONTINGENT.source,
    valid="frame spaces of strakes that nobody gauged, judged from those gauged",
    inputs={},
    outputs=(
        Symbol("gauged", "frame spaces gauged", "each", "each"),
        Symbol("bad", "of those, to be renewed", "each", "each"),
        Symbol("not_gauged", "frame spaces not gauged", "each", "each"),
        Symbol("spaces", "bad frame spaces expected among them", "fraction", ""),
        Symbol("spaces_p50", "not exceeded in half of the draws", "each", "each"),
        Symbol("spaces_p80", "not exceeded in four draws of five", "each", "each"),
        Symbol("area", "plate expected", "area", "m2"),
        Symbol("area_p80", "plate not exceeded in four draws of five", "area", "m2"),
        Symbol("mass", "mass of plate expected", "mass", "kg"),
        Symbol("mass_p80", "mass not exceeded in four draws of five", "mass", "kg"),
        Symbol("joint", "seam and butt that go with it, to be tested", "length", "m"),
    ),
    kernel=lambda: {},
    example={},
    cautions=CONTINGENT.cautions,
)


def renewal_values(package: Package, results: Results, record: Record) -> None:
    """Keep what is to be renewed as named, and what may come besides."""
    condition, shell = package.condition, results.condition.shell
    if condition is None or shell is None or condition.renewal is None or package.frames is None:
        why = "it needs readings, and `renewal` in vessel/condition.yaml"
        broken = any(name.startswith("shell.survey") for name in record.failed)
        for method, prefix in ((RENEWAL, "shell.renewal"), (FOUND_LATER, "shell.contingent")):
            if broken:
                record.spoil(method, prefix, "the survey could not be analysed")
            else:
                record.lack(method, prefix, why)
        return
    plan = shell_plan(package.strakes, package.frames, results.form)
    try:
        work = _Work(package, condition, condition.renewal, shell, plan)
        renewals = work.renewals()
        total = renewal_total([one.made for one in renewals if not one.apart])
        gauged = work.gauged(total)
        later = contingent_renewal(gauged)
    except OutOfRange as error:
        record.fail(RENEWAL, "shell.renewal", str(error), condition.renewal.here)
        record.fail(FOUND_LATER, "shell.contingent", str(error), condition.renewal.here)
        return
    results.condition.renewals, results.condition.total = renewals, total
    results.condition.contingent, results.condition.gauged = later, gauged
    _keep_renewal(condition.renewal, shell, total, record)
    _keep_contingent(work, gauged, later, total, record)


@dataclass(frozen=True, eq=False)
class _Work:
    package: Package
    condition: ShipCondition
    practice: RenewalPractice
    shell: ShellCondition
    plan: ShellPlan

    @property
    def bad(self) -> Flags:
        """Mark the latest readings that are below their limit at the docking."""
        limit = renewal_thickness(self.shell.readings.as_built, self.shell.allowable)
        beyond: Flags = self.shell.at_docking < limit - 1e-12
        return beyond

    def apart(self) -> Mapping[str, Flags]:
        """Mark the readings in plate that items of their own renew."""
        marked: dict[str, Flags] = {}
        for one in self.condition.apart:
            strake = strake_index(self.package, one.strake.name)
            rows = within(self.shell.readings, strake, one.side, one.from_.x, one.to.x)
            marked[one.item.name] = marked.get(one.item.name, np.zeros_like(rows)) | rows
        return marked

    def renewals(self) -> tuple[PlannedRenewal, ...]:
        """Lay out the inserts of both sides; those of items of their own after the others."""
        apart = self.apart()
        others = np.zeros(len(self.shell.readings), np.bool_)
        for rows in apart.values():
            others |= rows
        made = self._laid_out(self.bad & ~others, "")
        for item, rows in apart.items():
            made += self._laid_out(self.bad & rows, item)
        return tuple(replace(one, name=f"R{number}") for number, one in enumerate(made, start=1))

    def _laid_out(self, bad: Flags, item: str) -> list[PlannedRenewal]:
        practice, readings = self.practice, self.shell.readings
        least = practice.least_size.si if practice.least_size else LEAST_SIZE
        rules = OutlineRules(least_bays=practice.least_bays, least_size=least)
        made = []
        for code, side in enumerate(SIDES):
            rows = bad & (readings.side == code)
            cells = self.plan.grid.cells(readings.strake[rows], readings.x[rows])
            for outline in insert_outlines(self.plan.grid, cells, rules):
                made.append(self._made(outline, cast(Literal["port", "starboard"], side), item))
        return made

    def _made(self, outline: Outline, side: Literal["port", "starboard"], item: str) -> PlannedRenewal:
        grid = self.plan.grid
        cells = self.plan.thickness[outline.lower : outline.upper, outline.aft : outline.forward]
        thickness = float(cells.max())
        if thickness <= 0.0:
            raise OutOfRange("an insert lies where no strake has plate")
        aft, forward = float(grid.frames[outline.aft]), float(grid.frames[outline.forward])
        made = renewal_of(grid, outline, thickness, self._riveting(), self._butts(outline, grid), self._rules(outline))
        strakes = tuple(self.shell.strakes[strake] for strake in outline.strakes)
        return PlannedRenewal("", side, strakes, aft, forward, made, thickness, item)

    def _riveting(self) -> Riveting:
        practice = self.practice
        usual = default_riveting(practice.rivet.si, practice.seam_rows, practice.butt_rows)
        return Riveting(
            practice.seam_pitch.si if practice.seam_pitch else usual.seam_pitch,
            practice.seam_rows,
            practice.butt_rows,
            practice.frame_pitch.si if practice.frame_pitch else usual.frame_pitch,
        )

    def _rules(self, outline: Outline) -> RenewalRules:
        practice, factor = self.practice, 1.0
        for strake in outline.strakes:
            for work in practice.work:
                if any(name.name == self.shell.strakes[strake] for name in work.strakes):
                    place, curvature = cast(Place, work.place), cast(Curvature, work.curvature)
                    factor = max(factor, PLACE_FACTORS[place] * CURVATURE_FACTORS[curvature])
        return RenewalRules(
            fastening="welded edges" if practice.fastening == "welded edges" else "riveted",
            corner=practice.corner if practice.corner is not None else CORNER_THICKNESSES,
            tolerance=practice.mill_tolerance.si if practice.mill_tolerance else None,
            factors=(factor,),
            rate=practice.hours_rate,
            least=practice.least_size.si if practice.least_size else LEAST_SIZE,
        )

    def _butts(self, outline: Outline, grid: ShellGrid) -> Sequence[float]:
        """Give the lengths of the butts that an insert opens: those at its ends and between."""
        aft, forward = float(grid.frames[outline.aft]), float(grid.frames[outline.forward])
        lengths = []
        for strake in outline.strakes:
            butts = self.plan.butts[strake]
            number = int(((butts >= aft - 1e-6) & (butts <= forward + 1e-6)).sum())
            lengths += [grid.breadth(strake, strake + 1, outline.aft, outline.forward)] * number
        return lengths

    def gauged(self, total: RenewalTotal) -> Gauged:
        """Count frame spaces gauged, bad and not gauged, by strake; plate of items of their own left out."""
        readings, bays = self.shell.readings, self.plan.bays
        others = np.zeros(len(readings), np.bool_)
        for rows in self.apart().values():
            others |= rows
        bay = bays.plate_of(readings.strake, readings.side, readings.x)
        kept = self.shell.analysis.latest & ~others & (bay >= 0)
        known = np.flatnonzero(np.bincount(bay[kept], minlength=bays.count))
        bad = np.bincount(bay[kept & self.bad], minlength=bays.count)[known] > 0
        area = self._areas()
        strake = bays.place_of(known)[0]
        grown = total.area / float(area[strake[bad]].sum()) if bad.any() else 1.0
        return gauged_by_strake(bays, known, bad, area * grown)

    def _areas(self) -> Floats:
        """Give the mean area of a frame space, by strake, m2."""
        grid = self.plan.grid
        breadth = np.diff(grid.seams, axis=0) if grid.seams.ndim == 2 else np.diff(grid.seams)[:, None]
        area = np.where(self.plan.exists, breadth * np.diff(grid.frames), 0.0)
        mean: Floats = area.sum(axis=1) / np.maximum(self.plan.exists.sum(axis=1), 1)
        return mean


def _keep_renewal(practice: RenewalPractice, shell: ShellCondition, total: RenewalTotal, record: Record) -> None:
    survey = record.values["shell.survey.readings"]
    inputs = {
        "readings": given(survey, f"{len(shell.readings)} readings"),
        "calls": given(record.values["shell.plates.now"], "forecast to the docking"),
        "fastening": Given(None, practice.fastening, practice.here),
        "rivets": Given(practice.rivet.si, f"{practice.rivet}, {practice.source}", practice.rivet.at),
        "rows": Given(None, f"{practice.seam_rows} at seams, {practice.butt_rows} at butts", practice.here),
        "least size": given(practice.least_size)
        if practice.least_size
        else Given(LEAST_SIZE, "300 mm", "IACS Rec. 47"),
        "factors": Given(
            None,
            "; ".join(
                f"strakes {', '.join(map(str, w.strakes))}: {w.place}, curvature {w.curvature}" for w in practice.work
            )
            or "none",
            practice.here,
        ),
    }
    outputs = {
        "inserts": float(total.inserts),
        "area": total.area,
        "mass": total.mass,
        "rivets": float(total.rivets_removed),
        "rivets_renewed": float(total.rivets_renewed),
        "rivets_near_welds": float(total.rivets_near_welds),
        "seam": total.seam,
        "butt": total.butt,
        "joint": total.seam + total.butt,
        "weld": total.weld,
        "hours": total.man_hours,
    }
    record.keep(RENEWAL, "shell.renewal", "plate named for renewal, items of their own left out", inputs, outputs)


def _keep_contingent(work: _Work, gauged: Gauged, later: Contingent, total: RenewalTotal, record: Record) -> None:
    built = work.plan.thickness[work.plan.exists]
    per_area = total.mass / total.area if total.area else float(built.mean()) * 7850.0
    joint = (total.seam + total.butt) / total.area if total.area else 0.0
    names = work.shell.strakes
    inputs = {
        "gauged": given(record.values["shell.survey.latest"], "by strake and frame space"),
        "renewal": given(record.values["shell.renewal.mass"], f"{per_area:.1f} kg for each square metre"),
    }
    for index, name in enumerate(names):
        n, k, m = int(gauged.sampled[index]), int(gauged.bad[index]), int(gauged.unsampled[index])
        inputs[f"strake {name}"] = Given(None, f"{k} of {n} bad, {m} not gauged", "counted from the latest survey")
    outputs = {
        "gauged": float(gauged.sampled.sum()),
        "bad": float(gauged.bad.sum()),
        "not_gauged": float(gauged.unsampled.sum()),
        "spaces": later.plates,
        "spaces_p50": float(later.plates_p50),
        "spaces_p80": float(later.plates_p80),
        "area": later.area,
        "area_p80": later.area_p80,
        "mass": later.area * per_area,
        "mass_p80": later.area_p80 * per_area,
        "joint": later.area * joint,
    }
    record.keep(FOUND_LATER, "shell.contingent", "plate not gauged, both sides", inputs, outputs)
