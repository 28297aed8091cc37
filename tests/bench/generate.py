"""Make a valid package of any number of items: the ship of the demonstration, her own items, and copies of some."""

from __future__ import annotations

import re
import shutil
import sys
from pathlib import Path

MARRAM = Path(__file__).parents[2] / "package_src"

COPIED = ("150", "155", "160", "540", "650")
"""Items that may stand in a tender more than once without breaking a trade check."""

FIRST = 1000
LAST = 9999


def generate(root: Path, count: int) -> Path:
    """Write a package of that many items to a folder, without the owner's papers; raises ValueError for too many."""
    shutil.copytree(MARRAM, root, ignore=shutil.ignore_patterns("owner"))
    own = sorted((root / "items").glob("*.yaml"))
    texts = [path.read_text("utf-8") for path in own if path.name.split("-")[0] in COPIED]
    wanted = count - len(own)
    if not 0 <= wanted <= LAST - FIRST + 1:
        raise ValueError(f"from {len(own)} to {len(own) + LAST - FIRST + 1} items can be made, not {count}")
    for index in range(wanted):
        number = FIRST + index
        text = re.sub(r"^item: \d+$", f"item: {number}", texts[index % len(texts)], count=1, flags=re.MULTILINE)
        (root / "items" / f"{number}-copy.yaml").write_text(text, "utf-8")
    return root


if __name__ == "__main__":
    generate(Path(sys.argv[1]), int(sys.argv[2]))
