"""What an application says of money: categories, items, what rests on what, match, and that all sums agree."""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

from tenderwright.documents.desk import capital
from tenderwright.documents.edition import Block, Column, Facts, Heading, Inline, Paragraph, Row, Table, inline
from tenderwright.documents.grant_desk import ApplicationDesk
from tenderwright.documents.parts.grant_work import item_ref, quantity_cells
from tenderwright.planning.application import CostRow, Split
from tenderwright.planning.grant_match import SURENESS
from tenderwright.planning.grant_needs import needed
from tenderwright.pricing.money import ZERO, in_currency, total, written

_SORTS = {
    "work": "Work",
    "service": "Shared services, the part that this work carries",
    "outside": "Costs outside the tender",
    "in kind": "Given in kind",
}


def budget(desk: ApplicationDesk) -> list[Block]:
    """Compose the expenditure by category and by item, and what the estimate rests on."""
    choice = [*phases(desk), *alternatives(desk)]
    return [
        *_in_short(desk),
        *choice,
        Heading("By category"),
        _categories(desk),
        *_rows(desk),
        *_sureness(desk),
        *_basis(desk),
    ]


def _split_columns(desk: ApplicationDesk, *first: Column) -> tuple[Column, ...]:
    titles = ["Total", "Granted", "Grant", "Match", "Not eligible"]
    money = [Column(one, "decimal", 1.35) for one in titles if one != "Granted" or desk.applied.taken_off]
    return (*first, *money)


def split_cells(desk: ApplicationDesk, split: Split) -> tuple[Inline, ...]:
    """Give a sum and who pays it as cells."""
    granted = [split.granted] if desk.applied.taken_off else []
    return tuple(inline(_money(one)) for one in (split.total, *granted, split.grant, split.match, split.not_eligible))


def _money(amount: Decimal) -> str:
    return written(amount) if amount else "–"


def _in_short(desk: ApplicationDesk) -> list[Block]:
    applied, currency = desk.applied, desk.tender.currency
    whole, source = applied.whole, applied.source
    facts = [
        ("Whole cost", f"{in_currency(currency, whole.total)}"),
        (
            "Asked",
            f"{in_currency(currency, applied.asked)}" if source is not None else "nothing: no source is named",
        ),
        ("Match", f"{in_currency(currency, whole.match)}, of it given in kind {written(applied.in_kind)}"),
        ("Not eligible", f"{in_currency(currency, whole.not_eligible)}, paid from other money"),
        ("Prices", f"of {desk.estimate.base_month}"),
    ]
    if applied.taken_off:
        facts.insert(
            1, ("Granted by others", f"{in_currency(currency, whole.granted)}, taken off before anything is asked")
        )
    if source is not None and source.match is not None:
        wanted = (
            f"{source.match} of the grant; so {in_currency(currency, applied.ceiling)} is the most that may be asked"
        )
        facts.insert(-2, ("Match wanted", wanted))
    return [Facts(tuple((term, inline(words)) for term, words in facts if words))]


def phases(desk: ApplicationDesk) -> list[Block]:
    """Compose what each phase comes to and who pays it; nothing where there are none."""
    found = desk.applied.phases
    rows = [
        Row((inline(one.phase.title if one.phase is not None else "Of no one phase"), *split_cells(desk, one.split)))
        for one in found
    ]
    rows.append(Row((inline("All phases"), *split_cells(desk, desk.applied.whole)), "total"))
    note = inline(f"{desk.tender.currency}. Shared services stand in each phase as its items carry them.")
    columns = _split_columns(desk, Column("Phase", width=3))
    return [Heading("By phase"), Table(columns, tuple(rows), note=note)] if found else []


def alternatives(desk: ApplicationDesk) -> list[Block]:
    """Compose what is asked for either or, side by side; nothing where there is no choice."""
    found = desk.applied.alternatives
    if not found:
        return []
    rows = [
        Row(
            (
                inline(f"{'Either' if not place else 'Or'}: {one.alternative.title}"),
                inline(", ".join(priced.item.number for priced in one.application.chosen.work)),
                *split_cells(desk, one.application.whole),
            )
        )
        for place, one in enumerate(found)
    ]
    columns = _split_columns(desk, Column("What is asked for", width=2.6), Column("Items", width=2.2))
    note = inline(
        f"{desk.tender.currency}. Only one of them is asked for, as the funder chooses. Each is worked out by itself; "
        "all other figures of this paper are those of the first, which the owner prefers."
    )
    blocks: list[Block] = [Heading("Either, or"), Table(columns, tuple(rows), note=note, small=True)]
    for one in found:
        if one.alternative.words is not None:
            blocks += [Heading(one.alternative.title, 3), desk.prose(one.alternative.words)]
    return blocks


