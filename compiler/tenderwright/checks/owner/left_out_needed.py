"""Work is left out only while it has not begun, and where nothing else needs it.

Ground: the owner may take work out of a contract until it is begun; what other work rests on, and what must be done
whatever the money, cannot go (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.in_dock import LeftOut
from tenderwright.notices import Notice
from tenderwright.planning.in_dock.live import lines_by_item, live_items, needed_by, wholly_out
from tenderwright.planning.scope import must_do
from tenderwright.pricing.in_dock.account import RunningAccount, account


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each item or line left out though it had begun, must be done, or is needed by other work."""
    made = context.account
    if made is None:
        return
    whole, standing = wholly_out(made), set(map(id, made.ledger.out(made.on).values()))
    for out in made.ledger.left_out:
        if id(out) in standing:
            for why in _reasons(out, made, whole, context):
                hint = "restore it under `restored:`, or leave out what needs it as well"
                message = f"{_name(out)} is left out, {why}"
                yield Notice("left-out-needed", out.work.at, message, hints=(hint,))


def _name(out: LeftOut) -> str:
    return f"line {out.work}" if "." in out.work.name else f"item {out.work}"


def _reasons(out: LeftOut, made: RunningAccount, whole: frozenset[str], context: OwnerContext) -> Iterator[str]:
    number = out.work.name.split(".")[0]
    before = account(made.ledger, out.day)
    rows = [row for row in lines_by_item(before).get(number, []) if out.work.name in (number, row.line.number)]
    share = made.ledger.done(out.day).get(number, 0.0)
    if share > 0.0 and out.work.name == number:
        yield f"and {share:.0%} of it was done"
    elif any(row.measured for row in rows):
        yield "and some of it was measured"
    if number not in whole:
        return
    scope = context.papers.scope
    if scope is not None and number in must_do(scope):
        yield "and owner/scope.yaml says that it must be done"
    needing = needed_by(number, live_items(made, context.package), scope, made.ledger.done(made.on))
    if needing:
        items = "item" if len(needing) == 1 else "items"
        yield f"and {items} {', '.join(needing)} {'needs' if len(needing) == 1 else 'need'} it"
