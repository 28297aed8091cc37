"""Write one page that shows every notice there is: `python -m tenderwright.notices.page`."""

from __future__ import annotations

import re
from pathlib import Path

from tenderwright.notices.codes import CODES
from tenderwright.notices.explain import explanation

PAGE = Path(__file__).resolve().parent / "README.md"

_HEAD = """# Every notice there is

A notice is `path:line:column: severity[code]: sentence`. An error stops an edition. A warning does not, unless
`tenderwright check` is run with `--strict`. `tenderwright explain CODE` prints one of the explanations below.

This page is made by `python -m tenderwright.notices.page` from `codes.py` and `explanations/`.

| code | severity | meaning |
|---|---|---|
"""


def page() -> str:
    """Make the page: a table of all codes, then the explanation of each under its code."""
    rows = "".join(f"| [{code.name}](#{code.name}) | {code.severity} | {code.title} |\n" for code in CODES.values())
    return _HEAD + rows + "".join(f"\n{_lowered(name)}" for name in CODES)


def _lowered(code: str) -> str:
    """Set an explanation below the page's own title, under the heading of its code."""
    title, _, body = explanation(code).partition("\n")
    return f"## {code}\n\n**{title.removeprefix('# ')}**\n{re.sub('^## ', '### ', body, flags=re.MULTILINE)}"


def main() -> None:
    """Write the page beside this module."""
    PAGE.write_text(page(), "utf-8")


if __name__ == "__main__":
    main()