def _categories(desk: ApplicationDesk) -> Table:
    rows: list[Row] = []
    for group in desk.applied.groups:
        if group.title:
            rows.append(Row((inline(group.title),), "group"))
        rows += [Row((inline(row.category.title), *split_cells(desk, row.split))) for row in group.rows]
        if group.title:
            rows.append(Row((inline(f"All {group.title.lower()}"), *split_cells(desk, group.split)), "subtotal"))
    rows.append(Row((inline("All categories"), *split_cells(desk, desk.applied.whole)), "total"))
    payers = "Granted (by others already), grant" if desk.applied.taken_off else "Grant"
    note = inline(f"{desk.tender.currency}. {payers}, match and not eligible add up to the total in every row.")
    return Table(_split_columns(desk, Column("Category", width=3)), tuple(rows), note=note)


def _rows(desk: ApplicationDesk) -> list[Block]:
    rows: list[Row] = []
    for sort, title in _SORTS.items():
        inside = desk.applied.of_sort(sort)
        if inside:
            rows.append(Row((inline(title),), "group"))
            rows += [Row((_row_title(desk, row), *_cost_cells(desk, row))) for row in inside]
    whole = desk.applied.whole
    sums = [total([getattr(row, name) for row in desk.applied.rows]) for name in ("likely", "contingency")]
    rows.append(Row((inline("All"), *(inline(written(one)) for one in sums), *split_cells(desk, whole)), "total"))
    columns = _split_columns(
        desk, Column("Item", width=2.7), Column("Likely", "decimal", 1.35), Column("Contingency", "decimal", 1.25)
    )
    blocks: list[Block] = [Heading("By item"), Table(columns, tuple(rows), note=_rule(desk), small=True)]
    return [*blocks, *_granted(desk), *_not_eligible(desk)]


def _granted(desk: ApplicationDesk) -> list[Block]:
    """Compose what others have granted already, and what of it is taken off; sources by their public names."""
    taken = desk.applied.taken_off
    rows = [
        Row(
            (
                inline(one.source.public or "Other money"),
                inline(one.granted.work.name),
                inline(written(one.granted.amount)),
                inline(written(one.amount)),
            )
        )
        for one in taken
    ]
    sums = (total([one.granted.amount for one in taken]), total([one.amount for one in taken]))
    rows.append(Row((inline("All"), inline(""), *(inline(written(one)) for one in sums)), "total"))
    columns = (
        Column("Granted by", width=3),
        Column("For", width=1),
        Column("Granted", "decimal", 1.3),
        Column("Taken off here", "decimal", 1.3),
    )
    note = inline(
        f"{desk.tender.currency}. What is granted for an item comes off its lines, then its contingency, and then "
        "the shared services. Of what is granted for a shared service, the part is taken off that this work carries "
        "of it. It is neither asked for again nor counted as match."
    )
    return [Heading("What others have granted already"), Table(columns, tuple(rows), note=note)] if taken else []


def _not_eligible(desk: ApplicationDesk) -> list[Block]:
    found = desk.applied.not_eligible
    rows = [Row((inline(capital(one.why)), inline(", ".join(one.what)), inline(written(one.amount)))) for one in found]
    columns = (Column("Why", width=2.2), Column("What", width=4), Column("Amount", "decimal", 1.2))
    return [Heading("What is not eligible"), Table(columns, tuple(rows))] if rows else []


def _rule(desk: ApplicationDesk) -> Inline:
    grant = desk.applied.grant
    return inline(
        f"{desk.tender.currency}. Shared services (dock, access, power, fire watch and the like) serve all the work; "
        f"only the part of them that these items carry is counted, spread {desk.estimate.shared_rule}. Contingency is "
        f"what each has to be given beyond its likely price so that the whole tender is covered at {grant.confidence}."
    )


def _row_title(desk: ApplicationDesk, row: CostRow) -> Inline:
    item = desk.package.item_by_name.get(row.number)
    return item_ref(desk, item) if item is not None else inline(row.title)


