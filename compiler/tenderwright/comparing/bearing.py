"""Whether a change can bear on price.

Rule: any change of a line, quantity, unit, kind, scope, requirement, test, hold point or date can. A change of spacing
and punctuation alone cannot, nor one of what is kept for the record and never asked of the yard. Where it is not
known, it can.
"""

from __future__ import annotations

from tenderwright.comparing.operation import Operation
from tenderwright.comparing.redline import editorial
from tenderwright.model.item import FOR_THE_RECORD

_FOR_THE_RECORD = {
    "items": FOR_THE_RECORD,
    "package.yaml": (
        "addenda",
        "tender",
        "ship",
        "owner",
        "page_size",
        "units",
        "web_links",
        "services",
        "yard_questions",
    ),
    "contract.yaml": ("forms",),
    "drawings.yaml": ("holder", "kind"),
}
"""By folder or file, the keys whose values ask nothing of the yard; items answer for the services."""


def bears_on_price(operation: Operation) -> bool:
    """Tell whether an operation on data can affect price."""
    if operation.does in ("order", "file-moved"):
        return False
    if operation.file.startswith("questions/"):
        return False
    if isinstance(operation.old, str) and isinstance(operation.new, str) and operation.does == "set":
        return not _for_the_record(operation) and not editorial(operation.old, operation.new)
    return not _for_the_record(operation)


def _for_the_record(operation: Operation) -> bool:
    file = operation.file
    keys = _FOR_THE_RECORD.get(file, _FOR_THE_RECORD.get(file.partition("/")[0], ()))
    key = operation.at[2:3] if file == "drawings.yaml" else operation.at[:1]
    return bool(key) and key[0] in keys
