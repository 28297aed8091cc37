"""Names several things in a run of words."""

from __future__ import annotations

from tenderwright.documents.desk import joined


def together(names: list[str]) -> str:
    """Name several things at once, what all begin with said once, as in `Fresh water, port and starboard`."""
    words = [name.split(" ") for name in names]
    same = 0
    while len(names) > 1 and all(len(one) > same + 1 and one[same] == words[0][same] for one in words):
        same += 1
    if not same:
        return joined(names)
    return f"{' '.join(words[0][:same])} {joined([' '.join(one[same:]) for one in words])}"
