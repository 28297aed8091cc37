"""Files that a person reads at a sitting."""

from __future__ import annotations

from .tree import COMPILER, modules

MOST_LINES = 400


def test_no_module_is_too_long_to_read() -> None:
    lengths = {module.name: len((COMPILER / module.path).read_text("utf-8").splitlines()) for module in modules()}
    assert {name: lines for name, lines in lengths.items() if lines > MOST_LINES} == {}


def test_no_module_is_called_by_nothing_in_particular() -> None:
    vague = {"utils.py", "util.py", "helpers.py", "misc.py", "common_utils.py"}
    assert not [module.name for module in modules() if module.path.name in vague]
