"""Where files stand in a package, which schema each has, and on which page of the reference it is explained.

A kind of file stands in the table of those who read it, which is its page too.
"""

from __future__ import annotations

FORMAT = 1
"""The version of the format, which package.yaml states."""

OF_THE_TENDER: dict[str, str] = {
    "package.yaml": "package",
    "contract.yaml": "contract",
    "vessel/particulars.yaml": "particulars",
    "vessel/frames.yaml": "frames",
    "vessel/offsets.yaml": "offsets",
    "vessel/curves.yaml": "curves",
    "vessel/sections.yaml": "sections",
    "vessel/tanks.yaml": "tanks",
    "vessel/openings.yaml": "openings",
    "vessel/appendages.yaml": "appendages",
    "vessel/strakes.yaml": "strakes",
    "vessel/zones.yaml": "zones",
    "vessel/anodes.yaml": "anodes",
    "vessel/lightship.yaml": "lightship",
    "vessel/docking-plan.yaml": "docking-plan",
    "vessel/condition.yaml": "condition",
    "vessel/timber.yaml": "timber",
    "tow.yaml": "tow",
    "surveys/*.csv": "survey-row",
    "surveys/*.yaml": "survey-columns",
    "photographs.csv": "photographs",
    "drawings.yaml": "drawings",
    "items/*.yaml": "item",
    "facilities/*.yaml": "facility",
    "questions/*.yaml": "question",
}
"""What yards read: pattern of the path to the name of the schema."""

OF_THE_OWNER: dict[str, str] = {
    "owner/rates.yaml": "rates",
    "owner/indices.yaml": "indices",
    "owner/funding.yaml": "funding",
    "owner/reserve.yaml": "reserve",
    "owner/scope.yaml": "scope",
    "owner/risks.yaml": "risks",
    "owner/programme.yaml": "programme",
    "owner/approvals.yaml": "approvals",
    "owner/contract.yaml": "taken-away",
    "owner/facilities/*.yaml": "facility-kept",
    "owner/questions.yaml": "owner-questions",
    "owner/evaluation.yaml": "evaluation",
    "owner/bids/*.yaml": "bid",
    "owner/award.yaml": "award",
    "owner/grants/*.yaml": "grant",
    "owner/profiles/*.yaml": "profile",
}
"""What the owner alone reads, before and during the tender."""

OF_THE_DOCKING: dict[str, str] = {
    "history/*.yaml": "history",
    "owner/in-dock/*.yaml": "in-dock",
    "owner/findings/*.yaml": "findings",
    "owner/closing/*.yaml": "closing",
    "care/plan.yaml": "care-plan",
    "care/*.csv": "care-row",
}
"""What is written in dock, after it, and between dockings."""

_SCHEMAS = OF_THE_TENDER | OF_THE_OWNER | OF_THE_DOCKING
YAML_FILES = {pattern: name for pattern, name in _SCHEMAS.items() if pattern.endswith(".yaml")}
"""Pattern of the path of a YAML file to the name of the schema."""

TABLES = {pattern: name for pattern, name in _SCHEMAS.items() if pattern.endswith(".csv")}
"""Pattern of the path of a CSV file to the name of its schema: that of a row, or of the list of rows."""

ROWS = {"photographs.csv": "photographs", "owner/photographs.csv": "photographs"}
"""CSV files whose rows are read as a YAML list of that name would be, to the name of their schema."""

NEEDED = ("package.yaml", "vessel/particulars.yaml", "drawings.yaml")
"""Files without which nothing can be compiled."""

OTHER_FILES = ("clauses/*.md", "surveys/*.csv", "care/*.csv", "owner/findings/*.csv")

IGNORED_FOLDERS = ("drawings/", "owner/documents/", "owner/archive/", "build/")

UNFINISHED = ".tenderwright-unfinished"
"""Lists the files that a command is putting into the package; it stays where the command is killed meanwhile."""

OWNER = "owner/"
"""Everything confidential lives under here."""


def schema_of(path: str) -> str | None:
    """Name the schema of a file, or None where it has none."""
    return YAML_FILES.get(path) or ROWS.get(path) or YAML_FILES.get(_pattern(path))


def is_other(path: str) -> bool:
    """Tell whether a file is read though it is not YAML."""
    return _pattern(path) in OTHER_FILES


def is_ignored(path: str) -> bool:
    """Tell whether a file may lie in a package without being compiled."""
    name = path.rpartition("/")[2]
    hidden = path.startswith(".") or "/." in path
    return hidden or name == "README.md" or path == "LICENSE" or path.startswith(IGNORED_FOLDERS)


def _pattern(path: str) -> str:
    """Give the pattern of the files of a path's folder that end as it does."""
    folder, slash, name = path.rpartition("/")
    return f"{folder}{slash}*.{name.rpartition('.')[2]}"
