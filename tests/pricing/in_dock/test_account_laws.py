"""Laws of the running account, over random weeks in dock."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from decimal import Decimal
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from tenderwright.model.build import Name, Prose, Reference
from tenderwright.model.in_dock import ChangeOrder, ConditionReport, InDock, LeftOut, Measured, Restored
from tenderwright.notices import Place
from tenderwright.pricing.in_dock.account import RunningAccount, account
from tenderwright.pricing.in_dock.ledger import Ledger, ledger
from tenderwright.pricing.money import CENT, total
from tenderwright.quantities.quantity import parse_quantity
from tenderwright.reading.source import Source
from tests.replacing import replace

from .conftest import Docked

HERE = Place("owner/in-dock/x.yaml")
FIRST, LAST = date(2028, 4, 5), date(2028, 4, 18)
RATES = {"320.a": "each", "420.a": "m2", "110.b": "d", "110.c": "each", "130.a": "h"}
CAUSES = ("condition found", "owner's change", "weather", "other")

days = st.integers(0, (LAST - FIRST).days).map(lambda n: FIRST + timedelta(days=n))
lines = st.sampled_from(sorted(RATES))
numbers = st.decimals(0, 90, places=1)
money = st.decimals(0, 9000, places=2)


def _name(text: str) -> Name:
    return Name(text, HERE)


@st.composite
def change_orders(draw: st.DrawFn, count: int = 5) -> list[ChangeOrder]:
    """Draw changes priced in every way."""
    found = []
    for number in range(draw(st.integers(0, count))):
        day, line = draw(days), draw(lines)
        made: dict[str, Any] = {"line": _name(line)}
        way = draw(st.sampled_from(["rate", "pool", "agreed"]))
        if way == "rate":
            made["quantity"] = parse_quantity(f"{draw(numbers) - 20} {RATES[line]}", "any")
        elif way == "pool":
            made |= {"line": _name("160.a"), "hours": parse_quantity(f"{draw(numbers)} h", "time")}
            made["materials"] = draw(money)
        else:
            made["negotiated"] = draw(money) - 4000
        late = draw(st.none() | st.integers(0, 4))
        signed = day + timedelta(days=late) if late is not None else None
        order = ChangeOrder(
            change=_name(f"CO-{number}"),
            day=day,
            cause=draw(st.sampled_from(CAUSES)),
            what="work",
            here=HERE,
            days=draw(st.integers(0, 3)),
            by=_name("Trustees"),
            signed=signed,
            **made,
        )
        found.append(order)
    return found


def _by_rate(line: str, number: Decimal) -> dict[str, Any]:
    return {"line": _name(line), "quantity": parse_quantity(f"{number} {RATES[line]}", "any")}


@st.composite
def reports(draw: st.DrawFn, count: int = 4) -> list[ConditionReport]:
    """Draw reports that wait or were decided, with a price or without; none is of a credit."""
    found = []
    for number in range(draw(st.integers(0, count))):
        day, line = draw(days), draw(lines)
        decision = draw(st.sampled_from(["waiting", "accepted", "rejected", "deferred"]))
        number_of = draw(st.none() | numbers)
        priced = (
            draw(st.sampled_from([{}, {"amount": Decimal(750)}])) if number_of is None else _by_rate(line, number_of)
        )
        report = ConditionReport(
            report=_name(f"CF-{number}"),
            day=day,
            where="strake A",
            found=Prose("Wasted.", HERE, Source("x", ""), ()),
            here=HERE,
            item=Reference("item", "320", HERE),
            days=draw(st.integers(0, 3)),
            decision=decision,
            decided=day + timedelta(days=1) if decision != "waiting" else None,
            **priced,
        )
        found.append(report)
    return found


@st.composite
def measures(draw: st.DrawFn) -> list[Measured]:
    """Draw measures, each line once on a day."""
    pairs = draw(st.lists(st.tuples(lines, days), max_size=4, unique=True))
    return [
        Measured(line=_name(line), quantity=parse_quantity(f"{draw(numbers)} {RATES[line]}", "any"), here=HERE, day=day)
        for line, day in pairs
    ]


works = st.sampled_from(["130", "130.b", "210", "420", "420.a", "320"])
outs = st.lists(
    st.builds(
        lambda work, day, paid: LeftOut(work=_name(work), day=day, why="", by=_name("Trustees"), here=HERE, paid=paid),
        works,
        days,
        st.none() | money,
    ),
    max_size=3,
    unique_by=lambda one: (one.work.name.split(".")[0], one.day),
)


@st.composite
def weeks(draw: st.DrawFn) -> InDock:
    """Draw all that a docking tells, in one file."""
    return InDock(
        until=LAST,
        here=HERE,
        conditions=tuple(draw(reports())),
        changes=tuple(draw(change_orders())),
        measured=tuple(draw(measures())),
        deleted=tuple(draw(outs)),
    )


def _ledger(docked: Docked, told: Sequence[InDock]) -> Ledger:
    compiled, owner = docked
    papers = replace(owner.papers, in_dock={f"owner/in-dock/{n}.yaml": one for n, one in enumerate(told)})
    made, notices = ledger(papers, compiled.package, compiled.calculated, owner.estimate, {})
    assert notices == []
    assert made is not None
    return made


def _figures(made: RunningAccount) -> tuple[object, ...]:
    """Give all that an account says."""
    return (
        made.contract,
        made.changes,
        made.left_out,
        made.remeasured,
        made.ordered,
        made.to_be_signed,
        made.to_be_answered,
        made.further,
        made.forecast,
        made.causes,
        dict(made.by_item),
        [one.name for one in made.waiting],
        [one.name for one in made.unsigned],
        [row.final for row in made.lines],
    )


def _apart(draw: st.DrawFn, week: InDock) -> list[InDock]:
    """Spread what a file tells over three files, in any order."""
    parts: list[dict[str, list[Any]]] = [{}, {}, {}]
    for key in ("conditions", "changes", "measured", "deleted"):
        for one in draw(st.permutations(getattr(week, key))):
            parts[draw(st.integers(0, 2))].setdefault(key, []).append(one)
    return [
        InDock(
            until=LAST,
            here=HERE,
            conditions=tuple(part.get("conditions", ())),
            changes=tuple(part.get("changes", ())),
            measured=tuple(part.get("measured", ())),
            deleted=tuple(part.get("deleted", ())),
        )
        for part in parts
    ]


@settings(max_examples=60)
@given(weeks(), days, st.data())
def test_the_order_of_the_files_does_not_matter(docked: Docked, week: InDock, on: date, data: st.DataObject) -> None:
    apart = st.composite(_apart)(week)
    whole = _figures(account(_ledger(docked, [week]), on))
    assert _figures(account(_ledger(docked, data.draw(apart)), on)) == whole


@settings(max_examples=60)
@given(weeks(), days)
def test_it_reconciles_to_the_cent(docked: Docked, week: InDock, on: date) -> None:
    made = account(_ledger(docked, [week]), on)
    assert made.ordered == made.contract + made.changes + made.left_out + made.remeasured
    further = made.further.amount if made.further is not None else 0
    assert made.forecast == made.ordered + made.to_be_signed + made.to_be_answered + further
    assert total(list(made.by_item.values())) == made.forecast
    assert sum(row.amount for row in made.causes) == made.changes
    assert made.contingency_left == made.ledger.contract.contingency - (made.forecast - made.contract)
    for amount in (made.ordered, made.forecast, *(row.final for row in made.lines), *made.by_item.values()):
        assert amount == amount.quantize(CENT)


@settings(max_examples=60)
@given(weeks(), works, days)
def test_work_left_out_and_restored_comes_to_the_same(docked: Docked, week: InDock, work: str, day: date) -> None:
    """Of one day, what is restored goes after what is left out."""
    plain = replace(week, deleted=())
    out = LeftOut(work=_name(work), day=day, why="", by=_name("Trustees"), here=HERE)
    back = Restored(work=_name(work), day=day, why="", by=_name("Trustees"), here=HERE)
    before = _figures(account(_ledger(docked, [plain]), LAST))
    told = [replace(plain, deleted=(out,)), InDock(until=LAST, here=HERE, restored=(back,))]
    made = _ledger(docked, told)
    assert _figures(account(made, LAST)) == before
    assert made.back(LAST) == {line.number: back for line in made.contract.lines_of(work)}
    assert not made.out(LAST)


@settings(max_examples=60)
@given(weeks(), money, st.integers(0, 5))
def test_one_more_report_never_lowers_the_forecast(docked: Docked, week: InDock, amount: Decimal, more: int) -> None:
    report = ConditionReport(
        report=_name("CF-99"),
        day=FIRST,
        where="strake B",
        found=Prose("Wasted.", HERE, Source("x", ""), ()),
        here=HERE,
        amount=amount,
        days=more,
    )
    before = account(_ledger(docked, [week]), LAST)
    after = account(_ledger(docked, [replace(week, conditions=(*week.conditions, report))]), LAST)
    assert after.forecast >= before.forecast + amount
    assert after.ordered == before.ordered


@settings(max_examples=60)
@given(weeks())
def test_what_is_left_out_saves_no_more_than_its_lines_come_to(docked: Docked, week: InDock) -> None:
    """Without measures, each line left out takes its contract amount off, and nothing else of it changes."""
    made = account(_ledger(docked, [replace(week, measured=())]), LAST)
    plain = account(_ledger(docked, [replace(week, measured=(), deleted=())]), LAST)
    out = made.ledger.out(LAST)
    paid = total([one.paid for one in {id(one): one for one in out.values()}.values() if one.paid is not None])
    taken = total([plain.ledger.contract.lines[number].amount for number in out])
    assert made.ordered == plain.ordered - taken + paid
