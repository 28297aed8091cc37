"""`check` starts fast because it imports only what it uses."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest

from tenderwright.starter.write import write_starter

LATE = (
    "jinja2",
    "weasyprint",
    "openpyxl",
    "rich",
    "scipy",
    "watchfiles",
    "pint",
    "jsonschema",
    "fontTools",
    "pikepdf",
    "PIL",
)
"""What `check` of a sound package does without."""

PROGRAM = """
import json, sys
from tenderwright.cli import main
code = main(["check", sys.argv[1], "--format", "line"])
json.dump({"code": code, "modules": sorted({name.split(".")[0] for name in sys.modules})}, sys.stderr)
"""


@pytest.fixture(scope="module")
def loaded(tmp_path_factory: pytest.TempPathFactory) -> set[str]:
    package = tmp_path_factory.mktemp("start") / "package"
    write_starter(package)
    ran = subprocess.run([sys.executable, "-c", PROGRAM, str(package)], capture_output=True, text=True, check=True)
    told = json.loads(ran.stderr)
    assert told["code"] == 0, ran.stdout
    return set(told["modules"])


@pytest.mark.parametrize("name", LATE)
def test_check_does_not_import(loaded: set[str], name: str) -> None:
    assert name not in loaded


def test_check_imports_what_it_is_made_of(loaded: set[str]) -> None:
    assert {"numpy", "yaml", "markdown_it", "tenderwright"} <= loaded
