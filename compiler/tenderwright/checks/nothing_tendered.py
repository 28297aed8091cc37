"""A line asks a price for something: its quantity, sum or allowance is more than nothing, and its item has a line.

Ground: what is priced for a quantity of nothing weighs nothing in the evaluated price, and its rate may be anything
(derived; 23 CFR 635.102, on unbalanced bids).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import key_in
from tenderwright.model.item import Line
from tenderwright.notices import Notice
from tenderwright.pricing.quantity import line_quantity

CODE = "nothing-tendered"
_HINT = "withdraw it with `withdrawn: true`, or say how much is asked"


def check(context: Context) -> Iterator[Notice]:
    """Report each line of which nothing is asked, and each item of which every line is withdrawn."""
    for item in context.live_items:
        if not item.lines and item.number in context.package.withdrawn_lines:
            message = f"every line of item {item.number} is withdrawn, and the item is not"
            yield Notice(CODE, key_in(item, "lines"), message, hints=("write `withdrawn: true` for the item",))
        for line in item.lines:
            if _asks_nothing(context, line):
                message = f"line {item.number}.{line.line}, `{line.text}`, asks a price for nothing"
                yield Notice(CODE, line.here, message, hints=(_HINT,))


def _asks_nothing(context: Context, line: Line) -> bool:
    if line.price == "percent":
        return False
    if line.price in ("fixed", "markup") and line.amount is not None:
        return line.amount == 0
    quantity = line_quantity(line, context.record)
    return quantity is not None and quantity.number == 0