def _cost_cells(desk: ApplicationDesk, row: CostRow) -> tuple[Inline, ...]:
    return (inline(_money(row.likely)), inline(_money(row.contingency)), *split_cells(desk, row.split))


def _sureness(desk: ApplicationDesk) -> list[Block]:
    rows = []
    sums = [ZERO, ZERO, ZERO, ZERO]
    for one in desk.applied.chosen.work:
        sure = desk.outlook.by_item.get(one.item.number, {})
        classes = sorted({ln.unit_price.estimate_class for ln in desk.applied.chosen.lines if ln.item is one.item})
        levels = [sure.get(level) for level in (0.50, 0.80)]
        figures = [one.direct, one.loaded or one.direct, *(level or one.direct for level in levels)]
        sums = [before + more for before, more in zip(sums, figures, strict=True)]
        written_as = "–" if not classes else str(classes[0])
        written_as += f" to {classes[-1]}" if len(classes) > 1 else ""
        rows.append(Row((item_ref(desk, one.item), *(inline(written(one)) for one in figures), inline(written_as))))
    rows.append(Row((inline("All items"), *(inline(written(one)) for one in sums), inline("")), "total"))
    columns = (
        Column("Item", width=2.7),
        Column("Own lines", "decimal", 1.3),
        Column("With services", "decimal", 1.3),
        Column("P50, own", "decimal", 1.3),
        Column("P80, own", "decimal", 1.3),
        Column("Class", width=0.8),
    )
    note = inline(
        "P50 and P80 are each item's part of what the whole tender costs at that confidence, by simulation. Class is "
        "that of the estimate, 5 for the least defined to 1 for work that is open to view (after AACE International "
        "18R-97; which evidence makes which class is common practice). Options stand at their likely price."
    )
    return [Heading("How sure the estimate is"), Table(columns, tuple(rows), note=note, small=True)]


def line_basis(desk: ApplicationDesk) -> list[Block]:
    """Compose what the estimate of each line rests on."""
    rows = []
    for line in desk.applied.chosen.lines:
        cells = (
            inline(line.number),
            inline(line.line.text),
            *quantity_cells(line),
            inline(written(line.rate)),
            inline(written(line.amount)),
            inline(line.basis or "–"),
        )
        rows.append(Row(cells))
    columns = (
        Column("Line", width=0.8),
        Column("What", width=2.8),
        Column("Quantity", "decimal", 0.9),
        Column("Unit", width=0.7),
        Column("Rate", "decimal", 1.2),
        Column("Amount", "decimal", 1.3),
        Column("Basis", width=2),
    )
    note = inline(
        f"{desk.tender.currency}. A rate that is a percentage is in per cent of the sum that stands as its quantity."
    )
    return [Table(columns, tuple(rows), note=note, small=True)]


def _basis(desk: ApplicationDesk) -> list[Block]:
    grant = desk.applied.grant
    if not grant.costs and not grant.in_kind:
        return []
    return [Heading("What the other figures rest on"), _other_basis(desk)]


def _other_basis(desk: ApplicationDesk) -> Table:
    grant = desk.applied.grant
    rows = [Row((inline(one.what), inline(written(one.amount)), inline(one.basis))) for one in grant.costs]
    gifts = desk.applied.of_sort("in kind")
    for gift, row in zip(grant.in_kind, gifts, strict=True):
        basis = f"{desk.quantity(gift.hours)} at {written(gift.rate)}: {gift.basis}"
        rows.append(Row((inline(gift.what), inline(written(row.likely)), inline(basis))))
    columns = (Column("What", width=2.6), Column("Amount", "decimal", 1.2), Column("Basis", width=3))
    return Table(columns, tuple(rows))


def dependencies(desk: ApplicationDesk) -> list[Block]:
    """Compose what has to be funded with the chosen items."""
    found = needed(desk.applied.chosen, desk.estimate, desk.papers.scope)
    services = [one for one in found if one.inside is not None]
    others = [one for one in found if one.inside is None]
    blocks: list[Block] = []
    if services:
        rows = [
            Row((item_ref(desk, one.item.item), inline(written(one.item.direct)), inline(written(one.inside or ZERO))))
            for one in services
        ]
        sums = (total([one.item.direct for one in services]), total([one.inside or ZERO for one in services]))
        rows.append(Row((inline("All shared services"), *(inline(written(one)) for one in sums)), "total"))
        columns = (
            Column("Service", width=3),
            Column("Whole", "decimal", 1.3),
            Column("Part in this application", "decimal", 1.3),
        )
        blocks += [Heading("Shared services that the work rests on"), Table(columns, tuple(rows))]
    if others:
        rows = [
            Row(
                (
                    item_ref(desk, one.item.item),
                    inline(", ".join(one.by)),
                    inline(written(one.item.loaded or one.item.direct)),
                )
            )
            for one in others
        ]
        columns = (Column("Item", width=3), Column("Needed by", width=2.6), Column("Cost", "decimal", 1.2))
        note = inline("Not in this application, and paid from other money; without them the work cannot be done.")
        blocks += [Heading("Other items that have to be funded with it"), Table(columns, tuple(rows), note=note)]
    return blocks


