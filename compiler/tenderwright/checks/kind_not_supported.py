"""She is of a kind that the calculations fit: one hull, symmetrical, that displaces what its own form says.

Ground: hydrostatics, landing and areas here take one hull symmetrical about its centreline, docked on its keel
(derived). A submarine's ballast tanks, the sponsons and wheels of a paddle steamer and a second hull are in none of
them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

_KINDS = (
    (re.compile(r"\bsubmarine\b|\bsubmersible\b", re.IGNORECASE), "a submarine", "tanks open to the sea"),
    (
        re.compile(
            r"\bpaddle[ -]?(?:steamer|tug|vessel|wheel|ship|boat)|\bside[ -]?wheel|\bstern[ -]?wheel", re.IGNORECASE
        ),
        "a paddle steamer",
        "wheels and sponsons",
    ),
    (
        re.compile(r"\bcatamaran\b|\btrimaran\b|\btwin[ -]hull", re.IGNORECASE),
        "a vessel of several hulls",
        "the other hull",
    ),
    (re.compile(r"\bhydrofoil\b|\bhovercraft\b", re.IGNORECASE), "a craft that is lifted", "foils or skirts"),
)


def check(context: Context) -> Iterator[Notice]:
    """Warn of a ship whose kind is not supported; what is printed of her is then for a naval architect alone."""
    ship = context.package.particulars
    if ship is None:
        return
    words = f"{ship.type} {ship.machinery.text if ship.machinery is not None else ''}"
    for pattern, kind, missing in _KINDS:
        if pattern.search(words):
            message = (
                f"she is {kind}, which is not supported: areas, weights and drafts are calculated without {missing}"
            )
            hint = "have a naval architect make the docking plan, and use the package for its items and tender alone"
            yield Notice("kind-not-supported", context.at("vessel/particulars.yaml", "type"), message, hints=(hint,))
