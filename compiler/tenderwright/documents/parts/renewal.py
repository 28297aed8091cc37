"""The plate to renew: inserts as the survey names them, and in words what a denser survey would likely add."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.renewal.bad_spaces import NEXT, NOW, PIT, WHY
from tenderwright.calculations.renewal.contingent import PRIOR_WEIGHT
from tenderwright.calculations.renewal.shell_renewal import PlannedRenewal, RenewalPlan
from tenderwright.calculations.ship.renewals import shell_contingent, shell_renewal
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.model.shell_condition import Doubler, Renewed
from tenderwright.quantities.display import decimals, head, in_column, show

_PLACES = (
    "Inserts are drawn round the frame spaces whose readings pass their limit at this docking or before the next one, "
    "and round pits that call for a local insert. They are cut at frames and on the seams, and are for pricing: the "
    "naval architect draws each plate. Mass is of the plate fitted with mill tolerance, with laps or straps at its "
    "ends. Rivets are those of both seams, of every frame at the ends and between, and of butts in way, each as its "
    "strake is riveted there; driven besides are those of new ends. What is to be tested is seam, butt and end. Hours "
    "are of steelwork by D. Butler, Guide to Ship Repair Estimates (2000), on the greatest rectangle at {density} and "
    "with its factors for place and curvature multiplied, which is assumed; riveting is not in them."
)

_WHY = {
    WHY[NOW]: "thin now",
    WHY[NEXT]: "thin by the next docking",
    WHY[PIT]: "pit",
}


def renewal_blocks(desk: Desk) -> list[Block]:
    """Compose the inserts with their totals, and the contingent part."""
    found = desk.calculated.outcome(shell_renewal)
    if isinstance(found, Absent):
        return [Heading("Plate to renew"), not_calculated(found)]
    rows = [_row(desk, one) for one in found.inserts if not one.apart]
    total = found.total
    sums = (
        "All", "", "", "", "", in_column(total.area, "small area"), in_column(total.mass, "part"),
        str(total.rivets_removed),
        str(total.rivets_renewed), in_column(total.joint, "run"), decimals(total.man_hours, 0),
    )  # fmt: skip
    rows.append(Row(tuple(inline(text) for text in sums), "total"))
    apart = [one for one in found.inserts if one.apart]
    if apart:
        rows.append(Row((inline("In items of their own, and not in the sums"),), "group"))
        rows += [_row(desk, one) for one in apart]
    columns = (
        Column("Insert", width=0.6),
        Column("Strake", width=1.2),
        Column("Place", width=1.5),
        Column("Why", width=2.5),
        Column(head("Plate", "thickness"), "right", 0.9),
        Column(head("Area", "small area"), "right", 0.9),
        Column(head("Mass", "part"), "right", 0.9),
        Column("Rivets out", "right", 0.7),
        Column("Driven", "right", 0.8),
        Column(head("To test", "run"), "right", 0.9),
        Column("Hours", "right", 0.8),
    )
    return [
        Heading("Plate to renew"),
        Table(
            columns,
            tuple(rows),
            note=inline(_PLACES.format(density=show(8000.0, "density in kilograms", more=-1))),
            small=True,
        ),
        *_driven(desk, found),
        *_contingent(desk),
    ]


def _driven(desk: Desk, plan: RenewalPlan) -> list[Block]:
    """Say how the ends are joined, what is driven by diameter, and which inserts meet earlier repairs."""
    practice = desk.package.condition.renewal if desk.package.condition else None
    if practice is None or not plan.total.inserts:
        return []
    words = []
    if plan.total.rivets_renewed:
        sizes = (f"{number} of {show(diameter, 'rivet')}" for diameter, number in plan.total.by_diameter)
        words.append(f"Rivets to drive: {', '.join(sizes)}.")
    ends = practice.ends or ("weld" if practice.fastening == "welded edges" else "riveted lap")
    said = "" if practice.ends else ", as nothing else is said"
    words.append(f"New butts at their ends: {ends}{said}.")
    words += [sentence for one in plan.inserts for sentence in _met(desk, one)]
    return [Paragraph(inline(" ".join(words)))]


def _met(desk: Desk, one: PlannedRenewal) -> Iterator[str]:
    """Tell which earlier inserts and doublers an insert meets."""
    written = desk.package.condition
    earlier: tuple[Renewed | Doubler, ...] = (*written.renewed, *written.doublers) if written else ()
    for old in earlier:
        on = old.strake.name in one.strakes and old.side in (one.side, "both", "")
        if on and old.from_.x < one.forward and one.aft < old.to.x:
            yield f"{one.name} meets the {old.what} of {old.on.year}, {old.from_} to {old.to}: the sketch says how."


def _row(desk: Desk, one: PlannedRenewal) -> Row:
    label = desk.package.frames.label if desk.package.frames else (lambda x: show(x, "centre", more=-1))
    made = one.made
    place = f"{label(one.aft)} to {label(one.forward)}"
    cells = [
        inline(one.name),
        inline(f"{' and '.join(one.strakes)}, {one.side}"),
        inline(place, ", ", desk.item_ref(one.apart, f"item {one.apart}")) if one.apart else inline(place),
        inline("; ".join(_WHY.get(why, why) for why in one.why)),
        inline(in_column(one.thickness, "thickness")),
        inline(in_column(made.steel.area + made.ends_area, "small area")),
        inline(in_column(made.mass, "part")),
        inline(str(made.rivets.removed)),
        inline(str(made.rivets.renewed)),
        inline(in_column(made.rivets.joint, "run")),
        inline(decimals(made.man_hours, 0)),
    ]
    return Row(tuple(cells))


def _contingent(desk: Desk) -> list[Block]:
    found = desk.calculated.outcome(shell_contingent)
    if isinstance(found, Absent):
        return [Heading("Plate that may come besides", 3), not_calculated(found)]
    later, gauged = found.later, found.gauged
    mass, high = (desk.record.values[f"shell.contingent.{name}"].si for name in ("mass", "mass-p80"))
    n, k, m = int(gauged.sampled.sum()), int(gauged.bad.sum()), int(gauged.unsampled.sum())
    first = (
        f"The latest survey gauged {n} frame spaces of the strakes, counting both sides and leaving out plate that "
        f"items of their own renew; in {k} of them plate is to be renewed. {m} spaces were not gauged, and some of "
        "those will be bad too. How many is judged strake by strake from the survey's own figures, below. A strake is "
        f"first taken to be as bad as the whole ship, with the weight of {PRIOR_WEIGHT:g} spaces, and its own readings "
        "then pull it away from that (Bayes's rule). How bad the whole ship is, is uncertain in its turn: the strakes "
        f"are drawn with replacement {later.draws.size} times, as though another such ship had been surveyed, and each "
        "time the bad spaces among those not gauged are drawn as well."
    )
    second = (
        f"On the mean of the draws {decimals(later.plates, 1)} more bad spaces are found; in half of the draws no more "
        f"than {later.plates_p50}, in four of five no more than {later.plates_p80}. With the plate that one bad space "
        f"takes on this ship, growth to whole frame spaces included, that is {show(later.area, 'area')} and "
        f"{show(mass, 'small part', more=-1)} on the mean, and {show(later.area_p80, 'area')} and "
        f"{show(high, 'small part', more=-1)} in four "
        "draws of five. The survey sought out suspect places, so that this is more likely too much than too little for "
        "readings of its kind; what only a blast shows is not in it."
    )
    rows = tuple(
        Row(
            (
                inline(name),
                inline(str(int(gauged.sampled[index]))),
                inline(str(int(gauged.bad[index]))),
                inline(str(int(gauged.unsampled[index]))),
                inline(decimals(float(later.by_strake[index]), 1)),
                inline(in_column(float(gauged.area[index]), "small area")),
            )
        )
        for index, name in enumerate(strake.strake for strake in desk.package.strakes)
    )
    columns = (
        Column("Strake"),
        Column("Spaces gauged", "right"),
        Column("Of those bad", "right"),
        Column("Not gauged", "right"),
        Column("Bad ones expected", "right"),
        Column(head("Plate for each", "small area"), "right"),
    )
    return [
        Heading("Plate that may come besides", 3),
        Paragraph(inline(first)),
        Table(columns, rows, small=True),
        Paragraph(inline(second)),
    ]