def match(desk: ApplicationDesk) -> list[Block]:
    """Compose who pays the match; sources without a public name are put together by status."""
    applied = desk.applied
    rows: list[Row] = []
    unnamed = dict.fromkeys(SURENESS, ZERO)
    for one in applied.drawn:
        if one.source.public:
            rows.append(_match_row(one.source.public, one.source.status, written(one.amount)))
        else:
            unnamed[one.source.status] += one.amount
    rows += [_match_row("Other money", status, written(amount)) for status, amount in unnamed.items() if amount]
    rows += [_match_row(row.title, "given in kind", written(row.split.match)) for row in applied.of_sort("in kind")]
    if applied.to_be_found:
        rows.append(_match_row("Still to be found", "–", written(applied.to_be_found)))
    rows.append(Row((inline("All match"), inline(""), inline(written(applied.whole.match))), "total"))
    sure = total([one.amount for one in applied.drawn if one.secured])
    columns = (Column("From", width=3.4), Column("State", width=1.4), Column("Amount", "decimal", 1.3))
    words = (
        f"In hand or promised: {in_currency(desk.tender.currency, sure)} of "
        f"{written(applied.cash_match)} that is paid in money. {_by_rules(desk)}"
    )
    return [Table(columns, tuple(rows)), Paragraph(inline(words))]


def _by_rules(desk: ApplicationDesk) -> str:
    """Say what of the match counts by the rule of the source that is asked, and what rests on rules of others."""
    applied, said = desk.applied, []
    rules = applied.matching.rules
    for rule in rules:
        if rule.source is applied.source:
            found = ", what is still to be found included" if applied.to_be_found > 0 else ""
            counts = f"{written(rule.counts)} counts towards it{found}"
            said.append(f"The match wanted is {in_currency(desk.tender.currency, rule.wanted)}; by its rules {counts}.")
    if any(rule.source is not applied.source for rule in rules):
        said.append("What a source gives that wants match itself is no more than others pay for the same work.")
    return " ".join([*said, "Whose money counts as match is for each funder's notice."])


def _match_row(name: str, status: str, amount: str) -> Row:
    return Row((inline(name), inline(status or "not said"), inline(amount)))


def reconciliation(desk: ApplicationDesk) -> list[Block]:
    """Compose the proof that every way of adding up gives the same sum."""
    sums = desk.applied.reconciliation
    assert sums.holds, "the sums of the application do not agree"
    confidence = desk.applied.grant.confidence
    payers = "Granted by others, grant" if desk.applied.taken_off else "Grant"
    rows = [
        _sum_row("Own lines of the chosen items, from the estimate", sums.direct),
        _sum_row("Their part of the shared services, from the estimate", sums.shared),
        _sum_row("Of the estimate", total([sums.direct, sums.shared]), "subtotal"),
        _sum_row(f"Contingency to {confidence}", sums.contingency),
        _sum_row("Costs outside the tender", sums.outside),
        _sum_row("Given in kind", sums.in_kind),
        _sum_row("Whole cost", sums.whole, "total"),
        Row((inline("Added up otherwise"),), "group"),
        _sum_row("All categories", sums.by_category),
        _sum_row("All items, services, other costs and gifts", sums.by_row),
        _sum_row(f"{payers}, match and what is not eligible", sums.by_payer),
    ]
    note = inline(
        f"{desk.tender.currency}. All four sums agree to the cent, "
        "and the first two rows are of the owner's estimate of the whole tender."
    )
    return [Table((Column("", width=4), Column("Amount", "decimal", 1.4)), tuple(rows), note=note)]


def _sum_row(title: str, amount: Decimal, weight: Literal["normal", "subtotal", "total"] = "normal") -> Row:
    return Row((inline(title), inline(written(amount))), weight)
